import { cm, percent } from '@lengthwise/units'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Cloth, Item, Order, Seam } from '../src/index.ts'
import { onTable, sewUp, waysToMake } from '../src/index.ts'
import {
  bedSkirt,
  bolster,
  bolt,
  cushion,
  face,
  fittedSheet,
  hem,
  orderOf,
  pillowcase,
  sheet,
  shrinking,
  strips,
} from './item-orders.ts'

/* Every way of every item, sewn up by its pieces and seams alone, gives the size asked for, in all orders of washing. */

const wash = fc.constantFrom('none', 'before-cutting', 'after-sewing') as fc.Arbitrary<Order['wash']>
const markTo = fc.constantFrom(cm(0), cm(0.1), cm(0.5))
const centimetres = (min: number, max: number) => fc.integer({ min: 2 * min, max: 2 * max }).map((n) => cm(n / 2))
const seam: fc.Arbitrary<Seam> = fc.record({
  kind: fc.constantFrom('plain', 'french', 'flat-felled'),
  allowance: fc.integer({ min: 5, max: 25 }).map((tenths) => cm(tenths / 10)),
})
const hems = fc
  .tuple(fc.integer({ min: 1, max: 6 }), fc.constantFrom(1, 2))
  .map(([depth, turns]) => hem(depth, turns as 1 | 2))
// of the cloths of one item none may shrink a point more than another, or the way is refused
const cotton = fc
  .tuple(fc.integer({ min: 150, max: 400 }), fc.integer({ min: 0, max: 8 }), fc.integer({ min: 0, max: 8 }))
  .map(([width, along, across]) => bolt('cotton', cm(width), { shrinks: shrinking(percent(along), percent(across)) }))
const printed = fc
  .tuple(cotton, fc.constantFrom('plain', 'two-way', 'one-way'), fc.constantFrom('cut-end', 'bolt', 'left', 'right'))
  .map(([cloth, way, top]): Cloth => ({ ...cloth, print: { ...cloth.print, way, top } as Cloth['print'] }))

const RUNS = 80

function sewnUp(order: Order, item: Item) {
  const tables = new Map(
    order.cloths.map((cloth) => [cloth.name, onTable(order, cloth, cloth.from === 'bolt' ? 0 : -1)]),
  )
  const { ways } = waysToMake(order, item, tables)
  const faults = ways.flatMap((way) => sewUp(order, item, way).faults.map((fault) => `${way.id}: ${fault.message}`))
  return { ways: ways.length, faults }
}

function check<T extends Item>(items: fc.Arbitrary<T>, cloths: fc.Arbitrary<Cloth> = printed) {
  let sewn = 0
  fc.assert(
    fc.property(items, cloths, wash, markTo, (item, cloth, washed, step) => {
      const { ways, faults } = sewnUp(orderOf([item], [cloth], { wash: washed, markTo: step }), item)
      sewn += ways
      expect(faults).toEqual([])
    }),
    { numRuns: RUNS },
  )
  // most orders can be made, so the property speaks of something
  expect(sewn).toBeGreaterThan(RUNS / 2)
}

const sides = fc.tuple(centimetres(30, 70), centimetres(70, 110))

describe('sewn up, every way is as large as asked', () => {
  test.each(['inside-flap', 'envelope', 'flanged', 'open-end'] as const)('pillowcase, %s', (style) => {
    check(
      fc
        .tuple(sides, seam, hems, centimetres(5, 25), centimetres(2, 8))
        .map(([[width, length], seam, hem, flap, flange]) =>
          pillowcase({ style, finished: { width, length }, seam, hem, flap, flange }),
        ),
    )
  })

  test('pillowcase, open end with cuff and trim', () => {
    check(
      fc
        .tuple(sides, seam, centimetres(5, 20), fc.option(centimetres(1, 3)))
        .map(([[width, length], seam, depth, trim]) =>
          pillowcase({
            style: 'open-end',
            finished: { width, length },
            seam,
            cuff: { depth, cloth: ['cotton'], trim: trim === null ? null : { depth: trim, cloth: ['cotton'] } },
          }),
        ),
    )
  })

  test.each(['inside-flap', 'envelope', 'open-end'] as const)('pillowcase, %s, with a kept hem', (style) => {
    check(
      fc.tuple(sides, seam, hems).map(([[width, length], seam, hem]) =>
        pillowcase({
          style,
          finished: { width, length },
          seam,
          hem,
          openingEdge: { kind: 'kept-hem', depth: cm(2) },
        }),
      ),
      fc.constant(sheet('cotton', cm(230), cm(260), cm(10), cm(2.5))),
    )
  })

  test.each(['envelope', 'zip', 'one-piece-envelope'] as const)('cushion, %s', (back) => {
    check(
      fc
        .tuple(sides, seam, hems, centimetres(5, 25), fc.constantFrom(cm(0), cm(4), cm(5.5)))
        .map(([[width, length], seam, hem, overlap, flange]) =>
          cushion({ back, finished: { width, length }, seam, hem, overlap, flange }),
        ),
    )
  })

  test.each(['circles', 'tied'] as const)('bolster, %s', (ends) => {
    check(
      fc
        .tuple(centimetres(10, 30), centimetres(60, 200), seam)
        .map(([diameter, length, seam]) => bolster({ ends, diameter, length, seam })),
    )
  })

  test('strips', () => {
    check(
      fc
        .tuple(centimetres(4, 30), centimetres(50, 3000), seam, fc.constantFrom('along', 'across', 'either'))
        .map(([width, run, seam, runs]) => strips({ width, run, seam, runs: runs as 'either' })),
    )
  })

  test.each(['cut', 'kept'] as const)('fitted sheet, corners %s', (corners) => {
    check(
      fc
        .tuple(
          fc.tuple(centimetres(60, 180), centimetres(120, 210), centimetres(8, 40)),
          fc.tuple(centimetres(0, 20), centimetres(1.5, 5)),
          seam,
          fc.constantFrom('any', 'centre-seam', 'full-widths'),
        )
        .map(([[width, length, depth], [tuck, casing], seam, joined]) =>
          fittedSheet({
            mattress: { width, length, depth },
            tuck,
            casing,
            seam,
            corners,
            face: face('cotton', { joined: joined as 'any' }),
          }),
        ),
    )
  })

  test.each(['gathered', 'corner-pleats'] as const)('bed skirt, %s', (style) => {
    check(
      fc
        .tuple(
          centimetres(80, 180),
          centimetres(180, 210),
          centimetres(20, 50),
          seam,
          hems,
          fc.integer({ min: 100, max: 300 }),
        )
        .map(([width, length, drop, seam, hem, fullnessPercent]) =>
          bedSkirt({ base: { width, length }, drop, seam, hem, style, fullnessPercent }),
        ),
    )
  })
})
