import type { Problem } from '../problem.ts'
import { barSums, columnSums } from './patterns.ts'
import type { Scales } from './scales.ts'
import { leastOf } from './scales.ts'

/**
 * Rescaled sizes as weights of pieces, for a field that ends at a given reach. A block takes up all the rescaled width that pieces beside it
 * can no longer take, and the same along: with the rest of the pieces it must still fit the rescaled field. Where gaps cannot be
 * filled this tells far more than area does.
 */
export interface Weights {
  /** weight of one piece of each kind, laid its lightest way */
  readonly values: readonly number[]
  readonly width: number
  readonly length: number
  /** the most rescaled width that fits a room across, and length that fits a room along */
  readonly across: (room: number) => number
  readonly along: (room: number) => number
}

/** Null when numbers would no longer be exact, or rows are too many to list. */
export function weightsOf(problem: Problem, scales: Scales, reach: number): Weights | null {
  const values = problem.kinds.map((_, kind) => leastOf(scales, kind))
  const bars = barSums(problem, (kind, posture) => scales.across[kind]![posture]!)
  const columns = scales.columns ?? columnSums(problem, reach, (kind, posture) => scales.along[kind]![posture]!)
  const total = problem.kinds.reduce((sum, k, kind) => sum + k.count * values[kind]!, 0)
  if (!bars || !columns || Math.max(total, scales.width * scales.length) > 2 ** 50) return null
  return {
    values,
    width: scales.width,
    length: scales.length,
    across: (room) => Math.min(scales.width, bars.dearest(room)),
    along: (room) => columns.dearest(room),
  }
}
