import { sumsUpTo } from '../bounds/reachable.ts'

/** Sums are kept as bits up to this many units; beyond it, as one sorted list for all pieces. */
const MOST_BITS = 4096

/**
 * How much of a stretch must stay empty because no sum of the sizes at hand fills it.
 * With few units the sums of the pieces that really remain are used, else those of all pieces: never more than the truth.
 */
export class Reach {
  private readonly items: readonly Item[]
  private readonly bits: Uint32Array | null
  private readonly sums: Float64Array | null

  constructor(items: readonly Item[], most: number) {
    this.items = items
    this.bits = most < MOST_BITS ? new Uint32Array((most >> 5) + 1) : null
    this.sums = this.bits ? null : sumsUpTo(items, most)
  }

  /** Units of a stretch that stay empty at least, when `counts` of each item remain. The function is good until the next call. */
  gapsFor(counts: readonly number[]): (stretch: number) => number {
    const { bits, sums } = this
    if (bits) {
      this.fill(bits, counts)
      return (stretch) => stretch - highestUpTo(bits, stretch)
    }
    return sums ? (stretch) => stretch - lastUpTo(sums, stretch) : () => 0
  }

  private fill(bits: Uint32Array, counts: readonly number[]): void {
    bits.fill(0)
    bits[0] = 1
    // no sum so far lies in a word above this one
    let top = 0
    for (const [i, { sizes }] of this.items.entries()) {
      const words = Math.ceil(Math.max(...sizes) / 32)
      for (let n = 0; n < counts[i]!; n++) {
        top = Math.min(bits.length - 1, top + words)
        // from the top down, so that each word still holds the sums before this copy
        for (let w = top; w >= 0; w--) {
          let value = bits[w]!
          for (const size of sizes) {
            const from = w - (size >> 5)
            const shift = size & 31
            if (from >= 0) value |= bits[from]! << shift
            if (shift && from > 0) value |= bits[from - 1]! >>> (32 - shift)
          }
          bits[w] = value
        }
      }
    }
  }
}

export interface Item {
  readonly count: number
  readonly sizes: readonly number[]
}

function highestUpTo(bits: Uint32Array, at: number): number {
  let w = at >> 5
  let value = bits[w]! & (0xffffffff >>> (31 - (at & 31)))
  while (value === 0) value = bits[--w]!
  return w * 32 + 31 - Math.clz32(value)
}

function lastUpTo(sums: Float64Array, at: number): number {
  let low = 0
  let high = sums.length - 1
  while (low < high) {
    const middle = (low + high + 1) >> 1
    if (sums[middle]! <= at) low = middle
    else high = middle - 1
  }
  return sums[low]!
}
