import { sumsUpTo } from '../bounds/reachable.ts'
import { addCopies } from '../bounds/sum-bits.ts'

/** Sums are kept as bits up to this many units; beyond it, as one sorted list for all pieces. */
const MOST_BITS = 4096

/**
 * How much of a stretch must stay empty because no sum of the sizes at hand fills it.
 * With few units the sums of the pieces that really remain are used, else those of all pieces: never more than the truth.
 */
export class Reach {
  private readonly items: readonly Item[]
  /** by item: sums of it and all items after it, as `counted` of each remain; the last is the empty sum alone */
  private readonly bits: readonly Uint32Array[]
  private readonly counted: number[]
  private readonly sums: Float64Array | null

  constructor(items: readonly Item[], most: number) {
    this.items = items
    const few = most < MOST_BITS
    this.bits = few ? Array.from({ length: items.length + 1 }, () => new Uint32Array((most >> 5) + 1)) : []
    for (const bits of this.bits) bits[0] = 1
    this.counted = items.map(() => 0)
    this.sums = few ? null : sumsUpTo(items, most)
  }

  /** Units of a stretch that stay empty at least, when as many of each item remain as it was turned to. */
  gapOf(stretch: number): number {
    const { bits, sums } = this
    if (bits.length > 0) return stretch - highestUpTo(bits[0]!, stretch)
    return sums ? stretch - lastUpTo(sums, stretch) : 0
  }

  /** So many of each item remain. */
  turnTo(counts: readonly number[]): void {
    if (this.bits.length > 0) this.fill(counts)
  }

  /** Most calls differ from the one before in the first items only: what the others sum up to is there already. */
  private fill(counts: readonly number[]): void {
    let i = this.items.length - 1
    while (i >= 0 && counts[i] === this.counted[i]) i--
    for (; i >= 0; i--) {
      const bits = this.bits[i]!
      bits.set(this.bits[i + 1]!)
      addCopies(bits, this.items[i]!.sizes, counts[i]!)
      this.counted[i] = counts[i]!
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
