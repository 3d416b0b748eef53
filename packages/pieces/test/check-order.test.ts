import { cm, percent, ZERO } from '@lengthwise/units'
import { expect, test } from 'vitest'
import type { Cloth, DuvetCover, FlatSheet, Item, Order, Rectangle } from '../src/index.ts'
import { checkOrder, goodToKnowFor, waysToMake } from '../src/index.ts'
import { bolt, COMMON, cover, face, orderOf, PLAIN_PRINT, sheet, tablesOf } from './orders.ts'

/** Codes and paths of what is wrong; each problem must say the next step. */
function check(order: Order): readonly string[] {
  const problems = checkOrder(order)
  for (const problem of problems) expect(problem.hint).not.toBe('')
  return problems.map((problem) => `${problem.code} ${problem.path}`)
}

const cloths = (other: Partial<Cloth> = {}): readonly Cloth[] => [bolt('cotton', [cm(240)], other)]
const order = (item: DuvetCover | FlatSheet, other: Partial<Cloth> = {}, rest: Partial<Order> = {}): Order =>
  orderOf(cloths(other), [item], rest)
const COVER = cover(cm(200), cm(200))

test('a sound order has no problems', () => {
  expect(check(order(COVER))).toEqual([])
})

test.each<[string, Partial<Cloth>, string]>([
  ['shrinkage of 100 %', { shrinks: { along: percent(100), across: percent(0) } }, 'shrinkage cloth[0].shrinks.along'],
  ['a match without a repeat', { print: { ...PLAIN_PRINT, match: 'straight' } }, 'no-repeat cloth[0].print.repeat'],
  [
    'a motif without a repeat',
    { print: { ...PLAIN_PRINT, motif: { first: null } } },
    'no-repeat cloth[0].print.repeat',
  ],
  [
    'a match line inside the seam allowance',
    { print: { ...PLAIN_PRINT, match: 'straight', repeat: cm(20), matchLine: cm(0.5) } },
    'match-line cloth[0].print.match-line',
  ],
  ['selvedges that use the width up', { unusedSelvedge: cm(120) }, 'unused-selvedge cloth[0].unused-selvedge'],
  ['a bolt without a width', { widths: [] }, 'no-cloth cloth[0].widths'],
  ['a width of nothing', { widths: [{ width: ZERO, price: null }] }, 'no-cloth cloth[0].widths'],
  ['a bolt that is neither sold nor owned', { sold: false }, 'no-cloth cloth[0].have'],
  ['a hem to keep that is not there', { mustKeep: ['head'] }, 'keep cloth[0].keep.head'],
])('%s', (_name, other, expected) => {
  expect(check(order(COVER, other))).toEqual([expected])
})

test('a length at hand of no one width', () => {
  const widths = [cm(140), cm(240)].map((width) => ({ width, price: null }))
  expect(check(order(COVER, { widths, have: cm(300) }))).toEqual(['have-widths cloth[0].have'])
})

test('hems deeper than the sheet they belong to', () => {
  expect(check(orderOf([...cloths(), sheet('old', cm(200), cm(30), cm(20), cm(10))], [COVER]))).toEqual([
    'hem-too-deep cloth[1].hems',
  ])
})

test.each<[string, Partial<DuvetCover>, readonly string[]]>([
  [
    'a seam wider than the smallest panel',
    { seam: { kind: 'plain', allowance: cm(8) } },
    ['seam-wider-than-panel make[0].front.smallest-panel', 'seam-wider-than-panel make[0].back.smallest-panel'],
  ],
  ['a seam of nothing', { seam: { kind: 'plain', allowance: ZERO } }, ['seam-allowance make[0].seam']],
  [
    'a flap as deep as the cover',
    { opening: { kind: 'flap', at: 'foot', depth: cm(200), hem: { depth: cm(2), turns: 2, turnedIn: cm(2) } } },
    ['opening-too-deep make[0].opening'],
  ],
  [
    'zips to hand too long',
    { opening: { kind: 'zip', at: 'foot', zips: [cm(220)] } },
    ['zip-too-long make[0].opening.zips'],
  ],
  [
    'kept hems without a sheet',
    { back: face('cotton', { zipEdge: { kind: 'kept-hems', finger: cm(2), lap: cm(0.4), stitching: ZERO } }) },
    ['zip-edge-hem make[0].back.cloth'],
  ],
  [
    'ties in a cot',
    { cot: true, cornerTies: { count: 4, length: cm(20), width: cm(1), bought: false } },
    ['cot-ties make[0].corner-ties'],
  ],
  [
    'a joined face in a cot',
    { cot: true, front: face('cotton', { joined: 'centre-seam' }) },
    ['cot-joined make[0].front.joined'],
  ],
  [
    'a band as deep as the cover',
    { front: face('cotton', { band: { at: 'head', depth: cm(200), cloth: [] } }) },
    ['band make[0].front.band'],
  ],
])('%s', (_name, other, expected) => {
  expect(check(order({ ...COVER, ...other }))).toEqual(expected)
})

