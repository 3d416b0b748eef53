import type { Length } from '@lengthwise/units'
import { afterShrinking, length, ZERO } from '@lengthwise/units'
import type { Cloth, ClothEdge, ClothEdges, ClothOnTable } from './cloth.ts'
import type { Order } from './order.ts'

/**
 * A cloth as it lies on the table, at one of its widths (`widthIndex` −1 for a sheet or remnant).
 *
 * Washed before cutting, everything measured on the cloth shrinks with it, rounded down to a unit: width, length, hem depths,
 * and the repeat when it was measured in the shop. What is trimmed (unused selvedges, squared ends) is measured on the table.
 */
export function onTable(order: Order, cloth: Cloth, widthIndex: number): ClothOnTable {
  const washed = order.wash === 'before-cutting'
  const across = (l: Length): Length => (washed ? afterShrinking(l, cloth.shrinks.across) : l)
  const along = (l: Length): Length => (washed ? afterShrinking(l, cloth.shrinks.along) : l)

  const asSold = cloth.size ?? { width: cloth.widths[widthIndex]?.width, length: null }
  if (asSold.width === undefined) throw new RangeError(`onTable: ${cloth.name} has no width ${widthIndex}`)

  const width = across(asSold.width)
  const inShop = cloth.print.repeatMeasured === 'in-shop'
  return {
    cloth,
    widthIndex: cloth.size === null ? widthIndex : -1,
    width,
    length: asSold.length === null ? null : along(asSold.length),
    usableWidth: length(Math.max(0, width - 2 * cloth.unusedSelvedge)),
    selvedges: trueSelvedges(cloth),
    edges: shrunkEdges(cloth.edges, along, across),
    repeat: inShop ? along(cloth.print.repeat) : cloth.print.repeat,
    acrossRepeat: inShop ? across(cloth.print.acrossRepeat) : cloth.print.acrossRepeat,
    matchLine: inShop ? across(cloth.print.matchLine) : cloth.print.matchLine,
  }
}

/** The width of cloth between its side hems, on the table: what panels can be cut from when no hem may be in them. */
export function clearWidth(table: ClothOnTable): Length {
  const { left, right } = table.edges
  const hem = (edge: ClothEdge): number => Math.max(0, hemDepth(edge) - table.cloth.unusedSelvedge)
  return length(Math.max(0, table.usableWidth - hem(left) - hem(right)))
}

/** The length of cloth between its end hems, or what is trimmed to square it where that is more; null for a bolt. */
export function clearLength(table: ClothOnTable): Length | null {
  if (table.length === null) return null
  const { head, foot } = table.edges
  const off = (edge: ClothEdge): number => Math.max(hemDepth(edge), table.cloth.spareEachEnd)
  return length(Math.max(0, table.length - off(head) - off(foot)))
}

/** Depth of a hem, 0 for any other edge. */
export const hemDepth = (edge: ClothEdge): Length => (edge.kind === 'hem' ? edge.depth : ZERO)

function trueSelvedges(cloth: Cloth): ClothOnTable['selvedges'] {
  const { left, right } = cloth.edges
  return cloth.unusedSelvedge > 0
    ? { left: false, right: false }
    : { left: left.kind === 'selvedge', right: right.kind === 'selvedge' }
}

function shrunkEdges(edges: ClothEdges, along: (l: Length) => Length, across: (l: Length) => Length): ClothEdges {
  const shrunk = (edge: ClothEdge, by: (l: Length) => Length): ClothEdge =>
    edge.kind === 'hem' ? { kind: 'hem', depth: by(edge.depth) } : edge
  return {
    head: shrunk(edges.head, along),
    foot: shrunk(edges.foot, along),
    left: shrunk(edges.left, across),
    right: shrunk(edges.right, across),
  }
}
