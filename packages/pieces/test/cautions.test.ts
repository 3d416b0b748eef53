import { cm } from '@lengthwise/units'
import { describe, expect, test } from 'vitest'
import { cautionsFor } from '../src/index.ts'
import { bolt, cushion, duvetCover, fittedSheet, orderOf, pillowcase, strips } from './item-orders.ts'

const cotton = bolt('cotton', cm(150))
const codes = (...items: Parameters<typeof orderOf>[0][number][]) =>
  cautionsFor(orderOf(items, [cotton])).map((caution) => caution.code)

describe('cautions', () => {
  // The Lullaby Trust and the American Academy of Pediatrics: no duvet, quilt, pillow or bumper under twelve months
  test('a cot duvet cover or pillowcase brings the caution for babies under twelve months', () => {
    expect(codes(duvetCover({ cot: true }))).toContain('under-twelve-months')
    expect(codes(pillowcase({ cot: true }))).toContain('under-twelve-months')
    expect(codes(duvetCover())).not.toContain('under-twelve-months')
  })

  test('a fitted cot sheet is what a baby may have: fit is the caution, not the sheet', () => {
    const said = codes(fittedSheet({ cot: true }))
    expect(said).toContain('cot-sheet-fit')
    expect(said).toContain('cot-local-rules')
    expect(said).not.toContain('under-twelve-months')
  })

  test('ties kept on a cot item are named with the reason the plan gives', () => {
    const item = duvetCover({ cot: true, tiesDespiteCaution: 'for a doll’s cot on a shelf' })
    const said = cautionsFor(orderOf([item], [cotton]))
    expect(said.map((caution) => caution.code)).toContain('cot-ties')
    expect(said.find((caution) => caution.code === 'cot-ties-kept')?.text).toContain('for a doll’s cot on a shelf')
  })

  test('buttons on a cot cover are small parts', () => {
    const opening = {
      kind: 'buttons',
      at: 'foot',
      depth: cm(4),
      turnedIn: cm(4),
      spacing: cm(20),
      fromCorner: cm(15),
    } as const
    expect(codes(duvetCover({ cot: true, opening }))).toContain('cot-small-parts')
    expect(codes(duvetCover({ opening }))).not.toContain('cot-small-parts')
  })

  test('everyone hears of iron and blades, large cloth only where it is large', () => {
    expect(codes(pillowcase())).toEqual(['blades', 'hot-iron'])
    expect(codes(strips())).toEqual(['blades', 'hot-iron'])
    expect(codes(duvetCover())).toEqual(['blades', 'large-cloth', 'hot-iron'])
  })

  // Trading Standards, Wirral: bed-clothes are left out of the UK regulations of 1988, filled pillows are not
  test('cushions defer to local rules on fillings', () => {
    expect(codes(cushion())).toContain('filling-rules')
  })

  test('no code twice, each text defers to someone and prints no measured limit', () => {
    const items = [duvetCover({ cot: true }), duvetCover(), fittedSheet({ cot: true }), cushion({ cot: true })]
    const said = cautionsFor(orderOf(items, [cotton]))
    expect(new Set(said.map((caution) => caution.code)).size).toBe(said.length)
    for (const caution of said) {
      expect(caution.text).toMatch(/\(.+\)\.|\brules\b/)
      expect(caution.text, 'no number that could not be verified').not.toMatch(/\d+\s*(cm|mm|in|kg|°)/)
    }
  })
})
