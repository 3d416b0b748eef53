import { cm } from '@lengthwise/units'
import { expect, test } from 'vitest'
import { tidiestByTrying } from '../../solver/test/naive-tidiness.ts'
import { open, piece, seeded } from '../../solver/test/orders.ts'
import { plan } from '../src/index.ts'
import { bolt, orderOf, rectangle, remnant } from './orders.ts'

/*
 * What is bought being equal, the largest remnant, then the fewest divisions: small plans in steps of 10 cm, all layouts of the same
 * length tried on the whole of what is bought.
 */

const UNIT = cm(10)

test('no layout of the same length leaves a larger remnant, or as large a one in fewer divisions', () => {
  let compared = 0
  for (let seed = 1; seed <= 90; seed++) {
    const below = seeded(seed)
    const width = 5 + below(4)
    const soldBy = below(2) ? UNIT : 3 * UNIT
    const mats: { count: number; width: number; long: number; turns: boolean }[] = []
    for (let left = 2 + below(3); left > 0; ) {
      const count = Math.min(left, 1 + below(2))
      left -= count
      mats.push({ count, width: 1 + below(Math.min(6, width)), long: 1 + below(5), turns: below(4) === 0 })
    }
    const keep = [2, 2 + below(3)] as const
    const own = below(3) === 0
    const items = mats.map((m, i) =>
      rectangle(`mat ${i}`, m.width * 10, m.long * 10, {
        count: m.count,
        lengthRuns: m.turns ? 'either' : 'along',
        cloth: [own ? 'own' : 'cloth'],
      }),
    )
    const cloth = own ? remnant('own', width * 10, 90) : bolt('cloth', [width * 10], { soldBy: cm(soldBy / 3200) })
    const worthKeeping = { width: cm(keep[0] * 10), length: cm(keep[1] * 10) }
    const result = plan(orderOf(items, [cloth], { worthKeeping }), { compareWidths: false })
    const [cut] = result.cloths
    if (cut?.proof.status !== 'proved') continue
    compared++
    const demands = mats.map((m, i) => {
      const one = piece(`mat ${i}`, m.count, m.width, m.long)
      return m.turns ? { ...one, postures: [...one.postures, { width: m.long, length: m.width, flush: 0 }] } : one
    })
    const worth = (a: number, b: number) => (Math.min(a, b) >= keep[0] && Math.max(a, b) >= keep[1] ? a * b : 0)
    const best = tidiestByTrying(open(width, demands, cut.length / UNIT), cut.proof.length / UNIT, worth)
    const largest = Math.max(0, ...cut.remnants.map((r) => (r.width * r.length) / UNIT ** 2))
    expect([largest, cut.divisions.length], `seed ${seed}`).toEqual([best.largest, best.cuts])
  }
  expect(compared).toBeGreaterThan(75)
})
