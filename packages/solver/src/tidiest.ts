import { sumsUpTo } from './bounds/reachable.ts'
import { Multisets } from './exact/multisets.ts'
import type { CutNode, Rect } from './model.ts'
import { END, LEFT, RIGHT, START } from './model.ts'
import type { Problem, Spot } from './problem.ts'
import type { Tidiness, Worth } from './tidy.ts'
import { tidier } from './tidy.ts'

/**
 * The tidiest of all layouts no longer than a given length: the largest left-over, then the fewest cuts, then the fewest changes of
 * direction. A complete recursion over rectangles and multisets of pieces, as Christofides & Whitlock (1977) cut a sheet, that keeps of
 * each rectangle every outcome that none outdoes in all wishes.
 *
 * Cuts are tried where the pieces of one of the halves, pushed together, end. No others are needed: a cut elsewhere can be
 * moved toward one half or the other until pieces stop it, and one of the two ways makes no left-over smaller that is the largest.
 *
 * Thinning. With `least` the left-over of a layout at hand and `waste` all that is left over: a rectangle that leaves more than
 * waste − least must hold the largest itself, so it leaves `least` or more; and what is smaller than `least` counts as none.
 *
 * Null when there is none tidier than the one at hand, when steps run out, and for ties, flaws and zones, which bind places to each
 * other.
 */
export function tidiestLayout(problem: Problem, task: Task): Found | null {
  const bound = problem.tied || problem.flaws.length > 0 || Object.values(problem.zones).some((depth) => depth > 0)
  return bound ? null : new Search(problem, task).run()
}

export interface Task {
  /** no piece ends farther, in the problem's units */
  readonly length: number
  /** of a layout at hand */
  readonly atHand: Tidiness
  /** of left-overs, in the request's units */
  readonly worth: Worth
  readonly steps: number
}

/** Spots in the problem's units; the tree's pieces are numbered as they are. */
export interface Found {
  readonly spots: readonly Spot[]
  readonly tree: CutNode
}

/** How one rectangle may be divided. */
interface Outcome extends Tidiness {
  readonly of: Whole | Halves
}
interface Whole {
  readonly kind: number
  readonly posture: number
}
interface Halves {
  readonly runs: CutRuns
  readonly at: number
  readonly first: Outcome
  readonly second: Outcome
}
type CutRuns = 'across' | 'along'

const LEFT_OVER: Whole = { kind: -1, posture: -1 }

/** With more multisets than this the recursion would not end in time. */
const MOST_MULTISETS = 512

class Search {
  private readonly problem: Problem
  private readonly task: Task
  private readonly multisets: Multisets
  private readonly rectangle: { readonly width: number; readonly length: number }
  private readonly waste: number
  /** by multiset, the sides that some of its pieces must touch */
  private readonly touches: number[] = []
  private readonly parts: number[][] = []
  private readonly areas: number[] = []
  /** by multiset, all sums of its pieces' sizes, rising */
  private readonly sums = { width: [] as number[][], length: [] as number[][] }
  /** by multiset, the least size that holds each of its pieces by itself */
  private readonly needs = { width: [] as number[], length: [] as number[] }
  /** by multiset and by where it lies, as far as that matters: by size */
  private readonly known: Map<number, Map<number, readonly Outcome[]>>[] = []
  private steps = 0

  constructor(problem: Problem, task: Task) {
    this.problem = problem
    this.task = task
    this.multisets = new Multisets(problem)
    this.rectangle = { width: problem.width, length: problem.length ?? task.length }
    const { full } = this.multisets
    this.waste = this.rectangle.width * this.rectangle.length - this.multisets.areaOf(full)
  }

  run(): Found | null {
    const { full } = this.multisets
    if (full >= MOST_MULTISETS) return null
    this.list()
    const { width, length } = this.rectangle
    let best: Outcome | null = null
    for (const outcome of this.outcomes(0, 0, width, length, full))
      if (tidier(outcome, best ?? this.task.atHand)) best = outcome
    if (!best || this.steps > this.task.steps) return null
    const spots: Spot[] = []
    const tree = this.treeOf(best, { x: 0, y: 0, width, length }, spots)
    return { spots, tree }
  }

