import { nextOf, reachableLengths } from '../bounds/reachable.ts'
import type { Weights } from '../bounds/weights.ts'
import { END } from '../model.ts'
import type { Kind, Problem } from '../problem.ts'
import type { Finished } from './fronts.ts'
import { fronts } from './fronts.ts'
import type { Relaxed } from './guide.ts'
import { Relaxation } from './guide.ts'
import { severalGroups } from './phases.ts'
import type { Trial } from './room.ts'
import { MOST_TRIALS, reachOf } from './room.ts'
import type { Strictness } from './strictness.ts'
import { SOUND } from './strictness.ts'
import { Widened } from './widened.ts'

/** What a search by rising limits has shown of one width. */
export interface Shortest {
  /** a shortest layout, when one shorter than that at hand was found */
  readonly best: Finished | null
  /** with the best, other undominated layouts that were met on the way, shortest first */
  readonly others?: readonly Finished[]
  /** no layout is shorter */
  readonly bound: number
  /** everything shorter than that at hand was searched */
  readonly finished: boolean
}

/** A width that a shortest layout is looked for on. */
export interface Target {
  readonly width: number
  readonly lower: number
  /** length of a layout at hand */
  readonly upper: number | null
  /** weights for a field that ends there; null: nothing so short exists */
  readonly weightsFor: (reach: number) => readonly Weights[] | null
  /** looks for a layout shorter than that at hand by other means, in so many steps; its length, or that at hand */
  readonly improve?: (effort: number) => number | null
  /** told whenever lengths have been refused, with the blocks that were looked at */
  readonly onBound?: (bound: number, states: number) => void
}

export interface Task {
  /** widest first; what fits a width must fit every wider one. The problem's own width does not count. */
  readonly targets: readonly Target[]
  /** multisets from which on the relaxed problem is searched first, where another number than usual is wanted */
  readonly relaxedFrom?: number
  readonly effort: number
  readonly stop?: (() => boolean) | undefined
  /** no rising limits, weights or relaxed problem: everything shorter than what is at hand in one run */
  readonly atOnce?: boolean
}

/**
 * For each width, the shortest guillotine layout shorter than that at hand, by fronts under rising limits: a tight limit leaves few blocks,
 * so it is cheap to refuse, and each refusal raises the bound. The allowance above the bound doubles, unless trials become dearer much faster
 * than that, so all trials together cost little more than the last. The first limit under which a layout exists yields the shortest one, since its fronts hold every layout that
 * short. One run of the fronts tries a limit for every width that is still open; what is too short for a width is so for
 * every narrower one, and a layout found for it is at hand for every wider one.
 *
 * When no layout is shorter than that at hand, the bound becomes its length.
 */
export function shortest(
  problem: Problem,
  task: Task,
  strictness: Strictness = SOUND,
): { readonly found: readonly Shortest[]; readonly steps: number } {
  const [only, another] = task.targets
  const widened = only && !another ? Widened.of(problem, only.width, strictness) : null
  if (!widened) return byLimits(problem, task, strictness)
  const weightsFor = (reach: number) => widened.weights(only!.weightsFor(reach))
  const { found, steps } = byLimits(widened.problem, { ...task, targets: [{ ...only!, weightsFor }] }, strictness)
  const restored = (block: Finished) => widened.restored(block)
  const trueOnes = ({ best, others, ...shown }: Shortest): Shortest => ({
    ...shown,
    best: best && restored(best),
    ...(others && { others: others.map(restored) }),
  })
  return { found: found.map(trueOnes), steps }
}

function byLimits(
  problem: Problem,
  task: Task,
  strictness: Strictness,
): { readonly found: readonly Shortest[]; readonly steps: number } {
  const relaxation = task.atOnce ? null : Relaxation.of(problem, strictness, task.relaxedFrom)
  if (!problem.tied || !severalGroups(problem)) return new Rising(problem, task, strictness, false, relaxation).run()
  // tied pieces shifted only where they must be: not every layout, but a good one soon, which keeps the limits of the proof low
  const tight = new Rising(problem, { ...task, effort: Math.ceil(task.effort / 4) }, strictness, true, relaxation).run()
  const targets = task.targets.map((t, i) => ({ ...t, upper: tight.found[i]!.best?.length ?? t.upper }))
  const rest = { ...task, targets, effort: task.effort - tight.steps }
  const loose = new Rising(problem, rest, strictness, false, relaxation).run()
  return {
    found: loose.found.map((f, i) => ({ ...f, best: f.best ?? tight.found[i]!.best })),
    steps: tight.steps + loose.steps,
  }
}

/** With fewer steps than this the limits are refused sooner than a search finds anything. */
const IMPROVE_FROM = 50_000

/** Where limits rise they rise by so much of the bound first. */
const FIRST_AHEAD = 1 / 300

