import type { Money, Price } from './money.ts'
import { toCoins } from './money.ts'
import { decimal, readableBack, space } from './print-length.ts'
import type { Share } from './share.ts'

/** `5 %`, `2.5 %`: exact. */
export function printPercent(share: Share, options: { readonly noBreak?: boolean } = {}): string {
  return `${readableBack(decimal(BigInt(share), 10_000n, 4))}${space(options)}%`
}

/** `81.20`, or `81.20 EUR` with a currency: to the smallest coin, half a coin and more rounded up. */
export function printMoney(
  money: Money,
  currency?: string | null,
  options: { readonly noBreak?: boolean } = {},
): string {
  const amount = twoPlaces(toCoins(money))
  return currency ? `${amount}${space(options)}${currency}` : amount
}

/** `14.50 per m`, as it is read. */
export const printPrice = (price: Price): string => `${twoPlaces(price.coins)} per ${price.per}`

function twoPlaces(coins: number): string {
  return `${Math.floor(coins / 100)}.${String(coins % 100).padStart(2, '0')}`
}
