import type { Length } from '@lengthwise/units'
import { length } from '@lengthwise/units'
import { edgeOf } from '../build.ts'
import type { Edge } from '../order.ts'
import type { EdgeRef } from '../way.ts'

/**
 * Part of the edge of a joined face: from `from` to `to` on the piece's own edge, beginning at `at` on the whole edge
 * (from the left or from the head, as cut). Where pieces are joined, a stretch ends at the seam line.
 */
export interface Stretch {
  readonly piece: string
  readonly edge: Edge
  readonly at: Length
  readonly from: Length
  readonly to: Length
  /** length of that whole edge of the piece */
  readonly of: Length
  /** counted from its end, because the edge is seen from the other side */
  readonly backwards?: boolean
}

/** One seam line per pair of stretches that meet when both edges start together; what is longer hangs over at the end. */
export function meet(
  a: readonly Stretch[],
  b: readonly Stretch[],
): readonly { readonly a: EdgeRef; readonly b: EdgeRef; readonly length: Length }[] {
  const pairs: { a: EdgeRef; b: EdgeRef; length: Length }[] = []
  for (const s of a)
    for (const t of b) {
      const start = Math.max(s.at, t.at)
      const end = Math.min(s.at + s.to - s.from, t.at + t.to - t.from)
      if (end > start) pairs.push({ a: part(s, start, end), b: part(t, start, end), length: length(end - start) })
    }
  return pairs
}

/** The same edge seen from the other side: what was at its end comes first. `total`: length of the whole edge. */
export function mirrored(stretches: readonly Stretch[], total: Length): readonly Stretch[] {
  return [...stretches].reverse().map((s) => ({ ...s, at: length(total - (s.at + s.to - s.from)), backwards: true }))
}

export const moved = (stretches: readonly Stretch[], by: number): readonly Stretch[] =>
  stretches.map((s) => ({ ...s, at: length(s.at + by) }))

function part(s: Stretch, start: number, end: number): EdgeRef {
  const from = s.backwards ? s.to - (end - s.at) : s.from + (start - s.at)
  const to = from + (end - start)
  return from === 0 && to === s.of ? edgeOf(s.piece, s.edge) : edgeOf(s.piece, s.edge, length(from), length(to))
}
