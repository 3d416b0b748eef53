import { cm, inches, length, percent, toMm, ZERO } from '@lengthwise/units'
import { expect, test } from 'vitest'
import type { FaceSpec, FlatSheet, Item, Order, QuiltBack, Rectangle, Way } from '../src/index.ts'
import { sewUp, waysToMake } from '../src/index.ts'
import { bolt, COMMON, cover, face, orderOf, PLAIN_PRINT, tablesOf } from './orders.ts'

const cmOf = (l: number): number => toMm(length(l)) / 10
const inOf = (l: number): number => l / inches(1)

function waysOf(order: Order, item: Item): readonly Way[] {
  const { ways } = waysToMake(order, item, tablesOf(order))
  for (const way of ways) expect([way.id, sewUp(order, item, way).faults]).toEqual([way.id, []])
  return ways
}

function quiltBack(width: number, long: number, seam: number, spec: Partial<FaceSpec> = {}): QuiltBack {
  return {
    ...COMMON,
    seam: { kind: 'plain', allowance: length(seam) },
    item: 'quilt-back',
    quilt: { width: length(width), length: length(long) },
    overhang: ZERO,
    face: face('cotton', spec),
  }
}

/** Widths of the pieces by name, in inches. */
const acrossInches = (way: Way): Record<string, number> =>
  Object.fromEntries(way.pieces.map((p) => [p.name, inOf(p.cutWidth)]))

const HALF_INCH = { kind: 'plain', allowance: inches(0.5) } as const

// common practice, no source
test.each([
  [45, 16, 17],
  [60, 8.5, 9.5],
])('a face 76 × 86 in from %s in cloth, allowance 1/2 in: sides %s in finished, %s in cut', (width, finished, cut) => {
  const item = cover(inches(76), inches(86), {
    seam: HALF_INCH,
    front: face('cotton', { joined: 'centre-and-sides', lengthRuns: 'along', smallestPanel: inches(4) }),
    back: face('cotton', { joined: 'centre-and-sides', lengthRuns: 'along', smallestPanel: inches(4) }),
  })
  const order = orderOf([bolt('cotton', [inches(width)])], [item], { measureIn: 'in', markTo: inches(0.125) })
  const [way] = waysOf(order, item)
  expect(acrossInches(way!)).toMatchObject({
    '/front/left-side': cut,
    '/front/centre': width,
    '/front/right-side': cut,
  })
  // joined by two seams the cloth covers its width less 1 in
  expect(cut - 1).toBe(finished)
  expect(76 - 2 * finished).toBe(width - 1)
  expect(inOf(way!.pieces[0]!.cutLength)).toBe(87)
})

test('90 in sheeting needs no joins for a face 76 in wide (common practice, no source)', () => {
  const item = cover(inches(76), inches(86), { seam: HALF_INCH })
  const order = orderOf([bolt('cotton', [inches(90)])], [item], { measureIn: 'in', markTo: inches(0.125) })
  const ways = waysOf(order, item)
  expect(ways.some((way) => way.joins === 0)).toBe(true)
  const way = ways.find((w) => w.joins === 0)!
  expect(way.pieces.map((p) => [p.name, inOf(p.cutWidth), inOf(p.cutLength)])).toEqual([
    ['/front', 77, 87],
    ['/back', 77, 87],
  ])
})

test('back 235 × 255 for a quilt from 110 cm: one seam is impossible, possible from 119 cm', () => {
  const item = quiltBack(cm(235), cm(255), cm(1.5), { mostSeams: 1 })
  const order = orderOf([bolt('cotton', [cm(110)])], [item])
  const found = waysToMake(order, item, tablesOf(order))
  expect(found.ways).toEqual([])
  expect(Math.min(...found.refused.map((r) => r.widthThatWouldDo ?? Number.POSITIVE_INFINITY))).toBe(cm(119))
  const wider = orderOf([bolt('cotton', [cm(119)])], [item])
  expect(waysOf(wider, item).length).toBeGreaterThan(0)
  const narrower = orderOf([bolt('cotton', [cm(118.5)])], [item])
  expect(waysOf(narrower, item)).toEqual([])
})

