import type { Problem } from '../problem.ts'

/** Multisets of a problem's pieces as numbers: how many of each kind, in mixed radix, so that sums of numbers are sums of multisets. */
export class Multisets {
  /** the number of one piece of each kind */
  readonly one: readonly number[]
  /** the number of everything */
  readonly full: number
  private readonly counts: readonly number[]
  private readonly areas: readonly number[]
  private parts = new Float64Array(1)
  private spare = new Float64Array(1)

  constructor({ kinds }: Problem) {
    this.counts = kinds.map((k) => k.count)
    this.areas = kinds.map((k) => k.area)
    const one: number[] = []
    let m = 1
    for (const k of kinds) {
      one.push(m)
      m *= k.count + 1
    }
    this.one = one
    this.full = m - 1
  }

  countsOf(m: number): number[] {
    const { counts } = this
    const out: number[] = []
    let rest = m
    for (let kind = 0; kind < counts.length; kind++) {
      const base = counts[kind]! + 1
      out.push(rest % base)
      rest = Math.floor(rest / base)
    }
    return out
  }

  /** The least area its pieces cover. */
  areaOf(m: number): number {
    const { counts, areas } = this
    let rest = m
    let sum = 0
    for (let kind = 0; kind < counts.length; kind++) {
      const base = counts[kind]! + 1
      sum += (rest % base) * areas[kind]!
      rest = Math.floor(rest / base)
    }
    return sum
  }

  /** All multisets with at most so many of each kind whose numbers are no higher than `most`, by number. Good until the next call. */
  partsOf(counts: readonly number[], most: number): Float64Array {
    const room = counts.reduce((product, n) => product * (n + 1), 1)
    if (this.parts.length < room) {
      this.parts = new Float64Array(room)
      this.spare = new Float64Array(room)
    }
    let length = 1
    this.parts[0] = 0
    // the kind that counts most first: each round puts numbers between those there are
    for (let kind = counts.length - 1; kind >= 0; kind--) {
      const before = this.parts
      this.parts = this.spare
      this.spare = before
      const one = this.one[kind]!
      let at = 0
      for (let i = 0; i < length; i++)
        for (let n = 0, m = before[i]!; n <= counts[kind]! && m <= most; n++, m += one) this.parts[at++] = m
      length = at
    }
    return this.parts.subarray(0, length)
  }
}

/** How many multisets there are; the cost of a complete search grows with its square. */
export function multisets(problem: Problem): number {
  return problem.kinds.reduce((m, k) => m * (k.count + 1), 1)
}
