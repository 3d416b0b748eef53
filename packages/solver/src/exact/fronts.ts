import { END, LEFT, RIGHT, START } from '../model.ts'
import type { Problem } from '../problem.ts'
import type { Tree } from './blocks.ts'
import { PIECE, treeOf } from './blocks.ts'
import { Heap } from './heap.ts'
import { JoinRules } from './joins.ts'
import type { Cell, Effort, Front } from './kept.ts'
import { Kept } from './kept.ts'
import { Phases } from './phases.ts'
import type { Trial } from './room.ts'
import type { Strictness } from './strictness.ts'
import { SOUND } from './strictness.ts'
import { TiedJoins } from './tied.ts'
import { UntiedJoins } from './untied.ts'

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
  /** for each trial, the undominated blocks of everything, as they fit the field; shortest first */
  readonly best: readonly (readonly Finished[])[]
  /** candidate blocks looked at */
  readonly steps: number
  /** false when effort or a stop ended it: then `best` proves nothing */
  readonly finished: boolean
  /** the fronts of all multisets but everything, and their blocks */
  readonly done: readonly Front[]
  readonly kept: Kept
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

export interface Limits extends Effort {
  /** widths of the field, each with a length on trial; one run answers them all. The problem's own width does not count. */
  readonly trials: readonly Trial[]
  /** blocks whose groups are not yet tied to each other are not shifted: quick, but not every layout */
  readonly tight?: boolean
  /** for tests of soundness */
  readonly strictness?: Strictness
}

export function fronts(problem: Problem, limits: Limits): Fronts {
  return new Search(problem, limits).run()
}

/** What fits a trial fits one that is no narrower and no shorter: only the others need room to be kept for. */
function undominated(trials: readonly Trial[], { trials: strict }: Strictness): Trial[] {
  const covers = (b: Trial, a: Trial) => b.width >= a.width && b.length + strict >= a.length
  return trials.filter((a, i) => trials.every((b, j) => i === j || !covers(b, a) || (covers(a, b) && i < j)))
}

class Search {
  private readonly problem: Problem
  private readonly limits: Limits
  /** for ties along the strip */
  private readonly phases: Phases | null
  private readonly kept: Kept
  private readonly untied: UntiedJoins
  private readonly tied: TiedJoins | null
  /** multisets with blocks, to be joined to those before them */
  private readonly pending = new Heap()

  constructor(problem: Problem, limits: Limits) {
    this.problem = problem
    this.limits = limits
    const strictness = limits.strictness ?? SOUND
    this.phases = problem.tied ? Phases.of(problem, limits.tight ?? false, strictness.places) : null
    const onNew = (multiset: number): void => this.pending.push(multiset)
    this.kept = new Kept(problem, limits, undominated(limits.trials, strictness), this.phases, strictness, onNew)
    const rules = new JoinRules(problem, this.kept.blocks, strictness)
    this.untied = new UntiedJoins(this.kept, rules, strictness)
    this.tied = this.phases && new TiedJoins(this.kept, rules, this.phases, strictness)
  }

  run(): Fronts {
    const { kept } = this
    this.offerPieces()
    const done = this.joinAll()
    if (kept.halted) return { best: [], steps: kept.steps, finished: false, done, kept }
    const whole = kept.frontOf(kept.multisets.full)
    const all = whole ? this.finished(whole.cells) : []
    const { length: fieldLength, zones } = this.problem
    const last = fieldLength === null ? Number.POSITIVE_INFINITY : fieldLength - zones.end
    const best = this.limits.trials.map(({ width, length }) =>
      // what touches the end is for trials that go that far
      all.filter((b) => b.width <= width && (b.tree.flush & END ? length >= last : b.length <= length)),
    )
    return { best, steps: kept.steps, finished: true, done, kept }
  }

  private offerPieces(): void {
    const { rooms, multisets } = this.kept
    for (const [kind, k] of this.problem.kinds.entries()) {
      const phases = this.phases?.ofPiece(kind) ?? null
      for (const [posture, p] of k.postures.entries())
        this.kept.offer(multisets.one[kind]!, rooms.all, PIECE, p.width, p.length, p.flush, kind, posture, 0, phases, 0)
    }
  }

  /**
   * Joins each multiset's blocks to those before it; all but everything, as far as it goes. By itself, with plain loops: engines
   * compile it once, not again for each problem that looks a little different, or for each array that may be empty.
   */
  private joinAll(): Front[] {
    const { kept, pending } = this
    const { full } = kept.multisets
    const done: Front[] = []
    for (let m = pending.pop(); m !== undefined && m !== full; m = pending.pop()) {
      const front = kept.frontOf(m)!
      kept.finish(front)
      if (front.cells.length === 0) continue
      done.push(front)
      const partners = kept.partnersOf(front, done)
      for (let i = 0; i < partners.length && !kept.halted; i++) this.join(front, partners[i]!)
      if (kept.halted) break
    }
    return done
  }

  /** All joins of the blocks of two multisets. */
  private join(s: Front, t: Front): void {
    const sum = s.multiset + t.multiset
    const rest = s.restArea + t.restArea - this.kept.total
    const spare = this.kept.rooms.most - this.kept.total
    for (let i = 0; i < s.cells.length; i++)
      for (let j = 0; j < t.cells.length; j++) {
        const a = s.cells[i]!
        const b = t.cells[j]!
        if (a.waste + b.waste > spare) break
        if (this.kept.halted) return
        if (a.phases || b.phases) this.tied!.join(sum, a, b)
        else this.untied.join(sum, rest, a, b)
      }
  }

  /** Blocks of everything as they lie in the field. */
  private finished(cells: readonly Cell[]): Finished[] {
    const { zones, length: fieldLength } = this.problem
    const { blocks } = this.kept
    const tied = this.phases !== null
    const start = tied ? zones.start : 0
    const out: Finished[] = []
    for (const { flush, phases, blocks: inCell } of cells)
      for (const b of inCell) {
        const width = blocks.width[b]! + (flush & LEFT ? 0 : zones.left) + (flush & RIGHT ? 0 : zones.right)
        // what keeps the field's own phase moves along until the field's repeat meets it
        const moved = phases ? this.phases!.fromField(phases, start) : 0
        const grown = phases ? Math.max(0, moved - blocks.slack[b]!) : 0
        const end = start + blocks.length[b]! + grown + (flush & START || tied ? 0 : zones.start)
        const length = flush & END ? fieldLength! : end
        out.push({ width, length, start, moved, tree: treeOf(blocks, b) })
      }
    return out.sort((a, b) => a.length - b.length || a.width - b.width)
  }
}
