import type { Cloth } from '@lengthwise/pieces'
import { lay } from '@lengthwise/solver'
import { cm } from '@lengthwise/units'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { objectiveOf } from '../src/buying.ts'
import type { Counts } from '../src/demand.ts'
import { ask, countsKey } from '../src/demand.ts'
import { effortOf } from '../src/effort.ts'
import type { Ground } from '../src/field.ts'
import { LayoutBook } from '../src/layout-book.ts'
import { choicesOf } from '../src/options.ts'
import { settingOf } from '../src/setting.ts'
import { valueToBuy } from '../src/share.ts'
import { shareOut } from '../src/sharing.ts'
import { isSure, sharingsByTrying } from './naive.ts'
import { bolt, orderOf, rectangle, remnant, ZERO } from './orders.ts'

/* Pieces shared among what is owned of one cloth and what is bought, against every sharing there is. */

const size = (low: number, high: number) => fc.integer({ min: low, max: high }).map((tens) => 10 * tens)

const mats = fc
  .array(fc.record({ width: size(2, 6), long: size(2, 6), count: fc.integer({ min: 1, max: 2 }) }), {
    minLength: 2,
    maxLength: 3,
  })
  .map((some) => some.map(({ width, long, count }, i) => rectangle(`mat ${i}`, width, long, { count })))

/** A bolt with a length of it at hand. */
const bolts: fc.Arbitrary<Cloth> = fc
  .record({ width: size(6, 11), have: size(3, 12), soldBy: fc.constantFrom(ZERO, cm(10), cm(50)) })
  .map(({ width, have, soldBy }) => bolt('cloth', [width], { soldBy, have: cm(have) }))

/** Two or three remnants, the first of them perhaps with a flaw: not all are alike. */
const remnants: fc.Arbitrary<Cloth> = fc
  .record({ width: size(5, 9), long: size(5, 11), count: fc.integer({ min: 2, max: 3 }), flaw: size(0, 4) })
  .map(({ width, long, count, flaw }) => {
    const flaws = flaw > 0 ? [{ x: ZERO, y: ZERO, width: cm(width), length: cm(flaw), on: 1 }] : []
    return remnant('cloth', width, long, { count, flaws })
  })

const asked = fc.record({ mats, cloth: fc.oneof(bolts, remnants) }).map(({ mats, cloth }) => {
  const order = orderOf(mats, [cloth])
  const setting = settingOf(order, cloth, cloth.from === 'bolt' ? 0 : -1)!
  const counts = new Map<string, number>()
  for (const { count, options } of choicesOf(order, [setting]))
    for (const [key, n] of options[0]?.takes[0] ?? []) counts.set(key, (counts.get(key) ?? 0) + count * n)
  return { order, setting, counts }
})

/** The least value, and of the sharings as cheap the fewest owned lengths opened by one that could leave none of its own whole. */
function byTrying({ order, setting, counts }: Asked) {
  let certain = true
  const known = new Map<string, number | null>()
  const lengthOn = (ground: Ground, some: Counts): number | null => {
    const key = `${ground.field.length} ${JSON.stringify(ground.field.flaws)} ${countsKey(some)}`
    if (!known.has(key)) {
      const answer = lay(ask(order, withoutFlaw(ground), some, setting.bundles).request, NAIVE)
      certain &&= isSure(ground, answer)
      known.set(key, answer.length)
    }
    return known.get(key)!
  }
  const book = new LayoutBook(order, objectiveOf(order), effortOf({}))
  const all = sharingsByTrying(setting, counts, lengthOn).map((one) => ({
    ...one,
    value: valueToBuy(book, setting, one.laid),
  }))
  const value = all.reduce<bigint | null>(
    (least, one) => (least !== null && least < one.value ? least : one.value),
    null,
  )
  const cheapest = all.filter((one) => one.value === value)
  const kept = cheapest.filter(
    ({ opens }) =>
      !cheapest.some((other) => other.opens.size < opens.size && [...other.opens].every((o) => opens.has(o))),
  )
  const laid = Math.min(...kept.map((one) => one.laid))
  const opened = Math.min(...kept.filter((one) => one.laid === laid).map((one) => one.opens.size))
  return { value, laid, opened, certain }
}

