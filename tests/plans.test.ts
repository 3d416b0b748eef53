import { readPlan } from '@lengthwise/plan-file'
import type { PlanOptions, Result } from '@lengthwise/planner'
import { plan, rehearsalFaults, verify } from '@lengthwise/planner'
import { cm, inches, length, toCoins } from '@lengthwise/units'
import { describe, expect, it } from 'vitest'

/*
 * Orders worked by hand, from the plan file to what is bought and how it is divided. Sewing practice is common practice, no
 * source, unless a check names where it was published.
 */

function planned(text: string, options: PlanOptions = {}): Result {
  const read = readPlan(text)
  if (!read.ok) throw new Error(read.problems.map((p) => `${p.path}: ${p.message}`).join('\n'))
  const result = plan(read.value, options)
  expect(verify(result)).toEqual([])
  for (const cloth of result.cloths) expect(rehearsalFaults(cloth)).toEqual([])
  return result
}

const bought = (result: Result, name: string) => result.buy.find((line) => line.what === 'cloth' && line.name === name)
const onCloth = (result: Result, name: string) => result.cloths.filter((cloth) => cloth.name === name)
const sizeOf = (result: Result, piece: string) => {
  const row = result.pieces.find((p) => p.piece === piece)
  return row && [row.cutWidth, row.cutLength]
}

describe('a cover 225 x 220 with a half-drop print, cloth 140', () => {
  const order = (print: string) => `
plan: 1
title: Cover with a print
wash: none
mark-to: 0.5 cm
seam: { kind: plain, allowance: 1.5 cm }
make:
  - item: duvet-cover
    finished: 225 x 220 cm
    front: { cloth: print, joined: centre-and-sides, length-runs: along }
    back: { cloth: print, joined: centre-and-sides, length-runs: along }
    opening: { kind: buttons, at: foot, depth: 4 cm }
cloth:
  - name: print
    from: bolt
    widths: [140 cm]
    price: 10.00 per m
    sold-by: 10 cm
    spare-each-end: 5 cm
    print: ${print}
`
  it('matches the print in 939 cm, proved, and buys 9.5 m', () => {
    const result = planned(order('{ way: one-way, top: cut-end, repeat: 64 cm, match: half-drop }'))
    const [cloth] = onCloth(result, 'print')
    expect(sizeOf(result, 'duvet-cover-1/front/left-side')).toEqual([cm(47), cm(229.5)])
    expect(sizeOf(result, 'duvet-cover-1/front/centre')).toEqual([cm(140), cm(229.5)])
    expect(cloth?.proof.length).toBe(cm(939))
    expect(bought(result, 'print')?.quantity).toBe(cm(950))
    expect(result.proof.status).toBe('proved')
    expect(toCoins(result.proof.value as never)).toBe(9500)
  })

  it('needs 918 cm without a match, and buys 9.3 m', () => {
    const result = planned(order('{ way: one-way, top: cut-end, repeat: 64 cm, match: none }'))
    expect(onCloth(result, 'print')[0]?.proof.length).toBe(cm(918))
    expect(bought(result, 'print')?.quantity).toBe(cm(930))
    expect(result.proof.status).toBe('proved')
  })
})

