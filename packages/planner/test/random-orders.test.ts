import type { Cloth, Edge, EdgeNeed, Order } from '@lengthwise/pieces'
import { cm, length, percent } from '@lengthwise/units'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { plan, rehearsalFaults, verify } from '../src/index.ts'
import { bolt, orderOf, rectangle, remnant } from './orders.ts'

/*
 * Random orders with everything the layout knows of: every answer passes the checks of the planner (or plan throws), its order
 * of divisions frees what is listed, and the same order gives the same answer.
 */

const NONE: EdgeNeed = { kind: 'none' }

const prints = fc.record({
  way: fc.constantFrom('plain', 'two-way', 'one-way'),
  top: fc.constantFrom('cut-end', 'bolt'),
})

const cloths: fc.Arbitrary<Cloth> = fc
  .record({
    divideBy: fc.constantFrom('tearing', 'thread', 'shears'),
    unusedSelvedge: fc.constantFrom(0, 1.5),
    spareEachEnd: fc.constantFrom(0, 5),
    shrinks: fc.constantFrom(0, 4),
    widths: fc.uniqueArray(fc.integer({ min: 90, max: 200 }), { minLength: 1, maxLength: 2 }),
    have: fc.constantFrom(0, 0, 120),
    lostPerTear: fc.constantFrom(0, 0, 0.5),
    flaw: fc.option(fc.record({ x: fc.integer({ min: 0, max: 80 }), y: fc.integer({ min: 0, max: 150 }) }), {
      nil: null,
    }),
    print: prints,
  })
  .map((c) =>
    bolt('cloth', c.widths, {
      divideBy: c.divideBy,
      unusedSelvedge: cm(c.unusedSelvedge),
      spareEachEnd: cm(c.spareEachEnd),
      shrinks: { along: percent(c.shrinks), across: percent(c.shrinks) },
      have: cm(c.have),
      lostPerTear: cm(c.lostPerTear),
      flaws: c.flaw ? [{ x: cm(c.flaw.x), y: cm(c.flaw.y), width: cm(3), length: cm(4), on: null }] : [],
      print: { ...bolt('cloth', []).print, ...c.print },
    }),
  )

const sheets: fc.Arbitrary<Cloth> = fc
  .record({
    width: fc.integer({ min: 100, max: 200 }),
    long: fc.integer({ min: 100, max: 200 }),
    hem: fc.constantFrom(0, 3, 10),
  })
  .map(({ width, long, hem }) =>
    remnant('sheet', width, long, {
      from: 'sheet',
      count: 2,
      edges: {
        head: hem ? { kind: 'hem', depth: cm(hem) } : { kind: 'raw' },
        foot: hem ? { kind: 'hem', depth: cm(2) } : { kind: 'raw' },
        left: { kind: 'selvedge' },
        right: { kind: 'selvedge' },
      },
    }),
  )

const items = fc.array(
  fc.record({
    width: fc.integer({ min: 10, max: 85 }),
    long: fc.integer({ min: 10, max: 110 }),
    count: fc.integer({ min: 1, max: 3 }),
    runs: fc.constantFrom('along', 'either'),
    need: fc.constantFrom<[Edge, EdgeNeed] | null>(
      null,
      null,
      ['left', { kind: 'selvedge' }],
      ['foot', { kind: 'kept-hem', depth: cm(2) }],
    ),
    cloth: fc.constantFrom(['cloth'], ['cloth', 'sheet'], ['cloth', 'sheet']),
  }),
  { minLength: 1, maxLength: 3 },
)

const orders: fc.Arbitrary<Order> = fc
  .record({ cloth: cloths, sheet: sheets, items, wash: fc.constantFrom('none', 'before-cutting') })
  .map(({ cloth, sheet, items: made, wash }) =>
    orderOf(
      made.map((m, i) =>
        rectangle(`piece ${i}`, m.width, m.long, {
          count: m.count,
          lengthRuns: m.runs,
          cloth: m.cloth,
          needs: { head: NONE, foot: NONE, left: NONE, right: NONE, ...(m.need ? { [m.need[0]]: m.need[1] } : {}) },
        }),
      ),
      [cloth, sheet],
      { wash, worthKeeping: { width: cm(20), length: length(cm(50)) } },
    ),
  )

it('random orders pass every check, twice alike', () => {
  fc.assert(
    fc.property(orders, (order) => {
      const result = plan(order, { effort: 'quick' })
      expect(verify(result)).toEqual([])
      for (const cloth of result.cloths) expect(rehearsalFaults(cloth)).toEqual([])
      expect(plan(order, { effort: 'quick' })).toEqual(result)
      if (result.status === 'laid') expect(result.proof.bound <= result.proof.value).toBe(true)
    }),
    { seed: 20260502, numRuns: 40 },
  )
})