  /** What is asked of each multiset again and again. */
  private list(): void {
    const { multisets, problem } = this
    const counts = Array.from({ length: multisets.full + 1 }, (_, m) => multisets.countsOf(m))
    for (const [m, whole] of counts.entries()) {
      this.areas.push(multisets.areaOf(m))
      const flush = problem.kinds.flatMap((k, i) => (whole[i]! > 0 ? k.postures.map((p) => p.flush) : []))
      this.touches.push(flush.reduce((all, sides) => all | sides, 0))
      this.parts.push(counts.flatMap((part, p) => (part.every((n, i) => n <= whole[i]!) ? [p] : [])))
      for (const of of ['width', 'length'] as const) {
        const items = problem.kinds.flatMap((k, i) => {
          const sizes = [...new Set(k.postures.map((p) => p[of]))]
          return whole[i]! > 0 ? [{ count: whole[i]!, sizes }] : []
        })
        this.sums[of].push([...(sumsUpTo(items, this.rectangle[of]) ?? [])].slice(1))
        this.needs[of].push(Math.max(0, ...items.map(({ sizes }) => Math.min(...sizes))))
      }
    }
  }

  private outcomes(x: number, y: number, w: number, l: number, set: number): readonly Outcome[] {
    const { least } = this
    if (set === 0) return [{ largest: this.worthOf(w, l), cuts: 0, changes: 0, of: LEFT_OVER }]
    const touches = this.touches[set]!
    const bindsAcross = (touches & (LEFT | RIGHT)) !== 0
    const bindsAlong = (touches & (START | END)) !== 0 || y + l > this.task.length
    const known = this.knownOf(bindsAcross ? x : 0, bindsAlong ? y : 0, set)
    const key = w * (this.rectangle.length + 1) + l
    const before = known.get(key)
    if (before) return before
    const found: Outcome[] = []
    this.offerPiece(found, x, y, w, l, set)
    for (const part of this.parts[set]!) {
      if (this.steps > this.task.steps) return []
      const rest = set - part
      for (const at of this.cutsAt('width', part, rest, w, l, bindsAcross))
        this.join(found, 'along', at, this.outcomes(x, y, at, l, part), () => this.outcomes(x + at, y, w - at, l, rest))
      for (const at of this.cutsAt('length', part, rest, l, w, bindsAlong))
        this.join(found, 'across', at, this.outcomes(x, y, w, at, part), () =>
          this.outcomes(x, y + at, w, l - at, rest),
        )
    }
    const left = w * l - this.areas[set]!
    const kept = this.holdsTheLargest(left) ? found.filter((o) => o.largest >= least) : found
    known.set(key, kept)
    return kept
  }

  private knownOf(x: number, y: number, set: number): Map<number, readonly Outcome[]> {
    const places = this.known[set] ?? new Map<number, Map<number, readonly Outcome[]>>()
    this.known[set] = places
    const place = x * (this.rectangle.length + 1) + y
    const known = places.get(place) ?? new Map<number, readonly Outcome[]>()
    places.set(place, known)
    return known
  }

  private get least(): number {
    return this.task.atHand.largest
  }

  /** What a left-over is worth; nothing where one is at hand that is worth more. */
  private worthOf(width: number, length: number): number {
    const { unitAcross, unitAlong } = this.problem
    const worth = this.task.worth(width * unitAcross, length * unitAlong)
    return worth < this.least ? 0 : worth
  }

  /** a unit of the problem's area in the request's */
  private get unit(): number {
    return this.problem.unitAcross * this.problem.unitAlong
  }

  /**
   * Places where a rectangle `size` across the cut and `run` along it may be cut. Where nothing is bound to a side, a cut and its mirror
   * image are the same: the first half is the one pushed together.
   */
  private cutsAt(
    of: 'width' | 'length',
    part: number,
    rest: number,
    size: number,
    run: number,
    binds: boolean,
  ): readonly number[] {
    this.steps++
    const firsts = this.sums[of][part]!
    const out: number[] = []
    for (const at of firsts) if (this.mayCut(of, part, rest, at, size - at, run)) out.push(at)
    if (binds)
      for (const beyond of this.sums[of][rest]!) {
        const at = size - beyond
        if (this.mayCut(of, part, rest, at, beyond, run) && !firsts.includes(at)) out.push(at)
      }
    return out
  }

