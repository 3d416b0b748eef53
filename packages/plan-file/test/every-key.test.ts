import { inches, mm, percent } from '@lengthwise/units'
import { describe, expect, test } from 'vitest'
import { parsePlan, readPlanObject, SAMPLE_PLAN } from '../src/index.ts'
import { fixture, orderOf, planOf } from './helpers.ts'

const text = fixture('every-key.yaml')
const order = orderOf(text)
const none = { kind: 'none' }

describe('every key of a plan arrives in the order', () => {
  test('the plan itself', () => {
    expect(order).toMatchObject({
      title: 'Hillside guest house, back bedroom',
      date: '2026-05-02',
      measureIn: 'cm',
      currency: 'EUR',
      wash: 'before-cutting',
      seam: { kind: 'plain', allowance: mm(15) },
      markTo: mm(5),
      worthKeeping: { width: mm(200), length: mm(500) },
    })
  })

  test('duvet cover', () => {
    const face = {
      joined: 'any',
      smallestPanel: mm(150),
      centre: 'full',
      crossJoins: 0,
      selvedgeToSelvedge: false,
      lengthRuns: 'either',
      mostSeams: null,
      band: null,
    }
    expect(order.items[0]).toEqual({
      item: 'duvet-cover',
      path: 'make[0]',
      count: 1,
      for: 'room 2',
      // UK and Ireland double duvet, scooms duvet and mattress sizes
      sizeName: 'uk-double',
      finished: { width: mm(2000), length: mm(2000) },
      cot: false,
      seam: { kind: 'plain', allowance: mm(15) },
      front: { ...face, cloth: ['stripe'], zipEdge: null },
      back: {
        ...face,
        cloth: ['old-sheets'],
        zipEdge: { kind: 'kept-hems', finger: mm(20), lap: mm(4), stitching: mm(0) },
      },
      opening: { kind: 'zip', at: 'foot', zips: null },
      cornerTies: { count: 4, length: mm(230), width: mm(20), bought: true },
      tiesDespiteCaution: null,
    })
  })

  test('pillowcase', () => {
    expect(order.items[1]).toMatchObject({
      item: 'pillowcase',
      style: 'inside-flap',
      faces: 'any',
      flap: mm(150),
      count: 4,
      finished: { width: mm(500), length: mm(750) },
      cloth: ['stripe'],
      backCloth: ['stripe'],
      openingEdge: none,
      cuff: null,
    })
  })

  test('fitted sheet', () => {
    expect(order.items[2]).toMatchObject({
      item: 'fitted-sheet',
      mattress: { width: mm(1500), length: mm(2000), depth: mm(320) },
      tuck: mm(120),
      casing: mm(30),
      corners: 'cut',
      elastic: { where: 'all-round', ratioPercent: 60 },
      face: { cloth: ['linen'] },
    })
  })

  test('quilt back', () => {
    expect(order.items[3]).toMatchObject({
      item: 'quilt-back',
      quilt: { width: mm(2250), length: mm(2450) },
      overhang: mm(50),
      face: { cloth: ['backing'], mostSeams: 2 },
    })
  })

  test('rectangles, as cut and as finished', () => {
    expect(order.items[4]).toMatchObject({
      item: 'rectangle',
      name: 'tray cloth',
      count: 6,
      size: { cut: { width: mm(400), length: mm(600) } },
      cloth: ['stripe', 'old-sheets'],
      sameCloth: 'item',
      lengthRuns: 'along',
      needs: { head: none, foot: none, left: { kind: 'selvedge' }, right: none },
    })
    expect(order.items[5]).toMatchObject({
      size: {
        finished: { width: mm(400), length: mm(600) },
        edges: {
          head: { depth: mm(20), turns: 2, turnedIn: mm(20) },
          foot: { depth: mm(20), turns: 1, turnedIn: mm(10) },
          left: 'seam',
          right: 'raw',
        },
      },
      sameCloth: 'none',
    })
    expect(order.items[6]).toMatchObject({
      needs: {
        head: { kind: 'kept-hem', depth: 0 },
        foot: { kind: 'kept-hem', depth: mm(25) },
        left: none,
        right: none,
      },
    })
  })

  test('a bolt', () => {
    expect(order.cloths[0]).toEqual({
      name: 'stripe',
      from: 'bolt',
      price: { coins: 1450, per: 'm' },
      widths: [
        { width: mm(1120), price: { coins: 1450, per: 'm' } },
        { width: mm(1500), price: { coins: 1450, per: 'm' } },
        { width: mm(2400), price: { coins: 1980, per: 'm' } },
      ],
      soldBy: mm(100),
      smallestSale: mm(500),
      have: 0,
      sold: true,
      size: null,
      count: 1,
      edges: { head: { kind: 'raw' }, foot: { kind: 'raw' }, left: { kind: 'selvedge' }, right: { kind: 'selvedge' } },
      mustKeep: [],
      shrinks: { along: percent(5), across: percent(3) },
      unusedSelvedge: 0,
      spareEachEnd: mm(50),
      flaws: [],
      print: {
        way: 'one-way',
        top: 'cut-end',
        repeat: mm(640),
        acrossRepeat: 0,
        match: 'straight',
        repeatMeasured: 'on-the-table',
        matchLine: 0,
        motif: null,
      },
      divideBy: 'tearing',
      lostPerTear: 0,
    })
  })

  test('sheets, a remnant, and a bolt that is owned only', () => {
    expect(order.cloths[1]).toMatchObject({
      from: 'sheet',
      size: { width: mm(2300), length: mm(2600) },
      count: 2,
      edges: {
        head: { kind: 'hem', depth: mm(100) },
        foot: { kind: 'hem', depth: mm(25) },
        left: { kind: 'selvedge' },
        right: { kind: 'selvedge' },
      },
      mustKeep: [],
      shrinks: { along: 0, across: 0 },
      spareEachEnd: 0,
      flaws: [{ x: mm(200), y: mm(1100), width: mm(50), length: mm(80), on: 2 }],
      widths: [],
    })
    expect(order.cloths[2]).toMatchObject({
      from: 'remnant',
      size: { width: mm(1100), length: mm(1400) },
      count: 1,
      edges: { left: { kind: 'selvedge' }, right: { kind: 'raw' } },
    })
    expect(order.cloths[4]).toMatchObject({ widths: [{ width: mm(1100), price: null }], have: mm(8000), sold: false })
  })

  test('JSON says the same', () => {
    const parsed = parsePlan(text)
    if (!parsed.ok) throw new Error('did not parse')
    expect(orderOf(JSON.stringify(parsed.value))).toEqual(order)
    expect(orderOf(JSON.stringify(parsed.value, null, '\t'))).toEqual(order)
    expect(readPlanObject(parsed.value)).toEqual({ ok: true, value: order })
  })
})

