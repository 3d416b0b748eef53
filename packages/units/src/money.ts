import type { Length } from './length.ts'

/**
 * Money, exact: a whole number of 1/365 760 000 of the smallest coin.
 *
 * A metre is 320 000 units of length and a yard 292 608; their least common multiple is 365 760 000, so a price
 * per metre or per yard times a length is always whole. Costs are compared as they are and rounded only to be shown.
 */
export type Money = bigint & { readonly __money: 'coin/365760000' }

export const FINE_PER_COIN = 365_760_000n

/** A price of cloth: `coins` (smallest coin, whole) for one metre or one yard. */
export interface Price {
  readonly coins: number
  readonly per: 'm' | 'yd'
}

const UNITS_PER: Record<Price['per'], bigint> = { m: 320_000n, yd: 292_608n }

/** What `bought` costs at `price`. */
export function costOf(price: Price, bought: Length): Money {
  return ((BigInt(price.coins) * BigInt(bought) * FINE_PER_COIN) / UNITS_PER[price.per]) as Money
}

/** Whole smallest coins, half a coin and more rounded up: for showing only. */
export const toCoins = (m: Money): number => Number((m + FINE_PER_COIN / 2n) / FINE_PER_COIN)
