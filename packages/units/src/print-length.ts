import type { Length } from './length.ts'
import { greatestCommonDivisor, mixedNumber } from './number-text.ts'

export interface PrintOptions {
  /** a no-break space before the unit, so that a line never ends between number and unit */
  readonly noBreak?: boolean
  /** the number alone */
  readonly bare?: boolean
  /** round half up to so many decimal places (mm, cm, m); without it the length is printed exactly */
  readonly places?: number
  /** inches and yards that are no such fraction go to the nearest 1/`finest`; 64 unless given */
  readonly finest?: 2 | 4 | 8 | 16 | 32 | 64
}

const UNITS_IN = { mm: 320n, cm: 3200n, m: 320_000n, in: 8128n, yd: 292_608n } as const
export type PrintUnit = keyof typeof UNITS_IN

/**
 * A length as it is written on paper: `203.5 cm`, `54 1/8 in`, `2 1/3 yd`.
 *
 * Metric figures are exact decimals unless `places` is given. Inches and yards are exact where the length is a
 * fraction with a denominator of at most 64, as every length typed in inches is; others go to the nearest 64th.
 * What is printed exactly is read back as the same length.
 */
export function printLength(l: Length, unit: PrintUnit, options: PrintOptions = {}): string {
  const number =
    unit === 'in' || unit === 'yd' ? asFraction(l, unit, options.finest) : asDecimal(l, unit, options.places)
  return options.bare ? number : `${number}${space(options)}${unit}`
}

/** `200 × 230 cm`: the unit once, at the end. */
export function printSize(
  size: { readonly width: Length; readonly length: Length },
  unit: PrintUnit,
  options: PrintOptions = {},
): string {
  const bare = { ...options, bare: true }
  const cross = options.noBreak ? '\u00a0×\u00a0' : ' × '
  return `${printLength(size.width, unit, bare)}${cross}${printLength(size.length, unit, options)}`
}

/** `numerator / denominator` as a decimal, half a last place and more rounded up; trailing zeros go. */
export function decimal(numerator: bigint, denominator: bigint, places: number): string {
  const scale = 10n ** BigInt(places)
  const scaled = (2n * numerator * scale + denominator) / (2n * denominator)
  const fraction = (scaled % scale).toString().padStart(places, '0').replace(/0+$/, '')
  return fraction === '' || places === 0 ? `${scaled / scale}` : `${scaled / scale}.${fraction}`
}

/** Three places behind a short whole number look like thousands and are refused by the readers: a fourth tells them apart. */
export const readableBack = (number: string): string => (/^[1-9]\d{0,2}\.\d{3}$/.test(number) ? `${number}0` : number)

export const space = (options: { readonly noBreak?: boolean }): string => (options.noBreak ? '\u00a0' : ' ')

// 1/320 mm has six decimal places, 1/3200 cm seven, 1/320000 m nine
function asDecimal(l: Length, unit: 'mm' | 'cm' | 'm', places?: number): string {
  const number = decimal(BigInt(Math.abs(l)), UNITS_IN[unit], places ?? 9)
  return `${l < 0 ? '-' : ''}${places === undefined ? readableBack(number) : number}`
}

function asFraction(l: Length, unit: 'in' | 'yd', finest?: number): string {
  const sign = l < 0 ? '-' : ''
  const numerator = BigInt(Math.abs(l))
  const denominator = UNITS_IN[unit]
  const exact = denominator / greatestCommonDivisor(numerator, denominator)
  if (exact <= BigInt(finest ?? 64)) return sign + mixedNumber(numerator, denominator)
  const steps = BigInt(finest ?? 64)
  return sign + mixedNumber((2n * numerator * steps + denominator) / (2n * denominator), steps)
}
