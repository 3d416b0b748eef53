import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Length, ReadOptions } from '../src/index.ts'
import { inches, length, mm, printLength, readLength, readLengths, readSize } from '../src/index.ts'

const options = { measureIn: 'cm' } as const
const inInches = { measureIn: 'in' } as const

/** Reads `text` and compares units of 1/320 mm. */
function check(text: string, expected: Length, how: ReadOptions = options) {
  expect(readLength(text, how)).toEqual({ ok: true, value: expected })
}

/** `text` is refused with this code, and the hint says what to write. */
function checkRefused(text: string, code: string, hint: string, how: ReadOptions = options) {
  const read = readLength(text, how)
  expect(read.ok ? read.value : read.problems.map((p) => p.code)).toEqual([code])
  if (!read.ok) expect(read.problems[0]!.hint).toContain(hint)
}

describe('what is accepted', () => {
  // 1 in is 25.4 mm and 1 yd is 914.4 mm exactly (international yard and pound agreement, 1959)
  test.each([
    ['137.5', mm(1375)],
    ['137,5', mm(1375)],
    ['4 cm', mm(40)],
    ['40mm', mm(40)],
    ['1.37 m', mm(1370)],
    ['112 CM', mm(1120)],
    ['1 metre', mm(1000)],
    ['.5', mm(5)],
    ['5.', mm(50)],
    ['0', mm(0)],
    ['0.125 m', mm(125)],
    ['  12  cm ', mm(120)],
    ['12\u00a0cm', mm(120)],
    ['1 m 20 cm', mm(1200)],
    ['45"', mm(1143)],
    ['45 in', mm(1143)],
    ['45in.', mm(1143)],
    ['1 1/2 yd', mm(1371.6)],
    ['2 1/4 yd', mm(2057.4)],
    ['1/3 yd', mm(304.8)],
    ['3 yards', mm(2743.2)],
    ['1234.567 mm', length(395_061)],
    ['3.3333 cm', length(10_667)],
  ])('%s', (text, expected) => check(text, expected))

  test.each([
    ['54', inches(54)],
    ['54 1/8', inches(54.125)],
    ['54-1/8', inches(54.125)],
    ['54⅛', inches(54.125)],
    ['54 ⅛', inches(54.125)],
    ['1⅝"', inches(1.625)],
    ['1 5/8"', inches(1.625)],
    ['1 5⁄8 in', inches(1.625)],
    ['1 5/8”', inches(1.625)],
    ['1 5/8″', inches(1.625)],
    ["1 5/8''", inches(1.625)],
    ['5/8', inches(0.625)],
    ['⅞', inches(0.875)],
    ['0.125', inches(0.125)],
    ['1/64', length(127)],
    [`4' 6"`, inches(54)],
    [`4'6"`, inches(54)],
    ['4′ 6½″', inches(54.5)],
    ['4’ 6”', inches(54)],
    ['4 ft 6 1/2 in', inches(54.5)],
    ["6'", inches(72)],
    ['2 yd 1 ft 3 in', inches(87)],
    ['5.5 cm', mm(55)],
  ])('in an inch plan: %s', (text, expected) => check(text, expected, inInches))
})

describe('what is refused, and what to write instead', () => {
  test.each([
    ['1,250', 'length-ambiguous', 'Write 1250 or 1.25'],
    ['1.250', 'length-ambiguous', 'Write 1250 or 1.25'],
    ['12,500 mm', 'length-ambiguous', 'Write 12500 or 12.5'],
    ['54.125 in', 'length-ambiguous', 'Write 54125 or 54.1250'],
    ['1,250.5', 'length-number', '1250.5'],
    ['1 250', 'length-number', '1250'],
    ['-4 cm', 'length-negative', 'without the minus sign'],
    ['−4 cm', 'length-negative', 'without the minus sign'],
    ['5/65 in', 'length-fraction', '5/64'],
    ['1/128"', 'length-fraction', '1/64'],
    ['1/3 in', 'length-fraction', '21/64 in or 11/32 in'],
    ['0.1 in', 'length-fraction', '3/32 in or 7/64 in'],
    ['1/0 in', 'length-fraction', 'such as 1/8'],
    ['1 9/8 in', 'length-fraction', 'such as 1 5/8'],
    ['', 'length-empty', 'Write a number'],
    ['   ', 'length-empty', 'Write a number'],
    ['wide', 'length-number', 'a number and a unit'],
    ['45 em', 'length-unit', 'mm, cm, m, in, ft or yd'],
    ['45 constructor', 'length-unit', 'mm, cm, m, in, ft or yd'],
    ['cm', 'length-number', 'a number and a unit'],
    ['54-55', 'length-number', 'such as'],
    ['54 1/8 1/8', 'length-number', 'such as'],
    ['1.5 1/2', 'length-number', 'such as'],
    ["4' 6", 'length-unit', '4\' 6"'],
    ['6 in 4 ft', 'length-number', 'a number and a unit'],
    ['4 ft 6 cm', 'length-number', 'a number and a unit'],
    ['1e3', 'length-number', 'in digits'],
    ['1e999', 'length-number', 'in digits'],
    ['0x10', 'length-number', 'in digits'],
    ['NaN', 'length-number', 'a number and a unit'],
    ['Infinity', 'length-number', 'a number and a unit'],
    ['99999999999999999999', 'length-too-large', 'Write a number'],
    ['1001 m', 'length-too-large', 'at most 1000 m'],
    ['9'.repeat(5000), 'length-characters', 'a number and a unit'],
    ['4\u0000 cm', 'length-characters', 'type it again'],
    ['\u202e54 mc', 'length-characters', 'type it again'],
    ['5\u200b4 cm', 'length-characters', 'type it again'],
  ])('%s', (text, code, hint) => checkRefused(text, code, hint))

  test('the problem carries the path it was given', () => {
    const read = readLength('x', { measureIn: 'cm', path: 'make[0].flap' })
    expect(read.ok ? [] : read.problems.map((p) => p.path)).toEqual(['make[0].flap'])
  })
})

