import type { Weights } from '../bounds/weights.ts'
import { END, LEFT, RIGHT, START } from '../model.ts'
import type { Problem } from '../problem.ts'
import type { Tree } from './blocks.ts'
import { AFTER, BESIDE, Blocks, PIECE, treeOf, UNTIED } from './blocks.ts'
import { Heap } from './heap.ts'
import { PackedCounts } from './packed.ts'
import type { Pair, PhaseSet } from './phases.ts'
import { Phases } from './phases.ts'
import { Reach } from './reach.ts'
import type { Strictness } from './strictness.ts'
import { SOUND } from './strictness.ts'

/**
 * The shortest block that holds every piece, by dynamic programming over multisets of pieces.
 *
 * For every multiset S of pieces, F(S) is the set of undominated sizes (width, length) of all guillotine layouts of S:
 * F(S) is the minimum over S = A + B of A beside B (widths add, lengths: the larger) and A after B (the other way round).
 * The recursion is that of Wang (1983) and Viswanathan & Bagchi (1993), kept per multiset as in exact methods for the
 * guillotine knapsack (Dolatabadi, Lodi & Monaci 2012). Ours differs in that the fronts are staircases that are joined by
 * one merge, in the flags below, and in the waste budget that thins them out.
 *
 * Flags. A block knows which sides of the field it must touch. Beside: only the left one may hold what must touch the left side,
 * only the right one what must touch the right. After: likewise for start and end. A block without a flag that shares a
 * join with one that has it stays out of that side's zone: it is lifted by the zone's depth.
 *
 *     +--+------+      the block as a whole touches the left side,
 *     |L |  B   |      so B, stacked on it, starts right of the zone
 *     +--+------+
 *
 * Rows and columns grow by one element at a time. A row joined to a row is the same as the first joined to all but the last
 * element of the second, and that to the last; where a smaller block outdoes one of these, it is split again, and its last element
 * is of fewer pieces, so this ends.
 *
 * Thinning (never loses a layout within the limits): a block with waste so large that field width × limit cannot hold the rest;
 * to its waste is added the waste nobody can avoid beside and before it, because no sum of widths (lengths) of the
 * remaining pieces fills those rows (columns).
 *
 * Cost: the number of pairs of multisets that fit together times the steps of their staircases. Does not depend on the unit.
 */
export interface Fronts {
  /** undominated blocks of everything, as they fit the field; shortest first */
  readonly best: readonly Finished[]
  /** candidate blocks looked at */
  readonly steps: number
  /** false when effort or a stop ended it: then `best` proves nothing */
  readonly finished: boolean
}

export interface Finished {
  /** width taken, zones included */
  readonly width: number
  /** farthest end of any piece */
  readonly length: number
  /** where the block starts */
  readonly start: number
  /** how far its tied pieces lie beyond where they would */
  readonly moved: number
  readonly tree: Tree
}

export interface Limits {
  readonly width: number
  /** blocks that would end farther than this are left out */
  readonly length: number
  readonly effort: number
  readonly stop?: (() => boolean) | undefined
  /** duals of the bar relaxation: blocks beside and beyond which the rest cannot weigh enough are left out */
  readonly weights?: readonly Weights[]
  /** blocks whose groups are not yet tied to each other are not shifted: quick, but not every layout */
  readonly tight?: boolean
  /** for tests of soundness */
  readonly strictness?: Strictness
}

/** Blocks looked at between two questions whether to stop: a few milliseconds. */
const POLL_STEPS = 16_384

export function fronts(problem: Problem, limits: Limits): Fronts {
  return new Search(problem, limits).run()
}

/** How many multisets there are; the cost of a complete search grows with its square. */
export function multisets(problem: Problem): number {
  return problem.kinds.reduce((m, k) => m * (k.count + 1), 1)
}