test('back 235 × 255 from 110 cm: three lengths of 255, or 110 + 110 + 41 laid across, or the narrow panel joined once', () => {
  const item = quiltBack(cm(235), cm(255), cm(1.5), { joined: 'full-widths', crossJoins: 1 })
  const order = orderOf([bolt('cotton', [cm(110)])], [item])
  const ways = waysOf(order, item)
  const sizes = ways.map((way) => way.pieces.map((p) => [cmOf(p.cutWidth), cmOf(p.cutLength)]))
  // laid across: 255 + 6 = 261 → 110 + 110 + 41, three of 235
  expect(sizes).toContainEqual([
    [235, 110],
    [235, 110],
    [235, 41],
  ])
  // along: 235 + 6 − 220 = 21; the narrow panel joined once: 2 of (255 + 3) / 2
  expect(sizes).toContainEqual([
    [110, 255],
    [110, 255],
    [21, 129],
    [21, 129],
  ])
})

test('E19 quilt back 80 × 56 in, usable 40 in, seams across: 2 widths × 56 in (quiltingboard t290638)', () => {
  // the published sum leaves out seams: with no allowance the two widths cover the 80 in exactly
  const item = quiltBack(inches(80), inches(56), 0, {
    joined: 'full-widths',
    lengthRuns: 'along',
    smallestPanel: inches(1),
  })
  const order = orderOf([bolt('cotton', [inches(40)])], [item], { markTo: inches(0.125) })
  const [way] = waysOf(order, item)
  expect(way!.pieces.map((p) => [inOf(p.cutWidth), inOf(p.cutLength)])).toEqual([
    [40, 56],
    [40, 56],
  ])
})

test('E21 back 65 × 78 in with one seam: 2 × 65 in laid across, or 2 × 78 in along (quiltingboard post 7400852)', () => {
  const item = quiltBack(inches(65), inches(78), inches(0.5), { mostSeams: 1, smallestPanel: inches(1) })
  const order = orderOf([bolt('cotton', [inches(42)])], [item], { markTo: inches(0.125) })
  const lengths = waysOf(order, item).map((way) =>
    way.pieces.map((p) => inOf(p.lengthRuns === 'along' ? p.cutLength : p.cutWidth)),
  )
  expect(lengths).toContainEqual([78, 78])
  expect(lengths).toContainEqual([65, 65])
})

test('E31 a piece 48 × 60 in is not cut from 95 × 42 in without joins, though the area suffices (dianeloves2quilt)', () => {
  const item: Rectangle = {
    ...COMMON,
    item: 'rectangle',
    name: 'back',
    size: { cut: { width: inches(48), length: inches(60) } },
    cloth: ['have'],
    sameCloth: 'item',
    lengthRuns: 'either',
    needs: { head: { kind: 'none' }, foot: { kind: 'none' }, left: { kind: 'none' }, right: { kind: 'none' } },
  }
  const have = bolt('have', [], {
    from: 'remnant',
    widths: [],
    size: { width: inches(42), length: inches(95) },
    spareEachEnd: ZERO,
  })
  const order = orderOf([have], [item], { markTo: ZERO })
  expect(95 * 42).toBeGreaterThan(48 * 60)
  const found = waysToMake(order, item, tablesOf(order))
  expect(found.ways).toEqual([])
  expect(found.refused.map((r) => r.why)).toContain('the cloth is narrower than the face')
})

test('E7 a flat width is never rounded down: 440 cm from 140 cm takes four panels (et-wholesale curtains)', () => {
  const item = quiltBack(cm(440), cm(240), 0, { joined: 'full-widths', lengthRuns: 'along', smallestPanel: cm(1) })
  const order = orderOf([bolt('cotton', [cm(140)])], [item])
  for (const way of waysOf(order, item)) expect(way.pieces.length).toBeGreaterThanOrEqual(4)
  expect(waysOf(order, item)[0]!.pieces.map((p) => cmOf(p.cutLength))).toEqual([240, 240, 240, 240])
})

test('E29 two widths of 59 in linen joined on the selvedge cover 118 in (outworldarts)', () => {
  const item = quiltBack(inches(118), inches(90), 0, {
    selvedgeToSelvedge: true,
    lengthRuns: 'along',
    smallestPanel: inches(1),
  })
  const order = orderOf([bolt('cotton', [inches(59)])], [item], { markTo: inches(0.125) })
  const way = waysOf(order, item).find((w) => w.joins === 1)!
  expect(way.pieces.map((p) => inOf(p.cutWidth))).toEqual([59, 59])
  expect(way.pieces[0]!.needs.right.kind).toBe('selvedge')
  expect(way.pieces[1]!.needs.left.kind).toBe('selvedge')
})

