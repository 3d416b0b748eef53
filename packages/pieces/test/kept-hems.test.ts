import { cm, length, mm, toMm, ZERO } from '@lengthwise/units'
import { expect, test } from 'vitest'
import type { Cloth, DuvetCover, FlatSheet, Order } from '../src/index.ts'
import { sewUp, waysToMake } from '../src/index.ts'
import { bolt, COMMON, cover, face, orderOf, PLAIN_PRINT, sheet, tablesOf } from './orders.ts'

const KEPT = { kind: 'kept-hems', finger: cm(2), lap: cm(0.4), stitching: ZERO } as const

const cmOf = (l: number): number => toMm(length(l)) / 10

function onSheet(old: Cloth, item: DuvetCover): Order {
  return orderOf([bolt('cotton', [cm(240)]), old], [item])
}

const item = cover(cm(200), cm(200), { back: face('old', { zipEdge: KEPT }) })

const sizes = (order: Order, made: DuvetCover): Record<string, string> => {
  const [way] = waysToMake(order, made, tablesOf(order)).ways
  expect(sewUp(order, made, way!).faults).toEqual([])
  return Object.fromEntries(
    way!.pieces
      .filter((p) => p.name.startsWith('/back'))
      .map((p) => [p.name, `${cmOf(p.cutWidth)} x ${cmOf(p.cutLength)}, head ${p.headToward}`]),
  )
}

test('the top of the print toward the foot hem: the foot hem becomes the strip', () => {
  const print = { ...PLAIN_PRINT, way: 'one-way', top: 'bolt' } as const
  const order = onSheet(sheet('old', cm(230), cm(260), cm(10), cm(2.5), { print }), item)
  // strip h + f; body L + a + o − h − t = 200 + 1.5 + 0.4 − 2.5 = 199.4
  expect(sizes(order, item)).toEqual({
    '/back/body': '203 x 199.5, head end',
    '/back/zip-strip': '203 x 4.5, head end',
  })
})

test('two sheets narrower than the cover are joined first, bodies to bodies and strips to strips', () => {
  const order = onSheet(sheet('old', cm(150), cm(260), cm(10), cm(2.5), { count: 2 }), item)
  expect(sizes(order, item)).toEqual({
    '/back/left-side-body': '29.5 x 192, head start',
    '/back/left-side-zip-strip': '29.5 x 12, head start',
    '/back/centre-body': '150 x 192, head start',
    '/back/centre-zip-strip': '150 x 12, head start',
    '/back/right-side-body': '29.5 x 192, head start',
    '/back/right-side-zip-strip': '29.5 x 12, head start',
  })
})

test('side hems leave less width: 230 less 2 × 14 is too narrow for 203', () => {
  const sides = { kind: 'hem', depth: cm(14) } as const
  const plain = sheet('old', cm(230), cm(260), cm(10), cm(2.5))
  const old = { ...plain, edges: { ...plain.edges, left: sides, right: sides } }
  const one = { ...item, back: { ...item.back, joined: 'one-piece' as const } }
  const order = onSheet(old, one)
  expect(waysToMake(order, one, tablesOf(order)).ways).toEqual([])
  const narrowHems = { kind: 'hem', depth: cm(13.5) } as const
  const enough = onSheet({ ...old, edges: { ...plain.edges, left: narrowHems, right: narrowHems } }, one)
  expect(waysToMake(enough, one, tablesOf(enough)).ways).toHaveLength(1)
})

test('the sheet needed is L + a + o + f − t: 203.9 does, 203.5 does not', () => {
  const found = (long: number): number => {
    const order = onSheet(sheet('old', cm(230), cm(long), cm(10), cm(2.5)), item)
    return waysToMake(order, item, tablesOf(order)).ways.length
  }
  // the body goes up to the marking step: 12 + 192 = 204
  expect([found(204), found(203.5)]).toEqual([1, 0])
})

test('a hem under 3/4 in is too shallow to carry a zip (common practice, no source)', () => {
  const found = (foot: number): readonly string[] => {
    const order = onSheet(sheet('old', cm(230), cm(260), cm(10), mm(foot)), item)
    return waysToMake(order, item, tablesOf(order)).refused.map((r) => r.why)
  }
  expect(found(19)).toContain('a hem under 3/4 in (1.9 cm) is too shallow to carry a zip')
  expect(found(20)).toEqual([])
})

test('hems that overlap by 4 mm are listed as one seam line with its lap', () => {
  const order = onSheet(sheet('old', cm(230), cm(260), cm(10), cm(2.5)), item)
  const [way] = waysToMake(order, item, tablesOf(order)).ways
  const zip = way!.seams.filter((s) => s.role === 'opening')
  expect(zip).toMatchObject([
    { a: { piece: '/back/body', edge: 'foot' }, b: { piece: '/back/zip-strip', edge: 'head' }, lap: mm(4) },
  ])
  // the outer foot seam has what the finger's width leaves, on both edges
  const foot = way!.seams.find((s) => s.role === 'side' && s.a.edge === 'foot')
  expect([foot?.allowanceA, foot?.allowanceB]).toEqual([cm(2), cm(2)])
})

const HEM = { depth: cm(2), turns: 2, turnedIn: cm(2) } as const

function flatSheet(head: FlatSheet['hems']['head'], long: number): FlatSheet {
  return {
    ...COMMON,
    item: 'flat-sheet',
    finished: { width: cm(150), length: cm(long) },
    hems: { head, foot: 'kept-hem', left: HEM, right: HEM },
    face: face('old', { joined: 'one-piece', lengthRuns: 'along' }),
  }
}

test('a smaller sheet from a larger one: the foot hem kept, the head hemmed anew', () => {
  const made = flatSheet(HEM, 200)
  const order = orderOf([sheet('old', cm(230), cm(260), cm(10), cm(2.5))], [made])
  const [way] = waysToMake(order, made, tablesOf(order)).ways
  expect(sewUp(order, made, way!).faults).toEqual([])
  // 200 + 4 at the head and nothing at the foot; 150 + 4 + 4
  expect(way!.pieces.map((p) => [cmOf(p.cutWidth), cmOf(p.cutLength), p.needs.foot.kind])).toEqual([
    [158, 204, 'kept-hem'],
  ])
})

test('both end hems kept: a sheet as long as the one it is cut from, or none', () => {
  const lengths = (long: number): readonly number[] => {
    const made = flatSheet('kept-hem', long)
    const order = orderOf([sheet('old', cm(230), cm(260), cm(10), cm(2.5))], [made])
    return waysToMake(order, made, tablesOf(order)).ways.map((way) => {
      expect(sewUp(order, made, way).faults).toEqual([])
      return cmOf(way.pieces[0]!.cutLength)
    })
  }
  expect([lengths(260), lengths(200)]).toEqual([[260], []])
})