/** Trials of fewer steps may become dearer as they like; others by this factor, no more. */
const CHEAP = 50_000
const DEARER = 3

/** A width whose shortest layout is not known yet. */
interface Open {
  readonly target: Target
  upper: number | null
  /** a layout as short as `upper`, perhaps for a narrower width; null: it was at hand */
  best: Finished | null
  others: readonly Finished[]
  bound: number
  /** a single trial over the whole field has been made */
  tried: boolean
  /** how far beyond the bound the next limit lies, as a part of the bound */
  ahead: number
  /** steps that the last trial took */
  spent: number
}

class Rising {
  private readonly problem: Problem
  private readonly task: Task
  private readonly strictness: Strictness
  private readonly tight: boolean
  private readonly relaxation: Relaxation | null
  private readonly all: readonly Open[]
  private readonly lengths: Float64Array | null
  private readonly longest: number
  /** what must touch the end leaves nothing to shorten: one trial over the whole field */
  private readonly whole: boolean
  /** some piece may touch the end */
  private readonly ending: boolean
  private steps = 0
  private improved = 0

  constructor(problem: Problem, task: Task, strictness: Strictness, tight: boolean, relaxation: Relaxation | null) {
    this.problem = problem
    this.task = task
    this.strictness = strictness
    this.tight = tight
    this.relaxation = relaxation
    this.whole = problem.length !== null && problem.kinds.some((k) => k.postures.every((p) => p.flush & END))
    this.ending = problem.kinds.some((k) => k.postures.some((p) => p.flush & END))
    this.longest = longestWorthTrying(problem)
    this.all = task.targets.map((target) => ({
      target,
      upper: target.upper,
      best: null,
      others: [],
      bound: target.lower,
      tried: false,
      ahead: 0,
      spent: 0,
    }))
    this.lengths = reachableLengths(problem, Math.max(...this.all.map((o) => this.lastOf(o))) + 1)
    for (const open of this.all) open.bound = this.roundUp(open.bound)
  }

  run(): { readonly found: readonly Shortest[]; readonly steps: number } {
    for (;;) {
      const open = this.all.filter((o) => this.isOpen(o)).slice(0, MOST_TRIALS)
      if (open.length === 0 || (!this.improve(open) && !this.tryOut(open))) break
    }
    const found = this.all.map((o) => ({
      best: o.best,
      others: o.others,
      bound: o.bound,
      finished: !this.isOpen(o),
    }))
    return { found, steps: this.steps }
  }

  private isOpen(o: Open): boolean {
    return this.whole ? !o.tried : o.bound <= this.lastOf(o)
  }

  /** The longest length that is of interest. */
  private lastOf({ upper }: Open): number {
    const { length } = this.problem
    return upper !== null ? upper - 1 : this.ending && length !== null ? length : this.longest
  }

  /** A limit no farther than pieces may reach that do not touch the end; one that goes so far is for those that do as well. */
  private within(limit: number): number {
    return this.problem.length === null ? limit : Math.min(limit, this.longest)
  }

  private roundUp(length: number): number {
    // what may not touch the end stays out of its zone
    if (length > this.longest && !this.ending && this.problem.length !== null) return this.problem.length + 1
    return this.lengths ? nextOf(this.lengths, length) : length
  }

  /**
   * A shorter layout at hand keeps the next limit low: it is looked for with a part of the steps spent here meanwhile, which are
   * cheaper. True when one was found.
   */
  private improve(open: readonly Open[]): boolean {
    if (this.steps - this.improved < IMPROVE_FROM) return false
    const effort = (this.steps - this.improved) / 4 / open.length
    this.improved = this.steps
    let better = false
    for (const o of open) {
      const shorter = o.target.improve?.(effort) ?? null
      if (shorter === null || (o.upper !== null && shorter >= o.upper)) continue
      o.upper = shorter
      o.best = null
      better = true
    }
    if (better) this.share()
    return better
  }

  /** Tries a limit for every open width; false when effort ended. */
  private tryOut(open: readonly Open[]): boolean {
    const { problem, task, tight, strictness } = this
    const trials: Trial[] = []
    const before = this.steps
    for (const o of open) {
      const trial = this.trialOf(o)
      if (trial === 'stopped') return false
      if (trial === 'refused') return true
      trials.push(trial)
    }
    const found = fronts(problem, { trials, effort: this.effortLeft(), stop: task.stop, tight, strictness })
    this.steps += found.steps
    if (!found.finished) return false
    const spent = (this.steps - before) / open.length
    for (const [i, o] of open.entries()) {
      o.tried = true
      this.goFarther(o, spent)
      const best = found.best[i]![0]
      if (best && (o.upper === null || best.length < o.upper)) {
        o.best = best
        o.others = found.best[i]!
        o.upper = best.length
        o.bound = best.length
      } else if (found.best[i]!.length === 0) o.bound = this.beyond(trials[i]!.length + strictness.lengths)
      else o.bound = this.isAll(trials[i]!.length) ? o.upper! : this.roundUp(trials[i]!.length + 1 + strictness.lengths)
    }
    this.share()
    if (!tight) for (const o of open) o.target.onBound?.(o.bound, this.steps)
    return true
  }