describe('plans that say little', () => {
  test('a duvet cover needs its size and one cloth, which may go without saying', () => {
    const short = orderOf(planOf('item: duvet-cover, size: uk-double')).items[0]
    expect(short).toEqual(orderOf(planOf('item: duvet-cover, size: uk-double, cloth: sprig')).items[0])
    expect(short).toEqual(orderOf(planOf('item: duvet-cover, size: uk-double, front: { cloth: sprig }')).items[0])
    expect(short).toEqual(orderOf(planOf('item: duvet-cover, size: uk-double, front: sprig, opening: zip')).items[0])
    expect(short).toMatchObject({ front: { cloth: ['sprig'] }, back: { cloth: ['sprig'] }, opening: { kind: 'zip' } })
  })

  test('a back that says nothing is joined as the front, without its band', () => {
    const item = orderOf(
      planOf('item: duvet-cover, finished: 200 x 200, front: { joined: centre-seam, band: { depth: 40 cm } }'),
    ).items[0]
    expect(item).toMatchObject({
      front: { joined: 'centre-seam', band: { at: 'head', depth: mm(400), cloth: ['sprig'] } },
      back: { joined: 'centre-seam', band: null },
    })
  })

  test.each([
    'item: pillowcase, finished: 50 x 75',
    'item: pillowcase, size: uk-standard, style: open-end, cuff: {}',
    'item: flat-sheet, finished: 240 x 280',
    'item: fitted-sheet, mattress: 150 x 200 x 25',
    'item: fitted-sheet, size: uk-king, depth: 30',
    'item: bed-skirt, base: 150 x 200',
    'item: bolster, diameter: 20, length: 90',
    'item: cushion, finished: 45 x 45',
    'item: sham, finished: 50 x 75',
    'item: throw, finished: 140 x 200',
    'item: quilt-back, quilt: 225 x 245',
    'item: strips, width: 6, run: 720',
    'item: rectangle, cut: 40 x 60',
  ])('%s', (item) => expect(orderOf(planOf(item)).items).toHaveLength(1))

  test('the sample plan reads', () => expect(orderOf(SAMPLE_PLAN).items.map((i) => i.item)).toHaveLength(3))
  test('the guest house: two covers with backs from sheets, eight pillowcases, a tray cloth, three widths', () => {
    const house = orderOf(fixture('guest-house.yaml'))
    expect(house.items.map((i) => [i.item, i.count])).toEqual([
      ['duvet-cover', 2],
      ['pillowcase', 8],
      ['rectangle', 1],
    ])
    expect(house.cloths[0]!.widths.every((w) => w.price !== null)).toBe(true)
    expect(house.cloths[0]!.widths).toHaveLength(3)
    expect(house.cloths[1]).toMatchObject({ count: 2, edges: { head: { depth: mm(100) }, foot: { depth: mm(25) } } })
  })

  test('a plan in inches has usual figures in inches', () => {
    const { markTo, seam, worthKeeping, cloths } = orderOf(
      planOf('item: duvet-cover, finished: 76 x 86', 'widths: [45]', 'measure-in: in'),
    )
    expect({ markTo, seam, worthKeeping }).toEqual({
      markTo: inches(0.125),
      seam: { kind: 'plain', allowance: inches(0.5) },
      worthKeeping: { width: inches(8), length: inches(20) },
    })
    expect(cloths[0]).toMatchObject({ widths: [{ width: inches(45) }], soldBy: inches(4.5), spareEachEnd: inches(2) })
  })

  test('units are mixed in one plan', () => {
    const { items, cloths } = orderOf(
      planOf(
        `item: duvet-cover, finished: '76 in x 2.1 m', front: { smallest-panel: 6" }`,
        'widths: [45", 1.5 m]\nsmallest-sale: 2 1/4 yd',
      ),
    )
    expect(items[0]).toMatchObject({
      finished: { width: inches(76), length: mm(2100) },
      front: { smallestPanel: inches(6) },
    })
    expect(cloths[0]).toMatchObject({ widths: [{ width: inches(45) }, { width: mm(1500) }], smallestSale: inches(81) })
  })
})

