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
    const most = this.kept.rooms.most - sum.restArea
    if ((a.flush & b.flush & (LEFT | RIGHT)) === 0 && (a.width + b.width) * Math.max(a.length, b.length) <= most) {
      const swap = (a.flush & RIGHT) !== 0 || (b.flush & LEFT) !== 0
      const [c, d] = swap ? [b, a] : [a, b]
      if (!(c.flush & RIGHT) && !(d.flush & LEFT)) this.beside(sum, c, d)
    }
    if (Math.max(a.width, b.width) * (a.length + b.length) > most) return
    this.after(sum, a, b)
    this.after(sum, b, a)
  }

  private beside(sum: Sum, a: Cell, b: Cell): void {
    const { rules, phases, kept } = this
    const { zones } = rules
    const { serves, width, length } = kept.blocks
    const most = kept.rooms.most - sum.restArea
    const left = (a.flush & LEFT) !== 0
    const right = (b.flush & RIGHT) !== 0
    const pair = phases.pair(a.phases, b.phases)
    const { places, shared } = pair
    for (const p of a.blocks)
      for (const q of b.blocks) {
        const both = serves[p]! & serves[q]!
        if (!both || !rules.mayJoin(BESIDE, p, q)) continue
        const w = joined(width[p]!, width[q]!, left, right, zones.left, zones.right)
        if (w * Math.max(length[p]!, length[q]!) > most) {
          kept.steps++
          continue
        }
        if (!shared) this.putBeside(sum, both, pair, w, a, p, 0, b, q, 0)
        // the tied pieces of either one lie farther on
        for (let i = 0; i < places.length; i++) {
          const shift = places[i]!
          if (shift || shared) this.putBeside(sum, both, pair, w, a, p, 0, b, q, shift)
          if (shift) this.putBeside(sum, both, pair, w, a, p, phases.repeat - shift, b, q, 0)
        }
      }
  }

  /** The tied pieces of a lie `movedA` beyond where they would, or those of b `movedB`. */
  private putBeside(
    sum: Sum,
    serves: number,
    pair: Pair,
    width: number,
    a: Cell,
    p: number,
    movedA: number,
    b: Cell,
    q: number,
    movedB: number,
  ): void {
    const { length } = this.kept.blocks
    const la = length[p]!
    const lb = length[q]!
    const freeA = this.freeOf(a, p, movedA)
    const freeB = this.freeOf(b, q, movedB)
    const l = Math.max(la - Math.min(0, freeA), lb - Math.min(0, freeB))
    const free = Math.min(l - la + freeA, l - lb + freeB)
    this.offer(sum, serves, BESIDE, width, l, a, p, movedA, b, q, movedB, movedB, pair, free)
  }

  private after(sum: Sum, a: Cell, b: Cell): void {
    const { kept, rules, phases } = this
    const { serves, how, width, length, slack } = kept.blocks
    const flush = a.flush | b.flush
    const most = kept.rooms.most - sum.restArea
    const pair = phases.pair(a.phases, b.phases)
    const { places, shared } = pair
    const liftA = rules.lift(a.flush, flush, LEFT, RIGHT)
    const liftB = rules.lift(b.flush, flush, LEFT, RIGHT)
    for (const p of a.blocks)
      for (const q of b.blocks) {
        // both orders are tried here, so the later one is always a single element
        const both = serves[p]! & serves[q]!
        if (!both || how[q] === AFTER || !rules.mayJoin(AFTER, p, q)) continue
        const w = Math.max(width[p]! + liftA, width[q]! + liftB)
        const at = length[p]!
        if (w * (at + length[q]!) > most) {
          kept.steps++
          continue
        }
        if (!shared) this.putAfter(sum, both, pair, w, a, p, 0, b, q, 0)
        for (let i = 0; i < places.length; i++) {
          const shift = phases.fromPlace(places[i]!, at)
          if (shift || shared) this.putAfter(sum, both, pair, w, a, p, 0, b, q, shift)
          // the earlier may lie farther on only where it does not push the later one
          if (shift && a.phases && phases.repeat - shift <= slack[p]!)
            this.putAfter(sum, both, pair, w, a, p, phases.repeat - shift, b, q, 0)
        }
      }
  }

  private putAfter(
    sum: Sum,
    serves: number,
    pair: Pair,
    width: number,
    a: Cell,
    p: number,
    movedA: number,
    b: Cell,
    q: number,
    movedB: number,
  ): void {
    const { length } = this.kept.blocks
    const at = length[p]!
    const freeB = this.freeOf(b, q, movedB)
    const grown = Math.max(0, -freeB)
    const l = at + length[q]! + grown
    const free = Math.min(this.freeOf(a, p, movedA), freeB) + grown
    this.offer(sum, serves, AFTER, width, l, a, p, movedA, b, q, movedB, at + movedB, pair, free)
  }

  /** How much farther on the tied pieces of a block may lie, `moved` already, before it grows; below 0: by so much it has grown. */
  private freeOf({ phases }: Cell, block: number, moved: number): number {
    return phases ? this.kept.blocks.slack[block]! - moved : Number.POSITIVE_INFINITY
  }

  /** A join whose second part's phases count from `at` after its start; its tied pieces may move on by `free` before it grows. */
  private offer(
    { multiset, restArea, closed }: Sum,
    serves: number,
    how: number,
    width: number,
    length: number,
    a: Cell,
    p: number,
    movedA: number,
    b: Cell,
    q: number,
    movedB: number,
    at: number,
    pair: Pair,
    free: number,
  ): void {
    const { kept, phases } = this
    kept.steps++
    if (!kept.rooms.mayHold(serves, width, length, restArea)) return
    const merged = phases.merge(pair, a.phases, movedA, b.phases, at, closed)
    const slack = merged ? Math.min(phases.repeat - 1, free - Math.min(free, this.strictness.slack)) : 0
    kept.offer(multiset, serves, how, width, length, a.flush | b.flush, p, q, movedB - movedA, merged, slack)
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
