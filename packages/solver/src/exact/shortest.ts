import { nextOf, reachableLengths } from '../bounds/reachable.ts'
import type { Weights } from '../bounds/weights.ts'
import type { Control } from '../model.ts'
import { END } from '../model.ts'
import type { Problem } from '../problem.ts'
import type { Finished } from './fronts.ts'
import { fronts } from './fronts.ts'
import type { Strictness } from './strictness.ts'
import { SOUND } from './strictness.ts'

/** What a search by rising limits has shown. */
export interface Shortest {
  /** a shortest layout, when one below `upper` was found */
  readonly best: Finished | null
  /** with the best, other undominated layouts that were met on the way, shortest first */
  readonly others?: readonly Finished[]
  /** no layout is shorter */
  readonly bound: number
  /** everything below `upper` was searched */
  readonly finished: boolean
  readonly steps: number
}

/**
 * The shortest guillotine layout below `upper` by fronts under rising limits: a tight limit leaves few blocks, so it is cheap to
 * refuse, and each refusal raises the bound. The allowance above the bound doubles, so all trials together cost little more than the
 * last. The first limit under which a layout exists yields the shortest one, since its fronts hold every layout that short.
 *
 * `upper` is the length of a layout at hand; when no shorter one exists, the bound becomes that length.
 */
export function shortest(
  problem: Problem,
  lower: number,
  upper: number | null,
  weights: readonly Weights[],
  control: Control,
  strictness: Strictness = SOUND,
): Shortest {
  if (!problem.tied) return rising(problem, lower, upper, weights, control, strictness, false)
  // tied pieces shifted only where they must be: not every layout, but a good one soon, which keeps the limits of the proof low
  const share = Math.ceil(control.effort / 4)
  const tight = rising(problem, lower, upper, weights, { ...control, effort: share }, strictness, true)
  const rest = { ...control, effort: control.effort - tight.steps }
  const loose = rising(problem, lower, tight.best?.length ?? upper, weights, rest, strictness, false)
  return { ...loose, best: loose.best ?? tight.best, steps: tight.steps + loose.steps }
}

function rising(
  problem: Problem,
  lower: number,
  upper: number | null,
  weights: readonly Weights[],
  control: Control,
  strictness: Strictness,
  tight: boolean,
): Shortest {
  const last = upper === null ? longestWorthTrying(problem) : upper - 1
  const lengths = reachableLengths(problem, last + 1)
  let bound = lengths ? nextOf(lengths, lower) : lower
  let steps = 0
  // what must touch the end leaves nothing to shorten: one trial over the whole field
  const whole = problem.length !== null && problem.kinds.some((k) => k.postures.every((p) => p.flush & END))
  let refused = 0
  while (bound <= last || whole) {
    const limit = whole
      ? problem.length! - problem.zones.end
      : Math.min(last, bound + Math.floor((bound * (2 ** refused - 1)) / 800))
    const { width } = problem
    const effort = control.effort - steps
    const found = fronts(problem, { width, length: limit, effort, stop: control.stop, tight, weights, strictness })
    steps += found.steps
    if (!found.finished) return { best: null, bound, finished: false, steps }
    const best = found.best[0]
    if (best && (upper === null || best.length < upper))
      return { best, others: found.best, bound: best.length, finished: true, steps }
    if (whole) return { best: null, bound: problem.length! + 1, finished: true, steps }
    bound = lengths ? nextOf(lengths, limit + 1 + strictness.lengths) : limit + 1 + strictness.lengths
    refused++
    if (!tight) control.onProgress?.(upper, bound)
  }
  return { best: null, bound, finished: true, steps }
}

/** In a field of set length: as far as pieces may reach; in an open one, all of them one after another. */
function longestWorthTrying(problem: Problem): number {
  if (problem.length !== null) return problem.length - problem.zones.end
  const stacked = problem.kinds.reduce((sum, k) => sum + k.count * Math.max(...k.postures.map((p) => p.length)), 0)
  return stacked + problem.zones.start
}
