import { expect, test } from 'vitest'
import { agreement } from './agree.ts'
import { anyOrder } from './every-rule.ts'

/* A part of what the bench's row `orders` goes through. */

const ORDERS = 200
const UNITS = [3, 7, 320]

test('orders under all rules: checked, as a naive method says, the same mirrored, shuffled and scaled', () => {
  const count = { proved: 0, compared: 0 }
  for (let seed = 100_000; seed < 100_000 + ORDERS; seed++) {
    const { faults, proved, compared } = agreement(anyOrder(seed), UNITS[seed % 3]!, 10_000)
    expect(faults, `seed ${seed}`).toEqual([])
    if (proved) count.proved++
    if (compared) count.compared++
  }
  expect(count.proved).toBeGreaterThan(ORDERS / 2)
  expect(count.compared).toBeGreaterThan(ORDERS / 2)
})