describe('a back from a flat sheet with both hems kept', () => {
  const order = (size: string, sheet: string) => `
plan: 1
title: Kept hems
wash: before-cutting
mark-to: 0.5 cm
seam: { kind: plain, allowance: 1.5 cm }
worth-keeping: 20 x 50 cm
make:
  - item: duvet-cover
    finished: ${size}
    front: { cloth: plain }
    back: { cloth: sheet, zip-edge: kept-hems, finger: 2 cm, lap: 0.4 cm }
    opening: { kind: zip, at: foot }
cloth:
  - name: plain
    from: bolt
    widths: [240 cm]
    price: 20.00 per m
    sold-by: 10 cm
    spare-each-end: 5 cm
    shrinks: none
  - name: sheet
    from: sheet
    size: 230 x 260 cm
    hems: { head: 10 cm, foot: 2.5 cm, left: selvedge, right: selvedge }
${sheet}
`
  it('200 x 200: strip 12, body 192, 56 left between, finished 200.1', () => {
    const result = planned(order('200 x 200 cm', '    shrinks: none'))
    const [sheet] = onCloth(result, 'sheet')
    expect(sizeOf(result, 'duvet-cover-1/back/zip-strip')).toEqual([cm(203), cm(12)])
    expect(sizeOf(result, 'duvet-cover-1/back/body')).toEqual([cm(203), cm(192)])
    expect(sizeOf(result, 'duvet-cover-1/front')).toEqual([cm(203), cm(203.5)])
    expect(result.finished[0]).toMatchObject({ width: cm(200), length: cm(200.1) })
    expect(sheet?.remnants.some((r) => r.y === cm(12) && r.length === cm(56) && r.width === cm(230))).toBe(true)
    expect(sheet?.divisions.map((d) => [d.how, d.runs, d.at])).toEqual([
      ['shears', 'across', cm(12)],
      ['tear', 'across', cm(68)],
      ['shears', 'along', cm(203)],
      ['shears-through-hem-then-tear', 'along', cm(203)],
    ])
    expect(sheet?.divisions.map((d) => [d.measure.distance, d.measure.from])).toEqual([
      [cm(12), { kind: 'cloth-edge', edge: 'head-hem' }],
      [cm(192), { kind: 'cloth-edge', edge: 'foot-hem' }],
      [cm(203), { kind: 'cloth-edge', edge: 'left-selvedge' }],
      [cm(203), { kind: 'cloth-edge', edge: 'left-selvedge' }],
    ])
  })

  it('washed first, sheet shrinks 4 % and 1 %: strip 11.6, body 192.5, 45.5 left, finished 200.2', () => {
    const result = planned(order('200 x 200 cm', '    shrinks: { along: 4 %, across: 1 % }'))
    const [sheet] = onCloth(result, 'sheet')
    expect([sheet?.width, sheet?.length]).toEqual([cm(227.7), cm(249.6)])
    expect(sizeOf(result, 'duvet-cover-1/back/zip-strip')).toEqual([cm(203), cm(11.6)])
    expect(sizeOf(result, 'duvet-cover-1/back/body')).toEqual([cm(203), cm(192.5)])
    expect(sheet?.remnants.some((r) => r.length === cm(45.5))).toBe(true)
    expect(result.finished[0]?.length).toBe(cm(200.2))
  })
})

describe('forty pillowcases 50 x 75 in one piece, and three remnants', () => {
  const order = `
plan: 1
title: Pillowcases
wash: none
mark-to: 0.5 cm
make:
  - item: pillowcase
    style: inside-flap
    faces: one-piece
    count: 40
    finished: 50 x 75 cm
    flap: 15 cm
    cloth: [bolt, first, second, third]
cloth:
  - { name: bolt, from: bolt, widths: [150 cm], price: 10.00 per m, sold-by: 10 cm, spare-each-end: 5 cm }
  - { name: first, from: remnant, size: 150 x 190 cm }
  - { name: second, from: remnant, size: 110 x 200 cm }
  - { name: third, from: remnant, size: 60 x 180 cm }
`
  it('leaves the third remnant whole, since 35 need as many rows as 36', () => {
    const result = planned(order)
    expect(sizeOf(result, 'pillowcase-1')).toEqual([cm(53), cm(174)])
    expect(onCloth(result, 'first')[0]?.placed.length).toBe(2)
    expect(onCloth(result, 'second')[0]?.placed.length).toBe(2)
    expect(onCloth(result, 'third')).toEqual([])
    expect(onCloth(result, 'bolt')[0]?.proof.length).toBe(cm(3132))
    expect(bought(result, 'bolt')?.quantity).toBe(cm(3150))
    expect(result.proof.status).toBe('proved')
  })
})

