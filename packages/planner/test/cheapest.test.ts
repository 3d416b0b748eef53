import type { Cloth, FaceSpec, Item, Order } from '@lengthwise/pieces'
import { cm } from '@lengthwise/units'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { plan } from '../src/index.ts'
import { cheapestByTrying } from './naive.ts'
import { bolt, orderOf, rectangle, remnant, ZERO } from './orders.ts'

/* The choice of ways, widths, owned cloth and layouts together, against everything tried: never dearer, never bounded too high. */

const size = (low: number, high: number) => fc.integer({ min: low, max: high })

const face = (more: Partial<FaceSpec>): FaceSpec => ({
  cloth: ['cloth'],
  joined: 'any',
  smallestPanel: cm(10),
  centre: 'full',
  crossJoins: 0,
  selvedgeToSelvedge: false,
  lengthRuns: 'either',
  mostSeams: null,
  band: null,
  zipEdge: null,
  ...more,
})

const mats: fc.Arbitrary<Item> = fc
  .record({
    width: size(20, 95),
    long: size(20, 120),
    count: size(1, 2),
    runs: fc.constantFrom('along' as const, 'across' as const, 'either' as const),
    cloth: fc.constantFrom(['cloth'], ['cloth', 'own'], ['cloth', 'own', 'other'], ['other', 'own']),
    sameCloth: fc.constantFrom('none' as const, 'none' as const, 'all' as const),
    selvedge: fc.constantFrom(false, false, true),
  })
  .map((m) => {
    const none = { kind: 'none' as const }
    const left = m.selvedge ? { kind: 'selvedge' as const } : none
    return rectangle(`mat ${m.width} ${m.long}`, m.width, m.long, {
      count: m.count,
      lengthRuns: m.runs,
      cloth: m.cloth,
      sameCloth: m.sameCloth,
      needs: { head: none, foot: none, left, right: none },
    })
  })

const backs: fc.Arbitrary<Item> = fc
  .record({ width: size(90, 190), long: size(60, 160), crossJoins: size(0, 1), mostSeams: fc.constantFrom(null, 2) })
  .map(({ width, long, ...spec }) => ({
    item: 'quilt-back' as const,
    quilt: { width: cm(width), length: cm(long) },
    overhang: ZERO,
    face: face(spec),
    count: 1,
    for: '',
    sizeName: null,
    cot: false,
    seam: { kind: 'plain' as const, allowance: cm(1.5) },
    path: 'make[9]',
  }))

const cloths: fc.Arbitrary<Cloth[]> = fc
  .record({
    widths: fc.uniqueArray(size(95, 150), { minLength: 1, maxLength: 2 }),
    dearer: size(0, 600),
    soldBy: fc.constantFrom(0, 10, 25),
    have: fc.constantFrom(0, 0, 60, 120),
    sold: fc.constantFrom(true, true, true, false),
    own: fc.record({ width: size(40, 120), long: size(40, 140), count: size(1, 2) }),
    other: size(100, 160),
    repeat: fc.constantFrom(0, 0, 32),
  })
  .map((c) => {
    const { print } = bolt('cloth', [])
    const prices = (at: number) => ({ coins: 1000 + at * c.dearer, per: 'm' as const })
    return [
      bolt('cloth', c.widths, {
        widths: c.widths.map((w, i) => ({ width: cm(w), price: prices(i) })),
        soldBy: cm(c.soldBy),
        have: cm(c.have),
        sold: c.sold,
        print: c.repeat ? { ...print, repeat: cm(c.repeat), match: 'straight' } : print,
      }),
      remnant('own', c.own.width, c.own.long, { count: c.own.count }),
      bolt('other', [c.other], { soldBy: cm(10) }),
    ]
  })

const plans = fc
  .record({
    mats: fc.array(mats, { minLength: 1, maxLength: 2 }),
    back: fc.option(backs, { nil: null, freq: 2 }),
    cloths,
  })
  .map(({ mats, back, cloths }): Order => orderOf(back ? [back, mats[0]!] : mats, cloths))

/** Several small pieces from a bolt sold to the unit, some of it owned, or from two like remnants: which go where is all there is to choose. */
const shared = fc
  .record({
    mats: fc.array(fc.record({ width: size(20, 70), long: size(20, 70), count: size(1, 2) }), {
      minLength: 2,
      maxLength: 3,
    }),
    bolt: size(75, 110),
    have: size(40, 110),
    own: fc.record({ width: size(30, 90), long: size(30, 90) }),
  })
  .map(
    (p): Order =>
      orderOf(
        p.mats.map((m, i) =>
          rectangle(`mat ${i}`, m.width, m.long, { count: m.count, cloth: i === 0 ? ['cloth', 'own'] : ['cloth'] }),
        ),
        [
          bolt('cloth', [p.bolt], { soldBy: ZERO, have: cm(p.have) }),
          remnant('own', p.own.width, p.own.long, { count: 2 }),
        ],
      ),
  )

it.each([
  ['joined backs, mats, bolts and remnants', plans, 60],
  ['mats shared among a bolt and remnants', shared, 60],
] as const)('agrees with everything tried: %s', (_, orders, numRuns) => {
  const count = { proved: 0, impossible: 0, unsure: 0 }
  fc.assert(
    fc.property(orders, (order) => {
      const { value, certain } = cheapestByTrying(order)
      const result = plan(order)
      if (!certain) {
        count.unsure++
        return
      }
      if (value === null) {
        count.impossible++
        expect(result.status).toBe('cannot-be-cut')
        return
      }
      expect(result.status).toBe('laid')
      expect(result.proof.bound <= value).toBe(true)
      expect(result.proof.value >= value).toBe(true)
      if (result.proof.status !== 'proved') return
      count.proved++
      expect(result.proof.value).toBe(value)
    }),
    { seed: 5, numRuns },
  )
  expect(count.proved).toBeGreaterThan(30)
  expect(count.unsure).toBeLessThan(15)
})
