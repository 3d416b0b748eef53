import type { Model } from 'javascript-lp-solver'
import solver from 'javascript-lp-solver'
import type { Certificate } from '../model.ts'
import type { Problem } from '../problem.ts'
import type { Bar } from './dearest-bar.ts'
import { dearestBars, MOST_WORK } from './dearest-bar.ts'

/**
 * The bar relaxation: every slice across a layout is a bar of pieces side by side, and bars must supply each piece's
 * length. Its linear programme is that of one-dimensional cutting stock over the widths (Gilmore & Gomory 1961; as a bound for
 * strips: Scheithauer 1999, Belov, Kartak, Rohling & Scheithauer 2009).
 *
 * Solved from the dual side: values t of the pieces, so that no known bar is worth more than 1; the dearest bar under these
 * values is found by a bounded knapsack and added, until none is worth more than 1. The programme's own answer is not trusted:
 * its values, rounded to whole prices, are priced exactly over all bars, and total ÷ dearest is a bound whatever the prices are
 * (Farley 1990). So it may also be stopped at any time: when no better bound than `known` can come, when one of `enough` has,
 * or when it has cost more than is allowed. Where many values are equally good, `lean` (a hair above or below 0) prefers later
 * or earlier kinds.
 */
export function barBound(
  problem: Problem,
  known: number,
  enough: number,
  allowance: Allowance,
  lean = 0,
): Certificate | null {
  const { kinds } = problem
  const longest = Math.max(...kinds.flatMap((k) => k.possible.map((p) => p.length)))
  const bars: Bar[] = []
  for (const [kind, k] of kinds.entries())
    for (const [posture, p] of k.possible.entries())
      bars.push([{ kind, posture, times: Math.min(k.count, Math.max(1, Math.floor(problem.width / p.width))) }])
  const listed = new Set(bars.map(keyOf))
  let best: Certificate | null = null
  let values: number[] | null = null
  // rounds are short, and asking may take as long as one: every fourth asks whether to stop
  for (let round = 0; allowance.steps < allowance.most && !(round % 4 === 0 && allowance.stop?.()); round++) {
    allowance.steps += MASTER_STEPS * bars.length * kinds.length
    const next = solveMaster(problem, bars, longest, lean)
    if (!next) break
    values = next.values
    // more bars only lower the programme's value: no bound above this one will come
    if (Math.ceil(next.worth * longest - 1e-6) <= Math.max(known, best?.bound ?? 0)) break
    const price = (kind: number, posture: number) =>
      (next.values[kind]! * longest) / kinds[kind]!.possible[posture]!.length
    const dearest = dearestBars(problem, price, 8)
    allowance.steps += dearest?.sums ?? MOST_WORK
    if (!dearest) return best
    const top = dearest.bars[0]?.price ?? 0
    if (top > 0 && (next.worth * longest) / top > (best?.bound ?? known))
      best = better(best, priced(problem, next.values, longest))
    if (best && best.bound >= enough) break
    // a bar already there is worth more than 1 only where the programme was solved with less than full accuracy
    const found = dearest.bars.filter((b) => b.price > 1 + 1e-7 && !listed.has(keyOf(b.bar)))
    if (found.length === 0) break
    for (const { bar } of found) {
      bars.push(bar)
      listed.add(keyOf(bar))
    }
  }
  return values ? better(best, priced(problem, values, longest)) : best
}

/**
 * Steps that bounds may take, and have taken so far, counted as the searches count theirs: a number of a programme's matrix
 * takes as long as a few, a sum of a knapsack as one. `stop` ends a bound early; what it shows then is still true.
 */
export interface Allowance {
  readonly most: number
  steps: number
  readonly stop?: (() => boolean) | undefined
}

const MASTER_STEPS = 5

const keyOf = (bar: Bar): string =>
  bar
    .map(({ kind, posture, times }) => `${kind} ${posture} ${times}`)
    .sort()
    .join()

/** Values of the kinds, in lengths of the longest piece: as much as possible in all, no known bar above 1. */
function solveMaster(
  problem: Problem,
  bars: readonly Bar[],
  longest: number,
  lean: number,
): { readonly values: number[]; readonly worth: number } | null {
  const { kinds } = problem
  const variables: Record<string, Record<string, number>> = {}
  for (const [i, k] of kinds.entries()) variables[`t${i}`] = { worth: k.count * (1 + (lean * (i + 1)) / kinds.length) }
  const constraints: Record<string, { max: number }> = {}
  for (const [b, bar] of bars.entries()) {
    constraints[`bar${b}`] = { max: 1 }
    for (const { kind, posture, times } of bar) {
      const row = variables[`t${kind}`]!
      row[`bar${b}`] = (row[`bar${b}`] ?? 0) + (times * longest) / kinds[kind]!.possible[posture]!.length
    }
  }
  const model: Model = { optimize: 'worth', opType: 'max', constraints, variables }
  const result = solver.Solve(model) as { feasible?: boolean; bounded?: boolean } & Record<string, unknown>
  if (!result.feasible || result.bounded === false) return null
  const values = kinds.map((_, i) => Math.max(0, Number(result[`t${i}`] ?? 0)))
  return { values, worth: kinds.reduce((sum, k, i) => sum + k.count * values[i]!, 0) }
}

// whole prices: a number with many divisors, since values are often simple fractions, and a fine one
const SCALES = [27_720, 1_000_000]

/** The bound that whole prices near `values` show. */
function priced(problem: Problem, values: readonly number[], longest: number): Certificate | null {
  let best: Certificate | null = null
  for (const scale of SCALES) {
    const price = (kind: number, posture: number) =>
      Math.round((values[kind]! * scale * longest) / problem.kinds[kind]!.possible[posture]!.length)
    best = better(best, certificateOf(problem, price))
  }
  return best
}

/** What these whole prices show; null when bars are too many to price. */
export function certificateOf(problem: Problem, price: (kind: number, posture: number) => number): Certificate | null {
  const dearest = dearestBars(problem, price, 1)
  const capacity = dearest?.bars[0]?.price ?? 0
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
function pricesOf(problem: Problem): (kind: number, posture: number) => number {
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
