import { nextOf, reachableLengths } from '../bounds/reachable.ts'
import type { Weights } from '../bounds/weights.ts'
import { END } from '../model.ts'
import type { Problem } from '../problem.ts'
import type { Finished } from './fronts.ts'
import { fronts } from './fronts.ts'
import { severalGroups } from './phases.ts'
import type { Strictness } from './strictness.ts'
import { SOUND } from './strictness.ts'

/** What a search by rising limits has shown. */
export interface Shortest {
  /** a shortest layout, when one shorter than that at hand was found */
  readonly best: Finished | null
  /** with the best, other undominated layouts that were met on the way, shortest first */
  readonly others?: readonly Finished[]
  /** no layout is shorter */
  readonly bound: number
  /** everything shorter than that at hand was searched */
  readonly finished: boolean
  readonly steps: number
}

/**
 * The shortest guillotine layout shorter than that at hand by fronts under rising limits: a tight limit leaves few blocks, so it is cheap to
 * refuse, and each refusal raises the bound. The allowance above the bound doubles, so all trials together cost little more than the
 * last. The first limit under which a layout exists yields the shortest one, since its fronts hold every layout that short.
 *
 * When no layout is shorter than that at hand, the bound becomes its length.
 */
export function shortest(problem: Problem, task: Task, strictness: Strictness = SOUND): Shortest {
  if (!problem.tied || !severalGroups(problem)) return rising(problem, task, strictness, false)
  // tied pieces shifted only where they must be: not every layout, but a good one soon, which keeps the limits of the proof low
  const tight = rising(problem, { ...task, effort: Math.ceil(task.effort / 4) }, strictness, true)
  const upper = tight.best?.length ?? task.upper
  const loose = rising(problem, { ...task, upper, effort: task.effort - tight.steps }, strictness, false)
  return { ...loose, best: loose.best ?? tight.best, steps: tight.steps + loose.steps }
}

export interface Task {
  readonly lower: number
  /** length of a layout at hand */
  readonly upper: number | null
  readonly weights: readonly Weights[]
  readonly effort: number
  readonly stop?: (() => boolean) | undefined
  /** looks for a layout shorter than that at hand by other means, in so many steps; its length, or that at hand */
  readonly improve?: (effort: number) => number | null
  /** told whenever lengths have been refused, with the blocks that were looked at */
  readonly onBound?: (bound: number, states: number) => void
}

function rising(problem: Problem, task: Task, strictness: Strictness, tight: boolean): Shortest {
  const { stop, weights } = task
  const { width } = problem
  let { upper } = task
  let last = upper === null ? longestWorthTrying(problem) : upper - 1
  const lengths = reachableLengths(problem, last + 1)
  let bound = lengths ? nextOf(lengths, task.lower) : task.lower
  let steps = 0
  let improved = 0
  // what must touch the end leaves nothing to shorten: one trial over the whole field
  const whole = problem.length !== null && problem.kinds.some((k) => k.postures.every((p) => p.flush & END))
  let refused = 0
  while (bound <= last || whole) {
    // a shorter layout at hand keeps the next limit low: it is looked for with a part of the steps spent here meanwhile, which are cheaper
    if (task.improve && steps - improved >= IMPROVE_FROM) {
      const shorter = task.improve((steps - improved) / 4)
      improved = steps
      if (shorter !== null && (upper === null || shorter < upper)) {
        upper = shorter
        last = upper - 1
        continue
      }
    }
    const limit = whole
      ? problem.length! - problem.zones.end
      : Math.min(last, bound + Math.floor((bound * (2 ** refused - 1)) / 800))
    const effort = task.effort - steps - improved / 4
    const found = fronts(problem, { width, length: limit, effort, stop, tight, weights, strictness })
    steps += found.steps
    if (!found.finished) return { best: null, bound, finished: false, steps }
    const best = found.best[0]
    if (best && (upper === null || best.length < upper))
      return { best, others: found.best, bound: best.length, finished: true, steps }
    if (whole) return { best: null, bound: problem.length! + 1, finished: true, steps }
    const next = limit + 1 + strictness.lengths
    bound = lengths ? nextOf(lengths, next) : next
    refused++
    if (!tight) task.onBound?.(bound, steps)
  }
  return { best: null, bound, finished: true, steps }
}

/** With fewer steps than this the limits are refused sooner than a search finds anything. */
const IMPROVE_FROM = 50_000

/** In a field of set length: as far as pieces may reach; in an open one, all of them one after another. */
function longestWorthTrying(problem: Problem): number {
  if (problem.length !== null) return problem.length - problem.zones.end
  const stacked = problem.kinds.reduce((sum, k) => sum + k.count * Math.max(...k.postures.map((p) => p.length)), 0)
  return stacked + problem.zones.start
}
