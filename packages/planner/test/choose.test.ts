import { copiesOf } from '@lengthwise/pieces'
import { lay } from '@lengthwise/solver'
import { cm, costOf, length } from '@lengthwise/units'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { buyLength } from '../src/buying.ts'
import { ask } from '../src/demand.ts'
import { plan } from '../src/index.ts'
import { choicesOf } from '../src/options.ts'
import { settingOf } from '../src/setting.ts'
import { bolt, orderOf, rectangle, remnant } from './orders.ts'

/* Ways and sharings enumerated one and all, each laid out by itself: the planner may not miss the cheapest. */

const EFFORT = { effort: 20_000_000, tidy: false }

describe('the choice of ways', () => {
  const orders = fc.record({
    width: fc.integer({ min: 95, max: 150 }),
    mats: fc.array(fc.record({ width: fc.integer({ min: 20, max: 90 }), long: fc.integer({ min: 20, max: 120 }) }), {
      minLength: 1,
      maxLength: 2,
    }),
    own: fc.record({ width: fc.integer({ min: 40, max: 120 }), long: fc.integer({ min: 40, max: 140 }) }),
  })

  it('is never dearer than the best of all choices', () => {
    fc.assert(
      fc.property(orders, ({ width, mats, own }) => {
        const order = orderOf(
          mats.map((m, i) =>
            rectangle(`mat ${i}`, m.width, m.long, { count: 2, lengthRuns: 'either', cloth: ['cloth', 'own'] }),
          ),
          [bolt('cloth', [width]), remnant('own', own.width, own.long)],
        )
        const result = plan(order)
        const [cloth, owned] = [settingOf(order, order.cloths[0]!, 0)!, settingOf(order, order.cloths[1]!, -1)!]
        const choices = choicesOf(order, [cloth, owned])
        let cheapest = null as bigint | null
        const tryAll = (copy: number, counts: readonly Map<string, number>[]): void => {
          const copies = copiesOf(order)
          if (copy === copies.length) {
            const inOwned = lay(ask(order, owned.owned[0]!.ground, counts[1]!, owned.bundles).request, EFFORT)
            if (counts[1]!.size > 0 && inOwned.length === null) return
            const laid =
              counts[0]!.size === 0 ? 0 : lay(ask(order, cloth.open!, counts[0]!, cloth.bundles).request, EFFORT).length
            if (laid === null) return
            const cost = laid === 0 ? 0n : costOf({ coins: 1000, per: 'm' }, buyLength(order, cloth.cloth, laid))
            if (cheapest === null || cost < cheapest) cheapest = cost
            return
          }
          for (const option of choices[copies[copy]!.itemIndex]!.options)
            tryAll(
              copy + 1,
              counts.map((known, s) => {
                const more = new Map(known)
                for (const [key, n] of option.takes[s]!) more.set(key, (more.get(key) ?? 0) + n)
                return more
              }),
            )
        }
        tryAll(0, [new Map(), new Map()])
        if (cheapest === null) expect(result.status).toBe('cannot-be-cut')
        else {
          expect(result.status).toBe('laid')
          if (result.proof.status === 'proved') expect(result.proof.value).toBe(cheapest)
          else expect(result.proof.value >= cheapest).toBe(true)
          expect(result.proof.bound <= cheapest).toBe(true)
        }
      }),
      { seed: 3, numRuns: 40 },
    )
  })
})

describe('owned cloth', () => {
  it('stays whole where it does not lower what is bought', () => {
    // two rows of 50 on the bolt either way: one piece less saves nothing
    const order = orderOf(
      [rectangle('mat', 70, 50, { count: 4, cloth: ['cloth', 'own'] })],
      [bolt('cloth', [150]), remnant('own', 80, 60)],
    )
    const result = plan(order)
    expect(result.cloths.map((c) => c.name)).toEqual(['cloth'])
    expect(result.buy[0]?.quantity).toBe(cm(100))
  })

  it('is used where it does', () => {
    const order = orderOf(
      [rectangle('mat', 70, 50, { count: 5, cloth: ['cloth', 'own'] })],
      [bolt('cloth', [150]), remnant('own', 80, 60)],
    )
    const result = plan(order)
    expect(result.cloths.map((c) => [c.name, c.placed.length])).toEqual([
      ['cloth', 4],
      ['own', 1],
    ])
    expect(result.proof.status).toBe('proved')
  })

  it('a length at hand comes before more is bought, and is named when it is too short', () => {
    const mats = [rectangle('mat', 70, 50, { count: 4 })]
    const some = plan(orderOf(mats, [bolt('cloth', [150], { have: cm(60) })]))
    expect(some.cloths.map((c) => [c.buy?.length ?? null, c.placed.length])).toEqual([
      [null, 2],
      [cm(50), 2],
    ])
    const short = plan(orderOf(mats, [bolt('cloth', [150], { have: cm(60), sold: false })]))
    expect(short.status).toBe('cannot-be-cut')
    expect(short.missing).toMatchObject([{ cloth: 'cloth', direction: 'along', short: cm(40) }])
    const enough = plan(orderOf(mats, [bolt('cloth', [150], { have: cm(100), sold: false })]))
    expect(enough.buy.filter((line) => line.what === 'cloth')).toEqual([])
    expect(enough.status).toBe('laid')
  })

  it('as many more sheets as are missing are named', () => {
    const order = orderOf(
      [rectangle('mat', 70, 50, { count: 4, cloth: ['own'] })],
      [remnant('own', 80, 60, { count: 2 })],
    )
    expect(plan(order).missing[0]).toMatchObject({ short: cm(120), words: expect.stringMatching(/2 more/) })
  })
})

