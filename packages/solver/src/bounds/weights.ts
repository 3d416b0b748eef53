import type { Certificate } from '../model.ts'
import type { Problem } from '../problem.ts'
import { barSums } from './patterns.ts'

/**
 * The duals of the bar relaxation as weights of pieces: every unit of length holds at most `capacity`, and beside a block at most what
 * fits the rest of the width. Where bars cannot be filled this tells far more than area does.
 */
export interface Weights {
  /** weight of one piece of each kind, laid its lightest way */
  readonly values: readonly number[]
  readonly capacity: number
  /** the heaviest row of pieces within a width, per unit of length */
  readonly within: (room: number) => number
}

/** Null when numbers would no longer be exact, or rows are too many to list. */
export function weightsOf(problem: Problem, certificate: Certificate): Weights | null {
  if (certificate.by !== 'bars') return null
  const { kinds, width } = problem
  const firsts: number[] = []
  let at = 0
  for (const d of problem.request.demands) {
    firsts.push(at)
    at += d.postures.length
  }
  const price = (kind: number, posture: number) =>
    certificate.prices[firsts[kinds[kind]!.demands[0]!.demand]! + kinds[kind]!.possible[posture]!.index]!
  const values = kinds.map((k, kind) => Math.min(...k.possible.map((p, posture) => price(kind, posture) * p.length)))
  const total = kinds.reduce((sum, k, kind) => sum + k.count * values[kind]!, 0)
  const sums = barSums(problem, price)
  if (!sums || total > 2 ** 50) return null
  const dearest = sums.dearestWithin(width)
  return { values, capacity: certificate.capacity, within: (room) => Math.min(certificate.capacity, dearest(room)) }
}
