import { expect, test } from 'vitest'
import { barBound } from '../src/bounds/bars.ts'
import { sumsUpTo } from '../src/bounds/reachable.ts'
import { bound, check, lay } from '../src/index.ts'
import { normalise } from '../src/problem.ts'
import { randomOrder } from './orders.ts'

/* Bounds are held by effort as everything else is, and what one shows that was cut short is still true. */

const MANY = Array.from({ length: 40 }, (_, seed) => randomOrder(9100 + seed, { pieces: 8, width: 23 }))

test('a bound that may take hardly a step shows less, never more', () => {
  let cutShort = 0
  for (const request of MANY) {
    const problem = normalise(request)
    if (!problem) continue
    const free = { most: 1_000_000, steps: 0 }
    const held = { most: 1, steps: 0 }
    const whole = barBound(problem, 0, Number.POSITIVE_INFINITY, free)
    const part = barBound(problem, 0, Number.POSITIVE_INFINITY, held)
    expect(held.steps).toBeLessThanOrEqual(free.steps)
    if (held.steps < free.steps) cutShort++
    if (part && whole) expect(part.bound).toBeLessThanOrEqual(whole.bound)
  }
  expect(cutShort).toBeGreaterThan(10)
})

test('a bound asks whether to stop, and a stopped answer passes the checker', () => {
  for (const request of MANY) {
    let asked = 0
    const stop = () => {
      asked++
      return true
    }
    expect(bound(request, { steps: 0, stop }).bound).toBeLessThanOrEqual(bound(request).bound)
    const answer = lay(request, { effort: 1_000_000, stop })
    expect(asked).toBeLessThan(200)
    expect(check(request, answer)).toEqual([])
  }
})

test('sums of a thousand pieces of one size are listed as those of a naive count are', () => {
  const items = [
    { count: 1_000, sizes: [7, 11] },
    { count: 3, sizes: [500] },
  ]
  const sums = new Set<number>()
  for (let a = 0; a <= 1_000; a++)
    for (let b = 0; a + b <= 1_000; b++)
      for (let c = 0; c <= 3; c++) if (7 * a + 11 * b + 500 * c <= 9_000) sums.add(7 * a + 11 * b + 500 * c)
  expect([...sumsUpTo(items, 9_000)!]).toEqual([...sums].sort((a, b) => a - b))
})

test('sums of a great many different sizes are left aside rather than listed at any cost', () => {
  const many = Array.from({ length: 3_000 }, (_, i) => ({ count: 1, sizes: [100 + (i % 200), 300 + (i % 190)] }))
  expect(sumsUpTo(many, 19_000)).toBeNull()
})
