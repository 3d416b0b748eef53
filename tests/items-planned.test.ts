import { readPlan } from '@lengthwise/plan-file'
import type { Result } from '@lengthwise/planner'
import { plan, rehearsalFaults, verify } from '@lengthwise/planner'
import { cm, inches } from '@lengthwise/units'
import { describe, expect, test } from 'vitest'

/* Pillowcases, cushions and bed skirts from the plan file to what is bought and how each piece lies on the cloth. */

function planned(text: string): Result {
  const read = readPlan(`plan: 1\ntitle: test\nwash: none\n${text}`)
  if (!read.ok) throw new Error(read.problems.map((p) => `${p.path}: ${p.message}`).join('\n'))
  const result = plan(read.value, {})
  expect(verify(result)).toEqual([])
  for (const cloth of result.cloths) expect(rehearsalFaults(cloth)).toEqual([])
  return result
}

const bought = (result: Result) => result.buy.find((line) => line.what === 'cloth')?.quantity
const placed = (result: Result) => result.cloths.flatMap((cloth) => cloth.placed)

describe('a print with a top', () => {
  const order = (item: string, cloth: string) => `
make: [{ item: pillowcase, ${item}, cloth: print }]
cloth: [{ name: print, from: bolt, price: 10.00 per m, ${cloth} }]
`
  const OPEN_END = `style: open-end, faces: one-piece, finished: 20 x 31 in, seam: { allowance: 1/2 in }, cuff: { depth: 5 in, cloth: edge }`

  // Diane Loves 2 Quilt, house pillowcases: body 27 × 41 in, 3/4 yd any way up, 1 1/4 yd with a one-way print along 41
  test.each([
    ['plain', 0.75],
    ['{ way: one-way, top: cut-end }', 1.25],
  ])('the body of an open-end case, print %s, takes %d yd', (print, yards) => {
    const result = planned(`
mark-to: 0
make: [{ item: pillowcase, ${OPEN_END}, cloth: print }]
cloth:
  - { name: print, from: bolt, price: 10.00 per yd, widths: [42 in], sold-by: 9 in, spare-each-end: 0, print: ${print} }
  - { name: edge, from: remnant, size: 50 x 50 in, selvedges: none }
`)
    expect(bought(result)).toBe(inches(yards * 36))
  })

  test('inside flap on 150 cm: separate faces, each with its long side across and the top toward the cut end', () => {
    const result = planned(
      order('finished: 50 x 75 cm', 'widths: [150 cm], sold-by: 10 cm, print: { way: one-way, top: cut-end }'),
    )
    expect(placed(result).map(({ piece }) => piece)).toEqual(
      expect.arrayContaining(['pillowcase-1/front', 'pillowcase-1/back']),
    )
    for (const piece of placed(result)) {
      expect(piece.turned).toBe(true)
      expect(piece.top).toBe('start')
      expect(piece.length).toBe(cm(53))
    }
  })

  test('on 174 cm one piece will do', () => {
    const result = planned(
      order('finished: 50 x 75 cm', 'widths: [174 cm], sold-by: 0, print: { way: one-way, top: cut-end }'),
    )
    expect(placed(result).map(({ width, length }) => [width, length])).toEqual([[cm(174), cm(53)]])
  })

  test('a motif lies in the middle of a cushion wherever the layout puts it', () => {
    const result = planned(`
make: [{ item: cushion, count: 3, finished: 45 x 45 cm, back: zip, cloth: print }]
cloth:
  - name: print
    from: bolt
    widths: [140 cm]
    spare-each-end: 5 cm
    sold-by: 10 cm
    print: { way: one-way, top: cut-end, repeat: 32 cm, motif: { first: 8 cm } }
`)
    expect(placed(result)).toHaveLength(6)
    for (const piece of placed(result)) expect((piece.y + piece.length / 2 - cm(8)) % cm(32)).toBe(0)
  })
})

test('the opening of each case is the kept hem of an old sheet, cut at the hem and nowhere else', () => {
  const result = planned(`
make: [{ item: pillowcase, count: 4, finished: 50 x 75 cm, cloth: old, opening-edge: { kept-hem: 2 cm } }]
cloth:
  - { name: old, from: sheet, size: 230 x 260 cm, hems: { head: 10 cm, foot: 2.5 cm, left: selvedge, right: selvedge } }
`)
  expect(placed(result)).toHaveLength(4)
  for (const { edges } of placed(result))
    expect([edges.start.kind, edges.end.kind].filter((kind) => kind === 'kept-hem')).toHaveLength(1)
})

// oocities bed skirts: 60 × 80 in, fullness 3, drop and hem 23, cloth 54: 13 widths of 23 in, 299 in. The deck is apart.
test('the skirt of a bed takes 13 widths, one above the other', () => {
  const result = planned(`
measure-in: in
mark-to: 1/8
make:
  - item: bed-skirt
    base: 60 x 80 in
    drop: 20 in
    fullness: 3
    seam: { allowance: 1/2 in }
    hem: { depth: 2 in, turns: 1, turned-in: 1/2 in }
    deck: { cloth: lining }
    skirt-cloth: print
cloth:
  - { name: print, from: bolt, price: 10.00 per yd, widths: [54 in], sold-by: 0, spare-each-end: 0, print: { way: one-way, top: cut-end } }
  - { name: lining, from: sheet, size: 90 x 100 in }
`)
  expect(bought(result)).toBe(inches(299))
})
