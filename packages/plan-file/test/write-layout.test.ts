import type { Cloth } from '@lengthwise/pieces'
import type { CutCloth, Result } from '@lengthwise/planner'
import type { Length, Money } from '@lengthwise/units'
import { costOf, length, mm } from '@lengthwise/units'
import { describe, expect, test } from 'vitest'
import { writeLayout } from '../src/index.ts'
import { layoutShape } from '../src/layout-schema.ts'
import { fixture, orderOf } from './helpers.ts'

const order = orderOf(fixture('guest-house.yaml'))
const sprig = order.cloths[0] as Cloth
const cut = { kind: 'cut' } as const
const selvedge = { kind: 'selvedge' } as const
const box = (x: number, y: number, width: number, long: number) => ({
  x: mm(x),
  y: mm(y),
  width: mm(width),
  length: mm(long),
})
const squareMm = (n: number) => n * 320 * 320
const cost = costOf({ coins: 1450, per: 'm' }, mm(5600))

/** 150 cm less 3 %, 5.6 m bought less 5 %: the figures of the format's own example. */
const bought: CutCloth = {
  cloth: sprig,
  name: 'stripe',
  from: 'bolt',
  piece: 1,
  width: mm(1455),
  length: mm(5320),
  usable: box(0, 50, 1455, 5220),
  edges: { left: selvedge, right: selvedge, start: { kind: 'raw' }, end: { kind: 'raw' } },
  buy: { width: mm(1500), length: mm(5600), cost },
  proof: {
    status: 'proved',
    length: mm(5160),
    bound: mm(5160),
    by: 'bars',
    certificate: { prices: [3, 2], capacity: 7 },
  },
  notUsed: { percent: 9.0953, area: squareMm(704_000), keepPercent: 6.5 },
  placed: [
    {
      piece: 'duvet-cover-1/front/centre',
      label: '1',
      words: 'Front, centre',
      whose: 'cover 1',
      ...box(0, 50, 1455, 2030),
      turned: false,
      top: 'start',
      phase: mm(50),
      edges: { left: selvedge, right: selvedge, start: cut, end: { kind: 'kept-hem', depth: mm(25) } },
      marks: [],
    },
    {
      piece: 'tray-cloth-1',
      label: '2',
      words: 'Tray cloth',
      whose: 'tray cloth 1',
      // 1/64 in and 1/320 mm are exact decimals of a millimetre
      ...{ x: length(127), y: length(1), width: mm(400), length: mm(600) },
      turned: true,
      top: 'left',
      phase: null,
      edges: { left: cut, right: cut, start: cut, end: cut },
      marks: [],
    },
  ],
  divisions: [
    {
      n: 1,
      flag: 'T1',
      how: 'tear',
      runs: 'across',
      at: mm(50),
      from: mm(0),
      to: mm(1455),
      hand: box(0, 0, 1455, 5320),
      measure: { distance: mm(50), from: { kind: 'cloth-edge', edge: 'cut-end' } },
      gives: [
        { kind: 'trim', box: box(0, 0, 1455, 50) },
        { kind: 'part', labels: ['1', '2'], remnants: ['R1'], box: box(0, 50, 1455, 5270) },
      ],
    },
  ],
  trims: [box(0, 0, 1455, 50)],
  remnants: [{ name: 'R1', ...box(0, 4000, 400, 1250), wouldMake: ['pillowcase 40 x 60 cm'] }],
  waste: [],
  repeat: mm(0),
}

