import type { Weights } from '../bounds/weights.ts'
import { END, LEFT, RIGHT, START } from '../model.ts'
import type { Problem } from '../problem.ts'
import type { Guide } from './guide.ts'
import { Reach } from './reach.ts'
import type { Strictness } from './strictness.ts'

/** A field's width and a length on trial: nothing that ends farther is looked for. */
export interface Trial {
  readonly width: number
  /** blocks that would end farther than this are left out */
  readonly length: number
  /** for this length: blocks beside and beyond which the rest cannot weigh enough are left out */
  readonly weights?: readonly Weights[]
  /** blocks too large for the others to find room around them are left out */
  readonly guide?: Guide | undefined
}

/** Trials are told apart by the bits of a number. */
export const MOST_TRIALS = 30

/**
 * What trials have room for. A block is of no use to a trial when it does not fit the field itself; when the area left beside it
 * cannot hold the rest, the waste nobody can avoid beside and before it included; or when the rest weighs more under rescaled
 * sizes than what is left of the rescaled field can hold.
 *
 * Several trials share their blocks: each block carries the trials that it may serve, as bits. A join serves only what both its parts
 * serve: where one of them cannot be in a layout, no block made of it can. That a smaller block outdoes a larger one of the same
 * pieces stays true: it may stand in for the larger in every layout, so it is refused by no trial that has a layout with that.
 */
export class Rooms {
  /** all trials, as bits */
  readonly all: number
  /** the largest area that any of the trials has */
  readonly most: number
  private readonly rooms: readonly Room[]
  private readonly guided: boolean
  private readonly total: number
  private readonly widthSums: Reach
  private readonly lengthSums: Reach

  /** `total`: the area of all pieces. */
  constructor(problem: Problem, trials: readonly Trial[], total: number, strictness: Strictness) {
    this.rooms = trials.map((trial) => new Room(problem, trial, strictness))
    this.most = Math.max(...this.rooms.map((room) => room.capacity))
    this.all = 2 ** trials.length - 1
    this.guided = trials.every((trial) => trial.guide)
    this.total = total
    const sizes = (of: 'width' | 'length') =>
      problem.kinds.map((k) => ({ count: k.count, sizes: [...new Set(k.postures.map((p) => p[of]))] }))
    this.widthSums = new Reach(sizes('width'), Math.max(...trials.map((trial) => trial.width)))
    this.lengthSums = new Reach(sizes('length'), Math.max(...this.rooms.map((room) => room.reach)))
  }

  /** Which of the trials `serves` has a block of this size, sides and area of the rest room for? */
  servedBy(serves: number, width: number, length: number, flush: number, restArea: number): number {
    let out = 0
    for (let t = 0; t < this.rooms.length; t++)
      if (serves & (1 << t) && this.rooms[t]!.holds(width, length, flush, restArea)) out |= 1 << t
    return out
  }

  /** Might any of these trials have room for it, the zones and the width set aside? Asked first, where a block is dear to make. */
  mayHold(serves: number, width: number, length: number, restArea: number): boolean {
    const area = width * length + restArea
    for (let t = 0; t < this.rooms.length; t++)
      if (serves & (1 << t) && area <= this.rooms[t]!.capacity && length <= this.rooms[t]!.length) return true
    return false
  }

  /** The same by what the remaining pieces weigh, `restWeights` for each trial. */
  servedByWeight(serves: number, width: number, length: number, restWeights: readonly (readonly number[])[]): number {
    let out = serves
    for (let t = 0; t < this.rooms.length; t++)
      if (serves & (1 << t) && this.rooms[t]!.outweighed(width, length, restWeights[t]!)) out &= ~(1 << t)
    return out
  }

  /** Do the guides leave room for any block of this multiset? */
  mayHoldAny(multiset: number): boolean {
    if (!this.guided) return true
    for (const { guide } of this.rooms) if (guide!.allows(multiset, 0, 0)) return true
    return false
  }

  /** The same by the trials' guides. */
  servedByGuide(serves: number, multiset: number, width: number, length: number): number {
    let out = serves
    for (let t = 0; t < this.rooms.length; t++) {
      const { guide } = this.rooms[t]!
      if (serves & (1 << t) && guide && !guide.allows(multiset, width, length)) out &= ~(1 << t)
    }
    return out
  }

  /** The gaps that are asked for next are those of so many remaining pieces of each kind. */
  turnTo(counts: readonly number[]): void {
    this.widthSums.turnTo(counts)
    this.lengthSums.turnTo(counts)
  }

  /** The same by the gaps that the remaining pieces must leave beside and before the block. */
  servedDespiteGaps(serves: number, width: number, length: number, restArea: number): number {
    let out = serves
    for (let t = 0; t < this.rooms.length; t++)
      if (serves & (1 << t) && this.rooms[t]!.leavesTooMuch(width, length, restArea, this.widthSums, this.lengthSums))
        out &= ~(1 << t)
    return out
  }