describe('linen 280: a fitted sheet for 150 x 200 x 32 and a flat sheet', () => {
  const order = (wash: string) => `
plan: 1
title: Linen
wash: ${wash}
mark-to: 0.5 cm
make:
  - item: fitted-sheet
    mattress: 150 x 200 x 32 cm
    tuck: 12 cm
    casing: 3 cm
    corners: cut
    cloth: linen
  - item: flat-sheet
    finished: 280 x 300 cm
    hems: { head: { depth: 10 cm, turns: 1, turned-in: 1.5 cm }, foot: { depth: 2 cm, turns: 1, turned-in: 1.5 cm }, left: selvedge, right: selvedge }
    cloth: linen
cloth:
  - name: linen
    from: bolt
    widths: [280 cm]
    price: 30.00 per m
    sold-by: 10 cm
    spare-each-end: 5 cm
    shrinks: { along: 5 %, across: 5 % }
    divide-by: thread
`
  it('laid 609, buys 6.2 m', () => {
    const result = planned(order('none'))
    expect(sizeOf(result, 'fitted-sheet-1')).toEqual([cm(244), cm(294)])
    expect(onCloth(result, 'linen')[0]?.proof.length).toBe(cm(609))
    expect(bought(result, 'linen')?.quantity).toBe(cm(620))
    expect(result.cloths[0]?.divisions.every((d) => d.how === 'thread')).toBe(true)
  })
})

describe('a quilt back 235 x 255, cloth 110', () => {
  const order = (joined: string, runs = 'either', more = '') => `
plan: 1
title: Quilt back
wash: none
mark-to: 0.5 cm
seam: { kind: plain, allowance: 1.5 cm }
make:
  - item: quilt-back
    quilt: 235 x 255 cm
    overhang: 0 cm
    length-runs: ${runs}
    cloth: backing
${joined}
${more}
cloth:
  - { name: backing, from: bolt, widths: [110 cm], price: 8.00 per m }
`
  it('one seam in all is impossible; from 119 cm cloth on it is possible', () => {
    const result = planned(order('    most-seams: 1'))
    expect(result.status).toBe('cannot-be-cut')
    expect(result.missing[0]).toMatchObject({ cloth: 'backing', width: cm(110), short: cm(9) })
    expect(result.widths[0]).toMatchObject({ possible: false, buyLength: null, enoughFrom: null })
  })
  it('along 765, across 705, with the narrow panel joined once 639 along and 589 across', () => {
    expect(onCloth(planned(order('    most-seams: 2')), 'backing')[0]?.proof.length).toBe(cm(705))
    expect(onCloth(planned(order('    most-seams: 2', 'along')), 'backing')[0]?.proof.length).toBe(cm(765))
    const joined = planned(order('    most-seams: 3\n    cross-joins: 1', 'along'))
    expect(onCloth(joined, 'backing')[0]?.proof.length).toBe(cm(639))
    // laid across and the narrow panel joined once: 2 x 235 + (235 + 3) / 2
    const across = planned(order('    most-seams: 3\n    cross-joins: 1'))
    expect(onCloth(across, 'backing')[0]?.proof.length).toBe(cm(589))
  })
  it('chosen together with a rectangle 60 x 125 beside it: 639, not the 708 of item by item', () => {
    const more = '  - { item: rectangle, name: runner, cut: 60 x 125 cm, length-runs: along, cloth: backing }'
    const result = planned(order('    most-seams: 3\n    cross-joins: 1', 'either', more))
    expect(onCloth(result, 'backing')[0]?.proof.length).toBe(cm(639))
    expect(result.proof.status).toBe('proved')
  })
})

