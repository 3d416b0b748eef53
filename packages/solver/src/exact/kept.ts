import type { Problem } from '../problem.ts'
import { Blocks, UNTIED } from './blocks.ts'
import { dropCovered } from './covered.ts'
import { Multisets } from './multisets.ts'
import { PackedCounts } from './packed.ts'
import type { PhaseSet, Phases } from './phases.ts'
import type { Trial } from './room.ts'
import { Rooms } from './room.ts'
import type { Strictness } from './strictness.ts'

/** Blocks of one multiset that touch the same sides and, with ties, lie in the same phases. */
export interface Cell {
  readonly flush: number
  /** phases of groups that have pieces elsewhere, relative to the block's start; -1 for others; null when there are none */
  readonly phases: PhaseSet | null
  /** without phases: by width, lengths falling */
  blocks: number[]
  /** the least waste, width and length of any of them, once the front is done */
  waste: number
  width: number
  length: number
}

/** The undominated blocks of one multiset. */
export interface Front {
  /** how many multisets were met before this one */
  readonly slot: number
  readonly multiset: number
  /** of the pieces that are not in it */
  readonly restArea: number
  readonly restWeights: readonly (readonly number[])[]
  /** once the front is done, those with little waste first */
  cells: Cell[]
  /** with ties, cells are many: by phases and flags */
  readonly cellOf: Map<number, Cell>
  /** cells whose blocks become each other's by moving them along */
  readonly families: Map<number, Cell[]>
  /** for each trial, the least waste of any block that serves it, once the front is done */
  readonly waste: number[]
}

/** How much work there may be, and who may stop it. */
export interface Effort {
  readonly effort: number
  readonly stop?: (() => boolean) | undefined
}

/** Blocks looked at between two questions whether to stop: a few milliseconds. */
const POLL_STEPS = 16_384

// without ties there is nothing to look up
const NO_CELLS: Map<number, Cell> = new Map()
const NO_FAMILIES: Map<number, Cell[]> = new Map()

// until a front is done nothing is known of its cells; never whole numbers first, or engines would see cells of two forms
const HUGE = Number.POSITIVE_INFINITY

/** Fewer multisets than this have a place each. */
const MOST_LISTED = 1 << 18

/** The fronts as they grow: keeps a block that there is room for, unless another of its multiset and flags is no larger. */
export class Kept {
  readonly blocks = new Blocks()
  readonly multisets: Multisets
  /** the area of everything */
  readonly total: number
  readonly rooms: Rooms
  /** blocks looked at */
  steps = 0
  /** effort is used up, or the caller said stop */
  halted = false
  private readonly limits: Effort
  private readonly strictness: Strictness
  private readonly phases: Phases | null
  private readonly onNew: (multiset: number) => void
  private readonly fronts = new Map<number, Front>()
  /** the same by number, where the multisets are few */
  private readonly listed: (Front | undefined)[] | null
  private readonly partners: Front[] = []
  private begun = 0
  private readonly counts: PackedCounts
  private readonly spare: Float64Array
  private nextPoll = 0
  /** what blocks are offered to at present: offers for one multiset follow each other */
  private multiset = -1
  private front: Front | undefined
  private restArea = 0

  /** `onNew` is told of each multiset when its first block is kept. */
  constructor(
    problem: Problem,
    limits: Effort,
    trials: readonly Trial[],
    phases: Phases | null,
    strictness: Strictness,
    onNew: (multiset: number) => void,
  ) {
    this.limits = limits
    this.phases = phases
    this.strictness = strictness
    this.onNew = onNew
    this.multisets = new Multisets(problem)
    this.counts = new PackedCounts(problem.kinds.map((k) => k.count))
    const { full } = this.multisets
    this.listed = full < MOST_LISTED ? new Array(full + 1).fill(undefined) : null
    this.total = this.multisets.areaOf(full)
    this.rooms = new Rooms(problem, trials, this.total, strictness)
    this.spare = this.rooms.spare()
  }

  frontOf(multiset: number): Front | undefined {
    return this.listed ? this.listed[multiset] : this.fronts.get(multiset)
  }

