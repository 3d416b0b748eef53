import { END } from '../model.ts'
import type { Problem } from '../problem.ts'
import { addCopies, lowestFrom } from './sum-bits.ts'

const MOST_SUMS = 20_000
/** Additions tried for one list. */
const MOST_WORK = 2_000_000

/** Sums up to this many units are marked by bits, which are quicker than a list where sums are many. */
const MOST_BITS = 1 << 17

/**
 * The lengths an answer can have. Where nothing holds pieces apart, all can be pushed toward the start until each lies on
 * another, so the answer's length is a sum of lengths of pieces: a bound may be rounded up to the next such sum
 * (the normal patterns of Herz 1972 and Christofides & Whitlock 1977, along one axis).
 */
export function reachableLengths(problem: Problem, most: number): Float64Array | null {
  return settles(problem) ? sumsUpTo(lengthsOf(problem), most) : null
}

/** A length rounded up to the next that an answer can have; as it is where they are too many to tell. */
export function roundUpLength(problem: Problem, length: number): number {
  if (!settles(problem)) return length
  const items = lengthsOf(problem)
  const most = length + Math.max(0, ...items.flatMap((item) => item.sizes))
  if (most >= MOST_BITS) return nextOf(sumsUpTo(items, most) ?? NONE, length)
  const bits = new Uint32Array((most >> 5) + 1)
  bits[0] = 1
  for (const { sizes, count } of items) addCopies(bits, sizes, count)
  return lowestFrom(bits, length) ?? length
}

const NONE = new Float64Array(0)

function settles({ flaws, zones, kinds, request }: Problem): boolean {
  return (
    flaws.length === 0 &&
    zones.start === 0 &&
    kinds.every((k) => k.tie?.axis !== 'along') &&
    request.demands.every((d) => d.count === 0 || d.postures.every((p) => !(p.flush & END)))
  )
}

const lengthsOf = ({ kinds }: Problem) =>
  kinds.map((k) => ({ count: k.count, sizes: [...new Set(k.postures.map((p) => p.length))] }))

/** Sums of at most `count` sizes of each item, ascending and up to `most`; null when there are too many to list. */
export function sumsUpTo(
  items: readonly { readonly count: number; readonly sizes: readonly number[] }[],
  most: number,
): Float64Array | null {
  const isNew = firstTime(most)
  isNew(0)
  const sums = [0]
  let work = 0
  for (const { count, sizes } of items) {
    // only a sum that came with the last copy can lead to one that is not there yet
    let from = 0
    for (let n = 0; n < count && from < sums.length; n++) {
      const to = sums.length
      work += (to - from) * sizes.length
      if (work > MOST_WORK) return null
      for (; from < to; from++)
        for (const size of sizes) {
          const sum = sums[from]! + size
          if (sum <= most && isNew(sum)) sums.push(sum)
        }
      if (sums.length > MOST_SUMS) return null
    }
  }
  return Float64Array.from(sums).sort()
}

/** Tells whether a number from 0 to `most` is met for the first time; by bits where they take little room. */
function firstTime(most: number): (n: number) => boolean {
  if (most >= MOST_MARKS) {
    const met = new Set<number>()
    return (n) => met.size < met.add(n).size
  }
  const met = new Uint32Array((most >> 5) + 1)
  return (n) => {
    const bit = 1 << (n & 31)
    if (met[n >> 5]! & bit) return false
    met[n >> 5]! |= bit
    return true
  }
}

const MOST_MARKS = 1 << 20

/** The smallest of ascending `values` that is not below `at`, or `at` itself beyond them. */
export function nextOf(values: Float64Array, at: number): number {
  let low = 0
  let high = values.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (values[middle]! < at) low = middle + 1
    else high = middle
  }
  return low < values.length ? values[low]! : at
}
