import { cm, length, percent, toMm, ZERO } from '@lengthwise/units'
import { expect, test } from 'vitest'
import type { Item, Order, Piece, Way } from '../src/index.ts'
import { sewUp, waysToMake } from '../src/index.ts'
import { bolt, cover, face, orderOf, PLAIN_PRINT, sheet, tablesOf } from './orders.ts'

/* Bedding orders worked by hand; the arithmetic stands beside each. */

const cmOf = (l: number): number => toMm(length(l)) / 10

function sizesOf(way: Way): Record<string, string> {
  return Object.fromEntries(way.pieces.map((p: Piece) => [p.name, `${cmOf(p.cutWidth)} x ${cmOf(p.cutLength)}`]))
}

function waysOf(order: Order, item: Item): readonly Way[] {
  const { ways } = waysToMake(order, item, tablesOf(order))
  for (const way of ways) expect(sewUp(order, item, way).faults).toEqual([])
  return ways
}

const PLACKET = {
  kind: 'buttons',
  at: 'foot',
  depth: cm(4),
  turnedIn: cm(4),
  spacing: cm(20),
  fromCorner: cm(15),
} as const

const HALF_DROP = { ...PLAIN_PRINT, way: 'one-way', repeat: cm(64), match: 'half-drop' } as const

test('cover 225 × 220 from 140 cm: centre the whole width, two sides of 47, length 229.5', () => {
  const asked = face('print', { joined: 'centre-and-sides' })
  const item = cover(cm(225), cm(220), { front: asked, back: asked, opening: PLACKET })
  const order = orderOf([bolt('print', [cm(140)], { print: HALF_DROP })], [item])
  const ways = waysOf(order, item)
  expect(ways).toHaveLength(1)
  const way = ways[0]!
  // (140 − 3) + 2 (47 − 3) = 225; 220 + 1.5 + 8 = 229.5
  expect(sizesOf(way)).toEqual({
    '/front/left-side': '47 x 229.5',
    '/front/centre': '140 x 229.5',
    '/front/right-side': '47 x 229.5',
    '/back/left-side': '47 x 229.5',
    '/back/centre': '140 x 229.5',
    '/back/right-side': '47 x 229.5',
  })
  // neighbours half a repeat apart, both sides alike, faces free of each other
  const offsets = way.pieces.map((p) => [p.tie?.face, p.tie?.offset, p.tie?.repeat, p.tie?.absolute])
  expect(offsets).toEqual(
    ['/front', '/back'].flatMap((name) => [0, cm(32), 0].map((offset) => [name, offset, cm(64), false])),
  )
  expect(way.pieces.every((p) => p.headToward === 'start' && !p.mayTurnEndForEnd)).toBe(true)
  // first 15 cm from each corner, gap at most 20: opening 195, 10 gaps of 19.5, 11 buttons
  expect(way.notions.find((n) => n.what === 'buttons')).toMatchObject({ count: 11 })
  const buttons = way.pieces
    .filter((p) => p.name.startsWith('/front'))
    .flatMap((p) => p.marks.filter((m) => m.kind === 'button'))
  expect(buttons).toHaveLength(11)
})

test('the same washed after sewing, 5 % along and 3 % across: sides 50.5, length 241.5', () => {
  const asked = face('print', { joined: 'centre-and-sides' })
  const item = cover(cm(225), cm(220), { front: asked, back: asked, opening: PLACKET })
  const cloth = bolt('print', [cm(140)], { print: HALF_DROP, shrinks: { along: percent(5), across: percent(3) } })
  const order = orderOf([cloth], [item], { wash: 'after-sewing' })
  const [way] = waysOf(order, item)
  // 225 / 0.97 + 9 = 240.96, sides 50.48; 220 / 0.95 + 1.5 + 8 = 241.08
  expect(sizesOf(way!)['/front/left-side']).toBe('50.5 x 241.5')
})

test('the same with a match line 2 cm from each selvedge: sides 48, seams on the match line', () => {
  const asked = face('print', { joined: 'centre-and-sides' })
  const item = cover(cm(225), cm(220), { front: asked, back: asked, opening: PLACKET })
  const order = orderOf([bolt('print', [cm(140)], { print: { ...HALF_DROP, matchLine: cm(2) } })], [item])
  const [way] = waysOf(order, item)
  // (225 − 136) / 2 + 1.5 + 2
  expect(sizesOf(way!)['/back/right-side']).toBe('48 x 229.5')
  expect(way!.seams.filter((s) => s.role === 'join').every((s) => s.allowanceA === cm(2))).toBe(true)
})

const KEPT = { kind: 'kept-hems', finger: cm(2), lap: cm(0.4), stitching: ZERO } as const

function sheetBack(width: number, long: number, shrinks: { along: number; across: number } | null): [Order, Item] {
  const item = cover(cm(width), cm(long), { front: face('cotton'), back: face('old', { zipEdge: KEPT }) })
  const share = shrinks ?? { along: 0, across: 0 }
  const old = sheet('old', cm(230), cm(260), cm(10), cm(2.5), {
    shrinks: { along: percent(share.along), across: percent(share.across) },
  })
  const order = orderOf([bolt('cotton', [cm(240)]), old], [item], { wash: shrinks ? 'before-cutting' : 'none' })
  return [order, item]
}

test('a back from a sheet 230 × 260 with both hems kept: strip 12 × 203, body 192 × 203, finished 200.1', () => {
  const [order, item] = sheetBack(200, 200, null)
  const way = waysOf(order, item).find((w) => w.id.includes('kept-hems'))!
  expect(sizesOf(way)).toEqual({ '/front': '203 x 203.5', '/back/body': '203 x 192', '/back/zip-strip': '203 x 12' })
  const sewn = sewUp(order, item, way)
  expect([cmOf(sewn.finished.width), cmOf(sewn.finished.length)]).toEqual([200, 200.1])
  const [body, strip] = [
    way.pieces.find((p) => p.name === '/back/body')!,
    way.pieces.find((p) => p.name === '/back/zip-strip')!,
  ]
  expect(body.needs.foot).toEqual({ kind: 'kept-hem', depth: cm(2.5) })
  expect(strip.needs.head).toEqual({ kind: 'kept-hem', depth: cm(10) })
  // what is left of the sheet between strip and body: 260 − 12 − 192
  expect(cmOf(cm(260) - strip.cutLength - body.cutLength)).toBe(56)
})

test('225 × 220 from the same sheet: strip 12 × 228, body 212, left 36, finished 220.1', () => {
  const [order, item] = sheetBack(225, 220, null)
  const way = waysOf(order, item)[0]!
  expect(sizesOf(way)).toMatchObject({ '/back/body': '228 x 212', '/back/zip-strip': '228 x 12' })
  expect(cmOf(sewUp(order, item, way).finished.length)).toBe(220.1)
})

test('the sheet washed first, 4 % and 1 %: strip 11.6, body 192.5, left 45.5, finished 200.2', () => {
  const [order, item] = sheetBack(200, 200, { along: 4, across: 1 })
  const way = waysOf(order, item)[0]!
  expect(sizesOf(way)).toMatchObject({ '/back/body': '203 x 192.5', '/back/zip-strip': '203 x 11.6' })
  expect(cmOf(sewUp(order, item, way).finished.length)).toBe(200.2)
})
