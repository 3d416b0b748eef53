import { cannot, lay, laysWithin, validate } from './lay.ts'
import type { Answer, Control, Demand, Placement, Posture, Request, WidthsAnswer } from './model.ts'
import { LEFT, RIGHT } from './model.ts'
import { normalise } from './problem.ts'
import { atOnce, Run } from './run.ts'

/**
 * The layouts of one request at several widths of its field, with `effort` for each. What fits a width fits every wider one, save pieces
 * that touch both sides, so each width's bounds and layouts are handed on to others: the widest and the narrowest come first, then widths
 * half way between. Where multisets are few, one run of the exact methods answers all widths that are left open. Where they are many the
 * widths have few blocks in common, so that one run would cost as much as several, and a hard width would take the effort of all:
 * there each is searched by itself.
 */
export function layForWidths(request: Request, widths: readonly number[], control: Control): WidthsAnswer {
  const order = [...new Set(widths)].sort((a, b) => b - a)
  const requests = order.map((width): Request => ({ ...request, field: { ...request.field, width } }))
  for (const one of requests) validate(one)
  const shares = request.field.flaws.length === 0 && request.demands.every(mayLieOnWider)
  const answers = shares ? together(requests, control) : requests.map((one) => lay(one, control))
  return widths.map((width) => ({ width, answer: answers[order.indexOf(width)]! }))
}

/** A piece as wide as one width of cloth, or with a phase counted across, has no place on a wider one. */
function mayLieOnWider({ postures, tie }: Demand): boolean {
  return tie?.axis !== 'across' && !postures.some(touchesBoth)
}

/** The answers to one request at several widths, widest first, of which each may use what the others found. */
function together(requests: readonly Request[], control: Control): Answer[] {
  const all = requests.map(({ field }) => field.width)
  const problems = requests.map((one) => normalise(one, all))
  const runs = problems.flatMap((problem) => (problem ? [new Run(problem, control)] : []))
  const widest = runs[0]?.problem
  if (widest) {
    for (const [at, wider, narrower] of byHalves(runs.length)) runs[at]!.start(known(runs, at, wider, narrower))
    atOnce(widest, runs, control)
    handOn(runs)
    for (const [at, wider, narrower] of byHalves(runs.length)) {
      runs[at]!.learn(known(runs, at, wider, narrower))
      runs[at]!.goOn()
    }
  }
  const answers: Answer[] = []
  // where effort did not suffice, a narrower width may have the shorter layout
  for (let at = runs.length - 1; at >= 0; at--) {
    runs[at]!.learn(known(runs, at, null, at + 1 < runs.length ? at + 1 : null))
    answers[at] = runs[at]!.end()
  }
  // what has no place on a width has none on narrower ones
  return requests.map((one, at) => answers[at] ?? cannot(one))
}

/** Where effort did not suffice, a narrower width may have the shorter layout. */
function handOn(runs: readonly Run[]): void {
  for (let at = runs.length - 2; at >= 0; at--) runs[at]!.learn(known(runs, at, null, at + 1))
}

/** In which order widths are looked at, each with the next wider and narrower of those before it: the ends first, then the middles. */
function byHalves(count: number): [at: number, wider: number | null, narrower: number | null][] {
  const out: [number, number | null, number | null][] = [[0, null, null]]
  if (count > 1) out.push([count - 1, 0, null])
  const between = (wider: number, narrower: number): void => {
    if (narrower - wider < 2) return
    const middle = (wider + narrower) >> 1
    out.push([middle, wider, narrower])
    between(wider, middle)
    between(middle, narrower)
  }
  between(0, count - 1)
  return out
}

/** What the runs of a wider and of a narrower field tell of this one. */
function known(runs: readonly Run[], at: number, wider: number | null, narrower: number | null) {
  const { request } = runs[at]!.problem
  const from = narrower === null ? null : runs[narrower]!
  const placements = from?.layout
    ? moved(request, from.layout.placements, request.field.width - from.problem.request.field.width)
    : null
  return { wider: wider === null ? null : runs[wider]!, placements }
}

/** A layout on a field that is wider by so much: what touches the right side goes with it. */
function moved({ demands }: Request, placements: readonly Placement[], wider: number): Placement[] {
  return placements.map((p) => (demands[p.demand]!.postures[p.posture]!.flush & RIGHT ? { ...p, x: p.x + wider } : p))
}

/**
 * The narrowest width, on the grid of `step` down from the field's, at which the length is still at most `length`, while all less is proved
 * to be too narrow; null when no width does, or effort does not suffice to show it. What fits a width fits every wider one, so
 * the grid is halved; postures that touch both sides have one width each and are tried there. Null also where what touches the
 * right side cannot go with it: with flaws, or a phase counted across.
 */
export function narrowestFor(request: Request, length: number, step: number, control: Control): number | null {
  if (!(step > 0)) throw new RangeError(`narrowestFor: a step of ${step}`)
  const { field } = request
  const demands = request.demands.filter((d) => d.count > 0)
  const postures = demands.flatMap((d) => d.postures)
  const held = field.flaws.length > 0 || demands.some((d) => d.tie?.axis === 'across')
  if (held && postures.some((p) => p.flush & RIGHT)) return null
  const does = (of: readonly Demand[], width: number) =>
    laysWithin({ ...request, demands: of, field: { ...field, width } }, length, control)

  const free = demands.map((d) => ({ ...d, postures: d.postures.filter((p) => !touchesBoth(p)) }))
  const everywhere = free.every((d) => d.postures.length > 0)
  const narrowest = everywhere
    ? leastThatDoes(field.width, step, (width) => does(free, width))
    : Number.POSITIVE_INFINITY
  if (narrowest === null) return null
  const own = new Set(postures.filter(touchesBoth).map((p) => p.width))
  for (const width of [...own].sort((a, b) => a - b)) {
    if (width > field.width || width >= narrowest || (field.width - width) % step !== 0) continue
    const answer = does(demands, width)
    if (answer !== false) return answer && width
  }
  return narrowest === Number.POSITIVE_INFINITY ? null : narrowest
}

const touchesBoth = ({ flush }: Posture): boolean => (flush & LEFT) !== 0 && (flush & RIGHT) !== 0

/** The least width of a grid that does, when all wider ones do; infinite: none does, null: not known. */
function leastThatDoes(widest: number, step: number, does: (width: number) => boolean | null): number | null {
  const first = does(widest)
  if (!first) return first === null ? null : Number.POSITIVE_INFINITY
  let enough = 0
  let narrow = Math.ceil(widest / step)
  while (narrow - enough > 1) {
    const middle = (enough + narrow) >> 1
    const answer = does(widest - middle * step)
    if (answer === null) return null
    if (answer) enough = middle
    else narrow = middle
  }
  return widest - enough * step
}
