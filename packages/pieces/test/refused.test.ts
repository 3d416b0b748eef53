import { cm, length, percent, toMm, ZERO } from '@lengthwise/units'
import { expect, test } from 'vitest'
import type { FaceSpec, Item, Order, QuiltBack } from '../src/index.ts'
import { onTable, waysToMake } from '../src/index.ts'
import { bolt, COMMON, cover, face, orderOf, sheet, tablesOf } from './orders.ts'

/* What is missing where a way is refused: which cloth, in which direction, by how much, and the width that does. */

function quiltBack(width: number, long: number, spec: Partial<FaceSpec> = {}): QuiltBack {
  return {
    ...COMMON,
    item: 'quilt-back',
    quilt: { width: length(width), length: length(long) },
    overhang: ZERO,
    face: face('cotton', spec),
  }
}

const refusedOf = (order: Order, item: Item) => waysToMake(order, item, tablesOf(order)).refused

test('a sheet too short for both hems to be kept says so of the sheet, not of the front’s cloth', () => {
  const item = cover(cm(200), cm(200), {
    back: face('old', { zipEdge: { kind: 'kept-hems', finger: cm(2), lap: cm(0.4), stitching: ZERO } }),
  })
  const old = sheet('old', cm(204), cm(200), cm(10), cm(2.5))
  const order = orderOf([bolt('cotton', [cm(240)]), old], [item])
  // strip 12 and body 192 from 200 (worked by hand: S = 200 + 1.5 + 0.4 + 2, the body rounded up)
  expect(refusedOf(order, item)).toMatchObject([
    { cloth: 'old', direction: 'along', short: cm(4), widthThatWouldDo: null },
  ])
})

test('what a remnant lacks in length is measured before the wash', () => {
  const item = quiltBack(cm(95), cm(190), { lengthRuns: 'along' })
  const cotton = bolt('cotton', [], {
    from: 'remnant',
    widths: [],
    size: { width: cm(110), length: cm(190) },
    spareEachEnd: ZERO,
    shrinks: { along: percent(5), across: percent(0) },
  })
  const order = orderOf([cotton], [item], { wash: 'before-cutting' })
  // 190 ÷ 0.95 = 200
  expect(refusedOf(order, item)).toMatchObject([{ cloth: 'cotton', direction: 'along', short: cm(10) }])
})

test('a width that would do is wider than the one tried: 155 for a back 155 × 300 on 150', () => {
  const item = quiltBack(cm(155), cm(300), { lengthRuns: 'along' })
  const order = orderOf([bolt('cotton', [cm(150)])], [item])
  const found = waysToMake(order, item, tablesOf(order))
  expect(found.ways).toEqual([])
  for (const no of found.refused)
    expect(no).toMatchObject({ cloth: 'cotton', direction: 'across', short: cm(5), widthThatWouldDo: cm(155) })
})

const SPECS: readonly Partial<FaceSpec>[] = [
  {},
  { joined: 'one-piece' },
  { joined: 'centre-and-sides' },
  { joined: 'centre-seam' },
  { joined: 'full-widths', mostSeams: 1 },
  { selvedgeToSelvedge: true, mostSeams: 2 },
  { joined: 'centre-and-sides', centre: cm(90), smallestPanel: cm(40) },
]

test.each(SPECS)('cloth of the width said to do does: %o', (spec) => {
  let said = 0
  for (const wash of ['none', 'before-cutting', 'after-sewing'] as const)
    for (const width of [70, 90.5, 112, 150, 171, 204]) {
      const item = quiltBack(cm(235), cm(255), { lengthRuns: 'along', ...spec })
      const shrinks = { along: percent(4), across: percent(3) }
      const order = orderOf([bolt('cotton', [cm(width)], { shrinks })], [item], { wash })
      for (const { widthThatWouldDo: would, short } of waysToMake(order, item, tablesOf(order)).refused) {
        if (would === null) continue
        said++
        expect(toMm(would)).toBeGreaterThan(10 * width)
        expect(short).toBe(would - cm(width))
        const wider = bolt('cotton', [would], { shrinks })
        const then = orderOf([wider], [item], { wash })
        const { ways } = waysToMake(then, item, new Map([['cotton', onTable(then, wider, 0)]]))
        expect([width, toMm(would), ways.length > 0]).toEqual([width, toMm(would), true])
      }
    }
  expect(said).toBeGreaterThan(5)
})