class Search {
  private readonly problem: Problem
  private readonly limits: Limits
  private readonly blocks = new Blocks()
  private readonly radix: number[] = []
  private readonly full: number
  private readonly counts: PackedCounts
  /** multiset number -> slot */
  private readonly slots = new Map<number, number>()
  private readonly multiset: number[] = []
  private readonly restArea: number[] = []
  private readonly restWeight: number[][] = []
  /** per slot: the least waste of any block, once it is done */
  private readonly waste: number[] = []
  /** per slot: cells of one flag set each, whose blocks are sorted by width, lengths falling */
  private readonly cells: Cell[][] = []
  /** with ties, cells are many: per slot, by phases and flags */
  private readonly cellOf: Map<number, Cell>[] = []
  /** cells whose blocks become each other's by moving them along */
  private readonly families: Map<number, Cell[]>[] = []
  private readonly pending = new Heap()
  private readonly total: number
  /** blocks that touch the field's end are of use only when the limit lets pieces go that far */
  private readonly mayEnd: boolean
  /** nothing lies beyond this */
  private readonly reach: number
  /** the area that is left to lie on */
  private readonly capacity: number
  private readonly widthSums: Reach
  private readonly lengthSums: Reach
  /** for ties along the strip */
  private readonly phases: Phases | null
  private readonly weights: readonly Weights[]
  private readonly strictness: Strictness
  private lastSum: Sum | null = null
  private steps = 0
  /** effort is used up, or the caller said stop */
  private halted = false
  private nextPoll = 0

  constructor(problem: Problem, limits: Limits) {
    this.problem = problem
    this.limits = limits
    this.weights = limits.weights ?? []
    this.strictness = limits.strictness ?? SOUND
    let m = 1
    for (const k of problem.kinds) {
      this.radix.push(m)
      m *= k.count + 1
    }
    this.full = m - 1
    this.phases = problem.tied ? Phases.of(problem, limits.tight ?? false, this.strictness.places) : null
    this.counts = new PackedCounts(problem.kinds.map((k) => k.count))
    this.total = problem.kinds.reduce((sum, k) => sum + k.count * k.area, 0)
    const { length, zones } = problem
    this.mayEnd = length !== null && limits.length >= length - zones.end
    const ending = this.mayEnd && problem.kinds.some((k) => k.postures.some((p) => p.flush & END))
    this.reach = ending ? length! : limits.length
    this.capacity = limits.width * this.reach
    const sizes = (of: 'width' | 'length') =>
      problem.kinds.map((k) => ({ count: k.count, sizes: [...new Set(k.postures.map((p) => p[of]))] }))
    this.widthSums = new Reach(sizes('width'), limits.width)
    this.lengthSums = new Reach(sizes('length'), this.reach)
  }

  run(): Fronts {
    const { kinds } = this.problem
    for (const [kind, k] of kinds.entries())
      for (const [posture, p] of k.postures.entries())
        this.offer(
          this.radix[kind]!,
          PIECE,
          p.width,
          p.length,
          p.flush,
          kind,
          posture,
          0,
          this.phases?.ofPiece(kind) ?? null,
          0,
        )
    const done: number[] = []
    for (let m = this.pending.pop(); m !== undefined; m = this.pending.pop()) {
      const slot = this.slots.get(m)!
      if (m === this.full) break
      this.thin(slot)
      if (this.cells[slot]!.length === 0) continue
      done.push(slot)
      this.waste[slot] = this.leastWaste(slot)
      const spare = this.capacity - this.total - this.waste[slot]!
      for (const other of done) {
        // a join holds the waste of both
        if (this.waste[other]! > spare || !this.counts.fit(slot, other)) continue
        this.join(slot, other)
        if (this.halted) return { best: [], steps: this.steps, finished: false }
      }
    }
    return { best: this.results(), steps: this.steps, finished: true }
  }

  private leastWaste(slot: number): number {
    let least = Number.POSITIVE_INFINITY
    const inside = this.total - this.restArea[slot]!
    for (const { blocks } of this.cells[slot]!)
      for (const b of blocks) least = Math.min(least, this.blocks.width[b]! * this.blocks.length[b]! - inside)
    return least
  }

