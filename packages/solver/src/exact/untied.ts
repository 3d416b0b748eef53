import { END, LEFT, RIGHT, START } from '../model.ts'
import { AFTER, BESIDE } from './blocks.ts'
import type { JoinRules } from './joins.ts'
import { joined } from './joins.ts'
import type { Cell, Kept } from './kept.ts'
import type { Strictness } from './strictness.ts'

/**
 * Joins of blocks that keep no phase. Their cells are staircases, walked once: of all pairs only those matter in which neither block could
 * give way to a narrower or shorter one without changing the size of the join.
 */
export class UntiedJoins {
  private readonly kept: Kept
  private readonly rules: JoinRules
  private readonly walk: number
  /** the largest area that a join may take up */
  private most = 0

  constructor(kept: Kept, rules: JoinRules, strictness: Strictness) {
    this.kept = kept
    this.rules = rules
    this.walk = strictness.walk
  }

  /** All joins of the blocks of two cells, which are of the multiset `sum` together and leave pieces of area `rest`. */
  join(sum: number, rest: number, a: Cell, b: Cell): void {
    this.most = this.kept.rooms.most - rest
    if ((a.flush & b.flush & (LEFT | RIGHT)) === 0) {
      if (a.flush & RIGHT || b.flush & LEFT) {
        if (!(b.flush & RIGHT || a.flush & LEFT)) this.beside(sum, b, a)
      } else this.beside(sum, a, b)
    }
    if ((a.flush & b.flush & (START | END)) === 0) {
      if (a.flush & END || b.flush & START) {
        if (!(b.flush & END || a.flush & START)) this.after(sum, b, a)
      } else this.after(sum, a, b)
    }
  }

  // the two staircases are walked from their longest blocks on: to shorten the join, the longer of the two must give way
  private beside(sum: number, a: Cell, b: Cell): void {
    const { kept, rules, walk, most } = this
    const { zones } = rules
    const { serves, width, length } = kept.blocks
    const flush = a.flush | b.flush
    const left = (a.flush & LEFT) !== 0
    const right = (b.flush & RIGHT) !== 0
    const liftA = rules.lift(a.flush, flush, START, END)
    const liftB = rules.lift(b.flush, flush, START, END)
    for (let i = 0, j = 0; i < a.blocks.length && j < b.blocks.length; ) {
      const p = a.blocks[i]!
      const q = b.blocks[j]!
      const la = length[p]! + liftA
      const lb = length[q]! + liftB
      const w = joined(width[p]!, width[q]!, left, right, zones.left, zones.right)
      const l = Math.max(la, lb)
      const both = serves[p]! & serves[q]!
      if (w * l > most) kept.steps++
      else if (both && rules.mayJoin(BESIDE, p, q)) kept.offer(sum, both, BESIDE, w, l, flush, p, q, 0, null, 0)
      if (la >= lb - walk) i++
      if (lb >= la - walk) j++
    }
  }

  private after(sum: number, a: Cell, b: Cell): void {
    const { kept, rules, walk, most } = this
    const { zones } = rules
    const { serves, width, length } = kept.blocks
    const flush = a.flush | b.flush
    const start = (a.flush & START) !== 0
    const end = (b.flush & END) !== 0
    const liftA = rules.lift(a.flush, flush, LEFT, RIGHT)
    const liftB = rules.lift(b.flush, flush, LEFT, RIGHT)
    for (let i = a.blocks.length - 1, j = b.blocks.length - 1; i >= 0 && j >= 0; ) {
      const p = a.blocks[i]!
      const q = b.blocks[j]!
      const wa = width[p]! + liftA
      const wb = width[q]! + liftB
      const w = Math.max(wa, wb)
      const l = joined(length[p]!, length[q]!, start, end, zones.start, zones.end)
      const both = serves[p]! & serves[q]!
      if (w * l > most) kept.steps++
      else if (both && rules.mayJoin(AFTER, p, q)) kept.offer(sum, both, AFTER, w, l, flush, p, q, 0, null, 0)
      if (wa >= wb - walk) i--
      if (wb >= wa - walk) j--
    }
  }
}
