import type { Length } from '@lengthwise/units'
import { length, roundUpTo } from '@lengthwise/units'
import { shareOut } from '../cut-size.ts'

/** What each of `n` equal parts is cut so that, joined by seams of `allowance`, they come to `total` or a little more. */
export function partOf(total: Length, n: number, allowance: Length, markTo: Length): Length {
  return roundUpTo(shareOut(total + 2 * (n - 1) * allowance, n), markTo)
}

/**
 * The fewest equal parts none of which is longer than `room`; null where joining takes as much as it gives, or where
 * there would be more than `most`.
 */
export function fewestParts(
  total: Length,
  room: Length,
  allowance: Length,
  markTo: Length,
  most: number,
): number | null {
  const gain = room - 2 * allowance
  if (gain <= 0) return total <= room ? 1 : null
  // n parts of `room` come to n · gain + 2 · allowance; the marking step may ask for one more
  let n = Math.max(1, Math.ceil(length(Math.max(0, total - 2 * allowance)) / gain))
  while (n <= most && partOf(total, n, allowance, markTo) > room) n++
  return n <= most ? n : null
}
