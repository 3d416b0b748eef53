import type { Certificate } from '../model.ts'
import type { Problem } from '../problem.ts'
import { areaBound, longestBound, sidesBound, wideBound } from './simple.ts'

/** The best bound that takes no search, in the problem's units. */
export function simpleBound(problem: Problem): Certificate {
  let best = areaBound(problem)
  for (const bound of [longestBound, wideBound, sidesBound]) {
    const next = bound(problem)
    if (next.bound > best.bound) best = next
  }
  return best
}
