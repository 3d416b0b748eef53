import type { Length } from '@lengthwise/units'
import { cm, inches, length, mm, percent, ZERO } from '@lengthwise/units'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Cloth, DuvetCover, FaceSpec, FlatSheet, Hem, Item, Opening, Order, Print, Way } from '../src/index.ts'
import { sewUp, waysToMake } from '../src/index.ts'
import { bolt, COMMON, cover, face, orderOf, PLAIN_PRINT, sheet, tablesOf } from './orders.ts'

/* The sewing-up check against random orders in every order of washing, and against pieces spoiled by one unit. */

const lengthBetween = (low: number, high: number): fc.Arbitrary<Length> =>
  fc.integer({ min: low * 10, max: high * 10 }).map((n) => mm(n))

const hem: fc.Arbitrary<Hem> = lengthBetween(1, 6).map((depth) => ({ depth, turns: 2, turnedIn: depth }))

const opening: fc.Arbitrary<Opening> = fc
  .tuple(fc.constantFrom('foot', 'head', 'left', 'right'), fc.integer({ min: 0, max: 5 }), lengthBetween(2, 30), hem)
  .map(([at, kind, depth, turned]): Opening => {
    const places = { spacing: cm(20), fromCorner: cm(15) }
    const all: readonly Opening[] = [
      { kind: 'none' },
      { kind: 'zip', at, zips: null },
      { kind: 'buttons', at, depth: cm(4), turnedIn: cm(4), ...places },
      { kind: 'snaps', at, depth: cm(3), turnedIn: cm(1), ...places },
      { kind: 'ties', at, hem: turned, tieLength: cm(25), tieWidth: cm(1), ...places },
      { kind: 'flap', at, depth, hem: turned },
    ]
    return all[kind]!
  })

const faceSpec: fc.Arbitrary<FaceSpec> = fc
  .record({
    joined: fc.constantFrom('any', 'one-piece', 'centre-and-sides', 'centre-seam', 'full-widths'),
    smallestPanel: lengthBetween(6, 20),
    centre: fc.oneof(fc.constantFrom('full' as const, 'any' as const), lengthBetween(40, 120)),
    crossJoins: fc.integer({ min: 0, max: 2 }),
    selvedgeToSelvedge: fc.boolean(),
    lengthRuns: fc.constantFrom('along', 'across', 'either'),
    mostSeams: fc.option(fc.integer({ min: 0, max: 6 })),
    band: fc.option(
      fc.record({
        at: fc.constantFrom('head' as const, 'foot' as const),
        depth: lengthBetween(10, 50),
        cloth: fc.constant(['cotton']),
      }),
      { freq: 3 },
    ),
  })
  .map((spec) => face('cotton', spec))

const print: fc.Arbitrary<Print> = fc
  .record({
    way: fc.constantFrom('plain', 'two-way', 'one-way'),
    top: fc.constantFrom('cut-end', 'bolt', 'left', 'right'),
    repeat: fc.constantFrom(ZERO, cm(32), cm(64), inches(25.25)),
    acrossRepeat: fc.constantFrom(ZERO, cm(17)),
    match: fc.constantFrom('none', 'straight', 'half-drop'),
    matchLine: fc.constantFrom(ZERO, cm(2)),
  })
  .map((some) => ({ ...PLAIN_PRINT, ...some }))

const cotton: fc.Arbitrary<Cloth> = fc
  .record({
    width: lengthBetween(50, 300),
    along: fc.integer({ min: 0, max: 1000 }),
    across: fc.integer({ min: 0, max: 1000 }),
    unusedSelvedge: fc.constantFrom(ZERO, cm(1)),
    print,
  })
  .map(({ width, along, across, unusedSelvedge, print: printed }) =>
    bolt('cotton', [width], {
      shrinks: { along: percent(along / 100), across: percent(across / 100) },
      unusedSelvedge,
      print: printed,
    }),
  )

const oldSheet: fc.Arbitrary<Cloth> = fc
  .record({
    width: lengthBetween(100, 290),
    long: lengthBetween(180, 300),
    head: lengthBetween(2, 12),
    foot: lengthBetween(2, 4),
    shrinks: fc.integer({ min: 0, max: 500 }),
    way: fc.constantFrom('plain' as const, 'one-way' as const),
    top: fc.constantFrom('cut-end' as const, 'bolt' as const),
    sides: fc.constantFrom(ZERO, cm(1)),
  })
  .map(({ width, long, head, foot, shrinks, way, top, sides }) => {
    const cloth = sheet('old', width, long, head, foot, {
      shrinks: { along: percent(shrinks / 100), across: percent(shrinks / 100) },
      print: { ...PLAIN_PRINT, way, top },
    })
    const side = { kind: 'hem' as const, depth: sides }
    return sides === 0 ? cloth : { ...cloth, edges: { ...cloth.edges, left: side, right: side } }
  })

const zipEdge = fc.record({
  kind: fc.constant('kept-hems' as const),
  finger: lengthBetween(2, 3),
  lap: fc.integer({ min: -3, max: 6 }).map((n) => mm(n)),
  stitching: fc.integer({ min: 0, max: 8 }).map((n) => mm(n)),
})

const seam = fc.record({
  kind: fc.constantFrom('plain' as const, 'french' as const, 'flat-felled' as const),
  allowance: fc.integer({ min: 8, max: 20 }).map((n) => mm(n)),
})