  private results(): Finished[] {
    const slot = this.slots.get(this.full)
    const out: Finished[] = []
    if (slot === undefined) return out
    for (const { flush, phases, blocks } of this.cells[slot]!)
      for (const b of blocks) {
        const { zones } = this.problem
        const width = this.blocks.width[b]! + (flush & LEFT ? 0 : zones.left) + (flush & RIGHT ? 0 : zones.right)
        const tied = this.phases !== null
        const start = tied ? zones.start : 0
        // what keeps the field's own phase moves along until the field's repeat meets it
        const moved = phases ? this.phases!.fromField(phases, start) : 0
        const grown = phases ? Math.max(0, moved - this.blocks.slack[b]!) : 0
        const end = start + this.blocks.length[b]! + grown + (flush & START || tied ? 0 : zones.start)
        const length = flush & END ? this.problem.length! : end
        if (flush & END || length <= this.limits.length)
          out.push({ width, length, start, moved, tree: treeOf(this.blocks, b) })
      }
    return out.sort((a, b) => a.length - b.length || a.width - b.width)
  }

  /** All joins of the blocks of two multisets. */
  private join(s: number, t: number): void {
    const sum = this.multiset[s]! + this.multiset[t]!
    for (const a of this.cells[s]!)
      for (const b of this.cells[t]!) {
        if (this.halted) return
        if (a.phases || b.phases) {
          this.tied(this.sumOf(sum), a, b)
          continue
        }
        const across = LEFT | RIGHT
        const along = START | END
        if ((a.flush & b.flush & across) === 0) {
          if (a.flush & RIGHT || b.flush & LEFT) {
            if (!(b.flush & RIGHT || a.flush & LEFT)) this.beside(sum, b, a)
          } else this.beside(sum, a, b)
        }
        if ((a.flush & b.flush & along) === 0) {
          if (a.flush & END || b.flush & START) {
            if (!(b.flush & END || a.flush & START)) this.after(sum, b, a)
          } else this.after(sum, a, b)
        }
      }
  }

  /** Of all ways to put a row or a column together, one element at a time is enough: two rows are not put beside each other. */
  private mayJoin(how: number, a: number, b: number): boolean {
    const { how: of } = this.blocks
    return (of[a] === how ? 1 : 0) + (of[b] === how ? 1 : 0) + this.strictness.chains < 2
  }

  // the two staircases are walked from their longest blocks on: to shorten the join, the longer of the two must give way
  private beside(sum: number, a: Cell, b: Cell): void {
    const { zones } = this.problem
    const { width, length } = this.blocks
    const flush = a.flush | b.flush
    const { walk } = this.strictness
    const liftA = this.lift(a.flush, flush, START, END)
    const liftB = this.lift(b.flush, flush, START, END)
    for (let i = 0, j = 0; i < a.blocks.length && j < b.blocks.length; ) {
      const p = a.blocks[i]!
      const q = b.blocks[j]!
      const la = length[p]! + liftA
      const lb = length[q]! + liftB
      const w = joined(width[p]!, width[q]!, (a.flush & LEFT) !== 0, (b.flush & RIGHT) !== 0, zones.left, zones.right)
      if (this.mayJoin(BESIDE, p, q)) this.offer(sum, BESIDE, w, Math.max(la, lb), flush, p, q, 0, null, 0)
      if (la >= lb - walk) i++
      if (lb >= la - walk) j++
    }
  }

  private after(sum: number, a: Cell, b: Cell): void {
    const { zones } = this.problem
    const { width, length } = this.blocks
    const flush = a.flush | b.flush
    const { walk } = this.strictness
    const liftA = this.lift(a.flush, flush, LEFT, RIGHT)
    const liftB = this.lift(b.flush, flush, LEFT, RIGHT)
    for (let i = a.blocks.length - 1, j = b.blocks.length - 1; i >= 0 && j >= 0; ) {
      const p = a.blocks[i]!
      const q = b.blocks[j]!
      const wa = width[p]! + liftA
      const wb = width[q]! + liftB
      const l = joined(length[p]!, length[q]!, (a.flush & START) !== 0, (b.flush & END) !== 0, zones.start, zones.end)
      if (this.mayJoin(AFTER, p, q)) this.offer(sum, AFTER, Math.max(wa, wb), l, flush, p, q, 0, null, 0)
      if (wa >= wb - walk) i--
      if (wb >= wa - walk) j--
    }
  }

