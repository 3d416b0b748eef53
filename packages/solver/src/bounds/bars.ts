import type { Certificate } from '../model.ts'
import type { Problem } from '../problem.ts'
import { dearestBars } from './patterns.ts'
import type { Allowance, Axis, Values } from './values.ts'
import { singles, valuesAlong } from './values.ts'

/**
 * The bar relaxation: every slice across a layout is a bar of pieces side by side, and bars must supply each piece's
 * length. Its linear programme is that of one-dimensional cutting stock over the widths (Gilmore & Gomory 1961; as a bound for
 * strips: Scheithauer 1999, Belov, Kartak, Rohling & Scheithauer 2009).
 *
 * The programme's own answer is not trusted: its values, rounded to whole prices, are priced exactly over all bars, and
 * total ÷ dearest is a bound whatever the prices are (Farley 1990). So it may also be stopped at any time: when no better bound than
 * `known` can come, when one of `enough` has, or when it has cost more than is allowed.
 */
export function barBound(
  problem: Problem,
  known: number,
  enough: number,
  allowance: Allowance,
  lean = 0,
  across: Axis = acrossOf(problem),
): Certificate | null {
  let best: Certificate | null = null
  let fullest: Values | null = null
  const lengthOf = (kind: number, posture: number) => problem.kinds[kind]!.possible[posture]!.length
  const found = valuesAlong(
    problem,
    across,
    lengthOf,
    allowance,
    (round) => {
      // more bars only lower the programme's value: no bound above this one will come
      const most = Math.ceil(round.worth - EXACT)
      if (most <= Math.max(known, best?.bound ?? 0)) return true
      if (round.top > 0 && (!fullest || shows(round) > shows(fullest))) fullest = round
      if (fullest !== round || Math.ceil(shows(round) - EXACT) < Math.min(most, enough)) return false
      best = better(best, priced(problem, round.values, most))
      return best !== null && best.bound >= Math.min(most, enough)
    },
    lean,
  )
  // ended early, the last round need not be the one that shows most
  for (const round of new Set([fullest, found]))
    if (round && (!best || Math.ceil(round.worth - EXACT) > best.bound))
      best = better(best, priced(problem, round.values, Math.ceil(round.worth - EXACT)))
  return best
}

/** The bound that exact prices near these values would show. */
const shows = ({ worth, top }: Values): number => worth / top
const EXACT = 1e-6

/** Bars across the field. */
export function acrossOf(problem: Problem): Axis {
  return {
    known: singles(problem, problem.width, 'width'),
    dearest: (price, most) => dearestBars(problem, price, most),
  }
}

// whole prices: a number with many divisors, since values are often simple fractions, and a fine one
const SCALES = [27_720, 1_000_000]

/** The bound that whole prices near `values` show; it cannot be above `most`. */
function priced(problem: Problem, values: readonly number[], most: number): Certificate | null {
  let best: Certificate | null = null
  for (const scale of SCALES) {
    const price = (kind: number, posture: number) =>
      Math.round((values[kind]! * scale) / problem.kinds[kind]!.possible[posture]!.length)
    best = better(best, certificateOf(problem, price))
    if (best && best.bound >= most) break
  }
  return best
}

/** What these whole prices show; null when bars are too many to price. */
export function certificateOf(problem: Problem, price: (kind: number, posture: number) => number): Certificate | null {
  const dearest = dearestBars(problem, price, 1)
  const capacity = dearest?.patterns[0]?.price ?? 0
  if (capacity <= 0) return null
  let total = 0n
  const prices = problem.request.demands.map((d) => d.postures.map(() => 0))
  for (const [kind, k] of problem.kinds.entries()) {
    let least: bigint | null = null
    for (const [posture, p] of k.possible.entries()) {
      const value = BigInt(price(kind, posture)) * BigInt(p.length)
      if (least === null || value < least) least = value
      for (const { demand } of k.demands) prices[demand]![p.index] = price(kind, posture)
    }
    total += BigInt(k.count) * least!
  }
  const bound = Number((total + BigInt(capacity) - 1n) / BigInt(capacity))
  return { by: 'bars', bound, prices: prices.flat(), capacity }
}

/** The bound that the prices of two others in the middle show. */
export function between(problem: Problem, a: Certificate, b: Certificate): Certificate | null {
  if (a.by !== 'bars' || b.by !== 'bars') return null
  const at = pricesOf(problem)
  return certificateOf(
    problem,
    (kind, posture) => a.prices[at(kind, posture)]! * b.capacity + b.prices[at(kind, posture)]! * a.capacity,
  )
}

/** The bound that prices found for a field of another width show here. */
export function repriced(problem: Problem, { prices }: Extract<Certificate, { by: 'bars' }>): Certificate | null {
  const at = pricesOf(problem)
  return certificateOf(problem, (kind, posture) => prices[at(kind, posture)]!)
}

/** Where in a certificate's list the price of a kind's posture stands. */
export function pricesOf(problem: Problem): (kind: number, posture: number) => number {
  const firsts: number[] = []
  let at = 0
  for (const d of problem.request.demands) {
    firsts.push(at)
    at += d.postures.length
  }
  return (kind, posture) => {
    const k = problem.kinds[kind]!
    return firsts[k.demands[0]!.demand]! + k.possible[posture]!.index
  }
}

function better(a: Certificate | null, b: Certificate | null): Certificate | null {
  return a && (!b || a.bound >= b.bound) ? a : b
}