test('ties in a cot are let through with a reason', () => {
  const reason = { cot: true, tiesDespiteCaution: 'only for a doll' }
  expect(
    check(order({ ...COVER, ...reason, cornerTies: { count: 4, length: cm(20), width: cm(1), bought: false } })),
  ).toEqual([])
})

test('a length that runs contrary to a one-way print', () => {
  const item = { ...COVER, front: face('cotton', { lengthRuns: 'across' }) }
  expect(check(order(item, { print: { ...PLAIN_PRINT, way: 'one-way' } }))).toEqual([
    'length-runs make[0].front.length-runs',
  ])
})

test('faces that shrink apart: wash before cutting', () => {
  const item = { ...COVER, back: face('linen') }
  const two = [
    bolt('cotton', [cm(240)], { shrinks: { along: percent(3), across: percent(3) } }),
    bolt('linen', [cm(240)], { shrinks: { along: percent(5), across: percent(5) } }),
  ]
  const problems = checkOrder(orderOf(two, [item], { wash: 'after-sewing' }))
  expect(problems.map((p) => p.code)).toEqual(['shrinks-apart'])
  expect(problems[0]!.hint).toContain('wash before cutting')
  expect(checkOrder(orderOf(two, [item], { wash: 'before-cutting' }))).toEqual([])
})

test('a hem deeper than the flat sheet', () => {
  const hem = { depth: cm(60), turns: 2, turnedIn: cm(60) } as const
  const item: FlatSheet = {
    ...COMMON,
    item: 'flat-sheet',
    finished: { width: cm(150), length: cm(200) },
    hems: { head: hem, foot: hem, left: 'selvedge', right: 'selvedge' },
    face: face('cotton'),
  }
  expect(check(order(item))).toEqual(['hem-too-deep make[0].hems'])
})

test('what is good to know has its own code each, and the sheet’s label its source', () => {
  const remarks = goodToKnowFor(orderOf([...cloths(), sheet('old', cm(230), cm(260), cm(10), cm(2.5))], [COVER]))
  expect(new Set(remarks.map((r) => r.code)).size).toBe(remarks.length)
  expect(remarks.find((r) => r.code === 'measure-the-sheet')?.text).toContain('sizes.com')
})

const RECTANGLE: Rectangle = {
  ...COMMON,
  item: 'rectangle',
  name: 'tray cloth',
  size: { cut: { width: cm(40), length: cm(60) } },
  cloth: ['cotton'],
  sameCloth: 'item',
  lengthRuns: 'either',
  needs: { head: { kind: 'none' }, foot: { kind: 'none' }, left: { kind: 'none' }, right: { kind: 'none' } },
}

test('a size of nothing is a mistake in the plan, not a plan that cannot be cut', () => {
  const nothing = { width: ZERO, length: cm(60) }
  const cotton = [bolt('cotton', [cm(150)])]
  const none = (...items: Item[]) => check(orderOf(cotton, items))
  expect(none({ ...RECTANGLE, size: { cut: nothing } })).toEqual(['no-size make[0].cut'])
  const edges = { head: 'raw', foot: 'raw', left: 'raw', right: 'raw' } as const
  expect(none({ ...RECTANGLE, size: { finished: nothing, edges } })).toEqual(['no-size make[0].finished'])
  expect(none(cover(ZERO, cm(200)), cover(cm(200), ZERO))).toEqual([
    'no-size make[0].finished',
    'no-size make[0].finished',
  ])
  expect(none({ ...COMMON, item: 'quilt-back', quilt: nothing, overhang: ZERO, face: face('cotton') })).toEqual([
    'no-size make[0].quilt',
  ])
})

test('length-runs against the print of one cloth is no mistake where another cloth named can serve', () => {
  const oneWay = bolt('a', [cm(150)], { print: { ...PLAIN_PRINT, way: 'one-way' } })
  const across = { ...RECTANGLE, lengthRuns: 'across' } as const
  const both = orderOf([oneWay, bolt('b', [cm(150)])], [{ ...across, cloth: ['a', 'b'] }])
  expect(check(both)).toEqual([])
  expect(check({ ...both, items: [{ ...across, cloth: ['a'] }] })).toEqual(['length-runs make[0].length-runs'])
  const { ways } = waysToMake(both, both.items[0]!, tablesOf(both))
  expect(ways.map((way) => way.pieces.map((piece) => piece.cloth))).toEqual([['b']])
})

test('a matched print with its selvedges trimmed off is remarked on: its seams cannot be kept on the match line', () => {
  const print = { ...PLAIN_PRINT, way: 'two-way', repeat: cm(64), match: 'straight' } as const
  const codes = (unusedSelvedge: Cloth['unusedSelvedge']) =>
    goodToKnowFor(order(COVER, { print, unusedSelvedge })).map((remark) => remark.code)
  expect(codes(cm(1))).toContain('match-without-selvedges')
  expect(codes(ZERO)).not.toContain('match-without-selvedges')
})