  /** Joins of blocks of which one at least keeps a phase: pair by pair, since each pair lies in its own way. */
  private tied(sum: Sum, a: Cell, b: Cell): void {
    if ((a.flush & b.flush & (LEFT | RIGHT)) === 0) {
      const swap = (a.flush & RIGHT) !== 0 || (b.flush & LEFT) !== 0
      const [c, d] = swap ? [b, a] : [a, b]
      if (!(c.flush & RIGHT) && !(d.flush & LEFT)) this.besideTied(sum, c, d)
    }
    this.afterTied(sum, a, b)
    this.afterTied(sum, b, a)
  }

  private besideTied(sum: Sum, a: Cell, b: Cell): void {
    const { zones } = this.problem
    const { repeat } = this.phases!
    const { width } = this.blocks
    const pair = this.phases!.pair(a.phases, b.phases)
    const shifts = this.phases!.shifts(pair, 0)
    for (const p of a.blocks)
      for (const q of b.blocks) {
        if (!this.mayJoin(BESIDE, p, q)) continue
        const w = joined(width[p]!, width[q]!, (a.flush & LEFT) !== 0, (b.flush & RIGHT) !== 0, zones.left, zones.right)
        // the tied pieces of either one lie farther on
        for (const shift of shifts) {
          this.putBeside(sum, pair, w, a, p, 0, b, q, shift)
          if (shift) this.putBeside(sum, pair, w, a, p, repeat - shift, b, q, 0)
        }
      }
  }

  private putBeside(
    sum: Sum,
    pair: Pair,
    w: number,
    a: Cell,
    p: number,
    movedA: number,
    b: Cell,
    q: number,
    movedB: number,
  ): void {
    const { length, slack } = this.blocks
    const freeA = a.phases ? slack[p]! - movedA : Number.POSITIVE_INFINITY
    const freeB = b.phases ? slack[q]! - movedB : Number.POSITIVE_INFINITY
    const l = Math.max(length[p]! - Math.min(0, freeA), length[q]! - Math.min(0, freeB))
    const free = Math.min(l - length[p]! + freeA, l - length[q]! + freeB)
    this.offerTied(sum, BESIDE, w, l, a, p, movedA, b, q, movedB, movedB, pair, free)
  }

  private afterTied(sum: Sum, a: Cell, b: Cell): void {
    const phases = this.phases!
    const { how, width, length, slack } = this.blocks
    const flush = a.flush | b.flush
    const pair = phases.pair(a.phases, b.phases)
    const liftA = this.lift(a.flush, flush, LEFT, RIGHT)
    const liftB = this.lift(b.flush, flush, LEFT, RIGHT)
    for (const p of a.blocks)
      for (const q of b.blocks) {
        // both orders are tried here, so the later one is always a single element
        if (how[q] === AFTER || !this.mayJoin(AFTER, p, q)) continue
        const w = Math.max(width[p]! + liftA, width[q]! + liftB)
        const at = length[p]!
        if (w * (at + length[q]!) > sum.room || at + length[q]! > this.limits.length) {
          this.steps++
          continue
        }
        for (const shift of phases.shifts(pair, at)) {
          this.putAfter(sum, pair, w, a, p, 0, b, q, shift)
          // the earlier may lie farther on only where it does not push the later one
          if (shift && a.phases && phases.repeat - shift <= slack[p]!)
            this.putAfter(sum, pair, w, a, p, phases.repeat - shift, b, q, 0)
        }
      }
  }