describe('rectangles whose cloth is worked out in print', () => {
  const order = (cut: string, count: number, cloth: string, step = '1/8 in') => `
plan: 1
title: Rectangles
measure-in: in
wash: none
mark-to: ${step}
make:
  - { item: rectangle, name: piece, cut: ${cut}, count: ${count}, length-runs: either, cloth: cloth }
cloth:
  - { name: cloth, spare-each-end: 0, ${cloth} }
`
  const yards = (quarters: number) => length(inches(9) * quarters)

  it('two widths of 44 in for a sheet 88 x 108: 6 yd (bed sheet from 44 in cloth, E12)', () => {
    const result = planned(order('44 x 108 in', 2, 'from: bolt, widths: [44 in], sold-by: 1/8 yd'))
    expect(bought(result, 'cloth')?.quantity).toBe(inches(216))
  })
  it('four drops of 240 cm from 140 cm cloth: 9.6 m (curtain page, E7)', () => {
    const result = planned(order('140 x 240 cm', 4, 'from: bolt, widths: [140 cm], sold-by: 0', '0.5 cm'))
    expect(bought(result, 'cloth')?.quantity).toBe(cm(960))
  })
  it('a pillowcase body 26 1/2 x 40 1/2 in with a print that stands along it needs 1 1/4 yd (E16)', () => {
    const oneWay = 'print: { way: one-way, top: cut-end }, sold-by: 1/4 yd'
    const result = planned(order('26 1/2 x 40 1/2 in', 1, `from: bolt, widths: [42 in], ${oneWay}`))
    expect(bought(result, 'cloth')?.quantity).toBe(yards(5))
    const oneYard = planned(
      order('26 1/2 x 40 1/2 in', 1, `from: bolt, widths: [42 in], have: 1 yd, sold: no, ${oneWay}`),
    )
    expect(oneYard.status).toBe('cannot-be-cut')
    expect(oneYard.missing[0]).toMatchObject({ direction: 'along', short: inches(4.5) })
  })
  it('a body 27 x 41 in: 3/4 yd any way up, 1 1/4 yd with a one-way print along it (E17)', () => {
    const cloth = 'from: bolt, widths: [42 in], sold-by: 1/4 yd'
    expect(bought(planned(order('27 x 41 in', 1, cloth)), 'cloth')?.quantity).toBe(yards(3))
    const oneWay = `${cloth}, print: { way: one-way, top: cut-end }`
    expect(bought(planned(order('27 x 41 in', 1, oneWay)), 'cloth')?.quantity).toBe(yards(5))
  })
  it('six strips of 20 1/2 in: 123 in, sold as 3 1/2 yd (E25)', () => {
    const result = planned(order('42 x 20 1/2 in', 6, 'from: bolt, widths: [42 in], sold-by: 1/4 yd'))
    expect(bought(result, 'cloth')?.quantity).toBe(yards(14))
  })
  it('95 x 42 in has more area than 48 x 60 in, and still cannot give it (E31)', () => {
    const result = planned(order('48 x 60 in', 1, 'from: remnant, size: 42 x 95 in'))
    expect(result.status).toBe('cannot-be-cut')
    expect(result.missing[0]?.words).toMatch(/would do|more than/)
  })
})

describe('what a remnant would make', () => {
  it('is laid out again inside it', () => {
    const result = planned(`
plan: 1
title: Remnants
wash: none
make:
  - { item: rectangle, name: cover, cut: 150 x 200 cm, count: 1, length-runs: along, cloth: cloth }
cloth:
  - { name: cloth, from: bolt, widths: [240 cm], price: 10.00 per m, sold-by: 50 cm }
`)
    const remnants = result.cloths.flatMap((cloth) => cloth.remnants)
    expect(remnants.some((r) => r.wouldMake.length > 0)).toBe(true)
    for (const remnant of remnants)
      for (const words of remnant.wouldMake) {
        const size = words.replace('pillowcase ', '').replace('×', 'x')
        const again = planned(`
plan: 1
title: Once more
wash: none
make:
  - { item: pillowcase, style: inside-flap, finished: ${size}, cloth: left }
cloth:
  - { name: left, from: remnant, size: ${remnant.width / cm(1)} x ${remnant.length / cm(1)} cm, selvedges: none, spare-each-end: 0 }
`)
        expect(again.status).toBe('laid')
      }
  })
})

it('a bolt that is owned and not sold needs no price, nor does it keep the others from having theirs', () => {
  const order = (divideBy: string) => `
make: [{ item: rectangle, name: runner, cut: 20 x 60 in, cloth: linen }]
cloth: [{ name: linen, from: bolt, divide-by: ${divideBy}, widths: [44 7/8 in], sold: no, have: 323 7/8 in }]
`
  for (const divideBy of ['tearing', 'shears']) {
    const result = planned(order(divideBy))
    expect(result.proof).toMatchObject({ objective: 'cost', value: 0n, bound: 0n })
  }
})
