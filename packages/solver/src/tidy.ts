import type { Control, CutNode, Placement, Rect } from './model.ts'

/** What is wished for among layouts of one length, in this order. */
export interface Tidiness {
  /** area of the largest left-over that is worth keeping: more is better */
  readonly largest: number
  readonly cuts: number
  /** cuts that run in another direction than the one before them in the tree */
  readonly changes: number
}

/** What a left-over of this size is worth: its area, or nothing where it is too small to keep. */
export type Worth = (width: number, length: number) => number

export function worthOf(keeping: Control['worthKeeping']): Worth {
  const [short, tall] = keeping
    ? [Math.min(keeping.width, keeping.length), Math.max(keeping.width, keeping.length)]
    : [0, 0]
  return (width, length) => (Math.min(width, length) >= short && Math.max(width, length) >= tall ? width * length : 0)
}

/** Rectangles looked at before the plain choice of cuts has to do, and placements that the bits of a number tell apart. */
const MOST_RECTANGLES = 4000
const MOST_PLACEMENTS = 31

/** More edges than so many placements and a rectangle have. */
const EDGES = 64

/**
 * The cuts that free these placements with the largest left-over, then the fewest cuts, then the fewest changes of direction: every
 * order of cuts is tried, each rectangle once. The largest left-over of either half is kept as large as it can be, also where that one
 * is not the larger of the two. Null when no order exists or there are too many.
 */
export function tidiestTree(rect: Rect, placements: readonly Placement[], worth: Worth): CutNode | null {
  return placements.length > MOST_PLACEMENTS ? null : new Orders(rect, placements, worth).tree()
}

/** One direction: where cuts may be, and which placements lie before each, beyond it, or touch it. */
class Axis {
  readonly at: readonly number[]
  readonly before: readonly number[]
  readonly beyond: readonly number[]
  readonly touching: readonly number[]

  constructor(rect: readonly [number, number], spans: readonly (readonly [number, number])[]) {
    this.at = [...new Set([...rect, ...spans.flat()])].sort((a, b) => a - b)
    const those = (does: (low: number, high: number) => boolean) =>
      spans.reduce((bits, [low, high], i) => (does(low, high) ? bits | (1 << i) : bits), 0)
    this.before = this.at.map((at) => those((_, high) => high <= at))
    this.beyond = this.at.map((at) => those((low) => low >= at))
    this.touching = this.at.map((at) => those((low, high) => low === at || high === at))
  }
}

/** The best that can be had of one rectangle; `cut` is the number of an edge, -1 where nothing is cut. */
interface Rated extends Tidiness {
  readonly held: number
  readonly runs: 'across' | 'along'
  readonly cut: number
}

class Orders {
  private readonly x: Axis
  private readonly y: Axis
  private readonly sizes: readonly Rect[]
  private readonly worth: Worth
  private readonly known = new Map<number, Rated | null>()
  private over = false

  constructor(rect: Rect, placements: readonly Placement[], worth: Worth) {
    this.worth = worth
    this.sizes = placements
    this.x = new Axis(
      [rect.x, rect.x + rect.width],
      placements.map((p) => [p.x, p.x + p.width]),
    )
    this.y = new Axis(
      [rect.y, rect.y + rect.length],
      placements.map((p) => [p.y, p.y + p.length]),
    )
  }

  tree(): CutNode | null {
    const { x, y, sizes } = this
    const [right, end] = [x.at.length - 1, y.at.length - 1]
    const best = this.rate(0, right, 0, end, 2 ** sizes.length - 1)
    return best && !this.over ? this.nodeOf(0, right, 0, end, best) : null
  }

  private rate(left: number, right: number, start: number, end: number, held: number): Rated | null {
    const key = ((left * EDGES + right) * EDGES + start) * EDGES + end
    const before = this.known.get(key)
    if (before !== undefined) return before
    if (this.known.size >= MOST_RECTANGLES) {
      this.over = true
      return null
    }
    const rated = this.uncut(left, right, start, end, held) ?? this.cutBest(left, right, start, end, held)
    this.known.set(key, rated)
    return rated
  }