  private putAfter(
    sum: Sum,
    pair: Pair,
    w: number,
    a: Cell,
    p: number,
    movedA: number,
    b: Cell,
    q: number,
    movedB: number,
  ): void {
    const { length, slack } = this.blocks
    const at = length[p]!
    const freeA = a.phases ? slack[p]! - movedA : Number.POSITIVE_INFINITY
    const freeB = b.phases ? slack[q]! - movedB : Number.POSITIVE_INFINITY
    const grown = Math.max(0, -freeB)
    this.offerTied(
      sum,
      AFTER,
      w,
      at + length[q]! + grown,
      a,
      p,
      movedA,
      b,
      q,
      movedB,
      at + movedB,
      pair,
      Math.min(freeA, freeB) + grown,
    )
  }

  private offerTied(
    { number, room, closed }: Sum,
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
    this.steps++
    if (width * length > room || length > this.limits.length) return
    const phases = this.phases!
    const merged = phases.merge(pair, a.phases, movedA, b.phases, at, closed)
    const slack = merged ? Math.min(phases.repeat - 1, free - Math.min(free, this.strictness.slack)) : 0
    this.offer(number, how, width, length, a.flush | b.flush, p, q, movedB - movedA, merged, slack)
  }

  /** How far a block with `own` flags moves or grows inside one with `all` flags: by the zones it must stay out of. */
  private lift(own: number, all: number, low: number, high: number): number {
    const { zones } = this.problem
    const gained = all & ~own
    const strict = this.strictness.zones
    return (
      (gained & low ? (low === LEFT ? zones.left : zones.start) + strict : 0) +
      (gained & high ? (high === RIGHT ? zones.right : zones.end) + strict : 0)
    )
  }

  /** Keeps a block unless it breaks a limit or another of its multiset and flags is no larger. */
  private offer(
    m: number,
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
    if (this.steps >= this.nextPoll) {
      this.nextPoll = Math.max(this.steps + 1, Math.min(this.steps + POLL_STEPS, this.limits.effort + 1))
      if (this.steps > this.limits.effort || this.limits.stop?.()) this.halted = true
    }
    const { limits, strictness } = this
    const { zones } = this.problem
    if (width + (flush & LEFT ? 0 : zones.left) + (flush & RIGHT ? 0 : zones.right) > limits.width) return
    if (flush & END) {
      if (!this.mayEnd || length + (flush & START ? 0 : zones.start) > this.problem.length!) return
    } else if (length + (flush & START ? 0 : zones.start) > limits.length) return
    let slot = this.slots.get(m)
    if (slot === undefined) {
      slot = this.multiset.length
      const rest = this.total - this.areaOf(m)
      if (width * length + rest + strictness.budget > this.capacity) return
      this.slots.set(m, slot)
      this.multiset.push(m)
      this.counts.push(m)
      this.restArea.push(rest)
      this.restWeight.push(this.weightsOf(this.full - m))
      this.cells.push([])
      if (this.phases) {
        this.cellOf.push(new Map())
        this.families.push(new Map())
      }
      this.pending.push(m)
    } else if (width * length + this.restArea[slot]! + strictness.budget > this.capacity) return
    if (this.outweighed(slot, width, length)) return
    const list = this.cells[slot]!
    const key = phases ? phases.id * 16 + flush : flush
    let cell: Cell | undefined
    if (this.phases) cell = this.cellOf[slot]!.get(key)
    else for (const c of list) if (c.flush === flush) cell = c
    if (!cell) {
      cell = { flush, phases, blocks: [] }
      list.push(cell)
      if (this.phases) this.cellOf[slot]!.set(key, cell)
      if (phases) this.familyOf(slot, phases, flush).push(cell)
    }
    if (phases) {
      const family = this.familyOf(slot, phases, flush)
      if (this.outdone(family, phases.base, width, length, slack)) return
      const block = this.blocks.add(how, width, length, flush, first, second, shift, slack)
      this.dropOutdone(family, phases.base, block)
      cell.blocks.push(block)
      return
    }
    const { blocks } = cell
    const w = this.blocks.width
    const l = this.blocks.length
    // first block that is wider
    let low = 0
    let high = blocks.length
    while (low < high) {
      const middle = (low + high) >> 1
      if (w[blocks[middle]!]! <= width) low = middle + 1
      else high = middle
    }
    if (low > 0 && l[blocks[low - 1]!]! - strictness.dominance <= length) return
    let from = low
    while (from > 0 && w[blocks[from - 1]!]! === width) from--
    let to = low
    while (to < blocks.length && l[blocks[to]!]! >= length) to++
    blocks.splice(from, to - from, this.blocks.add(how, width, length, flush, first, second, shift, UNTIED))
  }