  private mayCut(of: 'width' | 'length', part: number, rest: number, at: number, beyond: number, run: number): boolean {
    return this.holds(of, part, at, run) && this.holds(of, rest, beyond, run)
  }

  /** Might these pieces lie in such a rectangle, and no more be left over than there is? */
  private holds(of: 'width' | 'length', set: number, size: number, run: number): boolean {
    const left = size * run - this.areas[set]!
    const other = of === 'width' ? 'length' : 'width'
    if (size <= 0 || left < 0 || left > this.waste || this.needs[of][set]! > size || this.needs[other][set]! > run)
      return false
    return !this.holdsTheLargest(left) || left * this.unit >= this.least
  }

  /** Is so much left over in a rectangle that the largest left-over cannot be elsewhere? */
  private holdsTheLargest(left: number): boolean {
    return left * this.unit > this.waste * this.unit - this.least
  }

  private offerPiece(found: Outcome[], x: number, y: number, w: number, l: number, set: number): void {
    const kind = this.multisets.one.indexOf(set)
    if (kind < 0 || y + l > this.task.length) return
    const { width, length } = this.rectangle
    for (const [posture, p] of this.problem.kinds[kind]!.postures.entries()) {
      if (p.width !== w || p.length !== l) continue
      if ((p.flush & LEFT && x > 0) || (p.flush & RIGHT && x + w < width)) continue
      if ((p.flush & START && y > 0) || (p.flush & END && y + l < length)) continue
      found.push({ largest: 0, cuts: 0, changes: 0, of: { kind, posture } })
      return
    }
  }

  private join(
    found: Outcome[],
    runs: CutRuns,
    at: number,
    firsts: readonly Outcome[],
    seconds: () => readonly Outcome[],
  ): void {
    this.steps++
    if (firsts.length === 0) return
    for (const second of seconds())
      for (const first of firsts) {
        this.steps++
        const largest = Math.max(first.largest, second.largest)
        const cuts = first.cuts + second.cuts + 1
        const changes = first.changes + second.changes + turns(first, runs) + turns(second, runs)
        keep(found, { largest, cuts, changes, of: { runs, at, first, second } })
      }
  }

  private treeOf({ of }: Outcome, r: Rect, spots: Spot[]): CutNode {
    const { unitAcross, unitAlong } = this.problem
    const rect = {
      x: r.x * unitAcross,
      y: r.y * unitAlong,
      width: r.width * unitAcross,
      length: r.length * unitAlong,
    }
    if ('kind' in of) {
      if (of.kind < 0) return { kind: 'left-over', rect }
      spots.push({ kind: of.kind, posture: of.posture, x: r.x, y: r.y })
      return { kind: 'piece', rect, placement: spots.length - 1 }
    }
    const { runs, at } = of
    const across = runs === 'across'
    const first = across ? { ...r, length: at } : { ...r, width: at }
    const second = across ? { ...r, y: r.y + at, length: r.length - at } : { ...r, x: r.x + at, width: r.width - at }
    return {
      kind: 'cut',
      rect,
      runs,
      at: across ? second.y * unitAlong : second.x * unitAcross,
      first: this.treeOf(of.first, first, spots),
      second: this.treeOf(of.second, second, spots),
    }
  }
}

const runsOf = ({ of }: Outcome): CutRuns | null => ('runs' in of ? of.runs : null)

const turns = (outcome: Outcome, runs: CutRuns): number => {
  const own = runsOf(outcome)
  return own !== null && own !== runs ? 1 : 0
}

/** Adds an outcome unless another with the same first cut is as good in every wish; takes out those it outdoes. */
function keep(found: Outcome[], outcome: Outcome): void {
  if (found.some((other) => outdoes(other, outcome))) return
  let kept = 0
  for (const other of found) if (!outdoes(outcome, other)) found[kept++] = other
  found.length = kept
  found.push(outcome)
}

const outdoes = (a: Outcome, b: Outcome): boolean =>
  a.largest >= b.largest && a.cuts <= b.cuts && a.changes <= b.changes && runsOf(a) === runsOf(b)
