import type { Control } from '../model.ts'
import type { Problem, Spot } from '../problem.ts'
import { endOf } from '../problem.ts'
import { corners } from './corners.ts'
import type { Meter } from './fill.ts'
import { meterOf } from './fill.ts'
import { packed } from './free.ts'
import { growStrip } from './guillotine.ts'
import { randomFrom } from './random.ts'
import { skylineSearch } from './skyline.ts'
import { spotsOf } from './tree.ts'
import type { Trial } from './trial.ts'
import { trialOf } from './trial.ts'

/** What a search found within its steps. One step is one block of pieces tried in one place. */
export interface Searched {
  /** null: nothing of at most `longest` */
  readonly spots: readonly Spot[] | null
  readonly steps: number
  /** every layout of at most `longest` was looked at or ruled out: the one found, or the caller's, is shortest */
  readonly finished: boolean
}

/**
 * The shortest layout in guillotine divisions found within `control.effort` steps.
 *
 * @param bound no layout is shorter, in the problem's units: the search ends when it is met
 * @param longest only layouts up to this length are of use: the caller's best, or what its rules allow
 */
export function searchGuillotine(problem: Problem, control: Control, bound: number, longest: number): Searched {
  const { found, steps } = growStrip(problem, control, bound, longest)
  return { spots: found === null ? null : spotsOf(found.part), steps, finished: false }
}

/**
 * The shortest free layout found within `control.effort` steps: few pieces exactly, many by the packer's quick layouts, the
 * skyline search and guillotine divisions. Where sides, zones, phases or flaws bind, guillotine divisions alone.
 */
export function searchFree(problem: Problem, control: Control, bound: number, longest: number): Searched {
  const random = randomFrom(0xf4ee)
  const trial = trialOf(problem, Number.isFinite(longest) ? longest : problem.width, random)
  if (!trial.plain) return searchGuillotine(problem, control, bound, longest)
  const meter = meterOf(control)
  const run = new FreeRun(trial, control, bound, longest, meter)
  return run.searched()
}

/** Pieces up to which the exact method is tried. */
const FEW = 9

class FreeRun {
  private best: readonly Spot[] | null = null
  private readonly trial: Trial
  private readonly control: Control
  private readonly bound: number
  private most: number
  private readonly meter: Meter

  constructor(trial: Trial, control: Control, bound: number, longest: number, meter: Meter) {
    this.trial = trial
    this.control = control
    this.bound = bound
    this.most = longest
    this.meter = meter
  }

  searched(): Searched {
    const { trial, bound, meter } = this
    const pieces = trial.counts.reduce((sum, count) => sum + count, 0)
    this.take(packed(trial, bound, Math.min(this.most, 4 * bound)))
    let finished = this.most < bound
    if (!finished && pieces <= FEW) {
      const own: Meter = { ...meter, steps: Math.floor(meter.steps / 2) }
      const before = own.steps
      const exact = corners(trial, bound, this.most, own)
      meter.steps -= before - own.steps
      this.take(exact.spots)
      finished = exact.finished
    }
    if (!finished) this.bySkyline(Math.floor(meter.steps / 2))
    if (this.most >= bound && !finished) this.byDivisions(meter.steps)
    return { spots: this.best, steps: this.control.effort - meter.steps, finished: finished || this.most < bound }
  }

  private bySkyline(steps: number): void {
    const { meter, control } = this
    const own: Meter = { ...meter, steps }
    const report = (length: number): void => {
      if (length <= this.most) control.onProgress?.(length, this.bound)
    }
    const found = skylineSearch(this.trial, this.bound, own, randomFrom(0x5c1), report)
    meter.steps -= steps - own.steps
    this.take(found === null ? null : found.spots)
  }

  private byDivisions(effort: number): void {
    const { spots, steps } = searchGuillotine(this.trial.problem, { ...this.control, effort }, this.bound, this.most)
    this.meter.steps -= steps
    this.take(spots)
  }

  private take(spots: readonly Spot[] | null): void {
    if (spots === null) return
    const length = endOf(this.trial.problem, spots)
    if (length > this.most) return
    this.best = spots
    this.most = length - 1
    this.control.onProgress?.(length, this.bound)
  }
}