const laid: Result = {
  order,
  status: 'laid',
  timed: false,
  proof: { status: 'proved', objective: 'cost', value: cost, bound: cost, by: 'exhausted' },
  cloths: [
    bought,
    {
      ...bought,
      name: 'old-sheets',
      from: 'sheet',
      piece: 2,
      buy: null,
      proof: { ...bought.proof, by: 'exhausted', certificate: null },
    },
  ],
  widths: [
    {
      cloth: 'stripe',
      width: mm(1120),
      possible: true,
      buyLength: mm(7400),
      area: squareMm(8_288_000),
      cost: costOf({ coins: 1450, per: 'm' }, mm(7400)),
      notUsedPercent: 11.24,
      keepPercent: 3,
      seams: 3,
      status: 'proved',
      chosen: false,
      why: null,
      enoughFrom: mm(1110),
      layout: bought,
    },
    {
      cloth: 'stripe',
      width: mm(900),
      possible: false,
      buyLength: null,
      area: null,
      cost: null,
      notUsedPercent: null,
      keepPercent: null,
      seams: null,
      status: null,
      chosen: false,
      why: 'Too narrow: the front needs 203 cm, or joins',
      enoughFrom: null,
      layout: null,
    },
  ],
  missing: [],
  buy: [
    { what: 'cloth', name: 'stripe', quantity: mm(5600), unit: 'mm', cost },
    { what: 'zip', name: 'zip 150 cm', quantity: 2, unit: 'piece', cost: null },
  ],
  pieces: [
    {
      piece: 'duvet-cover-1/front/centre',
      item: 'duvet-cover-1',
      label: '1',
      words: 'Front, centre',
      cloth: 'stripe',
      cutWidth: mm(1455),
      cutLength: mm(2030),
      marks: [
        { kind: 'fold', x: mm(0), y: mm(25), runs: 'across' },
        { kind: 'seam', x: mm(0), y: mm(2015), runs: 'across', isEdge: true },
        { kind: 'corner-square', x: mm(0), y: mm(0), size: mm(455) },
      ],
    },
  ],
  seams: [
    {
      a: 'duvet-cover-1/front/centre#left',
      b: 'duvet-cover-1/front/left-side#right',
      length: mm(2030),
      allowanceA: mm(15),
      allowanceB: mm(15),
      lap: mm(0),
      match: 'straight',
    },
  ],
  finished: [
    { item: 'duvet-cover-1', width: mm(2000), length: mm(2001), asked: { width: mm(2000), length: mm(2000) } },
  ],
  sewing: [{ step: 1, item: 'duvet-cover-1', text: 'Join the front', seamLength: mm(2030) }],
  cautions: [{ code: 'blades', text: 'Cut away from the hand.' }],
  goodToKnow: [],
}

const read = (result: Result) => JSON.parse(writeLayout(result))

