import type { Cloth, Order } from '@lengthwise/pieces'
import type { Length, Money, Price } from '@lengthwise/units'
import { afterShrinking, beforeShrinking, costOf, length, roundUpTo } from '@lengthwise/units'

/**
 * What to buy so that `laid` lies between the squared ends: (laid + both spares) before the wash, not less than the
 * smallest sale, rounded up to the shop's step. Where a motif is to be centred and the place of the first one is not
 * known, one repeat more is bought, so that the layout can be moved.
 */
export function buyLength(order: Order, cloth: Cloth, laid: number): Length {
  const { motif, repeat, repeatMeasured } = cloth.print
  const washed = order.wash === 'before-cutting'
  const play =
    !motif || motif.first !== null
      ? 0
      : repeatMeasured === 'in-shop' && washed
        ? afterShrinking(repeat, cloth.shrinks.along)
        : repeat
  const onTable = length(laid + 2 * cloth.spareEachEnd + play)
  const before = washed ? beforeShrinking(onTable, cloth.shrinks.along) : onTable
  return roundUpTo(length(Math.max(before, cloth.smallestSale)), cloth.soldBy)
}

export const isBolt = (cloth: Cloth): boolean => cloth.from === 'bolt'

/** The length on the table of cloth bought or owned. */
export const lengthOnTable = (order: Order, cloth: Cloth, bought: Length): Length =>
  order.wash === 'before-cutting' ? afterShrinking(bought, cloth.shrinks.along) : bought

export const priceAt = (cloth: Cloth, widthIndex: number): Price | null => cloth.widths[widthIndex]?.price ?? null

/** What is made as small as can be: money when every width the shop has is priced, else square units of cloth as sold. */
export type Objective = 'cost' | 'area'

export function objectiveOf(order: Order): Objective {
  const sold = order.cloths.filter((cloth) => cloth.from === 'bolt' && cloth.sold)
  return sold.every((cloth) => cloth.widths.every((w) => w.price !== null)) ? 'cost' : 'area'
}

/** The worth of `bought` in the objective: fine money or square units. */
export function worth(objective: Objective, cloth: Cloth, widthIndex: number, bought: Length): bigint {
  const width = cloth.widths[widthIndex]?.width
  if (width === undefined) throw new RangeError(`worth: ${cloth.name} has no width ${widthIndex}`)
  // a bolt that is owned and not sold may have no price
  if (bought === 0) return 0n
  if (objective === 'area') return BigInt(width) * BigInt(bought)
  const price = priceAt(cloth, widthIndex)
  if (!price) throw new RangeError(`worth: ${cloth.name} has no price at width ${widthIndex}`)
  return costOf(price, bought)
}

export function moneyFor(cloth: Cloth, widthIndex: number, bought: Length): Money | null {
  const price = priceAt(cloth, widthIndex)
  return price ? costOf(price, bought) : null
}
