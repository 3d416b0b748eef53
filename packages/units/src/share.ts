import type { Length } from './length.ts'
import { length } from './length.ts'

/** A share of one, such as shrinkage, in whole millionths: 5 % is 50 000. */
export type Share = number & { readonly __share: '1/1000000' }

const ONE = 1_000_000

/** A share from per cent (at most four decimals). */
export function percent(value: number): Share {
  const millionths = Math.round(value * 10_000)
  if (Math.abs(value * 10_000 - millionths) > 1e-6)
    throw new RangeError(`percent: ${value} has more than four decimals`)
  return millionths as Share
}

export const NO_SHARE = 0 as Share

/** `finished ÷ (1 − s)`, rounded up to a whole unit: what to start from so that `finished` is left after shrinking. */
export function beforeShrinking(finished: Length, s: Share): Length {
  const left = BigInt(ONE - s)
  return length(Number((BigInt(finished) * BigInt(ONE) + left - 1n) / left))
}

/** `before × (1 − s)`, rounded down to a whole unit: what lies on the table after the wash. */
export function afterShrinking(before: Length, s: Share): Length {
  return length(Number((BigInt(before) * BigInt(ONE - s)) / BigInt(ONE)))
}
