import type { Length } from '@lengthwise/units'
import { length } from '@lengthwise/units'

/**
 * Places of buttons, snaps or ties on an edge of finished length `edge`: the first and last `fromCorner` from the corners,
 * the rest evenly between, no farther apart than `spacing`. At least one, in the middle.
 */
export function evenly(edge: Length, fromCorner: Length, spacing: Length): readonly Length[] {
  const between = edge - 2 * fromCorner
  if (between <= 0 || spacing <= 0) return [length(Math.floor(edge / 2))]
  const gaps = Math.ceil(between / spacing)
  return Array.from({ length: gaps + 1 }, (_, i) => length(fromCorner + Math.round((between * i) / gaps)))
}
