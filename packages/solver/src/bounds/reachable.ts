import { END } from '../model.ts'
import type { Problem } from '../problem.ts'

const MOST_SUMS = 20_000
/** Additions tried for one list. */
const MOST_WORK = 2_000_000

/**
 * The lengths an answer can have. Where nothing holds pieces apart, all can be pushed toward the start until each lies on
 * another, so the answer's length is a sum of lengths of pieces: a bound may be rounded up to the next such sum
 * (the normal patterns of Herz 1972 and Christofides & Whitlock 1977, along one axis).
 */
export function reachableLengths(problem: Problem, most: number): Float64Array | null {
  const settles =
    problem.flaws.length === 0 &&
    problem.zones.start === 0 &&
    problem.kinds.every((k) => k.tie?.axis !== 'along') &&
    problem.request.demands.every((d) => d.count === 0 || d.postures.every((p) => !(p.flush & END)))
  return settles
    ? sumsUpTo(
        problem.kinds.map((k) => ({ count: k.count, sizes: k.postures.map((p) => p.length) })),
        most,
      )
    : null
}

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

/** Tells whether a number from 0 to `most` is met for the first time; by marks where they take little room. */
function firstTime(most: number): (n: number) => boolean {
  if (most >= MOST_MARKS) {
    const met = new Set<number>()
    return (n) => met.size < met.add(n).size
  }
  const met = new Uint8Array(most + 1)
  return (n) => {
    if (met[n] === 1) return false
    met[n] = 1
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
