import type { Length, Share } from '@lengthwise/units'
import { afterShrinking, beforeShrinking, length } from '@lengthwise/units'
import type { RefusedWay } from './answers.ts'
import type { ClothOnTable } from './cloth.ts'
import type { Order } from './order.ts'

/** What a cloth lacks for a way: where it is too small, by how much, and the width from which the way would do. */
export type Lack = Pick<RefusedWay, 'cloth' | 'direction' | 'short' | 'widthThatWouldDo'>

/** The reason is not one of size. */
export const otherwise = (cloth: string): Lack => ({ cloth, direction: 'across', short: null, widthThatWouldDo: null })

/** Too narrow; `would` is a width as sold, null where no width is known that helps. */
export function tooNarrow(table: ClothOnTable, would: Length | null): Lack {
  const width = widthAsSold(table)
  if (would === null || would <= width) return otherwise(table.cloth.name)
  return { cloth: table.cloth.name, direction: 'across', short: length(would - width), widthThatWouldDo: would }
}

/** Too short; `needed` is the length of the whole cloth on the table that would do, null where no length is known that helps. */
export function tooShort(order: Order, table: ClothOnTable, needed: number | null): Lack {
  const { cloth } = table
  const short =
    needed === null || cloth.size === null ? null : asSold(order, needed, cloth.shrinks.along) - cloth.size.length
  return {
    cloth: cloth.name,
    direction: 'along',
    short: short === null || short <= 0 ? null : length(short),
    widthThatWouldDo: null,
  }
}

export function widthAsSold({ cloth, widthIndex, width }: ClothOnTable): Length {
  return cloth.size?.width ?? cloth.widths[widthIndex]?.width ?? width
}

/** The smallest measure of cloth as sold of which at least `onTable` is left after a wash before cutting. */
export function asSold(order: Pick<Order, 'wash'>, onTable: number, shrinks: Share): Length {
  const least = length(Math.ceil(onTable))
  if (order.wash !== 'before-cutting') return least
  const before = beforeShrinking(least, shrinks)
  // the wash rounds down, so the first measure that comes out large enough may be a unit above the division
  return afterShrinking(before, shrinks) >= least ? before : length(before + 1)
}