  /** The fronts that one may meet, itself and those done before it, which are `done`. There must be pieces enough for both. Good until the next call. */
  partnersOf(front: Front, done: readonly Front[]): readonly Front[] {
    const { multisets, partners } = this
    const rest = multisets.countsOf(multisets.full - front.multiset)
    const parts = rest.reduce((product, n) => product * (n + 1), 1)
    partners.length = 0
    // whichever are fewer: the parts of what is left, or the fronts there are
    if (parts < done.length) {
      const these = multisets.partsOf(rest, front.multiset)
      for (let i = 0; i < these.length; i++) {
        const other = this.frontOf(these[i]!)
        if (other && other.cells.length > 0 && this.mayMeet(front, other)) partners.push(other)
      }
    } else
      for (let i = 0; i < done.length; i++) {
        const other = done[i]!
        if (this.counts.fit(front.slot, other.slot) && this.mayMeet(front, other)) partners.push(other)
      }
    return partners
  }

  /** Is there room for the waste of both, and for what they hold together? */
  private mayMeet(a: Front, b: Front): boolean {
    for (let t = 0; t < this.spare.length; t++)
      if (a.waste[t]! + b.waste[t]! <= this.spare[t]!) return this.rooms.mayHoldAny(a.multiset + b.multiset)
    return false
  }

  /**
   * Keeps a block unless there is no room for it or another of its multiset and flags is no larger. `serves`: the trials that all its
   * parts serve.
   */
  offer(
    m: number,
    serves: number,
    how: number,
    width: number,
    length: number,
    flush: number,
    first: number,
    second: number,
    shift: number,
    phases: PhaseSet | null,
    slack: number,
  ): void {
    this.steps++
    if (this.steps >= this.nextPoll) this.poll()
    if (m !== this.multiset) this.turnTo(m)
    const { rooms } = this
    let served = rooms.servedBy(serves, width, length, flush, this.restArea)
    if (served !== 0) served = rooms.servedByGuide(served, m, width, length)
    if (served === 0) return
    const front = this.front ?? this.begin(m)
    served = rooms.servedByWeight(served, width, length, front.restWeights)
    if (served === 0) return
    const cell = this.cellFor(front, flush, phases)
    if (phases) this.keepTied(front, cell, served, how, width, length, flush, first, second, shift, phases, slack)
    else this.keep(cell, served, how, width, length, flush, first, second, shift)
  }

  /** Drops blocks beside or before which the remaining pieces must leave too much, and notes the least waste of the others. */
  finish(front: Front): void {
    const { width: w, length: l, serves } = this.blocks
    this.rooms.turnTo(this.multisets.countsOf(this.multisets.full - front.multiset))
    const inside = this.total - front.restArea
    for (let c = 0; c < front.cells.length; c++) {
      const cell = front.cells[c]!
      const { blocks } = cell
      let kept = 0
      for (let i = 0; i < blocks.length; i++) {
        const b = blocks[i]!
        const served = this.rooms.servedDespiteGaps(serves[b]!, w[b]!, l[b]!, front.restArea)
        serves[b] = served
        if (served === 0) continue
        blocks[kept++] = b
        for (let t = 0; t < front.waste.length; t++)
          if (served & (1 << t)) front.waste[t] = Math.min(front.waste[t]!, w[b]! * l[b]! - inside)
      }
      blocks.length = kept
    }
    for (const family of front.families.values())
      dropCovered(family, this.blocks, this.phases!.repeat, this.strictness.covers)
    let filled = 0
    for (let c = 0; c < front.cells.length; c++) {
      const cell = front.cells[c]!
      if (cell.blocks.length === 0) continue
      this.measure(cell, inside)
      front.cells[filled++] = cell
    }
    front.cells.length = filled
    if (filled > 1) front.cells.sort((a, b) => a.waste - b.waste)
  }

  /** Notes the least waste, width and length of a cell's blocks, whose pieces cover `inside`. */
  private measure(cell: Cell, inside: number): void {
    const { width: w, length: l } = this.blocks
    const { blocks } = cell
    cell.waste = Number.POSITIVE_INFINITY
    cell.width = Number.POSITIVE_INFINITY
    cell.length = Number.POSITIVE_INFINITY
    for (let i = 0; i < blocks.length; i++) {
      const b = blocks[i]!
      cell.waste = Math.min(cell.waste, w[b]! * l[b]! - inside)
      cell.width = Math.min(cell.width, w[b]!)
      cell.length = Math.min(cell.length, l[b]!)
    }
  }

  private turnTo(multiset: number): void {
    this.multiset = multiset
    this.front = this.frontOf(multiset)
    this.restArea = this.front?.restArea ?? this.total - this.multisets.areaOf(multiset)
  }

