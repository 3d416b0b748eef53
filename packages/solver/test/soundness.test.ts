import { expect, test } from 'vitest'
import { barBound } from '../src/bounds/bars.ts'
import { weightsOf } from '../src/bounds/weights.ts'
import { shortest } from '../src/exact/shortest.ts'
import type { Strictness } from '../src/exact/strictness.ts'
import { SOUND } from '../src/exact/strictness.ts'
import type { Request } from '../src/index.ts'
import { normalise } from '../src/problem.ts'
import { naiveLength } from './naive.ts'
import type { Rules } from './orders.ts'
import { randomOrder } from './orders.ts'

/**
 * Each rule that throws blocks away, made one unit too strict, must lose the shortest layout of some small order: so no rule could be
 * any stronger, and one that became so would be seen here. What is the shortest a naive method says.
 */
const SPOILT: { readonly rule: keyof Strictness; readonly orders: Omit<Rules, 'pieces' | 'width'> }[] = [
  { rule: 'budget', orders: {} },
  { rule: 'budget', orders: { flush: true, turning: true } },
  { rule: 'gaps', orders: {} },
  { rule: 'gaps', orders: { finite: true } },
  { rule: 'weights', orders: {} },
  { rule: 'weights', orders: { flush: true } },
  { rule: 'dominance', orders: {} },
  { rule: 'dominance', orders: { ties: true } },
  { rule: 'movedDominance', orders: { ties: true } },
  { rule: 'walk', orders: { turning: true } },
  { rule: 'zones', orders: { zones: true, flush: true } },
  { rule: 'zones', orders: { zones: true, flush: true, finite: true } },
  { rule: 'lengths', orders: {} },
]

for (const { rule, orders } of SPOILT)
  test(`${rule} one unit too strict loses layouts of orders with ${Object.keys(orders).join(', ') || 'no rules'}`, () => {
    const caught = firstWrong({ ...SOUND, [rule]: 1 }, orders)
    expect(caught).not.toBeNull()
    const truth = naiveLength(caught!.request, 40)
    expect(exact(caught!.request, SOUND)).toBe(truth)
    expect(caught!.length).not.toBe(truth)
  })

function firstWrong(strictness: Strictness, orders: Omit<Rules, 'pieces' | 'width'>) {
  for (let seed = 0; seed < 400; seed++) {
    const request = randomOrder(seed, { pieces: 3 + (seed % 3), width: 5 + (seed % 3), ...orders })
    const length = exact(request, strictness)
    if (length !== exact(request, SOUND)) return { request, length, seed }
  }
  return null
}

/** The length that the exact search alone finds: no quick layout hides what it loses, no bound spares it a limit. */
function exact(request: Request, strictness: Strictness): number | null {
  const problem = normalise(request)
  if (!problem) return null
  const bars = barBound(problem, 0, Number.POSITIVE_INFINITY)
  const weights = bars && weightsOf(problem, bars)
  const found = shortest(problem, 1, null, weights ? [weights] : [], { effort: 1_000_000 }, strictness)
  expect(found.finished).toBe(true)
  return found.best && found.best.length * problem.unitAlong
}
