import type { Length } from '@lengthwise/units'
import { cm, inches, percent } from '@lengthwise/units'
import { describe, expect, test } from 'vitest'
import type { Hem, Pillowcase, Print, Seam, Way } from '../src/index.ts'
import { PILLOWCASE_HEM, waysToMake } from '../src/index.ts'
import { checkPillowcase } from '../src/items/pillowcase.ts'
import { asItLies, bolt, hem, orderOf, PLAIN, pillowcase, sheet, shrinking } from './item-orders.ts'

const cotton = bolt('cotton', cm(150))
const seamOf = (allowance: Length): Seam => ({ kind: 'plain', allowance })
const hemTaking = (half: Length): Hem => ({ depth: half, turns: 2, turnedIn: half })
const oneWay = (top: Print['top']): Print => ({ ...PLAIN, way: 'one-way', top })

function waysOf(item: Pillowcase, cloth = cotton, parts: Parameters<typeof orderOf>[2] = {}) {
  const order = orderOf([item], [cloth], { markTo: cm(0), ...parts })
  return waysToMake(order, item, new Map([[cloth.name, asItLies(cloth)]]))
}

/** Cut sizes of the only way, piece by piece. */
function sizesOf(item: Pillowcase, unit: (n: number) => Length, cloth = cotton, parts = {}) {
  const { ways } = waysOf(item, cloth, parts)
  expect(ways).toHaveLength(1)
  return sizesIn(ways[0]!, unit)
}

function sizesIn(way: Way, unit: (n: number) => Length) {
  return Object.fromEntries(
    way.pieces.map((piece) => [piece.name, [piece.cutWidth / unit(1), piece.cutLength / unit(1)]]),
  )
}

describe('cut sizes as published', () => {
  test('the default hem gives 53 × 174 cm for 50 × 75 with a flap of 15 (common practice)', () => {
    expect(sizesOf(pillowcase({ hem: PILLOWCASE_HEM, faces: 'one-piece' }), cm)).toEqual({ '': [53, 174] })
  })

  test('one piece, inside flap, 51 × 76: 56 × 190 cm (Instructables housewife pillowslip with French seams)', () => {
    // 2 L + 38 and W + 5: a flap of 30 and two hems of 4, seams of 2.5
    const item = pillowcase({
      faces: 'one-piece',
      finished: { width: cm(51), length: cm(76) },
      flap: cm(30),
      hem: hemTaking(cm(2)),
      seam: { kind: 'french', allowance: cm(2.5) },
    })
    expect(sizesOf(item, cm)).toEqual({ '': [56, 190] })
  })

  test('one piece, inside flap, 20 × 30: 22 × 75 in (Instructables housewife pillowslip with French seams)', () => {
    const item = pillowcase({
      faces: 'one-piece',
      finished: { width: inches(20), length: inches(30) },
      flap: inches(12),
      hem: hemTaking(inches(0.75)),
      seam: seamOf(inches(1)),
    })
    expect(sizesOf(item, inches)).toEqual({ '': [22, 75] })
  })

  test('envelope in one piece, 45 × 75: 49 × 174 cm (Instructables pillowcase, three styles)', () => {
    const item = pillowcase({
      style: 'envelope',
      faces: 'one-piece',
      finished: { width: cm(45), length: cm(75) },
      flap: cm(20),
      hem: hemTaking(cm(1)),
      seam: seamOf(cm(2)),
    })
    expect(sizesOf(item, cm)).toEqual({ '': [49, 174] })
  })

  test('flanged, 45 × 75 with a flange of 5: front 59 × 89 cm (Instructables pillowcase, three styles)', () => {
    const item = pillowcase({
      style: 'flanged',
      faces: 'separate',
      finished: { width: cm(45), length: cm(75) },
      flange: cm(5),
      flap: cm(20),
      seam: seamOf(cm(2)),
    })
    expect(sizesOf(item, cm)['/front']).toEqual([59, 89])
  })

  test('flanged in one piece, 10 × 14 with a flange of 2: 14 1/2 × 42 in (Little Black Duck simple Oxford)', () => {
    // (2 A + 8 + 6) × (B + 4 1/2): 6 in of overlap and hems, seams of a quarter
    const item = pillowcase({
      style: 'flanged',
      faces: 'one-piece',
      finished: { width: inches(10), length: inches(14) },
      flange: inches(2),
      flap: inches(4),
      hem: hemTaking(inches(0.5)),
      seam: seamOf(inches(0.25)),
    })
    expect(sizesOf(item, inches)).toEqual({ '': [14.5, 42] })
  })

  test('open end with cuff and trim: body 105 × 70, cuff 105 × 23, trim 105 × 5 cm (Customway pillowcases)', () => {
    const item = pillowcase({
      style: 'open-end',
      faces: 'one-piece',
      finished: { width: cm(51.25), length: cm(77.75) },
      cuff: { depth: cm(10.25), cloth: ['cotton'], trim: { depth: cm(1.25), cloth: ['cotton'] } },
      seam: seamOf(cm(1.25)),
    })
    expect(sizesOf(item, cm)).toEqual({ '/body': [105, 70], '/cuff': [105, 23], '/trim': [105, 5] })
  })

  test('open end with cuff and trim: body 41 × 27, cuff 41 × 11, trim 41 × 2 in (Diane Loves 2 Quilt house pillowcases)', () => {
    const item = pillowcase({
      style: 'open-end',
      faces: 'one-piece',
      finished: { width: inches(20), length: inches(31) },
      cuff: { depth: inches(5), cloth: ['cotton'], trim: { depth: inches(0.5), cloth: ['cotton'] } },
      seam: seamOf(inches(0.5)),
    })
    expect(sizesOf(item, inches)).toEqual({ '/body': [41, 27], '/cuff': [41, 11], '/trim': [41, 2] })
  })
})

