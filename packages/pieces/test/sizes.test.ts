import { cm, inches } from '@lengthwise/units'
import { describe, expect, test } from 'vitest'
import type { Item } from '../src/index.ts'
import { NAMED_SIZES, sizeNamed } from '../src/index.ts'

function check(name: string, item: Item['item'], width: number, length: number, unit: typeof cm) {
  const found = sizeNamed(name, item)
  expect(found, `${name} for ${item}`).toBeDefined()
  expect(found?.size).toEqual({ width: unit(width), length: unit(length) })
}

describe('named sizes', () => {
  test.each([
    // scooms duvet and mattress sizes
    ['uk-double', 'duvet-cover', 200, 200],
    ['uk-double', 'fitted-sheet', 135, 190],
    // the larger number goes across the bed: scooms for the UK king, Decosy for 260 × 240
    ['uk-king', 'duvet-cover', 225, 220],
    ['uk-super-king', 'duvet-cover', 260, 220],
    ['fr-king', 'duvet-cover', 260, 240],
    // Ginger and May bed and bedding sizes
    ['uk-standard', 'pillowcase', 50, 75],
    ['uk-cot-bed', 'flat-sheet', 130, 175],
    // Paradies Bettwäsche-Größen: the pillow's short side first
    ['de-oblong', 'pillowcase', 40, 80],
    ['de-single', 'duvet-cover', 135, 200],
    // Noguchi cover sizes
    ['jp-single', 'duvet-cover', 150, 210],
    // GOST 31307-2005, a table of length × width
    ['ru-single', 'flat-sheet', 120, 203],
    ['ru-youth', 'flat-sheet', 100, 180],
  ] as const)('%s for a %s is %d × %d cm', (name, item, width, length) => check(name, item, width, length, cm))

  test.each([
    // Overstock bedding size conversion guide
    ['us-queen', 'fitted-sheet', 60, 80],
    ['us-queen', 'bed-skirt', 60, 80],
    // sizes.com sheets
    ['us-queen', 'flat-sheet', 90, 100],
    // pillowsandcushions.com bed pillows; pillowcase pattern of 2011: the case is larger than the pillow
    ['us-standard', 'sham', 20, 26],
    ['us-standard', 'pillowcase', 21, 30],
    // Ibenma mattress sizes
    ['ca-double', 'fitted-sheet', 53, 74.5],
    // lists quoting the US Consumer Product Safety Commission
    ['us-crib', 'fitted-sheet', 27.25, 51.625],
  ] as const)('%s for a %s is %d × %d in', (name, item, width, length) => check(name, item, width, length, inches))

  test('without an item the duvet comes first', () => {
    expect(sizeNamed('uk-double')?.kind).toBe('duvet')
    expect(sizeNamed('uk-small-double')?.kind).toBe('mattress')
  })

  test('a name that is not for this item is not found', () => {
    expect(sizeNamed('uk-small-double', 'duvet-cover')).toBeUndefined()
    expect(sizeNamed('uk-double', 'bolster')).toBeUndefined()
    expect(sizeNamed('uk-doubel')).toBeUndefined()
    expect(sizeNamed('toString')).toBeUndefined()
  })

  test('every row has a name in kebab-case that is unique in its kind, words and a source', () => {
    const seen = new Set<string>()
    for (const size of NAMED_SIZES) {
      expect(size.name).toMatch(/^[a-z]+(-[a-z]+)+$/)
      const key = `${size.name} ${size.kind}`
      expect(seen, key).not.toContain(key)
      seen.add(key)
      expect(size.words).not.toBe('')
      expect(size.source).not.toBe('')
    }
  })

  test('pillows and cases have the short side first', () => {
    for (const size of NAMED_SIZES)
      if (size.kind === 'pillow' || size.kind === 'pillowcase')
        expect(size.size.width, size.name).toBeLessThanOrEqual(size.size.length)
  })

  test('every region of the trade is there, and cot sizes are marked', () => {
    const regions = new Set(NAMED_SIZES.map((size) => size.region))
    for (const region of ['United States', 'Canada', 'UK and Ireland', 'continental Europe', 'Germany', 'Austria'])
      expect(regions).toContain(region)
    for (const region of ['Switzerland', 'France', 'Nordic countries', 'Australia and New Zealand', 'Japan'])
      expect(regions).toContain(region)
    expect(sizeNamed('uk-cot-bed', 'fitted-sheet')?.cot).toBe(true)
    expect(sizeNamed('uk-single', 'fitted-sheet')?.cot).toBe(false)
  })
})
