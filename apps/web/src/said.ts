import type { Unit } from '@lengthwise/drawing'
import { capital, comparedWords, measureIn } from '@lengthwise/drawing'
import type { Result, WidthRow } from '@lengthwise/planner'
import type { Length, Money } from '@lengthwise/units'
import { printMoney } from '@lengthwise/units'

/** How the page says lengths, areas and money: one place, so that a figure is the same wherever it stands. */
export type { Unit }

/** The figures of the map and the note. */
export const size = (l: Length, unit: Unit): string => unbroken(measureIn(unit).full(l))
/** `203 × 135.8 cm` */
export const sizes = (width: Length, length: Length, unit: Unit): string =>
  unbroken(`${measureIn(unit).bare(width)} × ${measureIn(unit).full(length)}`)
export const widthSold = (width: Length, unit: Unit): string => unbroken(measureIn(unit).sold(width))
export const atLeast = (l: Length, unit: Unit): string => unbroken(measureIn(unit).atLeast(l))
export const bought = (l: Length, unit: Unit): string => unbroken(measureIn(unit).bought(l))

/** No line ends between a whole number and its fraction. */
export const unbroken = (words: string): string => words.replace(/(\d) (?=\d+\/\d)/g, '$1\u00a0')

export const area = (squareUnits: number, unit: Unit): string => measureIn(unit).area(squareUnits)

export const money = (m: Money, currency: string | null): string => printMoney(m, currency, { noBreak: true })

/** 'Lowest cost', or by how much a width loses. */
export function verdict(row: WidthRow, rows: readonly WidthRow[], result: Result): string {
  if (!row.possible) return row.why ?? 'Not possible'
  const { currency, measureIn: unit } = result.order
  const chosen = rows.find((other) => other.chosen) ?? rows[0]
  return capital(comparedWords(row, chosen, result, measureIn(unit), currency))
}