describe('a print with a top', () => {
  const cutEnd = bolt('cotton', cm(150), { print: oneWay('cut-end') })

  test('one piece needs cloth of 174 cm; on 150 only separate faces (common practice)', () => {
    const { ways, refused } = waysOf(pillowcase(), cutEnd)
    expect(ways.map((way) => way.words)).toEqual(['front with inside flap and separate back'])
    expect(refused).toHaveLength(1)
    expect(refused[0]?.widthThatWouldDo).toBe(cm(174))
    expect(refused[0]?.why).toContain('174 cm')
    expect(waysOf(pillowcase(), bolt('cotton', cm(174), { print: oneWay('cut-end') })).ways).toHaveLength(2)
  })

  test('the top faces a long edge: the length lies across for cut end and bolt, along for the sides', () => {
    const runs = (top: Print['top']) =>
      waysOf(pillowcase({ faces: 'separate' }), bolt('cotton', cm(150), { print: oneWay(top) })).ways.flatMap((way) =>
        way.pieces.map((piece) => piece.lengthRuns),
      )
    expect(runs('cut-end')).toEqual(['across', 'across'])
    expect(runs('bolt')).toEqual(['across', 'across'])
    expect(runs('left')).toEqual(['along', 'along'])
    expect(runs('right')).toEqual(['along', 'along'])
  })

  // Diane Loves 2 Quilt and NC Weekend Quilter: body 27 × 41 in; 41 along the print takes 1 1/8 yd and more, any way round 3/4 yd
  test('a tube of 41 × 27 in lies with 41 along the cloth where the print has a top, else either way', () => {
    const item = pillowcase({
      style: 'open-end',
      faces: 'one-piece',
      finished: { width: inches(20), length: inches(31) },
      cuff: { depth: inches(5), cloth: ['cotton'], trim: null },
      seam: seamOf(inches(0.5)),
    })
    const body = (cloth: typeof cotton) => waysOf(item, cloth).ways[0]?.pieces[0]
    const printed = body(bolt('cotton', inches(42), { print: oneWay('cut-end') }))
    expect([printed?.cutWidth, printed?.lengthRuns]).toEqual([inches(41), 'across'])
    expect(body(bolt('cotton', inches(42)))?.lengthRuns).toBe('either')
    expect(waysOf(item, bolt('cotton', inches(42), { print: oneWay('cut-end') })).ways[0]?.words).toContain(
      'upside down',
    )
  })

  test('length-runs against the print is a mistake in the plan', () => {
    const item = pillowcase({ lengthRuns: 'along' })
    const [problem] = checkPillowcase(orderOf([item], [cutEnd]), item)
    expect(problem).toMatchObject({ code: 'length-runs', path: 'make[0].length-runs' })
    expect(problem?.hint).not.toBe('')
    expect(checkPillowcase(orderOf([item], [cotton]), item)).toEqual([])
  })
})

describe('openings that are kept', () => {
  test('a kept hem takes the place of the hem at the opening', () => {
    const item = pillowcase({ faces: 'one-piece', openingEdge: { kind: 'kept-hem', depth: cm(2) } })
    const linen = sheet('cotton', cm(230), cm(260), cm(10), cm(2.5))
    const { ways } = waysOf(item, linen)
    expect(sizesIn(ways[0]!, cm)).toEqual({ '': [53, 169.5] })
    expect(ways[0]?.pieces[0]?.needs.head).toEqual({ kind: 'kept-hem', depth: cm(2) })
  })

  test('a bolt has no hem to keep, but it has selvedges', () => {
    const kept = waysOf(pillowcase({ openingEdge: { kind: 'kept-hem', depth: cm(2) } }))
    expect(kept.ways).toEqual([])
    expect(kept.refused[0]?.why).toContain('kept hem')
    const selvedge = waysOf(pillowcase({ faces: 'separate', openingEdge: { kind: 'selvedge' } }))
    expect(selvedge.ways).toHaveLength(1)
  })

  test('front and back of a case with a top open to opposite sides', () => {
    const item = pillowcase({ style: 'open-end', faces: 'separate', openingEdge: { kind: 'selvedge' } })
    const { ways } = waysOf(item, bolt('cotton', cm(150), { print: oneWay('cut-end') }))
    // with the top of both prints at the cut end, the front's foot lies to the right and the back's head to the left
    expect(ways[0]?.pieces.map((piece) => piece.headToward)).toEqual(['left', 'left'])
    expect(ways[0]?.pieces.map(({ needs }) => [needs.head.kind, needs.foot.kind])).toEqual([
      ['none', 'selvedge'],
      ['selvedge', 'none'],
    ])
  })
})

