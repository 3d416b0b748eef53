import type { Cloth, FaceSpec, Item, Order } from '@lengthwise/pieces'
import { cm } from '@lengthwise/units'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { objectiveOf } from '../src/buying.ts'
import { chooseWays } from '../src/choose.ts'
import { effortOf } from '../src/effort.ts'
import { groupsOf } from '../src/groups.ts'
import { plan } from '../src/index.ts'
import { LayoutBook } from '../src/layout-book.ts'
import type { Option } from '../src/options.ts'
import { choicesOf } from '../src/options.ts'
import { searchWidths } from '../src/search-widths.ts'
import { settingOf } from '../src/setting.ts'
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

const quiltBack = (width: number, long: number, spec: Partial<FaceSpec>): Item => ({
  item: 'quilt-back',
  quilt: { width: cm(width), length: cm(long) },
  overhang: ZERO,
  face: face(spec),
  count: 1,
  for: '',
  sizeName: null,
  cot: false,
  seam: { kind: 'plain', allowance: cm(1.5) },
  path: 'make[9]',
})

const backs: fc.Arbitrary<Item> = fc
  .record({ width: size(90, 190), long: size(60, 160), crossJoins: size(0, 1), mostSeams: fc.constantFrom(null, 2) })
  .map(({ width, long, ...spec }) => quiltBack(width, long, spec))

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

/** Sizes in tens of cm on bolts sold by 10 cm: what is laid ends where the shop cuts, so that one unit more or less is seen. */
const evenly = fc
  .record({
    mats: fc.array(
      fc.record({
        width: size(2, 9),
        long: size(2, 9),
        count: size(1, 2),
        runs: fc.constantFrom('along' as const, 'either' as const),
      }),
      { minLength: 2, maxLength: 3 },
    ),
    widths: fc.uniqueArray(size(9, 14), { minLength: 1, maxLength: 2 }),
    dearer: size(0, 600),
  })
  .map(
    (p): Order =>
      orderOf(
        p.mats.map((m, i) => rectangle(`mat ${i}`, 10 * m.width, 10 * m.long, { count: m.count, lengthRuns: m.runs })),
        [
          bolt('cloth', [], {
            widths: p.widths.map((w, i) => ({ width: cm(10 * w), price: { coins: 1000 + i * p.dearer, per: 'm' } })),
          }),
        ],
      ),
  )

it.each([
  ['joined backs, mats, bolts and remnants', plans, 60],
  ['mats shared among a bolt and remnants', shared, 60],
  ['mats that end where the shop cuts', evenly, 60],
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

it('with hardly any effort what is said of the cheapest is still true', () => {
  const count = { dearer: 0, sure: 0 }
  fc.assert(
    fc.property(fc.oneof(plans, shared, evenly), (order) => {
      const { value, certain } = cheapestByTrying(order)
      if (!certain || value === null) return
      const effort = { ...effortOf({}), lookSteps: 1, deepSteps: 1, sharings: 1, choices: 20, steps: 20_000 }
      const book = new LayoutBook(order, objectiveOf(order), effort)
      const found = groupsOf(order).map((group) => searchWidths(book, group, effort.steps, {}, () => {}))
      const sum = (values: readonly bigint[]) => values.reduce((a, b) => a + b, 0n)
      expect(sum(found.map((one) => one.bound)) <= value).toBe(true)
      if (!found.every((one) => one.best)) return
      const reached = sum(found.map((one) => one.best!.answer.best!.wish.value))
      expect(reached >= value).toBe(true)
      if (reached > value) count.dearer++
      if (found.some(({ best, bound }) => bound < best!.answer.best!.wish.value)) return
      count.sure++
      expect(reached).toBe(value)
    }),
    { seed: 6, numRuns: 100 },
  )
  expect(count.dearer).toBeGreaterThan(5)
  expect(count.sure).toBeGreaterThan(5)
})

/** Joined backs and mats of one cloth: all ways of an item take from it, and the one of least area may stand for them. */
const ofOneCloth = plans.filter(({ items }) =>
  items.every((item) => !('cloth' in item) || item.cloth.join() === 'cloth'),
)

it('ways left out of a long list are not forgotten in the bound', () => {
  let dearer = 0
  fc.assert(
    fc.property(fc.oneof(ofOneCloth, evenly), (order) => {
      const settings = order.cloths.flatMap((cloth) => settingOf(order, cloth, cloth.from === 'bolt' ? 0 : -1) ?? [])
      const book = new LayoutBook(order, objectiveOf(order), effortOf({}))
      const choices = choicesOf(order, settings)
      const whole = chooseWays(book, settings, choices, 1_000_000)
      if (whole.status !== 'proved' || whole.best === null) return
      // of each item the way of least area is kept, as a list cut short keeps it, and nothing that does better with more
      const area = ({ takes }: Option) =>
        takes.reduce((all, taken, s) => {
          for (const [key, n] of taken)
            for (const m of settings[s]!.bundles.get(key)!.members) all += n * m.count * m.area
          return all
        }, 0)
      const cut = choices.map((choice) => ({
        ...choice,
        options: choice.options.toSorted((a, b) => area(a) - area(b)).slice(0, 1),
        capped: choice.options.length > 1,
      }))
      const part = chooseWays(book, settings, cut, 1_000_000)
      if (part.bound !== null) expect(part.bound <= whole.best.wish.value).toBe(true)
      if (part.best && part.best.wish.value > whole.best.wish.value) dearer++
    }),
    { seed: 7, numRuns: 200 },
  )
  expect(dearer).toBeGreaterThan(5)
})

it.each([
  // the narrow width cannot do without a seam, the wide one could, but is cheapest with two
  ['narrow', 140, 110, {}, [30, 90], [100, 2000], [125, 2200], 1, 2],
  // here the wide one is as cheap without any
  ['wide', 160, 60, { lengthRuns: 'along' }, [50, 90], [140, 1000], [185, 1000], 1, 0],
] as const)(
  'of two widths that cost the same the one with fewer seams is taken: the %s one',
  (which, width, long, spec, [across, along], narrow, wide, seamsOfNarrow, seamsOfWide) => {
    const orderWith = (widths: readonly (typeof narrow | typeof wide)[], mostSeams: number | null) =>
      orderOf(
        [quiltBack(width, long, { ...spec, crossJoins: 1, mostSeams }), rectangle('mat', across, along)],
        [bolt('cloth', [], { widths: widths.map(([w, coins]) => ({ width: cm(w), price: { coins, per: 'm' } })) })],
      )
    // the fewest seams with which everything tried comes out no dearer
    const { value } = cheapestByTrying(orderWith([narrow, wide], null))
    const fewest = (at: typeof narrow | typeof wide) =>
      [0, 1, 2].find((seams) => cheapestByTrying(orderWith([at], seams)).value === value)
    expect([fewest(narrow), fewest(wide)]).toEqual([seamsOfNarrow, seamsOfWide])
    const result = plan(orderWith([narrow, wide], null))
    expect(result.proof).toMatchObject({ status: 'proved', value })
    expect(result.widths.map(({ seams, chosen }) => [seams, chosen])).toEqual([
      [seamsOfNarrow, which === 'narrow'],
      [seamsOfWide, which === 'wide'],
    ])
  },
)
