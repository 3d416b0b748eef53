import type { CutNode, Placement, Rect } from './model.ts'

/**
 * The cuts that free every placement from `rect`, edge to edge each time, or null where no such order exists.
 *
 * Any cut that splits no placement may come first: what separates the whole also separates each half. So the choice of
 * cuts is free, and it decides the left-overs: a cut that takes off an empty rectangle comes first, the largest one first;
 * then cuts across, so that sections lie one after another.
 */
export function cutTree(rect: Rect, placements: readonly Placement[]): CutNode | null {
  return divide(
    rect,
    placements.map((p, i) => ({ p, i })),
  )
}

interface Held {
  readonly p: Placement
  readonly i: number
}
interface Cut {
  readonly runs: 'across' | 'along'
  readonly at: number
}

function divide(rect: Rect, held: readonly Held[]): CutNode | null {
  const only = held[0]
  if (!only) return { kind: 'left-over', rect }
  const { p } = only
  if (held.length === 1 && p.x === rect.x && p.y === rect.y && p.width === rect.width && p.length === rect.length)
    return { kind: 'piece', rect, placement: only.i }
  const cut = emptiest(rect, held) ?? between(held)
  if (!cut) return null
  const [a, b] = halves(rect, cut)
  const before: Held[] = []
  const after: Held[] = []
  for (const h of held) ((cut.runs === 'across' ? h.p.y < cut.at : h.p.x < cut.at) ? before : after).push(h)
  const first = divide(a, before)
  const second = first && divide(b, after)
  return first && second && { kind: 'cut', rect, runs: cut.runs, at: cut.at, first, second }
}

/** The cut that takes the largest empty rectangle off a side of `rect`. */
function emptiest(rect: Rect, held: readonly Held[]): Cut | null {
  let left = Number.POSITIVE_INFINITY
  let start = left
  let right = Number.NEGATIVE_INFINITY
  let end = right
  for (const { p } of held) {
    left = Math.min(left, p.x)
    start = Math.min(start, p.y)
    right = Math.max(right, p.x + p.width)
    end = Math.max(end, p.y + p.length)
  }
  const choices: (Cut & { area: number })[] = [
    { runs: 'across', at: end, area: (rect.y + rect.length - end) * rect.width },
    { runs: 'along', at: right, area: (rect.x + rect.width - right) * rect.length },
    { runs: 'across', at: start, area: (start - rect.y) * rect.width },
    { runs: 'along', at: left, area: (left - rect.x) * rect.length },
  ]
  let best: (Cut & { area: number }) | null = null
  for (const c of choices) if (c.area > 0 && (!best || c.area > best.area)) best = c
  return best
}

/** A cut that splits no placement and has some on both sides: across before along, the middle one of several. */
function between(held: readonly Held[]): Cut | null {
  for (const runs of ['across', 'along'] as const) {
    const at = gaps(held, runs)
    if (at.length > 0) return { runs, at: at[at.length >> 1]! }
  }
  return null
}

/** Starts of placements which no earlier placement reaches beyond. */
function gaps(held: readonly Held[], runs: 'across' | 'along'): number[] {
  const spans = held.map(
    ({ p }) => (runs === 'across' ? [p.y, p.y + p.length] : [p.x, p.x + p.width]) as [number, number],
  )
  spans.sort((a, b) => a[0] - b[0])
  const out: number[] = []
  let reach = spans[0]![1]
  for (const [from, to] of spans) {
    if (from >= reach) out.push(from)
    reach = Math.max(reach, to)
  }
  return out
}

function halves(rect: Rect, cut: Cut): [Rect, Rect] {
  if (cut.runs === 'across')
    return [
      { ...rect, length: cut.at - rect.y },
      { ...rect, y: cut.at, length: rect.y + rect.length - cut.at },
    ]
  return [
    { ...rect, width: cut.at - rect.x },
    { ...rect, x: cut.at, width: rect.x + rect.width - cut.at },
  ]
}