test('joined selvedge to selvedge, the left side panel carries the right selvedge, and trimmed selvedges carry none', () => {
  const item = cover(cm(225), cm(220), {
    front: face('cotton', { joined: 'centre-and-sides', selvedgeToSelvedge: true, lengthRuns: 'along' }),
  })
  const order = orderOf([bolt('cotton', [cm(140)])], [item])
  const pieces = waysOf(order, item)[0]!.pieces
  const needs = (name: string): string[] =>
    Object.entries(pieces.find((p) => p.name === name)!.needs)
      .filter(([, need]) => need.kind === 'selvedge')
      .map(([edge]) => edge)
  expect(needs('/front/left-side')).toEqual(['right'])
  expect(needs('/front/right-side')).toEqual(['left'])
  expect(needs('/front/centre')).toEqual(['left', 'right'])
  const trimmed = orderOf([bolt('cotton', [cm(140)], { unusedSelvedge: cm(1) })], [item])
  const centre = waysOf(trimmed, item)[0]!.pieces.find((p) => p.name === '/front/centre')!
  expect([cmOf(centre.cutWidth), centre.needs.left.kind]).toEqual([138, 'none'])
})

test('no centre seam unless asked, and then two equal halves', () => {
  const asked = (joined: FaceSpec['joined']): QuiltBack =>
    quiltBack(cm(200), cm(200), cm(1.5), { joined, lengthRuns: 'along' })
  const order = orderOf([bolt('cotton', [cm(110)])], [])
  expect(waysOf(order, asked('any')).every((way) => !way.id.includes('centre-seam'))).toBe(true)
  const [way] = waysOf(order, asked('centre-seam'))
  expect(way!.pieces.map((p) => [p.name, cmOf(p.cutWidth)])).toEqual([
    ['/left-half', 101.5],
    ['/right-half', 101.5],
  ])
})

test('a sheet for a child is never joined (GOST 31307-2005, 3.2.1)', () => {
  const hem = { depth: cm(2), turns: 2, turnedIn: cm(2) } as const
  const item: FlatSheet = {
    ...COMMON,
    item: 'flat-sheet',
    cot: true,
    // the standard's child sheet, 138 × 100
    finished: { width: cm(100), length: cm(138) },
    hems: { head: hem, foot: hem, left: hem, right: hem },
    face: face('cotton', { crossJoins: 2 }),
  }
  const narrow = orderOf([bolt('cotton', [cm(90)])], [item])
  const found = waysToMake(narrow, item, tablesOf(narrow))
  expect(found.ways).toEqual([])
  expect(found.refused.some((r) => r.why.includes('GOST 31307-2005'))).toBe(true)
  const wide = orderOf([bolt('cotton', [cm(150)])], [item])
  expect(waysOf(wide, item).map((way) => way.joins)).toEqual([0])
})

test('a flat sheet as wide as its cloth, both selvedges kept: 280 × 315, washed first 266 wide', () => {
  const item: FlatSheet = {
    ...COMMON,
    item: 'flat-sheet',
    finished: { width: cm(280), length: cm(300) },
    hems: {
      head: { depth: cm(10), turns: 2, turnedIn: cm(1.5) },
      foot: { depth: cm(2.5), turns: 2, turnedIn: cm(1) },
      left: 'selvedge',
      right: 'selvedge',
    },
    face: face('linen'),
  }
  const cloth = bolt('linen', [cm(280)], { shrinks: { along: percent(5), across: percent(5) } })
  const order = orderOf([cloth], [item])
  const [way] = waysOf(order, item)
  expect(way!.pieces.map((p) => [cmOf(p.cutWidth), cmOf(p.cutLength), p.spansWidth])).toEqual([[280, 315, true]])
  const washed = orderOf([cloth], [item], { wash: 'before-cutting' })
  expect(waysOf(washed, item)[0]!.pieces.map((p) => [cmOf(p.cutWidth), cmOf(p.cutLength)])).toEqual([[266, 315]])
})