describe('widths side by side', () => {
  it('the cheaper width is chosen, and the width from which it is enough is exact', () => {
    const order = orderOf([rectangle('mat', 66, 50, { count: 4 })], [bolt('cloth', [120, 150])])
    const result = plan(order)
    const [narrow, wide] = result.widths
    expect(narrow).toMatchObject({ width: cm(120), buyLength: cm(200), chosen: false, enoughFrom: cm(66) })
    expect(wide).toMatchObject({ width: cm(150), buyLength: cm(100), chosen: true, enoughFrom: cm(132) })
    const buy = (width: number) => plan(orderOf(order.items, [bolt('cloth', [width])])).buy[0]?.quantity
    expect(buy(132)).toBe(cm(100))
    expect(buy(131.5)).toBe(cm(200))
  })

  it('with two bolts, one cloth is varied and the other left as chosen', () => {
    const order = orderOf(
      [rectangle('mat', 66, 50, { count: 4 }), rectangle('towel', 80, 50, { count: 2, cloth: ['other'] })],
      [bolt('cloth', [120, 150]), bolt('other', [100, 170])],
    )
    const result = plan(order)
    expect(result.widths.map((w) => [w.cloth, w.width, w.buyLength, w.chosen])).toEqual([
      ['cloth', cm(120), cm(200), false],
      ['cloth', cm(150), cm(100), true],
      ['other', cm(100), cm(100), false],
      ['other', cm(170), cm(50), true],
    ])
    expect(result.proof.status).toBe('proved')
  })

  it('a width too narrow says why and what would do', () => {
    const order = orderOf([rectangle('mat', 130, 50)], [bolt('cloth', [120, 150])])
    const [narrow, wide] = plan(order).widths
    expect(narrow).toMatchObject({ possible: false, buyLength: null, cost: null, enoughFrom: null })
    expect(narrow?.why).toMatch(/130 cm or more would do/)
    expect(wide?.possible).toBe(true)
  })

  it('a bolt that is not needed has no row', () => {
    const order = orderOf(
      [rectangle('mat', 70, 50, { cloth: ['cloth', 'own'] })],
      [bolt('cloth', [150]), remnant('own', 80, 60)],
    )
    const result = plan(order)
    expect(result.cloths.map((c) => c.name)).toEqual(['own'])
    expect(result.widths).toEqual([])
    expect(result.proof).toMatchObject({ status: 'proved', value: 0n, bound: 0n })
  })
})

describe('a run that is ended', () => {
  it('shows the best so far, says so, and its bound is below it', () => {
    const order = orderOf(
      [rectangle('mat', 66, 51, { count: 7, lengthRuns: 'either' }), rectangle('towel', 43, 91, { count: 6 })],
      [bolt('cloth', [150])],
    )
    const result = plan(order, { stop: () => true })
    expect(result.status).toBe('laid')
    expect(result.timed).toBe(result.proof.status === 'stopped')
    expect(result.proof.bound <= result.proof.value).toBe(true)
  })
})

describe('a flaw', () => {
  it('inside the shortest layout moves it', () => {
    const mats = [rectangle('mat', 150, 50, { count: 2 })]
    const clean = plan(orderOf(mats, [bolt('cloth', [150])]))
    expect(clean.cloths[0]?.proof.length).toBe(cm(100))
    const flaws = [{ x: cm(10), y: cm(70), width: cm(2), length: cm(2), on: null }]
    const flawed = plan(orderOf(mats, [bolt('cloth', [150], { flaws })]))
    expect(flawed.cloths[0]?.proof.length).toBe(cm(122))
    expect(length(flawed.cloths[0]!.placed[1]!.y)).toBe(cm(72))
  })
})