  private poll(): void {
    const { effort, stop } = this.limits
    this.nextPoll = Math.max(this.steps + 1, Math.min(this.steps + POLL_STEPS, effort + 1))
    if (this.steps > effort || stop?.()) this.halted = true
  }

  private begin(multiset: number): Front {
    const front: Front = {
      slot: this.begun++,
      multiset,
      restArea: this.restArea,
      restWeights: this.rooms.weightsOf(this.multisets.countsOf(this.multisets.full - multiset)),
      cells: [],
      cellOf: this.phases ? new Map() : NO_CELLS,
      families: this.phases ? new Map() : NO_FAMILIES,
      waste: new Array<number>(this.spare.length).fill(Number.POSITIVE_INFINITY),
    }
    if (this.listed) this.listed[multiset] = front
    else this.fronts.set(multiset, front)
    this.front = front
    this.counts.push(multiset)
    this.onNew(multiset)
    return front
  }

  private cellFor(front: Front, flush: number, phases: PhaseSet | null): Cell {
    const key = phases ? phases.id * 16 + flush : flush
    let cell: Cell | undefined
    if (this.phases) cell = front.cellOf.get(key)
    else for (const c of front.cells) if (c.flush === flush) cell = c
    if (!cell) {
      cell = { flush, phases, blocks: [], waste: HUGE, width: HUGE, length: HUGE }
      front.cells.push(cell)
      if (this.phases) front.cellOf.set(key, cell)
      if (phases) familyOf(front, phases, flush).push(cell)
    }
    return cell
  }

  private keep(
    { blocks }: Cell,
    serves: number,
    how: number,
    width: number,
    length: number,
    flush: number,
    first: number,
    second: number,
    shift: number,
  ): void {
    const { width: w, length: l } = this.blocks
    // first block that is wider
    let low = 0
    let high = blocks.length
    while (low < high) {
      const middle = (low + high) >> 1
      if (w[blocks[middle]!]! <= width) low = middle + 1
      else high = middle
    }
    if (low > 0 && l[blocks[low - 1]!]! - this.strictness.dominance <= length) return
    let from = low
    while (from > 0 && w[blocks[from - 1]!]! === width) from--
    let to = low
    while (to < blocks.length && l[blocks[to]!]! >= length) to++
    blocks.splice(from, to - from, this.blocks.add(serves, how, width, length, flush, first, second, shift, UNTIED))
  }

  private keepTied(
    front: Front,
    cell: Cell,
    serves: number,
    how: number,
    width: number,
    length: number,
    flush: number,
    first: number,
    second: number,
    shift: number,
    phases: PhaseSet,
    slack: number,
  ): void {
    const family = familyOf(front, phases, flush)
    if (this.outdone(family, phases.base, width, length, slack)) return
    const block = this.blocks.add(serves, how, width, length, flush, first, second, shift, slack)
    this.dropOutdone(family, phases.base, block)
    cell.blocks.push(block)
  }

  /** Is a block at hand that is no larger wherever this one's tied pieces lie? */
  private outdone(family: readonly Cell[], base: number, width: number, length: number, slack: number): boolean {
    const { width: w, length: l, slack: s } = this.blocks
    const { repeat } = this.phases!
    for (const { phases, blocks } of family) {
      const ahead = (base - phases!.base + repeat) % repeat
      const reach = Math.min(ahead + slack, repeat - 1)
      for (const b of blocks)
        if (w[b]! <= width && l[b]! + Math.max(0, reach - s[b]!) - this.strictness.movedDominance <= length) return true
    }
    return false
  }

  private dropOutdone(family: readonly Cell[], base: number, block: number): void {
    const { width: w, length: l, slack: s } = this.blocks
    const { repeat } = this.phases!
    const width = w[block]!
    const length = l[block]!
    const slack = s[block]!
    for (const cell of family) {
      const ahead = (cell.phases!.base - base + repeat) % repeat
      const { blocks } = cell
      let kept = 0
      for (const b of blocks) {
        const reach = Math.min(ahead + s[b]!, repeat - 1)
        if (!(width <= w[b]! && length + Math.max(0, reach - slack) <= l[b]!)) blocks[kept++] = b
      }
      blocks.length = kept
    }
  }
}

function familyOf({ families }: Front, phases: PhaseSet, flush: number): Cell[] {
  const key = phases.shape * 16 + flush
  let family = families.get(key)
  if (!family) {
    family = []
    families.set(key, family)
  }
  return family
}
