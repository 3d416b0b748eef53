import type { Result } from '@lengthwise/planner'
import { describe, expect, test } from 'vitest'
import { clothTitle } from '../src/cloth/names.ts'
import type { DrawingApi } from '../src/index.ts'
import * as drawing from '../src/index.ts'
import { fit, oneLine, wrap } from '../src/text.ts'
import { cases } from './cases.ts'
import { across, along, bolt, keep, laid, piece, resultOf, trim, waste } from './hand.ts'

// what the package promises is what it offers
const offered: DrawingApi = drawing
const { answerInWords, orderInWords, shopNote, toCsv } = offered
const { textWidth } = drawing

const room = cases['twin room']!()

test('a cloth is called as one would say it, whatever its key in the plan', () => {
  expect(clothTitle('old-sheets')).toBe('old sheets')
  expect(clothTitle('shelf_1')).toBe('shelf 1')
  expect(clothTitle('off-white linen')).toBe('off-white linen')
  const cloth = laid(bolt('blue-stripe', 100), 100, 50, along(60, piece('1', 'a'), waste), { bought: [100, 50] })
  expect(answerInWords(resultOf('x', [cloth])).buy[0]).toMatch(/\s100\scm blue stripe/)
})

describe('the order in words', () => {
  const lines = orderInWords(room, room.cloths[0]!)
  const said = (flag: string) => {
    const line = lines.find((each) => each.flag === flag)!
    return `${line.todo.join('')}. ${line.gives}.`.replace(/\u00a0/g, ' ')
  }

  test('lengths come off the cloth, and are called by their number', () => {
    expect(said('T2')).toBe(
      'Tear across the cloth, 203.5 cm from T1. Gives the first length, for 1 and 2; the cloth goes on.',
    )
    expect(said('T3')).toBe('Tear down the first length, 123 cm from the left selvedge. Gives 1; the rest is for 2.')
    expect(said('T4')).toBe('Tear down the rest, 18 cm from T3. Gives 2; the 4.5 cm left over is waste.')
  })
  test('parts that wait get a letter', () => {
    expect(said('T11')).toBe(
      'Tear across the rest, 174 cm from T5. Gives part A, for 7 and 8; the rest waits as part B, for 9 and R1.',
    )
    expect(said('T14')).toBe('Tear down part B, 44 cm from T10. Gives 9; the rest is R1, to keep.')
  })
  test('groups follow the length in hand', () => {
    expect([...new Set(lines.map((line) => line.hand))]).toEqual([
      'Cut end',
      'First length',
      'Second length',
      'Third length',
    ])
  })
  test('kept hems are cut, and gone through with shears', () => {
    const sheet = orderInWords(room, room.cloths[1]!).map((line) => line.todo.join('').replace(/\u00a0/g, ' '))
    expect(sheet[0]).toBe('Cut across the cloth, 12 cm from the fold of the head hem')
    expect(sheet[3]).toBe('Tear down the second length, 153 cm from the left selvedge, through hems with shears')
  })
  test('measured from the far edge, the far side is named first', () => {
    const cloth = laid(bolt('x', 100), 100, 50, {
      ...(along(60, waste, piece('1', 'a')) as object),
      fromFar: true,
    } as never)
    const [line] = orderInWords(resultOf('x', [cloth]), cloth)
    expect(`${line!.todo.join('')}: ${line!.gives}`.replace(/\u00a0/g, ' ')).toBe(
      'Tear down the cloth, 40 cm from the right selvedge: Gives 1; the 60 cm left over is waste',
    )
  })
  test('inches are printed with fractions', () => {
    const inches = orderInWords(room, room.cloths[0]!, 'in').map((line) => line.todo[1].replace(/\u00a0/g, ' '))
    expect(inches[1]).toBe('80 1/8 in')
  })
})