describe('the layout file', () => {
  const file = read(laid)

  test('is what its schema says', () => expect(layoutShape().parse(file)).toEqual(file))

  test('keys stand in their order', () => {
    expect(Object.keys(file)).toEqual(
      'format title unit timed proof cloths widths buy pieces seams finished sewing cautions goodToKnow'.split(' '),
    )
    expect(Object.keys(file.cloths[0])).toEqual(
      'name from piece width length usable buy proof notUsed placed divisions trims remnants'.split(' '),
    )
    expect(Object.keys(file.cloths[1])).not.toContain('buy')
  })

  test('a bought cloth, in millimetres', () => {
    expect(file.proof).toEqual({ status: 'proved', objective: 'cost', value: 81.2, bound: 81.2, by: 'exhausted' })
    const [cloth] = file.cloths
    expect(cloth).toMatchObject({
      name: 'stripe',
      from: 'bolt',
      piece: 1,
      width: 1455,
      length: 5320,
      usable: { x: 0, y: 50, width: 1455, length: 5220 },
      buy: { width: 1500, length: 5600, cost: 81.2 },
      proof: { status: 'proved', length: 5160, bound: 5160, by: 'bars', certificate: { prices: [3, 2], capacity: 7 } },
      notUsed: { percent: 9.1, area: 704_000, keepPercent: 6.5 },
    })
    expect(cloth.placed[0]).toEqual({
      piece: 'duvet-cover-1/front/centre',
      label: '1',
      x: 0,
      y: 50,
      width: 1455,
      length: 2030,
      turned: false,
      top: 'start',
      phase: 50,
      edges: { left: selvedge, right: selvedge, start: cut, end: { kind: 'kept-hem', depth: 25 } },
    })
    expect(cloth.divisions).toEqual([{ n: 1, how: 'tear', runs: 'across', at: 50, from: 0, to: 1455 }])
    expect(cloth.trims).toEqual([{ x: 0, y: 0, width: 1455, length: 50 }])
    expect(cloth.remnants).toEqual([{ x: 0, y: 4000, width: 400, length: 1250, wouldMake: ['pillowcase 40 x 60 cm'] }])
  })

  test('numbers are exact decimals', () => {
    const text = writeLayout(laid)
    // 127/320 and 1/320
    expect(text).toContain('"x": 0.396875,')
    expect(text).toContain('"y": 0.003125,')
    expect(text).not.toMatch(/[0-9]e[+-]?[0-9]/)
    for (const units of [1, 127, 320, 333, 8128, 99_999_999, 319_999_999]) {
      const figure = read({ ...laid, finished: [{ ...laid.finished[0]!, width: length(units) }] }).finished[0].width
      expect(figure * 320).toBe(units)
      expect(String(figure)).toBe(exactDecimal(length(units)))
    }
  })

  test('an impossible width has nulls and says why', () => {
    expect(file.widths[0]).toMatchObject({
      buyLength: 7400,
      area: 8_288_000,
      cost: 107.3,
      notUsedPercent: 11.2,
      seams: 3,
      enoughFrom: 1110,
    })
    expect(file.widths[1]).toMatchObject({
      possible: false,
      buyLength: null,
      area: null,
      cost: null,
      seams: null,
      enoughFrom: null,
    })
    expect(file.widths[1].why).toContain('Too narrow')
  })

  test('what to buy, pieces, seams, finished sizes', () => {
    expect(file.buy).toEqual([
      { what: 'cloth', name: 'stripe', quantity: 5600, unit: 'mm', cost: 81.2 },
      { what: 'zip', name: 'zip 150 cm', quantity: 2, unit: 'piece', cost: null },
    ])
    expect(file.pieces[0]).toEqual({
      piece: 'duvet-cover-1/front/centre',
      item: 'duvet-cover-1',
      cutWidth: 1455,
      cutLength: 2030,
      marks: [
        { kind: 'fold', x: 0, y: 25, runs: 'across' },
        // stitched to what is no edge of a piece, and the finished edge
        { kind: 'fold', x: 0, y: 2015, runs: 'across' },
        { kind: 'corner-square', x: 0, y: 0, size: 455 },
      ],
    })
    expect(file.seams[0]).toMatchObject({ length: 2030, allowanceA: 15, allowanceB: 15, lap: 0, match: 'straight' })
    expect(file.finished[0]).toEqual({
      item: 'duvet-cover-1',
      width: 2000,
      length: 2001,
      asked: { width: 2000, length: 2000 },
    })
  })

  test('missing cloth is told only when the plan cannot be cut', () => {
    const missing = [
      { cloth: 'leftover', width: mm(1100), short: mm(120), direction: 'along', words: '12 cm short' },
    ] as const
    const refused = read({ ...laid, status: 'cannot-be-cut', cloths: [], missing })
    expect(refused.missing).toEqual([
      { cloth: 'leftover', width: 1100, short: 120, direction: 'along', words: '12 cm short' },
    ])
    expect(layoutShape().safeParse(refused).success).toBe(true)
    expect(file).not.toHaveProperty('missing')
  })

  test('an objective of area is in square millimetres, exact to the last unit', () => {
    const area = (value: bigint) =>
      read({ ...laid, proof: { ...laid.proof, objective: 'area', value, bound: 0n } }).proof.value
    expect(area(102_400n * 8_288_000n)).toBe(8_288_000)
    expect(area(102_400n + 51_200n)).toBe(1.5)
  })

  test('cost is rounded to the coin, half a coin up', () => {
    const shown = (money: bigint) => read({ ...laid, proof: { ...laid.proof, value: money as Money } }).proof.value
    expect(shown(365_760_000n * 8120n + 182_880_000n)).toBe(81.21)
    expect(shown(365_760_000n * 8120n + 182_879_999n)).toBe(81.2)
  })

  test('the same result gives the same bytes', () => expect(writeLayout(laid)).toBe(writeLayout(structuredClone(laid))))
})

/** Whole and six decimal places of l/320 by whole-number arithmetic. */
function exactDecimal(l: Length): string {
  const millionths = (BigInt(l) * 1_000_000n) / 320n
  const places = (millionths % 1_000_000n).toString().padStart(6, '0').replace(/0+$/, '')
  return places === '' ? `${millionths / 1_000_000n}` : `${millionths / 1_000_000n}.${places}`
}
