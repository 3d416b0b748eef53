import type { Length } from '@lengthwise/units'
import { length, roundUpTo, ZERO } from '@lengthwise/units'
import type { ClothOnTable } from '../cloth.ts'
import { clearLength, clearWidth, hemDepth } from '../on-table.ts'
import type { Edge, Order } from '../order.ts'
import type { Lack } from '../refusals.ts'
import { otherwise, tooShort } from '../refusals.ts'
import type { FaceEdges } from './lanes.ts'
import type { Split } from './split.ts'

/* What a cloth allows of a face: how long and wide panels may be, and where selvedges can be had. */

/** Cut size along the lanes, and the longest part of it the cloth gives; null on a bolt, which gives any. */
export interface LengthToCut {
  readonly cut: Length
  readonly room: Length | null
}

/** A length that cannot be had. */
export interface NotLongEnough {
  readonly why: string
  readonly lack: Lack
}

/**
 * The length is marked, or the whole of a sheet whose both end hems are kept: that does when the sheet as measured is as long
 * as `asked` (hems that are not kept included) and not a tenth longer, whatever the wash leaves of it.
 */
export function lengthToCut(
  order: Order,
  edges: FaceEdges,
  ends: readonly [Edge, Edge],
  table: ClothOnTable,
  { need, asked, asCut }: { readonly need: number; readonly asked: number; readonly asCut: boolean },
): LengthToCut | NotLongEnough {
  const { cloth } = table
  const kept = ends.filter((edge) => edges[edge].need.kind === 'kept-hem').length
  const marked = roundUpTo(length(need), order.markTo)
  if (table.length === null || cloth.size === null)
    return kept > 0 ? { why: 'a bolt has no hem to keep', lack: otherwise(cloth.name) } : { cut: marked, room: null }
  const clear = clearLength(table) ?? ZERO
  if (kept === 0) return { cut: marked, room: clear }
  const hem = Math.max(hemDepth(table.edges.head), hemDepth(table.edges.foot))
  if (kept === 1) return { cut: marked, room: length(clear + hem) }
  const over = (asCut ? table.length : cloth.size.length) - asked
  if (over < 0)
    return {
      why: 'both hems are kept, and the sheet is shorter than asked',
      lack: { cloth: cloth.name, direction: 'along', short: length(-over), widthThatWouldDo: null },
    }
  if ((table.length - need) * 10 <= need) return { cut: table.length, room: table.length }
  return { why: 'both hems are kept, so it would come out as long as the sheet', lack: tooShort(order, table, null) }
}

/** Width to cut panels from: without side hems, except those that are kept as edges. */
export function availableWidth(table: ClothOnTable, made: number): Length {
  const hems = [hemDepth(table.edges.left), hemDepth(table.edges.right)]
  if (made === 0) return clearWidth(table)
  return made === 1 ? length(table.usableWidth - Math.min(...hems)) : table.usableWidth
}

/** Nothing would show of the first or last of the joined panels: what lies beyond the finished edge and the seam take it all. */
export function usedUp(sizes: readonly number[], beyond: readonly number[], join: Length): boolean {
  const [first, last] = [sizes[0] ?? 0, sizes.at(-1) ?? 0]
  if (sizes.length === 1) return first <= (beyond[0] ?? 0) + (beyond[1] ?? 0)
  const between = sizes.slice(1, -1).some((size) => size <= 2 * join)
  return between || first <= (beyond[0] ?? 0) + join || last <= (beyond[1] ?? 0) + join
}

/** Why selvedges wanted at seams and edges cannot all be had; null when they can. */
export function selvedgeWants(
  split: Split,
  available: Length,
  joins: boolean,
  outer: readonly boolean[],
): string | null {
  const { strips } = split
  for (const [i, strip] of strips.entries()) {
    const first = i === 0 ? (outer[0] ?? false) : joins
    const last = i === strips.length - 1 ? (outer[1] ?? false) : joins
    if (first && last && strip.size < available) return 'a panel narrower than the cloth would need both selvedges'
  }
  return null
}
