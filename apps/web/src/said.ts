import type { Result, WidthRow } from '@lengthwise/planner'
import type { Length, Money } from '@lengthwise/units'
import { printLength, printMoney } from '@lengthwise/units'

/** How the page says lengths, areas and money: one place, so that a figure is the same wherever it stands. */
export type Unit = 'cm' | 'mm' | 'in'

const TENTH_OF_A_MILLIMETRE = 32
const SIXTY_FOURTH_OF_AN_INCH = 127

/** In the plan's unit; a width given in inches stays so where centimetres would not say it exactly. */
export function size(l: Length, unit: Unit): string {
  const inches = l % TENTH_OF_A_MILLIMETRE !== 0 && l % SIXTY_FOURTH_OF_AN_INCH === 0
  return printLength(l, inches ? 'in' : unit, { noBreak: true, places: 2, finest: 64 })
}

export const bought = (l: Length, unit: Unit): string =>
  unit === 'in' ? printLength(l, 'yd', { noBreak: true, finest: 8 }) : printLength(l, 'm', { noBreak: true, places: 2 })

const SQUARE_METRE = 320_000 * 320_000
const SQUARE_YARD = 292_608 * 292_608

export function area(squareUnits: number, unit: Unit): string {
  return unit === 'in'
    ? `${(squareUnits / SQUARE_YARD).toFixed(1)}\u00a0sq\u00a0yd`
    : `${(squareUnits / SQUARE_METRE).toFixed(1)}\u00a0m²`
}

export const money = (m: Money, currency: string | null): string => printMoney(m, currency, { noBreak: true })

/** The rows of one cloth, best first: cost where all have one, else area; impossible ones last, narrower first among equals. */
export function bestFirst(rows: readonly WidthRow[]): readonly WidthRow[] {
  const priced = rows.every((row) => row.cost !== null || !row.possible)
  const worth = (row: WidthRow): number => (priced ? Number(row.cost ?? 0n) : (row.area ?? 0))
  return [...rows].sort(
    (a, b) =>
      Number(b.possible) - Number(a.possible) ||
      Number(b.chosen) - Number(a.chosen) ||
      worth(a) - worth(b) ||
      a.width - b.width,
  )
}

/** 'Lowest cost', or by how much a width loses. */
export function verdict(row: WidthRow, rows: readonly WidthRow[], result: Result): string {
  if (!row.possible) return row.why ?? 'Not possible'
  const unit = result.order.measureIn
  const best = rows.find((other) => other.chosen) ?? rows[0]
  if (best === undefined || row === best) return row.cost !== null ? 'Lowest cost' : 'Least cloth'
  if (row.cost !== null && best.cost !== null && row.cost > best.cost)
    return `${money((row.cost - best.cost) as Money, result.order.currency)} more`
  if (row.area !== null && best.area !== null && row.area > best.area)
    return `${area(row.area - best.area, unit)} more cloth`
  return row.cost !== null && row.cost === best.cost ? 'The same cost' : 'As much cloth'
}