describe('the answer in words', () => {
  test('what to buy, the proof, and both waste figures', () => {
    const answer = answerInWords(room)
    expect(answer.buy[0]!.replace(/\u00a0/g, ' ')).toBe('Buy 6.6 m of the 150 cm ticking stripe, 95.70 EUR')
    expect(answer.proof).toBe('No shorter layout exists')
    expect(answer.waste.replace(/\u00a0/g, ' ')).toMatch(/^\d+ % not used, of it \d+ % worth keeping$/)
  })
  test('nothing is called proved that is not', () => {
    const open: Result = {
      ...room,
      proof: { ...room.proof, status: 'best-found', value: 95_70n * 365_760_000n, bound: 94_20n * 365_760_000n },
    }
    expect(answerInWords(open).proof.replace(/\u00a0/g, ' ')).toBe('Perhaps cheaper, by at most 1.50 EUR')
  })
  test('a plan that cannot be cut says what is missing', () => {
    const missing: Result = {
      ...room,
      status: 'cannot-be-cut',
      cloths: [],
      missing: [
        { cloth: 'x', width: null, short: null, direction: 'across', words: 'Cloth of 119 cm or more would do.' },
      ],
    }
    expect(answerInWords(missing)).toEqual({ buy: [], proof: 'Cloth of 119 cm or more would do.', waste: '' })
    expect(shopNote(missing)).toContain('Cloth of 119 cm or more would do.')
  })
})

describe('the shop note', () => {
  test.each(Object.entries(cases))('%s: at most 40 columns, plain text', (_name, result) => {
    const note = shopNote(result())
    for (const line of note.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(40)
    expect(note).not.toMatch(/[\u00a0\u202a-\u202e\u2066-\u2069\t\r]/)
  })
  test('widths with what they cost, the chosen one first, and the width that is enough', () => {
    const note = shopNote(room)
    expect(note).toContain('150 cm      6.6 m      95.70 <- best')
    expect(note.indexOf('150 cm')).toBeLessThan(note.indexOf('240 cm'))
    expect(note).toContain('Other width? 146.5 cm or more is enough.')
  })
})

describe('comma-separated values (RFC 4180)', () => {
  test('a row for each piece, remnant and thing to buy', () => {
    const rows = toCsv(room).trimEnd().split('\r\n')
    expect(rows.length).toBe(1 + room.pieces.length + 5 + room.buy.length)
    expect(rows[1]).toBe('piece,1,"Front, centre",cover-1,ticking stripe,123,203.5,1,')
  })
  test.each(['=1+2', '+A1', '-A1', '@SUM(A1)', ' =1', '\t=1', '＝1'])('a spreadsheet does not run %j', (name) => {
    const cloth = laid(bolt(name, 150), 150, 50, across(40, piece('1', name), keep('R1')))
    for (const row of toCsv(resultOf('x', [cloth]))
      .split('\r\n')
      .slice(1))
      for (const cell of row.split(',')) expect(cell).not.toMatch(/^"?\s*[=+\-@＝]/)
  })
  test('quotes are doubled', () => {
    const cloth = laid(bolt('a "b"', 150), 150, 50, across(40, piece('1', 'x'), trim))
    expect(toCsv(resultOf('x', [cloth]))).toContain('"a ""b"""')
  })
})

describe('text', () => {
  test('widths are those of the typeface: all figures are equally wide', () => {
    expect(textWidth('1111', 3.5, 700)).toBeCloseTo(textWidth('8888', 3.5, 700), 9)
    // Alegreya Sans Medium: figures 475 and capitals 642 thousandths of the type size
    expect(textWidth('0', 6.42, 500)).toBeCloseTo(4.75, 9)
  })
  test('a text too long ends in an ellipsis and fits', () => {
    const cut = fit('Panneau à rayures très étroites', 30, 3.5, 500)
    expect(cut).toMatch(/…$/)
    expect(textWidth(cut, 3.5, 500)).toBeLessThanOrEqual(30)
  })
  test('lines break at spaces, not at no-break spaces', () => {
    expect(wrap('one two\u00a0three', textWidth('two\u00a0three', 3.5, 500) + 0.01, 3.5, 500)).toEqual([
      'one',
      'two\u00a0three',
    ])
  })
  test('hidden and bidirectional characters become spaces', () => {
    expect(oneLine(' a\u202eb\u0007\u2066c\n d ')).toBe('a b c d')
  })
})