  /** A left-over, or a piece that fills the rectangle. */
  private uncut(left: number, right: number, start: number, end: number, held: number): Rated | null {
    const w = this.x.at[right]! - this.x.at[left]!
    const l = this.y.at[end]! - this.y.at[start]!
    if (held === 0) return { held, runs: 'across', cut: -1, largest: this.worth(w, l), cuts: 0, changes: 0 }
    if ((held & (held - 1)) !== 0) return null
    const { width, length } = this.sizes[31 - Math.clz32(held)]!
    return width === w && length === l ? { held, runs: 'across', cut: -1, largest: 0, cuts: 0, changes: 0 } : null
  }

  private cutBest(left: number, right: number, start: number, end: number, held: number): Rated | null {
    const { x, y } = this
    let top: Rated | null = null
    for (let cut = start + 1; cut < end; cut++) {
      const first = y.before[cut]! & held
      if (!(y.touching[cut]! & held) || (first | (y.beyond[cut]! & held)) !== held) continue
      const a = this.rate(left, right, start, cut, first)
      top = better(top, 'across', cut, a, a && this.rate(left, right, cut, end, held & ~first))
    }
    for (let cut = left + 1; cut < right; cut++) {
      const first = x.before[cut]! & held
      if (!(x.touching[cut]! & held) || (first | (x.beyond[cut]! & held)) !== held) continue
      const a = this.rate(left, cut, start, end, first)
      top = better(top, 'along', cut, a, a && this.rate(cut, right, start, end, held & ~first))
    }
    return top
  }

  private nodeOf(left: number, right: number, start: number, end: number, { held, runs, cut }: Rated): CutNode {
    const { x, y } = this
    const [x0, y0] = [x.at[left]!, y.at[start]!]
    const rect = { x: x0, y: y0, width: x.at[right]! - x0, length: y.at[end]! - y0 }
    if (held === 0) return { kind: 'left-over', rect }
    if (cut < 0) return { kind: 'piece', rect, placement: 31 - Math.clz32(held) }
    const across = runs === 'across'
    const at = (across ? y : x).at[cut]!
    const before = (across ? y : x).before[cut]! & held
    const first = across
      ? this.nodeOf(left, right, start, cut, this.rate(left, right, start, cut, before)!)
      : this.nodeOf(left, cut, start, end, this.rate(left, cut, start, end, before)!)
    const second = across
      ? this.nodeOf(left, right, cut, end, this.rate(left, right, cut, end, held & ~before)!)
      : this.nodeOf(cut, right, start, end, this.rate(cut, right, start, end, held & ~before)!)
    return { kind: 'cut', rect, runs, at, first, second }
  }
}

/** The best so far, or this cut into two halves where it is tidier. */
function better(
  top: Rated | null,
  runs: 'across' | 'along',
  cut: number,
  first: Rated | null,
  second: Rated | null,
): Rated | null {
  if (!first || !second) return top
  const turns = (first.cut >= 0 && first.runs !== runs ? 1 : 0) + (second.cut >= 0 && second.runs !== runs ? 1 : 0)
  const rated = {
    held: first.held | second.held,
    runs,
    cut,
    largest: Math.max(first.largest, second.largest),
    cuts: first.cuts + second.cuts + 1,
    changes: first.changes + second.changes + turns,
  }
  return !top || tidier(rated, top) ? rated : top
}

/** Is `a` to be preferred? */
export function tidier(a: Tidiness, b: Tidiness): boolean {
  if (a.largest !== b.largest) return a.largest > b.largest
  return a.cuts !== b.cuts ? a.cuts < b.cuts : a.changes < b.changes
}

export function tidinessOf(tree: CutNode, worth: Worth): Tidiness {
  if (tree.kind === 'piece') return { largest: 0, cuts: 0, changes: 0 }
  if (tree.kind === 'left-over') return { largest: worth(tree.rect.width, tree.rect.length), cuts: 0, changes: 0 }
  const a = tidinessOf(tree.first, worth)
  const b = tidinessOf(tree.second, worth)
  const turns = (n: CutNode) => (n.kind === 'cut' && n.runs !== tree.runs ? 1 : 0)
  return {
    largest: Math.max(a.largest, b.largest),
    cuts: a.cuts + b.cuts + 1,
    changes: a.changes + b.changes + turns(tree.first) + turns(tree.second),
  }
}
