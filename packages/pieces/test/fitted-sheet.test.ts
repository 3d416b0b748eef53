import { cm, inches, percent } from '@lengthwise/units'
import { describe, expect, test } from 'vitest'
import type { FittedSheet } from '../src/index.ts'
import { waysToMake } from '../src/index.ts'
import { checkFittedSheet } from '../src/items/fitted-sheet.ts'
import { asItLies, bolt, face, fittedSheet, orderOf, shrinking } from './item-orders.ts'

const linen = bolt('cotton', cm(280))

function waysOf(item: FittedSheet, cloth = linen, parts: Parameters<typeof orderOf>[2] = {}) {
  const order = orderOf([item], [cloth], parts)
  return waysToMake(order, item, new Map([[cloth.name, asItLies(cloth)]]))
}
const onlyPiece = (item: FittedSheet, cloth = linen, parts = {}) => waysOf(item, cloth, parts).ways[0]!.pieces[0]!
const squares = (item: FittedSheet, cloth = linen, parts = {}) =>
  onlyPiece(item, cloth, parts).marks.filter((mark) => mark.kind === 'corner-square')

describe('a fitted sheet', () => {
  test('150 × 200 × 32, tuck 12, casing 3: 244 × 294, corner squares of 45.5 cm (common practice)', () => {
    const piece = onlyPiece(fittedSheet())
    expect([piece.cutWidth, piece.cutLength]).toEqual([cm(244), cm(294)])
    expect(squares(fittedSheet()).map(({ x, y, size }) => [x, y, size])).toEqual([
      [0, 0, cm(45.5)],
      [cm(198.5), 0, cm(45.5)],
      [0, cm(248.5), cm(45.5)],
      [cm(198.5), cm(248.5), cm(45.5)],
    ])
  })

  test('mattress 6 in deep, 8 in to tuck under, hem included: corner of 14 in with its seam (allexperts flat sheet)', () => {
    const item = fittedSheet({
      mattress: { width: inches(54), length: inches(74), depth: inches(6) },
      tuck: inches(7),
      casing: inches(1),
      seam: { kind: 'plain', allowance: inches(0.5) },
    })
    const [square] = squares(item, bolt('cotton', inches(108)), { markTo: inches(0.125) })
    expect(square!.size! + inches(0.5)).toBe(inches(14))
  })

  test('crib mattress 52 × 22 × 6 in: corner 8, sheet 38 × 68 in (From Sewing Room Crib Sheets)', () => {
    const item = fittedSheet({
      mattress: { width: inches(22), length: inches(52), depth: inches(6) },
      tuck: inches(1),
      casing: inches(1),
      cot: true,
      seam: { kind: 'plain', allowance: inches(0.5) },
    })
    const cloth = bolt('cotton', inches(42))
    const parts = { markTo: inches(0.125) }
    const piece = onlyPiece(item, cloth, parts)
    expect([piece.cutWidth, piece.cutLength]).toEqual([inches(38), inches(68)])
    expect(squares(item, cloth, parts)[0]!.size! + inches(0.5)).toBe(inches(8))
  })

  test('elastic is the edge by its ratio, and 2 cm to join it (common practice)', () => {
    const elastic = (where: FittedSheet['elastic']['where']) =>
      waysOf(fittedSheet({ elastic: { where, ratioPercent: 60 } })).ways[0]!.notions.find((n) => n.what === 'elastic')
    expect(elastic('all-round')).toMatchObject({ length: cm(422) })
    expect(elastic('ends')).toMatchObject({ length: cm(180) })
    expect(elastic('corners')).toMatchObject({ length: cm(144) })
  })

  test('for a cot it is never joined (GOST 31307-2005, 3.2.1)', () => {
    const narrow = bolt('cotton', cm(90))
    const item = fittedSheet({ mattress: { width: cm(60), length: cm(120), depth: cm(10) }, cot: true })
    const { ways, refused } = waysOf(item, narrow)
    expect(ways.every((way) => way.joins === 0)).toBe(true)
    expect(refused.some((way) => way.why.includes('GOST 31307-2005'))).toBe(true)
    expect(waysOf({ ...item, cot: false }, narrow).ways.some((way) => way.joins > 0)).toBe(true)
  })

  test('joined with narrow sides the squares are marked after joining, and the sewing order says so', () => {
    const item = fittedSheet({ face: face('cotton', { joined: 'centre-and-sides' }) })
    const { ways } = waysOf(item, bolt('cotton', cm(200)))
    const way = ways.find((w) => w.id.startsWith('centre-and-sides/along'))!
    expect(way.pieces.flatMap((piece) => piece.marks).some((mark) => mark.kind === 'corner-square')).toBe(false)
    expect(way.sewing.some((step) => step.text.includes('at each corner of the joined sheet'))).toBe(true)
  })

  test('a kept corner is sewn, not cut', () => {
    const texts = waysOf(fittedSheet({ corners: 'kept' })).ways[0]!.sewing.map((step) => step.text)
    expect(texts.some((text) => text.startsWith('Cut out'))).toBe(false)
    expect(texts.some((text) => text.includes('The corner stays in'))).toBe(true)
    // depth, tuck and casing: the stitching, without an allowance
    expect(squares(fittedSheet({ corners: 'kept' }))[0]?.size).toBe(cm(47))
  })

  test('corners, casing and elastic are sewn in that order, each seam with its true length', () => {
    const { sewing } = waysOf(fittedSheet()).ways[0]!
    expect(sewing.map((step) => step.seamLength)).toEqual([0, cm(182), cm(700), 0])
  })

  test('washed after sewing, a cloth that shrinks unevenly by more than a point must be washed first', () => {
    const uneven = bolt('cotton', cm(280), { shrinks: shrinking(percent(5), percent(3)) })
    const item = fittedSheet()
    const order = orderOf([item], [uneven], { wash: 'after-sewing' })
    expect(checkFittedSheet(order, item).map((problem) => problem.code)).toEqual(['shrinks-apart'])
    expect(waysOf(item, uneven, { wash: 'after-sewing' }).ways).toEqual([])
    expect(checkFittedSheet({ ...order, wash: 'before-cutting' }, item)).toEqual([])
  })

  test.each([
    ['no-depth', fittedSheet({ mattress: { width: cm(90), length: cm(200), depth: cm(0) } })],
    ['casing-too-narrow', fittedSheet({ casing: cm(1) })],
    ['elastic-ratio', fittedSheet({ elastic: { where: 'ends', ratioPercent: 120 } })],
    ['tuck', fittedSheet({ tuck: cm(-1) })],
  ])('%s is a problem with a next step', (code, item) => {
    const problems = checkFittedSheet(orderOf([item], [linen]), item)
    expect(problems.map((problem) => problem.code)).toEqual([code])
    expect(problems[0]?.hint).not.toBe('')
  })
})
