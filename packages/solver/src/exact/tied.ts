import { LEFT, RIGHT } from '../model.ts'
import { AFTER, BESIDE } from './blocks.ts'
import type { JoinRules } from './joins.ts'
import { joined } from './joins.ts'
import type { Cell, Kept } from './kept.ts'
import type { Pair, Phases } from './phases.ts'
import type { Strictness } from './strictness.ts'

/** A multiset being put together: its number, the area of the pieces that are not in it, the groups that are whole in it. */
interface Sum {
  readonly multiset: number
  readonly restArea: number
  readonly closed: number
}

/** One of the two blocks of a join, its tied pieces `moved` beyond where they would lie. */
interface Part {
  readonly cell: Cell
  readonly block: number
  readonly moved: number
}

/** Joins of blocks of which one at least keeps a phase: pair by pair, since each pair lies in its own way. */
export class TiedJoins {
  private readonly kept: Kept
  private readonly rules: JoinRules
  private readonly phases: Phases
  private readonly strictness: Strictness
  private lastSum: Sum | null = null

  constructor(kept: Kept, rules: JoinRules, phases: Phases, strictness: Strictness) {
    this.kept = kept
    this.rules = rules
    this.phases = phases
    this.strictness = strictness
  }

  /** All joins of the blocks of two cells, which are of the multiset `multiset` together. */
  join(multiset: number, a: Cell, b: Cell): void {
    const sum = this.sumOf(multiset)
    if ((a.flush & b.flush & (LEFT | RIGHT)) === 0) {
      const swap = (a.flush & RIGHT) !== 0 || (b.flush & LEFT) !== 0
      const [c, d] = swap ? [b, a] : [a, b]
      if (!(c.flush & RIGHT) && !(d.flush & LEFT)) this.beside(sum, c, d)
    }
    this.after(sum, a, b)
    this.after(sum, b, a)
  }

  private beside(sum: Sum, a: Cell, b: Cell): void {
    const { rules, phases } = this
    const { zones } = rules
    const { serves, width } = this.kept.blocks
    const left = (a.flush & LEFT) !== 0
    const right = (b.flush & RIGHT) !== 0
    const pair = phases.pair(a.phases, b.phases)
    const shifts = phases.shifts(pair, 0)
    for (const p of a.blocks)
      for (const q of b.blocks) {
        const both = serves[p]! & serves[q]!
        if (!both || !rules.mayJoin(BESIDE, p, q)) continue
        const w = joined(width[p]!, width[q]!, left, right, zones.left, zones.right)
        // the tied pieces of either one lie farther on
        for (const shift of shifts) {
          this.putBeside(sum, both, pair, w, part(a, p, 0), part(b, q, shift))
          if (shift) this.putBeside(sum, both, pair, w, part(a, p, phases.repeat - shift), part(b, q, 0))
        }
      }
  }

  private putBeside(sum: Sum, serves: number, pair: Pair, width: number, a: Part, b: Part): void {
    const { length } = this.kept.blocks
    const la = length[a.block]!
    const lb = length[b.block]!
    const freeA = this.freeOf(a)
    const freeB = this.freeOf(b)
    const l = Math.max(la - Math.min(0, freeA), lb - Math.min(0, freeB))
    const free = Math.min(l - la + freeA, l - lb + freeB)
    this.offer(sum, serves, BESIDE, width, l, a, b, b.moved, pair, free)
  }

  private after(sum: Sum, a: Cell, b: Cell): void {
    const { kept, rules, phases } = this
    const { serves, how, width, length, slack } = kept.blocks
    const flush = a.flush | b.flush
    const pair = phases.pair(a.phases, b.phases)
    const liftA = rules.lift(a.flush, flush, LEFT, RIGHT)
    const liftB = rules.lift(b.flush, flush, LEFT, RIGHT)
    for (const p of a.blocks)
      for (const q of b.blocks) {
        // both orders are tried here, so the later one is always a single element
        const both = serves[p]! & serves[q]!
        if (!both || how[q] === AFTER || !rules.mayJoin(AFTER, p, q)) continue
        const w = Math.max(width[p]! + liftA, width[q]! + liftB)
        const at = length[p]!
        if (!kept.rooms.mayHold(both, w, at + length[q]!, sum.restArea)) {
          kept.steps++
          continue
        }
        for (const shift of phases.shifts(pair, at)) {
          this.putAfter(sum, both, pair, w, part(a, p, 0), part(b, q, shift))
          // the earlier may lie farther on only where it does not push the later one
          if (shift && a.phases && phases.repeat - shift <= slack[p]!)
            this.putAfter(sum, both, pair, w, part(a, p, phases.repeat - shift), part(b, q, 0))
        }
      }
  }

  private putAfter(sum: Sum, serves: number, pair: Pair, width: number, a: Part, b: Part): void {
    const { length } = this.kept.blocks
    const at = length[a.block]!
    const freeB = this.freeOf(b)
    const grown = Math.max(0, -freeB)
    const l = at + length[b.block]! + grown
    this.offer(sum, serves, AFTER, width, l, a, b, at + b.moved, pair, Math.min(this.freeOf(a), freeB) + grown)
  }

  /** How much farther on the tied pieces of a part may lie before it grows; below 0: by so much it has grown. */
  private freeOf({ cell, block, moved }: Part): number {
    return cell.phases ? this.kept.blocks.slack[block]! - moved : Number.POSITIVE_INFINITY
  }

  /** A join whose second part's phases count from `at` after its start; its tied pieces may move on by `free` before it grows. */
  private offer(
    { multiset, restArea, closed }: Sum,
    serves: number,
    how: number,
    width: number,
    length: number,
    a: Part,
    b: Part,
    at: number,
    pair: Pair,
    free: number,
  ): void {
    const { kept, phases } = this
    kept.steps++
    if (!kept.rooms.mayHold(serves, width, length, restArea)) return
    const merged = phases.merge(pair, a.cell.phases, a.moved, b.cell.phases, at, closed)
    const slack = merged ? Math.min(phases.repeat - 1, free - Math.min(free, this.strictness.slack)) : 0
    const flush = a.cell.flush | b.cell.flush
    kept.offer(multiset, serves, how, width, length, flush, a.block, b.block, b.moved - a.moved, merged, slack)
  }

  private sumOf(multiset: number): Sum {
    if (this.lastSum?.multiset !== multiset) {
      const { multisets, total } = this.kept
      this.lastSum = {
        multiset,
        restArea: total - multisets.areaOf(multiset),
        closed: this.phases.closed(multisets.countsOf(multiset)),
      }
    }
    return this.lastSum
  }
}

const part = (cell: Cell, block: number, moved: number): Part => ({ cell, block, moved })
