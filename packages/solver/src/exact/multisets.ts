import type { Problem } from '../problem.ts'

/** Multisets of a problem's pieces as numbers: how many of each kind, in mixed radix, so that sums of numbers are sums of multisets. */
export class Multisets {
  /** the number of one piece of each kind */
  readonly one: readonly number[]
  /** the number of everything */
  readonly full: number
  private readonly kinds: Problem['kinds']

  constructor({ kinds }: Problem) {
    this.kinds = kinds
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
    let rest = m
    return this.kinds.map((k) => {
      const n = rest % (k.count + 1)
      rest = Math.floor(rest / (k.count + 1))
      return n
    })
  }

  /** The least area its pieces cover. */
  areaOf(m: number): number {
    return this.countsOf(m).reduce((sum, n, i) => sum + n * this.kinds[i]!.area, 0)
  }
}

/** How many multisets there are; the cost of a complete search grows with its square. */
export function multisets(problem: Problem): number {
  return problem.kinds.reduce((m, k) => m * (k.count + 1), 1)
}
