import type { Weights } from '../bounds/weights.ts'
import { END, LEFT, RIGHT, START } from '../model.ts'
import type { Problem } from '../problem.ts'
import { Reach } from './reach.ts'
import type { Strictness } from './strictness.ts'

/** A field's width and a length on trial: nothing that ends farther is looked for. */
export interface Trial {
  readonly width: number
  /** blocks that would end farther than this are left out */
  readonly length: number
  /** duals of the bar relaxation: blocks beside and beyond which the rest cannot weigh enough are left out */
  readonly weights?: readonly Weights[]
}

/**
 * What a trial has room for. A block is of no use when it does not fit the field itself; when the area left beside it cannot hold
 * the rest, the waste nobody can avoid beside and before it included; or when the rest weighs more under the duals of the
 * bar relaxation than the lengths left to it can hold.
 */
export class Room {
  /** nothing lies beyond this */
  readonly reach: number
  /** the area that is left to lie on */
  readonly capacity: number
  private readonly width: number
  private readonly length: number
  private readonly weights: readonly Weights[]
  private readonly problem: Problem
  private readonly strictness: Strictness
  /** blocks that touch the field's end are of use only when the trial lets pieces go that far */
  private readonly mayEnd: boolean
  private readonly widthSums: Reach
  private readonly lengthSums: Reach

  constructor(problem: Problem, trial: Trial, strictness: Strictness) {
    this.problem = problem
    this.strictness = strictness
    this.width = trial.width
    this.length = trial.length
    this.weights = trial.weights ?? []
    const { length, zones } = problem
    this.mayEnd = length !== null && trial.length >= length - zones.end
    const ending = this.mayEnd && problem.kinds.some((k) => k.postures.some((p) => p.flush & END))
    this.reach = ending ? length! : trial.length
    this.capacity = trial.width * this.reach
    const sizes = (of: 'width' | 'length') =>
      problem.kinds.map((k) => ({ count: k.count, sizes: [...new Set(k.postures.map((p) => p[of]))] }))
    this.widthSums = new Reach(sizes('width'), trial.width)
    this.lengthSums = new Reach(sizes('length'), this.reach)
  }

  /** Does a block fit the field, clear of the zones it may not enter? */
  fits(width: number, length: number, flush: number): boolean {
    const { zones } = this.problem
    if (width + (flush & LEFT ? 0 : zones.left) + (flush & RIGHT ? 0 : zones.right) > this.width) return false
    const end = length + (flush & START ? 0 : zones.start)
    return flush & END ? this.mayEnd && end <= this.problem.length! : end <= this.length
  }

  /** Does what all weigh together with a block exceed the area there is? */
  overfull(width: number, length: number, restArea: number): boolean {
    return width * length + restArea + this.strictness.budget > this.capacity
  }

  /** What so many of each kind weigh, under each of the duals. */
  weightsOf(counts: readonly number[]): number[] {
    return this.weights.map(({ values }) => counts.reduce((sum, n, i) => sum + n * values[i]!, 0))
  }

  /** Do the remaining pieces weigh more than fits beside the block and in the lengths it leaves? */
  outweighed(width: number, length: number, restWeights: readonly number[]): boolean {
    const { weights } = this
    for (let i = 0; i < weights.length; i++) {
      const { capacity, within } = weights[i]!
      const room = (this.reach - length) * capacity + length * within(this.width - width)
      if (restWeights[i]! + this.strictness.weights > room) return true
    }
    return false
  }

  /** Tells of a block beside or before which the remaining pieces, `counts` of each kind, must leave too much. */
  gapsFor(counts: readonly number[], restArea: number): (width: number, length: number) => boolean {
    const across = this.widthSums.gapsFor(counts)
    const along = this.lengthSums.gapsFor(counts)
    const { gaps } = this.strictness
    return (w, l) => {
      const beside = (across(this.width - w) + gaps) * l
      const before = (along(this.reach - l) + gaps) * w
      return w * l + restArea + beside + before > this.capacity
    }
  }
}
