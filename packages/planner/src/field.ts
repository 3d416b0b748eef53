import type { Cloth, ClothEdge, ClothOnTable, Order } from '@lengthwise/pieces'
import type { Field, Rect } from '@lengthwise/solver'
import type { Length, Share } from '@lengthwise/units'
import { afterShrinking, beforeShrinking, length } from '@lengthwise/units'
import type { ClothSide } from './turn.ts'

/**
 * Where pieces may lie on one length, sheet or remnant: the solver's field, and where its corner is on the whole cloth.
 *
 * Where tearing costs threads, every piece counts as larger by that at all four sides, and so does the field at each side where
 * the cloth's own selvedge or hem stays: a piece flush there loses nothing, and its box ends where the cloth does.
 *
 *     0 ┌──────────────────────────┐   spare at the start
 *       │  origin ┌─────────────┐  │
 *       │         │ field       │  │   unused selvedge at each side
 *       │         └─────────────┘  │
 *       └──────────────────────────┘   spare at the end
 */
export interface Ground {
  readonly table: ClothOnTable
  readonly origin: { readonly x: number; readonly y: number }
  /** how much of the field lies beyond the usable cloth at the left and at the start */
  readonly beyond: { readonly x: number; readonly y: number }
  readonly field: Field
  /** what the cloth offers at each side of the field; raw where something is trimmed off */
  readonly sides: Readonly<Record<ClothSide, ClothEdge>>
}

/**
 * `long`: length of the whole cloth on the table, null for a bolt still to be bought. `nth`: which one of several like
 * sheets (1 is the first); flaws may be on one of them only.
 */
export function groundOf(order: Order, table: ClothOnTable, long: Length | null, nth: number): Ground {
  const { cloth } = table
  const origin = { x: cloth.unusedSelvedge, y: cloth.spareEachEnd }
  const width = table.usableWidth
  const fieldLength = long === null ? null : Math.max(0, long - 2 * origin.y)
  const raw: ClothEdge = { kind: 'raw' }
  const trimmed = cloth.unusedSelvedge > 0
  const sides = {
    left: trimmed ? raw : sideEdge(table.edges.left, table.selvedges.left),
    right: trimmed ? raw : sideEdge(table.edges.right, table.selvedges.right),
    // a bolt is cut off at both ends
    start: origin.y > 0 || cloth.from === 'bolt' ? raw : table.edges.head,
    end: origin.y > 0 || cloth.from === 'bolt' ? raw : table.edges.foot,
  }
  const lost = lostPerEdge(cloth)
  const grown = (edge: ClothEdge) => (edge.kind === 'raw' ? 0 : lost)
  const beyond = { x: grown(sides.left), y: grown(sides.start) }
  const zone = (edge: ClothEdge, trimmed: number) =>
    edge.kind === 'hem' && edge.depth > trimmed ? edge.depth - trimmed + (trimmed > 0 ? 0 : lost) : 0
  return {
    table,
    origin,
    beyond,
    field: {
      width: width + beyond.x + grown(sides.right),
      length: fieldLength === null ? null : fieldLength + beyond.y + grown(sides.end),
      zones: {
        left: zone(table.edges.left, origin.x),
        right: zone(table.edges.right, origin.x),
        start: zone(table.edges.head, origin.y),
        end: zone(table.edges.foot, origin.y),
      },
      flaws: flawsOn(order, table, nth, origin, width, fieldLength).map((flaw) => ({
        ...flaw,
        x: flaw.x + beyond.x,
        y: flaw.y + beyond.y,
      })),
    },
    sides,
  }
}

/** What each torn edge loses. */
export const lostPerEdge = (cloth: Cloth): number => (cloth.divideBy === 'tearing' ? cloth.lostPerTear : 0)

/** A laid length of the field as length of cloth: what lies beyond the cloth's own ends is none. */
export function laidOn({ beyond, field, sides, table }: Ground, laid: number): number {
  const beyondEnd = sides.end.kind === 'raw' ? 0 : lostPerEdge(table.cloth)
  return Math.max(0, Math.min(laid, (field.length ?? Number.POSITIVE_INFINITY) - beyondEnd) - beyond.y)
}

const sideEdge = (edge: ClothEdge, selvedge: boolean): ClothEdge =>
  edge.kind === 'selvedge' && !selvedge ? { kind: 'raw' } : edge

function flawsOn(
  order: Order,
  table: ClothOnTable,
  nth: number,
  origin: { x: number; y: number },
  width: number,
  long: number | null,
): Rect[] {
  const { along, across } = table.cloth.shrinks
  const washed = order.wash === 'before-cutting'
  // a flaw shrinks with the cloth; its edges are rounded outward
  const low = (at: number, share: Share) => (washed ? afterShrinking(length(at), share) : at)
  const high = (at: number, share: Share) => (washed ? afterShrinking(length(at), share) + 1 : at)
  const flaws: Rect[] = []
  for (const flaw of table.cloth.flaws) {
    if (flaw.on !== null && flaw.on !== nth) continue
    const left = Math.max(0, low(flaw.x, across) - origin.x)
    const right = Math.min(width, high(flaw.x + flaw.width, across) - origin.x)
    const start = Math.max(0, low(flaw.y, along) - origin.y)
    const end = Math.min(long ?? Number.MAX_SAFE_INTEGER, high(flaw.y + flaw.length, along) - origin.y)
    if (left < right && start < end) flaws.push({ x: left, y: start, width: right - left, length: end - start })
  }
  return flaws
}

/** What a sheet of this length must have measured before the wash. */
export const measuredBefore = (order: Order, onTable: number, share: Share): Length =>
  order.wash === 'before-cutting' ? beforeShrinking(length(onTable), share) : length(onTable)
