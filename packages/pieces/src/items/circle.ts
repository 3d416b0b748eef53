import type { Length } from '@lengthwise/units'
import { length } from '@lengthwise/units'

/** π to fifteen places, as a fraction of whole numbers. */
const PI_NUMERATOR = 3_141_592_653_589_794n
const PI_DENOMINATOR = 10n ** 15n

/** Circumference of a circle of this diameter, rounded up to a whole unit (π here is too large by less than 1 in 10^15). */
export function circumference(diameter: Length): Length {
  return length(Number((BigInt(diameter) * PI_NUMERATOR + PI_DENOMINATOR - 1n) / PI_DENOMINATOR))
}