describe('shrinking after sewing', () => {
  test('cut sizes grow by division, hems and seams do not', () => {
    const cloth = bolt('cotton', cm(200), { shrinks: shrinking(percent(5), percent(5)) })
    const size = sizesOf(pillowcase({ faces: 'one-piece' }), cm, cloth, { wash: 'after-sewing', markTo: cm(0.5) })
    // 50 ÷ 0.95 + 3 = 55.63, 165 ÷ 0.95 + 9 = 182.68
    expect(size).toEqual({ '': [56, 183] })
  })

  test('a cloth that shrinks more along than across is laid one way or the other, each with its size', () => {
    const cloth = bolt('cotton', cm(200), { shrinks: shrinking(percent(5), percent(0)) })
    const item = pillowcase({ faces: 'one-piece' })
    const { ways } = waysOf(item, cloth, { wash: 'after-sewing', markTo: cm(0.5) })
    expect(ways.map((way) => [way.pieces[0]?.lengthRuns, sizesIn(way, cm)])).toEqual([
      ['across', { '': [56, 174] }],
      ['along', { '': [53, 183] }],
    ])
  })
})

describe('mistakes', () => {
  test.each([
    ['flange-too-wide', pillowcase({ style: 'flanged', flange: cm(50) })],
    ['flap-does-not-fit', pillowcase({ flap: cm(75) })],
    ['hem-too-deep', pillowcase({ hem: hem(40) })],
    ['seam-too-wide', pillowcase({ seam: seamOf(cm(25)) })],
    ['cuff-not-open-end', pillowcase({ cuff: { depth: cm(10), cloth: ['cotton'], trim: null } })],
    [
      'trim-does-not-fit',
      pillowcase({
        style: 'open-end',
        cuff: { depth: cm(10), cloth: ['cotton'], trim: { depth: cm(11), cloth: ['cotton'] } },
      }),
    ],
    ['one-piece-of-two-cloths', pillowcase({ faces: 'one-piece', backCloth: ['linen'] })],
  ])('%s', (code, item) => {
    const problems = checkPillowcase(orderOf([item], [cotton]), item)
    expect(problems.map((problem) => problem.code)).toContain(code)
    for (const problem of problems) {
      expect(problem.path).toMatch(/^make\[0\]/)
      expect(problem.hint).not.toBe('')
    }
  })

  test('a sound case has none', () => {
    expect(checkPillowcase(orderOf([pillowcase()], [cotton]), pillowcase())).toEqual([])
  })
})

test('the sewing order hems first and gives each seam its length', () => {
  const { ways } = waysOf(pillowcase({ faces: 'one-piece' }))
  const steps = ways[0]!.sewing
  expect(steps.map((step) => step.seamLength)).toEqual([cm(106), 0, cm(150), 0])
  expect(steps[0]?.text).toMatch(/^Hem both short ends/)
  expect(ways[0]?.notions.map((notion) => notion.what)).toEqual(['thread'])
})

test('a print is not hung upside down on the back unless one piece is asked for', () => {
  const printed = bolt('cotton', cm(200), { print: oneWay('cut-end') })
  const { ways, refused } = waysOf(pillowcase({ style: 'open-end' }), printed)
  expect(ways.some((way) => way.words.includes('upside down'))).toBe(false)
  expect(ways).toHaveLength(2)
  expect(refused[0]?.why).toContain('faces: one-piece')
  const asked = waysOf(pillowcase({ style: 'open-end', faces: 'one-piece' }), printed)
  expect(asked.ways.some((way) => way.words.includes('upside down'))).toBe(true)
})

test.each([
  ['inside-flap', 1],
  ['envelope', 2],
  ['flanged', 2],
  ['open-end', 1],
] as const)('%s: separate faces have %i seams more than one piece, and are known to', (style, more) => {
  const joins = (item: Pillowcase): readonly number[] => waysOf(item).ways.map((way) => way.joins)
  const any = waysOf(pillowcase({ style, faces: 'any' })).ways
  const inOne = any.filter((way) => way.id.startsWith('one-piece'))
  const inTwo = any.filter((way) => way.id.startsWith('separate'))
  expect(inOne.length).toBeGreaterThan(0)
  expect(inTwo.length).toBeGreaterThan(0)
  for (const way of inOne) expect(way.joins).toBe(0)
  for (const way of inTwo) expect(way.joins).toBe(more)
  // where nothing simpler may be made, they have none too many
  expect(new Set(joins(pillowcase({ style, faces: 'separate' })))).toEqual(new Set([0]))
})