test('shrinkage by division: to finish 200 at 5 %, 210.526 are cut, not 210 (ISO 5077 definition of the change)', () => {
  const item = quiltBack(cm(100), cm(200), cm(1.5))
  const cloth = bolt('cotton', [cm(150)], { shrinks: { along: percent(5), across: percent(5) } })
  const order = orderOf([cloth], [item], { wash: 'after-sewing', markTo: ZERO })
  const [way] = waysOf(order, item)
  expect(cmOf(way!.pieces[0]!.cutLength)).toBeCloseTo(210.526, 2)
})

test('a band at the head of another cloth', () => {
  const spec = face('cotton', { band: { at: 'head', depth: cm(40), cloth: ['contrast'] } })
  const item = cover(cm(140), cm(200), { front: spec })
  const order = orderOf([bolt('cotton', [cm(150)]), bolt('contrast', [cm(150)])], [item])
  const pieces = waysOf(order, item)[0]!.pieces
  // 200 − 40 + two allowances; 40 + two allowances
  expect(pieces.map((p) => [p.name, p.cloth, cmOf(p.cutWidth), cmOf(p.cutLength)])).toEqual([
    ['/front/band', 'contrast', 143, 43],
    ['/front/main', 'cotton', 143, 163],
    ['/back', 'cotton', 143, 203],
  ])
})

test('a motif in the middle sets the phase of the panel: first motif 12 cm from the cut end, repeat 50', () => {
  const motif = { ...PLAIN_PRINT, way: 'one-way', repeat: cm(50), motif: { first: cm(12) } } as const
  const item = cover(cm(135), cm(200))
  const order = orderOf([bolt('cotton', [cm(150)], { print: motif })], [item])
  const piece = waysOf(order, item)[0]!.pieces[0]!
  // head allowance 1.5 + half of 200 = 101.5 down the piece; 12 − 101.5 = −89.5 ≡ 10.5 mod 50
  expect(piece.tie).toMatchObject({ axis: 'along', offset: cm(10.5), absolute: true })
})

test('parts of a panel go on in the print where the part before stops', () => {
  const print = { ...PLAIN_PRINT, way: 'one-way', repeat: cm(64), match: 'straight' } as const
  const item = quiltBack(cm(235), cm(255), cm(1.5), { joined: 'full-widths', crossJoins: 1 })
  const order = orderOf([bolt('cotton', [cm(110)], { print })], [item])
  const way = waysOf(order, item).find((w) => w.id.includes('2-rest-at-one-side/parts-1-1-2'))!
  // the second part begins 129 − 3 below the first: 126 ≡ 62 mod 64
  expect(way.pieces.map((p) => p.tie?.offset)).toEqual([0, 0, 0, cm(62)])
})

test('a one-way print toward the left selvedge is laid across only', () => {
  const print = { ...PLAIN_PRINT, way: 'one-way', top: 'left' } as const
  const item = cover(cm(135), cm(200))
  const order = orderOf([bolt('cotton', [cm(240)], { print })], [item])
  const pieces = waysOf(order, item).flatMap((way) => way.pieces)
  expect(new Set(pieces.map((p) => `${p.lengthRuns} ${p.headToward}`))).toEqual(new Set(['across left']))
})

test('cross joins help on a remnant too short for the whole: 130 × 200 from 280 × 105 in two equal parts', () => {
  const remnant = bolt('cotton', [], {
    from: 'remnant',
    widths: [],
    size: { width: cm(280), length: cm(105) },
    spareEachEnd: ZERO,
  })
  const item = quiltBack(cm(130), cm(200), cm(1.5), { crossJoins: 1, lengthRuns: 'along' })
  const order = orderOf([remnant], [item])
  // (200 + 2 × 1.5) / 2 = 101.5
  expect(waysOf(order, item).map((way) => way.pieces.map((p) => [cmOf(p.cutWidth), cmOf(p.cutLength)]))).toEqual([
    [
      [130, 101.5],
      [130, 101.5],
    ],
  ])
  const seamless = { ...item, face: { ...item.face, mostSeams: 0 } }
  expect(waysToMake(order, seamless, tablesOf(order)).refused).toMatchObject([{ direction: 'along', short: cm(95) }])
  // on 100 cm even the parts are 1.5 cm too long
  const shorter = orderOf([{ ...remnant, size: { width: cm(280), length: cm(100) } }], [item])
  expect(waysToMake(shorter, item, tablesOf(shorter)).refused).toMatchObject([{ direction: 'along', short: cm(1.5) }])
})
