import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  costOf,
  inches,
  length,
  mm,
  percent,
  printLength,
  printMoney,
  printPercent,
  printPrice,
  printSize,
  readPercent,
  readPrice,
} from '../src/index.ts'

describe('printing lengths', () => {
  test.each([
    [mm(2035), 'cm', '203.5 cm'],
    [mm(2030), 'cm', '203 cm'],
    [mm(2030), 'mm', '2030 mm'],
    [mm(2030), 'm', '2.03 m'],
    [mm(0), 'cm', '0 cm'],
    [inches(0.125), 'cm', '0.3175 cm'],
    [inches(54.125), 'in', '54 1/8 in'],
    [inches(54.125), 'cm', '137.4775 cm'],
    [inches(0.625), 'in', '5/8 in'],
    [inches(54), 'in', '54 in'],
    [inches(54), 'yd', '1 1/2 yd'],
    [inches(84), 'yd', '2 1/3 yd'],
    [mm(2035), 'in', '80 1/8 in'],
    [length(-3200), 'cm', '-1 cm'],
    [length(39_504), 'cm', '12.3450 cm'],
  ] as const)('%i units in %s: %s', (l, unit, expected) => expect(printLength(l, unit)).toBe(expected))

  test('to the nearest eighth where asked', () => expect(printLength(mm(2030), 'in', { finest: 8 })).toBe('79 7/8 in'))
  test('rounded half up where places are asked', () =>
    expect(printLength(inches(54.125), 'cm', { places: 1 })).toBe('137.5 cm'))
  test('no places at all', () => expect(printLength(mm(2035), 'cm', { places: 0 })).toBe('204 cm'))
  test('a no-break space before the unit', () => expect(printLength(mm(40), 'cm', { noBreak: true })).toBe('4\u00a0cm'))
  test('bare', () => expect(printLength(mm(40), 'cm', { bare: true })).toBe('4'))
  test('sizes carry the unit once', () => {
    expect(printSize({ width: mm(2000), length: mm(2300) }, 'cm')).toBe('200 × 230 cm')
    expect(printSize({ width: inches(20.125), length: inches(30.625) }, 'in')).toBe('20 1/8 × 30 5/8 in')
  })
})

describe('shares', () => {
  test.each([
    ['5 %', 5],
    ['5%', 5],
    ['5', 5],
    ['2,5 %', 2.5],
    ['4.91%', 4.91],
    ['12 1/2 %', 12.5],
    ['0', 0],
    ['3 per cent', 3],
    ['0.05 %', 0.05],
  ])('%s', (text, expected) => expect(readPercent(text)).toEqual({ ok: true, value: percent(expected) }))
  test.each([
    ['100 %', 'percent-too-large'],
    ['-5 %', 'percent-negative'],
    ['1/3 %', 'percent-fraction'],
    ['lots', 'percent-number'],
    ['NaN', 'percent-number'],
    ['', 'percent-empty'],
    ['2.125 %', 'percent-ambiguous'],
    ['0.05', 'percent-ambiguous'],
  ])('%s is refused', (text, code) => {
    const read = readPercent(text)
    expect(read.ok ? [] : read.problems.map((p) => p.code)).toEqual([code])
  })
  test('a part of one is not taken for per cent', () => {
    const read = readPercent('0.05')
    expect(read.ok ? '' : read.problems[0]!.hint).toBe('Write 5 % or 0.05 %')
  })
  test('printed and read again', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 999_999 }), (millionths) => {
        expect(readPercent(printPercent(percent(millionths / 10_000)))).toEqual({ ok: true, value: millionths })
      }),
    )
  })
})

describe('prices', () => {
  test.each([
    ['14.50 per m', 1450, 'm'],
    ['9,80 per yd', 980, 'yd'],
    ['12 / m', 1200, 'm'],
    ['12 a yard', 1200, 'yd'],
    ['0.5 per metre', 50, 'm'],
  ])('%s', (text, coins, per) => expect(readPrice(text)).toEqual({ ok: true, value: { coins, per } }))
  test.each([
    ['14.50', 'price-unit'],
    ['14.50 per inch', 'price-unit'],
    ['1.250 per m', 'price-ambiguous'],
    ['14.5055 per m', 'price-fraction'],
    ['-3 per m', 'price-negative'],
    ['dear per m', 'price-number'],
    ['99999999999 per m', 'price-too-large'],
    ['5 per constructor', 'price-unit'],
  ])('%s is refused', (text, code) => {
    const read = readPrice(text)
    expect(read.ok ? [] : read.problems.map((p) => p.code)).toEqual([code])
    if (!read.ok) expect(read.problems[0]!.hint).not.toBe('')
  })
  test('printed as read', () => {
    expect(printPrice({ coins: 1450, per: 'm' })).toBe('14.50 per m')
    expect(printPrice({ coins: 5, per: 'yd' })).toBe('0.05 per yd')
  })
  test('money to the smallest coin', () => {
    const money = costOf({ coins: 1450, per: 'm' }, mm(5600))
    expect(printMoney(money)).toBe('81.20')
    expect(printMoney(money, 'EUR')).toBe('81.20 EUR')
    // 1/3 of a coin is dropped, half a coin is not
    expect(printMoney(costOf({ coins: 1, per: 'yd' }, inches(18)))).toBe('0.01')
    expect(printMoney(costOf({ coins: 1, per: 'yd' }, inches(12)))).toBe('0.00')
  })
})
