import { layKnowing, laysWithin } from './lay.ts'
import type { Answer, Control, Demand, Placement, Request, WidthsAnswer } from './model.ts'
import { LEFT, RIGHT } from './model.ts'

/**
 * The layouts of one request at several widths of its field. What fits a width fits every wider one, save pieces that touch both sides, so each answer bounds others:
 * the widest and the narrowest come first, then widths half way between, and between two of equal length nothing is searched.
 */
export function layForWidths(request: Request, widths: readonly number[], control: Control): WidthsAnswer {
  const order = [...new Set(widths)].sort((a, b) => b - a)
  const answers = new Map<number, Answer>()
  const shares = request.field.flaws.length === 0 && request.demands.every(mayLieOnWider)
  const solve = (at: number, wider: number | null, narrower: number | null, effort: number) => {
    const width = order[at]!
    const field = { ...request.field, width }
    const wide = wider === null ? null : answers.get(order[wider]!)!
    const narrow = narrower === null ? null : answers.get(order[narrower]!)!
    const placements = narrow?.length != null ? moved(request, narrow.placements, width - order[narrower!]!) : null
    const known = shares ? { wider: wide, placements } : { wider: null, placements: null }
    answers.set(width, layKnowing({ ...request, field }, { ...control, effort }, known))
  }
  const between = (wider: number, narrower: number) => {
    if (narrower - wider < 2) return
    const middle = (wider + narrower) >> 1
    solve(middle, wider, narrower, control.effort)
    between(wider, middle)
    between(middle, narrower)
  }
  if (order.length > 0) solve(0, null, null, control.effort)
  if (order.length > 1) solve(order.length - 1, 0, null, control.effort)
  between(0, order.length - 1)
  // where effort did not suffice, a narrower width may have the shorter layout
  const length = (at: number) => answers.get(order[at]!)!.length ?? Number.POSITIVE_INFINITY
  if (shares) for (let at = order.length - 2; at >= 0; at--) if (length(at + 1) < length(at)) solve(at, at, at + 1, 0)
  return widths.map((width) => ({ width, answer: answers.get(width)! }))
}

/** A piece as wide as one width of cloth, or with a phase counted across, has no place on a wider one. */
function mayLieOnWider({ postures, tie }: Demand): boolean {
  return tie?.axis !== 'across' && postures.every((p) => !(p.flush & LEFT && p.flush & RIGHT))
}

/** A layout on a field that is wider by so much: what touches the right side goes with it. */
function moved({ demands }: Request, placements: readonly Placement[], wider: number): Placement[] {
  return placements.map((p) => (demands[p.demand]!.postures[p.posture]!.flush & RIGHT ? { ...p, x: p.x + wider } : p))
}

/**
 * The narrowest width, on the grid of `step` down from the field's, at which the length is still at most `length`, while one step
 * less is proved to be too narrow; null when that is not so or effort does not suffice to show it. What fits a width fits every wider
 * one, so the grid is halved.
 */
export function narrowestFor(request: Request, length: number, step: number, control: Control): number | null {
  if (!(step > 0)) throw new RangeError(`narrowestFor: a step of ${step}`)
  const at = (steps: number) => {
    const width = request.field.width - steps * step
    return width <= 0 ? false : laysWithin({ ...request, field: { ...request.field, width } }, length, control)
  }
  if (!at(0)) return null
  let enough = 0
  let narrow = Math.ceil(request.field.width / step)
  while (narrow - enough > 1) {
    const middle = (enough + narrow) >> 1
    const does = at(middle)
    if (does === null) return null
    if (does) enough = middle
    else narrow = middle
  }
  return request.field.width - enough * step
}
