import type { Problem, Spot } from '../problem.ts'
import { endOf } from '../problem.ts'
import { ORDERS, rows } from './rows.ts'

/** The shortest of the quick layouts; null when none of them succeeds. */
export function quickStart(problem: Problem): Spot[] | null {
  let best: Spot[] | null = null
  for (const order of ORDERS) {
    const spots = rows(problem, order)
    if (spots && (!best || endOf(problem, spots) < endOf(problem, best))) best = spots
  }
  return best
}