describe('sizes', () => {
  function checkSize(text: string, width: Length, long: Length, how: ReadOptions = options) {
    expect(readSize(text, how)).toEqual({ ok: true, value: { width, length: long } })
  }
  test('the unit at the end serves both', () => checkSize('20 1/8 x 30 5/8 in', inches(20.125), inches(30.625)))
  test('bare sizes take the unit of the plan', () => checkSize('200 x 230', mm(2000), mm(2300)))
  test('a multiplication sign, no blanks', () => checkSize('200×230cm', mm(2000), mm(2300)))
  test('by', () => checkSize('20 by 30 inches', inches(20), inches(30)))
  test('a unit after each', () => checkSize('20 in x 50 cm', inches(20), mm(500)))
  test('inch signs after each', () => checkSize('20⅛" x 30⅝"', inches(20.125), inches(30.625)))
  test('feet and inches', () => checkSize(`4' 6" x 6' 3"`, inches(54), inches(75)))
  test('three measures of a mattress', () =>
    expect(readLengths('150 x 200 x 32 cm', 3, options)).toEqual({ ok: true, value: [mm(1500), mm(2000), mm(320)] }))

  test.each([
    ['200', 'size-count'],
    ['1 x 2 x 3', 'size-count'],
    ['20 in x 30', 'length-unit'],
    ['20 x', 'length-empty'],
    ['20 x -3 cm', 'length-negative'],
    ['1,250 x 2000', 'length-ambiguous'],
  ])('%s is refused', (text, code) => {
    const read = readSize(text, options)
    expect(read.ok ? [] : read.problems.map((p) => p.code)).toEqual([code])
  })
  test('both wrong measures are named at once', () => {
    const read = readSize('1,250 x 2.500', options)
    expect(read.ok ? [] : read.problems.map((p) => p.hint)).toEqual(['Write 1250 or 1.25', 'Write 2500 or 2.5'])
  })
})

describe('printed and read again', () => {
  test.each(['mm', 'cm', 'm'] as const)('every unit of 1/320 mm survives in %s', (unit) => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 320_000_000 }), fc.boolean(), (units, noBreak) => {
        const printed = printLength(length(units), unit, { noBreak })
        expect(readLength(printed, inInches)).toEqual({ ok: true, value: units })
      }),
    )
  })
  test('every 64th of an inch survives in inches', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2_500_000 }), (sixtyFourths) => {
        const l = length(sixtyFourths * 127)
        expect(readLength(printLength(l, 'in'), options)).toEqual({ ok: true, value: l })
      }),
    )
  })
  test('every 64th of a yard survives in yards', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60_000 }), (sixtyFourths) => {
        const l = length(sixtyFourths * 36 * 127)
        expect(readLength(printLength(l, 'yd'), options)).toEqual({ ok: true, value: l })
      }),
    )
  })
  test('no text makes the reader throw', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 80 }), (text) => {
        const read = readLength(text, options)
        if (!read.ok) expect(read.problems.every((p) => p.hint !== '')).toBe(true)
      }),
      { numRuns: 2000 },
    )
  })
  test('no text of the characters that matter makes the reader throw or give a length out of range', () => {
    const signs = [...'0123456789.,/-\'" xby⅛⁄×″mcinftyd'].map((c) => fc.constant(c))
    fc.assert(
      fc.property(fc.array(fc.oneof(...signs), { maxLength: 14 }), (characters) => {
        const read = readLength(characters.join(''), inInches)
        if (read.ok) expect(Number.isSafeInteger(read.value) && read.value >= 0).toBe(true)
        else expect(read.problems[0]!.hint).not.toBe('')
      }),
      { numRuns: 5000 },
    )
  })
})