const duvetCover: fc.Arbitrary<DuvetCover> = fc
  .record({
    width: lengthBetween(90, 280),
    long: lengthBetween(90, 250),
    front: faceSpec,
    back: faceSpec,
    same: fc.boolean(),
    opening,
    ties: fc.constantFrom(0 as const, 2 as const, 4 as const),
    kept: fc.option(zipEdge, { freq: 2 }),
    seam,
  })
  .map(({ width, long, front, back, same, opening: open, ties, kept, seam: sewn }) =>
    cover(width, long, {
      seam: sewn,
      front,
      back: kept === null ? (same ? front : back) : { ...back, cloth: ['old'], band: null, zipEdge: kept },
      opening: kept === null ? open : { kind: 'zip', at: 'foot', zips: null },
      cornerTies: { count: ties, length: cm(20), width: cm(1), bought: false },
    }),
  )

const flatSheet: fc.Arbitrary<FlatSheet> = fc
  .record({
    width: lengthBetween(90, 280),
    long: lengthBetween(90, 300),
    face: faceSpec,
    hems: fc.tuple(
      hem,
      hem,
      fc.oneof(hem, fc.constant('selvedge' as const)),
      fc.oneof(hem, fc.constant('selvedge' as const)),
    ),
    seam,
  })
  .map(({ width, long, face: spec, hems: [head, foot, left, right], seam: sewn }) => ({
    ...COMMON,
    seam: sewn,
    item: 'flat-sheet',
    finished: { width, length: long },
    hems: { head, foot, left, right },
    face: spec,
  }))

const oneFaced: fc.Arbitrary<Item> = fc
  .record({
    width: lengthBetween(60, 280),
    long: lengthBetween(60, 300),
    face: faceSpec,
    hem,
    seam,
    quilt: fc.boolean(),
  })
  .map(({ width, long, face: spec, hem: turned, seam: sewn, quilt }): Item => {
    const size = { width, length: long }
    return quilt
      ? { ...COMMON, seam: sewn, item: 'quilt-back', quilt: size, overhang: cm(5), face: spec }
      : { ...COMMON, seam: sewn, item: 'throw', finished: size, hem: turned, face: spec }
  })

const orders: fc.Arbitrary<[Order, Item]> = fc
  .record({
    item: fc.oneof({ weight: 3, arbitrary: duvetCover }, flatSheet, oneFaced),
    cotton,
    old: oldSheet,
    wash: fc.constantFrom('before-cutting' as const, 'after-sewing' as const, 'none' as const),
    markTo: fc.constantFrom(ZERO, cm(0.5), inches(0.125), cm(1)),
  })
  .map(({ item, cotton: cloth, old, wash, markTo }) => [orderOf([cloth, old], [item], { wash, markTo }), item])

test('every way of every order comes out at the size asked for, in every order of washing', () => {
  let made = 0
  fc.assert(
    fc.property(orders, ([order, item]) => {
      const { ways } = waysToMake(order, item, tablesOf(order))
      expect(ways.length).toBeLessThanOrEqual(64)
      for (const way of ways) {
        made++
        expect([way.id, sewUp(order, item, way).faults]).toEqual([way.id, []])
        for (const piece of way.pieces) expect(piece.cutWidth * piece.cutLength).toBeGreaterThan(0)
      }
    }),
    { seed: 1, numRuns: 200 },
  )
  expect(made).toBeGreaterThan(150)
})

/** Spoils one figure of a way by one unit: a size of a piece that is sewn to something, an allowance, a lap. */
function spoil(way: Way, choice: number, by: 1 | -1): { what: string; way: Way } {
  const sewn = new Set(way.seams.flatMap((s) => [s.a.piece, s.b.piece]))
  const spoilt: { what: string; way: Way }[] = []
  way.pieces.forEach((piece, i) => {
    if (way.pieces.length > 1 && !sewn.has(piece.name)) return
    for (const key of ['cutWidth', 'cutLength'] as const)
      spoilt.push({
        what: `${piece.name} ${key}`,
        way: { ...way, pieces: way.pieces.with(i, { ...piece, [key]: length(piece[key] + by) }) },
      })
  })
  way.seams.forEach((own, i) => {
    const keys =
      own.kind === 'zip' && own.allowanceA === 0 ? (['lap'] as const) : (['allowanceA', 'allowanceB'] as const)
    for (const key of keys)
      spoilt.push({
        what: `seam ${own.a.piece}#${own.a.edge} ${key}`,
        way: { ...way, seams: way.seams.with(i, { ...own, [key]: length(own[key] + by) }) },
      })
  })
  return spoilt[choice % spoilt.length]!
}

test('a size, an allowance or a lap spoiled by one unit is found', () => {
  let found = 0
  fc.assert(
    fc.property(
      orders,
      fc.nat(),
      fc.nat(),
      fc.constantFrom(1 as const, -1 as const),
      ([order, item], nth, choice, by) => {
        // marked to the unit, panels of a joined face one unit apart are another sound way of joining it
        const all = waysToMake(order, item, tablesOf(order)).ways
        const ways = all.filter((way) => order.markTo > 0 || way.joins === 0)
        if (ways.length === 0) return
        const spoilt = spoil(ways[nth % ways.length]!, choice, by)
        expect([spoilt.what, sewUp(order, item, spoilt.way).faults.length > 0]).toEqual([spoilt.what, true])
        found++
      },
    ),
    { seed: 2, numRuns: 300 },
  )
  expect(found).toBeGreaterThan(60)
})
