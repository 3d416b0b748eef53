/**
 * A length along or across the cloth, a whole number of units of 1/320 mm.
 *
 * 1 mm is 320 units and 1/64 in is 127, so centimetres and inch fractions are both exact
 * (1 in = 25.4 mm exactly). The brand keeps bare numbers out: they come in by `mm`, `cm`, `inches` or a reader.
 */
export type Length = number & { readonly __unit: '1/320 mm' }

/** Units in one millimetre. */
export const UNITS_PER_MM = 320
/** Units in 1/64 inch. */
export const UNITS_PER_64TH_INCH = 127

/** A length from a whole number of units. Throws when `units` is no safe integer. */
export function length(units: number): Length {
  if (!Number.isSafeInteger(units)) throw new RangeError(`length: ${units} is not a whole number of units`)
  return units as Length
}

/** Millimetres to a length; `value` must come out as a whole number of units. */
export const mm = (value: number): Length => exact(value * UNITS_PER_MM, value, 'mm')
/** Centimetres to a length. */
export const cm = (value: number): Length => exact(value * 10 * UNITS_PER_MM, value, 'cm')
/** Inches to a length: whole 64ths only. */
export const inches = (value: number): Length => exact(value * 64 * UNITS_PER_64TH_INCH, value, 'in')

/** A length in millimetres, as a decimal for layout files and drawings (exact: 1/320 mm has at most six places). */
export const toMm = (l: Length): number => l / UNITS_PER_MM

export const ZERO = 0 as Length

export function sum(...lengths: Length[]): Length {
  let total = 0
  for (const l of lengths) total += l
  return length(total)
}
export const minus = (a: Length, b: Length): Length => length(a - b)
export const times = (a: Length, n: number): Length => length(a * n)

/** Smallest multiple of `step` that is not below `l`; `step` 0 leaves `l` as it is. */
export function roundUpTo(l: Length, step: Length): Length {
  return step === 0 ? l : length(Math.ceil(l / step) * step)
}

// floating point may miss a whole unit by a hair (54.1 cm); more than a hair is a mistake of the caller
function exact(units: number, value: number, name: string): Length {
  const whole = Math.round(units)
  if (!Number.isFinite(value) || Math.abs(units - whole) > 1e-6)
    throw new RangeError(`${name}: ${value} ${name} is no whole number of 1/320 mm`)
  return length(whole)
}
