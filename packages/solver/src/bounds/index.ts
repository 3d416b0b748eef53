import type { Certificate } from '../model.ts'
import type { Problem } from '../problem.ts'
import { nextOf, reachableLengths } from './reachable.ts'
import { areaBound, longestBound, sidesBound, wideBound } from './simple.ts'

/** The best bound that takes no search, in the problem's units, rounded up to a length that an answer can have. */
export function simpleBound(problem: Problem): Certificate {
  let best = areaBound(problem)
  for (const bound of [longestBound, wideBound, sidesBound]) {
    const next = bound(problem)
    if (next.bound > best.bound) best = next
  }
  return best
}

/** A length rounded up to one that an answer can have. */
export function roundUpLength(problem: Problem, length: number): number {
  const longest = Math.max(0, ...problem.kinds.flatMap((k) => k.postures.map((p) => p.length)))
  const sums = reachableLengths(problem, length + longest)
  return sums ? nextOf(sums, length) : length
}