  /** What so many of each kind weigh, under each of the scales of each trial. */
  weightsOf(counts: readonly number[]): number[][] {
    return this.rooms.map((room) => room.weightsOf(counts))
  }

  /** The most waste that a block may hold, for each trial. */
  spare(): Float64Array {
    return Float64Array.from(this.rooms, (room) => room.capacity - this.total)
  }
}

/** What one trial has room for. */
class Room {
  /** nothing lies beyond this */
  readonly reach: number
  /** the area that is left to lie on */
  readonly capacity: number
  private readonly width: number
  readonly length: number
  readonly guide: Guide | undefined
  private readonly weights: readonly Weights[]
  private readonly taken: readonly Taken[]
  private readonly zones: Problem['zones']
  private readonly fieldLength: number | null
  private readonly strictness: Strictness
  /** blocks that touch the field's end are of use only when the trial lets pieces go that far */
  private readonly mayEnd: boolean

  constructor(problem: Problem, trial: Trial, strictness: Strictness) {
    const { length, zones } = problem
    this.zones = zones
    this.fieldLength = length
    this.strictness = strictness
    this.width = trial.width
    this.length = trial.length
    this.weights = trial.weights ?? []
    this.guide = trial.guide
    this.mayEnd = length !== null && trial.length >= length - zones.end
    this.reach = reachOf(problem, trial.length)
    this.capacity = trial.width * this.reach
    this.taken = this.weights.map((w) => takenBy(w, this.width, this.reach, strictness))
  }

  /** Does a block fit the field, clear of the zones it may not enter, and leave area enough for the rest? */
  holds(width: number, length: number, flush: number, restArea: number): boolean {
    const { zones } = this
    if (width + (flush & LEFT ? 0 : zones.left) + (flush & RIGHT ? 0 : zones.right) > this.width) return false
    const end = length + (flush & START ? 0 : zones.start)
    if (flush & END ? !this.mayEnd || end > this.fieldLength! : end > this.length) return false
    return width * length + restArea + this.strictness.budget <= this.capacity
  }

  weightsOf(counts: readonly number[]): number[] {
    const out: number[] = []
    for (let i = 0; i < this.weights.length; i++) {
      const { values } = this.weights[i]!
      let sum = 0
      for (let kind = 0; kind < counts.length; kind++) sum += counts[kind]! * values[kind]!
      out.push(sum)
    }
    return out
  }

  /** Do the remaining pieces weigh more than the rescaled field holds beside and beyond the block? */
  outweighed(width: number, length: number, restWeights: readonly number[]): boolean {
    const { taken } = this
    for (let i = 0; i < taken.length; i++) {
      const { across, along, capacity } = taken[i]!
      if (restWeights[i]! + across.of(width) * along.of(length) > capacity) return true
    }
    return false
  }

  leavesTooMuch(width: number, length: number, restArea: number, across: Reach, along: Reach): boolean {
    const { gaps } = this.strictness
    const beside = (across.gapOf(this.width - width) + gaps) * length
    const before = (along.gapOf(this.reach - length) + gaps) * width
    return width * length + restArea + beside + before > this.capacity
  }
}

/** Where pieces of a layout that is to end by `limit` may end at the farthest: at the field's end, when some may touch it. */
export function reachOf({ length, zones, kinds }: Problem, limit: number): number {
  const ending =
    length !== null && limit >= length - zones.end && kinds.some((k) => k.postures.some((p) => p.flush & END))
  return ending ? length : limit
}

/** What a block takes up of the rescaled field. */
interface Taken {
  readonly across: Extent
  readonly along: Extent
  readonly capacity: number
}

function takenBy(
  { width, length, across, along }: Weights,
  most: number,
  reach: number,
  strictness: Strictness,
): Taken {
  return {
    across: new Extent(width, across, most),
    along: new Extent(length, along, reach),
    capacity: width * length - strictness.weights,
  }
}

/** How much of the rescaled width (length) is taken where a block takes up so much of the true one. */
class Extent {
  private readonly all: number
  private readonly left: (room: number) => number
  private readonly most: number
  /** answers so far, where they are few enough to be kept; −1: not asked yet */
  private readonly known: Float64Array

  constructor(all: number, left: (room: number) => number, most: number) {
    this.all = all
    this.left = left
    this.most = most
    this.known = new Float64Array(most < MOST_KNOWN ? most + 1 : 0).fill(-1)
  }

  of(size: number): number {
    if (size >= this.known.length) return this.all - this.left(this.most - size)
    if (this.known[size]! < 0) this.known[size] = this.all - this.left(this.most - size)
    return this.known[size]!
  }
}

const MOST_KNOWN = 1 << 14