describe('other names that are read', () => {
  test.each([
    ['item: pillowcase, finished: 50 x 75, style: housewife', { style: 'inside-flap' }],
    ['item: pillowcase, finished: 50 x 75, style: oxford', { style: 'flanged', flange: mm(50) }],
    ['item: duvet-cover, finished: 200 x 200, opening: poppers', { opening: { kind: 'snaps' } }],
    ['item: duvet-cover, finished: 200 x 200, opening: { kind: press-studs }', { opening: { kind: 'snaps' } }],
    [
      'item: duvet-cover, finished: 200 x 200, seam: run-and-fell',
      { seam: { kind: 'flat-felled', allowance: mm(15) } },
    ],
    ['item: rectangle, cut: 40 x 60, edges: { left: selvage }', { needs: { left: { kind: 'selvedge' } } }],
    ['item: duvet-cover, finished: 200 x 200, front: { joined: center-seam }', { front: { joined: 'centre-seam' } }],
    ['item: duvet-cover, finished: 200 x 200, front: { center: any }', { front: { centre: 'any' } }],
    [
      'item: duvet-cover, finished: 200 x 200, front: { selvage-to-selvage: yes }',
      { front: { selvedgeToSelvedge: true } },
    ],
  ])('%s', (item, expected) => expect(orderOf(planOf(item)).items[0]).toMatchObject(expected))

  test('selvages of a cloth', () => {
    const [cloth] = orderOf(
      planOf('item: rectangle, cut: 40 x 60', 'widths: 150 cm\nselvages: left\nunused-selvage: 1 cm'),
    ).cloths
    expect(cloth).toMatchObject({
      unusedSelvedge: mm(10),
      edges: { left: { kind: 'selvedge' }, right: { kind: 'raw' } },
    })
  })
})

describe('sizes', () => {
  const sizeOf = (item: string) => {
    const read = orderOf(planOf(item)).items[0]!
    return 'finished' in read ? [read.finished.width, read.finished.length, read.sizeName] : []
  }
  test.each([
    ['insert: 195 x 205 cm, ease: 2 cm', [mm(1970), mm(2070), null]],
    ['insert: 195 x 205 cm with ease, ease: 2 cm', [mm(1970), mm(2070), null]],
    ['insert: 195 x 205 cm with 2 cm ease', [mm(1970), mm(2070), null]],
    ['insert: 195 x 205 cm with ease of 2 cm', [mm(1970), mm(2070), null]],
    ['insert: 195 x 205 cm', [mm(1950), mm(2050), null]],
    ['insert: 195 x 205 cm, ease: -5 cm', [mm(1900), mm(2000), null]],
    ['size: uk-double, ease: 5 cm', [mm(2050), mm(2050), 'uk-double']],
    ['size: uk-double, insert: 195 x 205 cm', [mm(1950), mm(2050), null]],
    // UK king: 225 is the width, 220 the length (scooms duvet and mattress sizes)
    ['size: uk-king', [mm(2250), mm(2200), 'uk-king']],
  ])('%s', (keys, expected) => expect(sizeOf(`item: duvet-cover, ${keys}`)).toEqual(expected))

  test('one name, sized by what is sewn', () => {
    const [sheet] = orderOf(planOf('item: fitted-sheet, size: uk-double')).items
    // UK double mattress, scooms duvet and mattress sizes
    expect(sheet).toMatchObject({
      mattress: { width: mm(1350), length: mm(1900), depth: mm(250) },
      sizeName: 'uk-double',
    })
  })
  test('a cot size makes a cot item', () =>
    expect(
      orderOf(planOf('item: fitted-sheet, size: uk-cot, depth: 10 cm, elastic: all-round')).items[0],
    ).toMatchObject({ cot: true }))
})