/** A flaw right across the head end leaves a ground shorter by as much. */
function withoutFlaw(ground: Ground): Ground {
  const flaw = ground.field.flaws[0]?.length ?? 0
  return { ...ground, field: { ...ground.field, flaws: [], length: ground.field.length && ground.field.length - flaw } }
}

/** What this does not settle is left aside. */
const NAIVE = { effort: 100_000, tidy: false }

type Asked = typeof asked extends fc.Arbitrary<infer T> ? T : never

it('the cheapest sharing is found, and of those as cheap the one that the wishes say', () => {
  const count = { shared: 0, opened: 0, flawed: 0, none: 0, unsure: 0 }
  fc.assert(
    fc.property(asked, (given) => {
      const { order, setting, counts } = given
      const truth = byTrying(given)
      if (counts.size === 0 || !truth.certain) return
      const { share, certain } = shareOut(
        new LayoutBook(order, objectiveOf(order), effortOf({})),
        setting,
        counts,
        'deep',
      )
      // flaws are gone around by trial: what goes on beside them is rarely certain, but mostly found
      if (!certain && setting.owned.some(({ ground }) => ground.field.flaws.length > 0)) {
        if (share && truth.value !== null) {
          expect(share.opened).toBe(truth.opened)
          count.unsure++
        }
        return
      }
      if (truth.value === null) {
        count.none++
        expect(share).toBeNull()
        return
      }
      count.shared++
      if (truth.opened > 0) count.opened++
      if (setting.owned.length > 1) count.flawed++
      expect(share).toMatchObject({ value: truth.value, bound: truth.value, laid: truth.laid, opened: truth.opened })
    }),
    { seed: 11, numRuns: 160, endOnFailure: true },
  )
  expect(count.shared).toBeGreaterThan(60)
  expect(count.opened).toBeGreaterThan(50)
  expect(count.flawed).toBeGreaterThan(10)
  expect(count.none).toBeGreaterThan(2)
  expect(count.unsure).toBeGreaterThan(10)
})

it('with hardly any effort what is said of sharings is still true', () => {
  const count = { dearer: 0, unsure: 0 }
  fc.assert(
    fc.property(asked, fc.constantFrom(1, 10_000), (given, sharings) => {
      const { order, setting, counts } = given
      const truth = byTrying(given)
      if (counts.size === 0 || !truth.certain) return
      const effort = { ...effortOf({}), lookSteps: sharings, deepSteps: sharings, sharings }
      const { share, certain } = shareOut(new LayoutBook(order, objectiveOf(order), effort), setting, counts, 'look')
      if (!certain) count.unsure++
      if (!share) {
        if (certain) expect(truth.value).toBeNull()
        return
      }
      expect(share.bound <= truth.value!).toBe(true)
      expect(share.value >= truth.value!).toBe(true)
      if (share.value > truth.value!) count.dearer++
    }),
    { seed: 12, numRuns: 120, endOnFailure: true },
  )
  expect(count.dearer).toBeGreaterThan(30)
  expect(count.unsure).toBeGreaterThan(30)
})

it('beside owned cloth on which nothing goes, a layout to be bought is not said to be the shortest where it is only the first found', () => {
  // no three go side by side on 100, so two lie one behind the other: 60 at least, and 60 it is; the quick start needs 70
  const cloth = bolt('cloth', [100], { have: cm(10) })
  const order = orderOf([rectangle('a', 25, 40), rectangle('b', 60, 30), rectangle('c', 25, 30)], [cloth])
  const setting = settingOf(order, cloth, 0)!
  const counts = new Map(choicesOf(order, [setting]).flatMap(({ options }) => [...options[0]!.takes[0]!]))
  const truth = byTrying({ order, setting, counts })
  expect(truth).toMatchObject({ laid: cm(60), certain: true })
  // what goes on the owned length is looked for until it is settled, the layout to be bought hardly at all
  const book = new LayoutBook(order, objectiveOf(order), { ...effortOf({}), deepSteps: 1 })
  const share = shareOut(book, setting, counts, 'deep').share!
  expect(share.value).toBeGreaterThan(truth.value!)
  expect(share.bound).toBeLessThanOrEqual(truth.value!)
})
