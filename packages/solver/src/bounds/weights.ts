import type { Certificate } from '../model.ts'
import { LEFT, RIGHT } from '../model.ts'
import type { Problem } from '../problem.ts'
import { Sums } from './dearest-bar.ts'

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
  const sums = new Sums()
  const values: number[] = []
  const left: Choice[] = []
  const right: Choice[] = []
  let total = 0
  for (const [kind, k] of kinds.entries()) {
    const first = firsts[k.demands[0]!.demand]!
    const priced = k.possible.map((p) => ({ p, price: certificate.prices[first + p.index]! }))
    values.push(Math.min(...priced.map(({ p, price }) => price * p.length)))
    total += values[kind]! * k.count
    const inside: Choice[] = []
    for (const [posture, { p, price }] of priced.entries()) {
      const side = p.flush & LEFT ? left : p.flush & RIGHT ? right : inside
      if (price > 0) side.push({ posture, width: p.width, price })
    }
    if (inside.length === 0) continue
    const copies = Math.min(k.count, Math.floor(width / Math.min(...inside.map((c) => c.width))))
    for (let n = 0; n < copies; n++) if (!sums.add(kind, inside, width)) return null
  }
  // of all that must touch a side, a row holds one
  if (!sums.add(-1, left, width) || !sums.add(-1, right, width)) return null
  if (total > 2 ** 50) return null
  return {
    values,
    capacity: certificate.capacity,
    within: (room) => Math.min(certificate.capacity, sums.price[sums.list[sums.lastWithin(room)]!]!),
  }
}

interface Choice {
  readonly posture: number
  readonly width: number
  readonly price: number
}
