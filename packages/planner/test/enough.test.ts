import type { Order } from '@lengthwise/pieces'
import { cm, length } from '@lengthwise/units'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { plan } from '../src/index.ts'
import { bolt, orderOf, rectangle } from './orders.ts'

/* 'N or more is enough': the same purchase at every marking step from N up to the width chosen, and another at one step less. */

const STEP = cm(6)

const orders = fc.record({
  width: fc.integer({ min: 60, max: 140 }),
  mats: fc.array(
    fc.record({
      width: fc.integer({ min: 15, max: 75 }),
      long: fc.integer({ min: 15, max: 90 }),
      count: fc.integer({ min: 1, max: 3 }),
      runs: fc.constantFrom('along' as const, 'either' as const),
      selvedge: fc.constantFrom(null, null, 'left' as const, 'right' as const),
    }),
    { minLength: 1, maxLength: 3 },
  ),
  divideBy: fc.constantFrom('tearing' as const, 'tearing' as const, 'thread' as const, 'shears' as const),
})

it('is exact on random plans, each width between planned by itself', () => {
  const none = { kind: 'none' as const }
  const count = { plans: 0, widths: 0, narrower: 0 }
  fc.assert(
    fc.property(orders, ({ width, mats, divideBy }) => {
      const order = (at: number): Order =>
        orderOf(
          mats.map((m, i) =>
            rectangle(`mat ${i}`, m.width, m.long, {
              count: m.count,
              lengthRuns: m.runs,
              needs: {
                head: none,
                foot: none,
                left: m.selvedge === 'left' ? { kind: 'selvedge' } : none,
                right: m.selvedge === 'right' ? { kind: 'selvedge' } : none,
              },
            }),
          ),
          [bolt('cloth', [at / 3200], { divideBy })],
          { markTo: STEP },
        )
      const [row] = plan(order(cm(width))).widths
      if (!row?.possible || row.status !== 'proved') return
      count.plans++
      const enough = row.enoughFrom!
      expect((cm(width) - enough) % STEP).toBe(0)
      for (let at = cm(width) - STEP; at >= enough; at -= STEP) {
        count.widths++
        const result = plan(order(at), { compareWidths: false })
        expect(result.buy[0]?.quantity, `at ${at / 3200} cm, enough from ${enough / 3200}`).toBe(row.buyLength)
      }
      const less = length(enough - STEP)
      if (less <= 0) return
      const narrower = plan(order(less), { compareWidths: false })
      if (narrower.status === 'laid' && narrower.proof.status !== 'proved') return
      count.narrower++
      expect(narrower.buy[0]?.quantity ?? null, `at ${less / 3200} cm`).not.toBe(row.buyLength)
    }),
    { seed: 11, numRuns: 40 },
  )
  expect(count.plans).toBeGreaterThan(20)
  expect(count.widths).toBeGreaterThan(20)
  expect(count.narrower).toBeGreaterThan(20)
})
