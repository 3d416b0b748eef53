import { lay, laysWithin } from './lay.ts'
import type { Control, Request, WidthsAnswer } from './model.ts'

/** The layouts of one request at several widths of its field. */
export function layForWidths(request: Request, widths: readonly number[], control: Control): WidthsAnswer {
  return widths.map((width) => ({ width, answer: lay({ ...request, field: { ...request.field, width } }, control) }))
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
