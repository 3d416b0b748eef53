import type { Problem, Spot } from '../problem.ts'
import { endOf } from '../problem.ts'
import { besideWide } from './beside.ts'
import { ORDERS, rows } from './rows.ts'

/** The shortest of the quick layouts, of the first of them only when told to stop; null when none of them succeeds. */
export function quickStart(problem: Problem, stop: () => boolean = () => false): Spot[] | null {
  let best = besideWide(problem)
  for (const order of ORDERS) {
    if (best && stop()) break
    const spots = rows(problem, order)
    if (spots && (!best || endOf(problem, spots) < endOf(problem, best))) best = spots
  }
  return best
}
