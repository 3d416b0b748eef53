import type { CutNode, Placement, Rect } from './model.ts'

/** What is wished for among layouts of one length, in this order. */
export interface Tidiness {
  /** area of the largest left-over: more is better */
  readonly largest: number
  readonly cuts: number
  /** cuts that run in another direction than the one before them in the tree */
  readonly changes: number
}

/** Rectangles looked at before the plain choice of cuts has to do. */
const MOST_RECTANGLES = 4000

/**
 * The cuts that free these placements with the largest left-over, then the fewest cuts, then the fewest changes of direction: every
 * order of cuts is tried, each rectangle once. The largest left-over of either half is kept as large as it can be, also where that one
 * is not the larger of the two. Null when no order exists or there are too many.
 */
export function tidiestTree(rect: Rect, placements: readonly Placement[]): CutNode | null {
  const known = new Map<string, Rated | null>()
  let over = false
  const visit = (r: Rect, held: readonly number[]): Rated | null => {
    const key = `${r.x},${r.y},${r.width},${r.length}`
    const before = known.get(key)
    if (before !== undefined) return before
    if (known.size >= MOST_RECTANGLES) {
      over = true
      return null
    }
    const answer = best(r, held)
    known.set(key, answer)
    return answer
  }
  const best = (r: Rect, held: readonly number[]): Rated | null => {
    const only = held[0]
    if (only === undefined)
      return { node: { kind: 'left-over', rect: r }, largest: r.width * r.length, cuts: 0, changes: 0 }
    const p = placements[only]!
    if (held.length === 1 && p.width === r.width && p.length === r.length && p.x === r.x && p.y === r.y)
      return { node: { kind: 'piece', rect: r, placement: only }, largest: 0, cuts: 0, changes: 0 }
    let top: Rated | null = null
    for (const runs of ['across', 'along'] as const)
      for (const at of cutsOf(r, held, placements, runs)) {
        const across = runs === 'across'
        const a = across ? { ...r, length: at - r.y } : { ...r, width: at - r.x }
        const b = across ? { ...r, y: at, length: r.y + r.length - at } : { ...r, x: at, width: r.x + r.width - at }
        const isFirst = (i: number) => (across ? placements[i]!.y < at : placements[i]!.x < at)
        const first = visit(a, held.filter(isFirst))
        const second =
          first &&
          visit(
            b,
            held.filter((i) => !isFirst(i)),
          )
        if (!first || !second) continue
        const turns = (n: CutNode) => (n.kind === 'cut' && n.runs !== runs ? 1 : 0)
        const rated: Rated = {
          node: { kind: 'cut', rect: r, runs, at, first: first.node, second: second.node },
          largest: Math.max(first.largest, second.largest),
          cuts: first.cuts + second.cuts + 1,
          changes: first.changes + second.changes + turns(first.node) + turns(second.node),
        }
        if (!top || tidier(rated, top)) top = rated
      }
    return top
  }
  const answer = visit(
    rect,
    placements.map((_, i) => i),
  )
  return over ? null : (answer?.node ?? null)
}

interface Rated extends Tidiness {
  readonly node: CutNode
}

/** Is `a` to be preferred? */
export function tidier(a: Tidiness, b: Tidiness): boolean {
  if (a.largest !== b.largest) return a.largest > b.largest
  return a.cuts !== b.cuts ? a.cuts < b.cuts : a.changes < b.changes
}

export function tidinessOf(tree: CutNode): Tidiness {
  if (tree.kind === 'piece') return { largest: 0, cuts: 0, changes: 0 }
  if (tree.kind === 'left-over') return { largest: tree.rect.width * tree.rect.length, cuts: 0, changes: 0 }
  const a = tidinessOf(tree.first)
  const b = tidinessOf(tree.second)
  const turns = (n: CutNode) => (n.kind === 'cut' && n.runs !== tree.runs ? 1 : 0)
  return {
    largest: Math.max(a.largest, b.largest),
    cuts: a.cuts + b.cuts + 1,
    changes: a.changes + b.changes + turns(tree.first) + turns(tree.second),
  }
}

/** Edges of placements where a cut splits nothing. */
function cutsOf(
  r: Rect,
  held: readonly number[],
  placements: readonly Placement[],
  runs: 'across' | 'along',
): number[] {
  const low = (p: Rect) => (runs === 'across' ? p.y : p.x)
  const high = (p: Rect) => (runs === 'across' ? p.y + p.length : p.x + p.width)
  const spans = held.map((i) => placements[i]!).sort((a, b) => low(a) - low(b))
  const out = new Set<number>()
  let reach = low(r)
  for (const p of spans) {
    if (low(p) >= reach) {
      if (reach > low(r)) out.add(reach)
      if (low(p) > low(r)) out.add(low(p))
    }
    reach = Math.max(reach, high(p))
  }
  if (reach < high(r)) out.add(reach)
  return [...out]
}
