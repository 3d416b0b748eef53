import type { Length } from '@lengthwise/units'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { measureIn } from '../src/index.ts'

describe('what must not come out less than it is', () => {
  test.each(['cm', 'mm', 'in'] as const)('in %s: a length to have and a length to buy read back as no less', (unit) => {
    const measure = measureIn(unit)
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000_000 }), (units) => {
        for (const shown of [measure.atLeast(units as Length), measure.bought(units as Length)]) {
          const back = readBack(shown)
          expect(back, shown).toBeGreaterThanOrEqual(units)
          // and by no more than the finest figure that is printed
          expect(back - units, shown).toBeLessThan(unit === 'in' ? 508 : 320)
        }
      }),
    )
  })

  test('an inch is 25.4 mm exactly (international yard and pound agreement, 1959)', () => {
    const measure = measureIn('in')
    // 2285.4 mm are 89.976 in: the nearest sixteenth above is 90
    expect(measure.atLeast((2285.4 * 320) as Length)).toBe('90\u00a0in')
    expect(measure.atLeast((2286 * 320) as Length)).toBe('90\u00a0in')
    expect(measure.bought((2286 * 320) as Length)).toBe('2\u00a01/2\u00a0yd')
  })
})

test('a width is called what it is sold as, where the unit of the plan would not say it exactly', () => {
  // 54 1/8 in = 137.4775 cm; 240 cm = 94.488 in; 45 in = 114.3 cm
  expect(measureIn('cm').sold(inches(54.125))).toBe('54\u00a01/8\u00a0in')
  expect(measureIn('in').sold((2400 * 320) as Length)).toBe('240\u00a0cm')
  expect(measureIn('cm').sold(inches(45))).toBe('114.3\u00a0cm')
  expect(measureIn('in').sold(inches(45))).toBe('45\u00a0in')
  expect(measureIn('cm').sold((1500 * 320) as Length)).toBe('150\u00a0cm')
})

const inches = (n: number): Length => (n * 8128) as Length

// whole and decimal figures and fractions, in units of 1/320 mm; the product is rounded, since figures are decimals
function readBack(shown: string): number {
  const [, number, unit] = /^([\d./\u00a0]+)\u00a0([a-z]+)$/.exec(shown)!
  const value = number!.split('\u00a0').reduce((sum, word) => {
    const [over, under] = word.split('/')
    return sum + Number(over) / Number(under ?? 1)
  }, 0)
  return Math.round(value * { mm: 320, cm: 3200, m: 320_000, in: 8128, yd: 292_608 }[unit!]!)
}