  /** The next trial of a width, unless weights or the relaxed problem refuse it. */
  private trialOf(o: Open): Trial | 'refused' | 'stopped' {
    const { relaxation, task } = this
    const { width, weightsFor } = o.target
    const start = this.steps
    const length = this.limitOf(o)
    if (task.atOnce) return { width, length }
    const weights = weightsFor(reachOf(this.problem, length))
    if (weights === null) return this.refuse(o, length, start)
    if (!relaxation) return { width, length, weights }
    const before = relaxation.steps
    const relaxed = relaxation.search({ width, length, weights }, { effort: this.effortLeft(), stop: task.stop })
    this.steps += relaxation.steps - before
    if (relaxed === null) return 'stopped'
    if (relaxed.least === null) return this.refuse(o, length, start)
    if (this.whole || relaxed.least <= o.bound) return this.guided({ width, length, weights }, relaxed)
    // often the relaxed problem's shortest is the problem's own
    this.raise(o, relaxed.least)
    const least = this.within(o.bound)
    const nearer = weightsFor(reachOf(this.problem, least))
    return nearer === null
      ? this.refuse(o, least, start)
      : this.guided({ width, length: least, weights: nearer }, relaxed)
  }

  private guided(trial: Trial, { guideFor }: Relaxed): Trial {
    const { guide, steps } = guideFor(trial.length)
    this.steps += steps
    return { ...trial, guide }
  }

  private effortLeft(): number {
    return this.task.effort - this.steps - this.improved / 4
  }

  /** A limit that takes no search of the problem itself to refuse. */
  private refuse(o: Open, length: number, start: number): 'refused' {
    o.tried = true
    this.goFarther(o, this.steps - start)
    this.raise(o, this.beyond(length))
    return 'refused'
  }

  /** The next limit lies twice as far beyond the bound, but no farther, or less far, where trials become dearer too soon. */
  private goFarther(o: Open, spent: number): void {
    const dearer = spent / Math.max(o.spent, CHEAP)
    if (dearer < DEARER) o.ahead = 2 * o.ahead + FIRST_AHEAD
    else if (dearer > DEARER ** 2) o.ahead /= 2
    o.spent = spent
  }

  private raise(o: Open, bound: number): void {
    o.bound = bound
    this.share()
    if (!this.tight) o.target.onBound?.(o.bound, this.steps)
  }

  /** The next length that a layout may have when none ends up to this limit. */
  private beyond(limit: number): number {
    return this.isAll(limit) ? this.problem.length! + 1 : this.roundUp(limit + 1)
  }

  /** Does a trial this long leave out no layout that the field can take? */
  private isAll(limit: number): boolean {
    return this.problem.length !== null && limit >= this.longest
  }

  private limitOf(o: Open): number {
    const { length, zones } = this.problem
    if (this.whole) return length! - zones.end
    if (this.task.atOnce) return this.within(this.lastOf(o))
    const searched = this.relaxation?.searched(o.target.width) ?? 0
    const next = o.bound + Math.floor(o.bound * o.ahead)
    // as far as the relaxed problem is searched already a trial is cheap
    return this.within(Math.min(this.lastOf(o), o.bound <= searched ? Math.min(next, searched) : next))
  }

  /** What one width has shown holds for others. */
  private share(): void {
    for (const [i, o] of this.all.entries()) {
      const wider = this.all[i - 1]
      if (wider) o.bound = Math.max(o.bound, wider.bound)
    }
    for (let i = this.all.length - 2; i >= 0; i--) {
      const o = this.all[i]!
      const narrower = this.all[i + 1]!
      if (narrower.upper !== null && (o.upper === null || narrower.upper < o.upper)) {
        o.best = narrower.best
        o.others = narrower.others
        o.upper = narrower.upper
      }
    }
  }
}

/** In a field of set length: as far as pieces may reach; in an open one, all of them one after another. */
function longestWorthTrying(problem: Problem): number {
  if (problem.length !== null) return problem.length - problem.zones.end
  // what keeps a phase may lie up to a repeat farther on
  const farthest = ({ postures, tie }: Kind) => Math.max(...postures.map((p) => p.length)) + (tie?.repeat ?? 0)
  const stacked = problem.kinds.reduce((sum, k) => sum + k.count * farthest(k), 0)
  return stacked + problem.zones.start
}