  private familyOf(slot: number, phases: PhaseSet, flush: number): Cell[] {
    const families = this.families[slot]!
    const key = phases.shape * 16 + flush
    let family = families.get(key)
    if (!family) {
      family = []
      families.set(key, family)
    }
    return family
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

  private sumOf(m: number): Sum {
    if (this.lastSum?.number !== m) {
      const room = this.capacity - this.total + this.areaOf(m)
      this.lastSum = { number: m, room, closed: this.phases!.closed(this.countsOf(m)) }
    }
    return this.lastSum
  }

  private weightsOf(m: number): number[] {
    const counts = this.countsOf(m)
    return this.weights.map(({ values }) => counts.reduce((sum, n, i) => sum + n * values[i]!, 0))
  }

  /** Do the remaining pieces weigh more than fits beside the block and in the lengths it leaves? */
  private outweighed(slot: number, width: number, length: number): boolean {
    const { weights } = this
    for (let i = 0; i < weights.length; i++) {
      const { capacity, within } = weights[i]!
      const room = (this.reach - length) * capacity + length * within(this.limits.width - width)
      if (this.restWeight[slot]![i]! + this.strictness.weights > room) return true
    }
    return false
  }

  private areaOf(m: number): number {
    return this.countsOf(m).reduce((sum, n, i) => sum + n * this.problem.kinds[i]!.area, 0)
  }

  private countsOf(m: number): number[] {
    let rest = m
    return this.problem.kinds.map((k) => {
      const n = rest % (k.count + 1)
      rest = Math.floor(rest / (k.count + 1))
      return n
    })
  }

  /** Drops blocks beside or before which the remaining pieces must leave too much. */
  private thin(slot: number): void {
    const counts = this.countsOf(this.full - this.multiset[slot]!)
    const acrossGap = this.widthSums.gapsFor(counts)
    const alongGap = this.lengthSums.gapsFor(counts)
    const { gaps } = this.strictness
    for (const cell of this.cells[slot]!)
      cell.blocks = cell.blocks.filter((b) => {
        const w = this.blocks.width[b]!
        const l = this.blocks.length[b]!
        const beside = (acrossGap(this.limits.width - w) + gaps) * l
        const before = (alongGap(this.reach - l) + gaps) * w
        return w * l + this.restArea[slot]! + beside + before <= this.capacity
      })
    this.cells[slot] = this.cells[slot]!.filter((c) => c.blocks.length > 0)
  }
}

/** A multiset being put together: its number, the area its blocks may take, the groups that are whole in it. */
interface Sum {
  readonly number: number
  readonly room: number
  readonly closed: number
}

interface Cell {
  readonly flush: number
  /** phases of groups that have pieces elsewhere, relative to the block's start; -1 for others; null when there are none */
  readonly phases: PhaseSet | null
  blocks: number[]
}

/** Two in a row; `low` and `high` tell whether the first touches the low side and the second the high side. */
function joined(a: number, b: number, low: boolean, high: boolean, lowZone: number, highZone: number): number {
  if (low && high) return Math.max(a + b, lowZone + b, a + highZone)
  if (low) return Math.max(a, lowZone) + b
  if (high) return a + Math.max(b, highZone)
  return a + b
}
