import type { Length } from '@lengthwise/units'
import { printLength } from '@lengthwise/units'

export type Unit = 'cm' | 'mm' | 'in'

/** How lengths are written on one map: always the same unit, numbers that a tape can find, a no-break space before the unit. */
export interface Measure {
  readonly unit: Unit
  /** '203.5' */
  bare(l: Length): string
  /** '203.5 cm' */
  full(l: Length): string
  /** `full` of a length that must not come out less than it is: rounded up to what is printed */
  atLeast(l: Length): string
  /** '123 × 203.5' */
  size(width: Length, length: Length): string
  /** a width of cloth as it is sold: in the other unit where only that says it exactly, '54 1/8 in' not '137.48 cm' */
  sold(width: Length): string
  /** a length of cloth as a shop sells it, never less than it is: '6.6 m', '7 1/4 yd' */
  bought(l: Length): string
  /** square units: '9.7 m²', '11.6 sq yd' */
  area(squareUnits: number): string
}

export function measureIn(unit: Unit): Measure {
  const options = { places: unit === 'mm' ? 1 : 2, finest: 16, noBreak: true } as const
  const bare = (l: Length): string => inOne(printLength(l, unit, { ...options, bare: true }))
  return {
    unit,
    bare,
    full: (l) => inOne(printLength(l, unit, options)),
    atLeast: (l) => inOne(printLength(upTo(l, unit === 'in' ? UNITS_PER_INCH / 16 : TENTH_OF_A_MM), unit, options)),
    size: (width, length) => `${bare(width)}\u00a0×\u00a0${bare(length)}`,
    sold: (width) => inOne(printLength(width, exactUnit(width, unit), options)),
    bought: (l) => inOne(unit === 'in' ? yards(l) : metres(l)),
    area: (squareUnits) =>
      unit === 'in'
        ? `${(squareUnits / UNITS_PER_YARD ** 2).toFixed(1)}\u00a0sq\u00a0yd`
        : `${(squareUnits / UNITS_PER_METRE ** 2).toFixed(1)}\u00a0m²`,
  }
}

/** '58 13/16' is never parted: 58 on one line and 13/16 on the next would be read as two figures. */
const inOne = (words: string): string => words.replace(/(\d) (?=\d)/g, '$1\u00a0')

// a length that is no eighth of a yard is written in inches, or in metres where it was sold so
function yards(l: Length): string {
  if ((l * 8) % UNITS_PER_YARD === 0) return printLength(l, 'yd', { noBreak: true })
  if ((l * 8) % UNITS_PER_INCH === 0) return printLength(l, 'in', { noBreak: true })
  return metres(l)
}

function exactUnit(l: Length, unit: Unit): Unit {
  const inMetric = l % TENTH_OF_A_MM === 0
  if (unit === 'in') return (l * 16) % UNITS_PER_INCH !== 0 && inMetric ? 'cm' : unit
  return !inMetric && (l * 16) % UNITS_PER_INCH === 0 ? 'in' : unit
}

const metres = (l: Length): string => printLength(upTo(l, 10 * TENTH_OF_A_MM), 'm', { noBreak: true, places: 3 })

const upTo = (l: Length, step: number): Length => (Math.ceil(l / step) * step) as Length

const TENTH_OF_A_MM = 32

const UNITS_PER_INCH = 8128
const UNITS_PER_YARD = 292_608
const UNITS_PER_METRE = 320_000
