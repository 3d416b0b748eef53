import { LEFT, RIGHT } from '../model.ts'
import type { Problem } from '../problem.ts'
import type { Dearest, Pattern, Prices } from './patterns.ts'
import { PackingProgramme } from './programme.ts'
import { MOST_WORK } from './sums.ts'

/**
 * Steps that bounds may take, and have taken so far, counted as the searches count theirs. `stop` ends a bound early; what it shows then is still true.
 */
export interface Allowance {
  readonly most: number
  steps: number
  readonly stop?: (() => boolean) | undefined
  /** from so many steps on the next question whether to stop is due */
  nextQuestion?: number
}

/** One axis of a field: patterns are what lies along it, and `known` are those met so far, which fit whatever the prices. */
export interface Axis {
  readonly known: Map<string, Pattern>
  readonly dearest: (price: Prices, most: number) => Dearest | null
}

export interface Values {
  /** of one piece of each kind; no pattern known so far is worth more than 1 */
  readonly values: readonly number[]
  /** of all pieces: no values under which no pattern at all exceeds 1 are worth more */
  readonly worth: number
  /** the dearest pattern's worth under these values; 0: not looked for */
  readonly top: number
}

/**
 * Values of the kinds, as much as possible in all, with no pattern worth more than 1 in which a piece counts its value over its
 * `extent` (kinds without extent in some posture are worth nothing). The dual side of a cutting stock programme: patterns that
 * turn out dearer than 1 are added until there are none (Gilmore & Gomory 1961), or until `enough` says so. Where many values are
 * equally good, `lean` (a hair above or below 0) prefers later or earlier kinds.
 *
 * Null when no programme was solved.
 */
export function valuesAlong(
  problem: Problem,
  axis: Axis,
  extent: Prices,
  allowance: Allowance,
  enough: (round: Values) => boolean,
  lean = 0,
): Values | null {
  const { kinds } = problem
  const counted = kinds.flatMap((k, kind) => (k.possible.every((_, p) => extent(kind, p) > 0) ? [kind] : []))
  // values are sought in units of the largest extent, so that no number in the programme is far from 1
  const unit = Math.max(...counted.flatMap((kind) => kinds[kind]!.possible.map((_, p) => extent(kind, p))))
  const place = new Map(counted.map((kind, i) => [kind, i]))
  const programme = new PackingProgramme(
    counted.map((kind, i) => kinds[kind]!.count * (1 + (lean * (i + 1)) / counted.length)),
  )
  let rows = 0
  const add = (pattern: Pattern) => {
    const shares = counted.map(() => 0)
    for (const { kind, posture, times } of pattern)
      if (place.has(kind)) shares[place.get(kind)!]! += (times * unit) / extent(kind, posture)
    programme.add(shares)
    rows++
  }
  for (const pattern of axis.known.values()) add(pattern)
  let best: Values | null = null
  while (allowance.steps < allowance.most && !isStopped(allowance)) {
    const solved = programme.solve()
    allowance.steps += Math.ceil((rows * counted.length * (1 + (solved?.steps ?? 0))) / NUMBERS_A_STEP)
    if (!solved) break
    const values = kinds.map((_, kind) => (place.has(kind) ? solved.values[place.get(kind)!]! * unit : 0))
    const worth = kinds.reduce((sum, k, kind) => sum + k.count * values[kind]!, 0)
    best = { values, worth, top: 0 }
    if (enough(best)) break
    const price: Prices = (kind, posture) => (values[kind] === 0 ? 0 : values[kind]! / extent(kind, posture))
    const dearest = axis.dearest(price, PATTERNS_A_ROUND)
    allowance.steps += dearest?.steps ?? MOST_WORK
    if (!dearest) break
    best = { values, worth, top: dearest.patterns[0]?.price ?? 0 }
    if (enough(best)) break
    // a pattern already there is worth more than 1 only where the programme was solved with less than full accuracy
    const found = dearest.patterns.filter((p) => p.price > 1 + 1e-7 && !axis.known.has(keyOf(p.pattern)))
    if (found.length === 0) break
    for (const { pattern } of found) {
      axis.known.set(keyOf(pattern), pattern)
      add(pattern)
    }
  }
  return best
}

/** Rounds are short, and asking may take as long as one. */
function isStopped(allowance: Allowance): boolean {
  if (!allowance.stop || allowance.steps < (allowance.nextQuestion ?? 0)) return false
  allowance.nextQuestion = allowance.steps + QUESTION_STEPS
  return allowance.stop()
}

const QUESTION_STEPS = 2_000

/** Patterns that every axis begins with: one kind in one posture, as often as it goes. */
export function singles(problem: Problem, room: number, of: 'width' | 'length'): Map<string, Pattern> {
  const known = new Map<string, Pattern>()
  for (const [kind, k] of problem.kinds.entries())
    for (const [posture, p] of k.possible.entries()) {
      // of those that must touch a side, only one lies there
      const most = of === 'width' && p.flush & (LEFT | RIGHT) ? 1 : k.count
      const pattern = [{ kind, posture, times: Math.min(most, Math.max(1, Math.floor(room / p[of]))) }]
      known.set(keyOf(pattern), pattern)
    }
  return known
}

const PATTERNS_A_ROUND = 8

/** So many numbers of a tableau change in the time of one step. */
const NUMBERS_A_STEP = 16

export const keyOf = (pattern: Pattern): string =>
  pattern
    .map(({ kind, posture, times }) => `${kind} ${posture} ${times}`)
    .sort()
    .join()