describe('cloth', () => {
  const clothOf = (keys: string) => orderOf(planOf('item: rectangle, cut: 40 x 60', keys)).cloths[0]!
  test('must keeps every hem, or the ones named', () => {
    const sheet = 'from: sheet\nsize: 230 x 260\nhems: { head: 10, foot: 2.5, left: selvedge }'
    expect(clothOf(`${sheet}\nkeep: must`).mustKeep).toEqual(['head', 'foot'])
    expect(clothOf(`${sheet}\nkeep: { head: must }`).mustKeep).toEqual(['head'])
    expect(clothOf(sheet).edges.right).toEqual({ kind: 'raw' })
  })
  test('a repeat is matched unless the plan says not to', () => {
    expect(clothOf('widths: 150\nprint: { way: two-way, repeat: 64 }').print.match).toBe('straight')
    expect(clothOf('widths: 150\nprint: { way: two-way, repeat: 64, match: none }').print.match).toBe('none')
    expect(clothOf('widths: 150\nprint: two-way').print).toMatchObject({ way: 'two-way', match: 'none', repeat: 0 })
  })
  test('a motif', () => {
    expect(clothOf('widths: 150\nprint: { repeat: 64, motif: centred }').print.motif).toEqual({ first: null })
    expect(clothOf('widths: 150\nprint: { repeat: 64, motif: { first: 12 cm } }').print.motif).toEqual({
      first: mm(120),
    })
  })
  test('the currency may stand with the price', () => {
    const text = planOf('item: rectangle, cut: 40 x 60', 'widths: 150\nprice: 9.80 per yd\ncurrency: GBP')
    expect(orderOf(text).currency).toBe('GBP')
  })
})

describe('files as other machines write them', () => {
  const plan = orderOf(fixture('guest-house.yaml'))
  test('lines that end in CR LF', () =>
    expect(orderOf(fixture('guest-house.yaml').replaceAll('\n', '\r\n'))).toEqual(plan))
  test('a byte order mark', () => expect(orderOf(`\ufeff${fixture('guest-house.yaml')}`)).toEqual(plan))
  test('aliases that repeat a few values', () => {
    const text = `make:
  - { item: duvet-cover, finished: 200 x 200, front: &face { joined: one-piece }, back: *face }
cloth: [{ name: a, widths: [240] }]`
    expect(orderOf(text).items[0]).toMatchObject({ front: { joined: 'one-piece' }, back: { joined: 'one-piece' } })
  })
  test('inch and foot signs without quotes', () =>
    expect(
      orderOf(`make:\n  - item: rectangle\n    cut: 4' 6" x 60 1/8"\ncloth: [{ name: a, widths: [60"] }]`).items[0],
    ).toMatchObject({
      size: { cut: { width: inches(54), length: inches(60.125) } },
    }))
})

test('a hem given by its depth alone may be any length, 1 1/8 in too, which is 28.575 mm', () => {
  const hems = 'hems: { head: 1 1/8 in, foot: 3/8 in, left: 28.5750 mm, right: 2.5 cm }'
  expect(orderOf(planOf(`item: rectangle, finished: 40 x 60 cm, ${hems}`)).items[0]).toMatchObject({
    size: { edges: { head: { depth: inches(1.125) }, foot: { depth: inches(0.375) }, left: { depth: inches(1.125) } } },
  })
  for (const item of ['pillowcase', 'cushion', 'throw'])
    expect(orderOf(planOf(`item: ${item}, finished: 40 x 60 cm, hem: 1 1/8 in`)).items[0]).toMatchObject({
      hem: { depth: inches(1.125) },
    })
})
