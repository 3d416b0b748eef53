import type { Result, WidthRow } from '@lengthwise/planner'
import type { Money } from '@lengthwise/units'
import { printMoney } from '@lengthwise/units'
import type { Measure } from '../measure.ts'

/** By which figure widths are weighed: cost, or area where a cloth has no price. */
const byCost = (result: Result): boolean => result.proof.objective === 'cost'

/** The rows of one cloth: those that serve, the chosen one first, then by cost or area; the narrower first among equals. */
export function bestFirst(rows: readonly WidthRow[], result: Result): readonly WidthRow[] {
  const worth = (row: WidthRow): number => (byCost(result) ? Number(row.cost ?? 0n) : (row.area ?? 0))
  return [...rows].sort(
    (a, b) =>
      Number(b.possible) - Number(a.possible) ||
      Number(b.chosen) - Number(a.chosen) ||
      worth(a) - worth(b) ||
      (a.area ?? 0) - (b.area ?? 0) ||
      a.width - b.width,
  )
}

/**
 * 'lowest cost', or by how much a width loses; '' where another cloth makes up for what this one takes less. Between cloths
 * one of which has no price it is the area that counts.
 */
export function comparedWords(
  row: WidthRow,
  chosen: WidthRow | undefined,
  result: Result,
  measure: Measure,
  currency: string | null = null,
): string {
  if (!row.possible) return 'cannot serve'
  if (row.chosen || chosen === undefined) return byCost(result) ? 'lowest cost' : 'least cloth'
  if (byCost(result) && row.cost !== null && chosen.cost !== null && row.cost !== chosen.cost) {
    const more = (row.cost - chosen.cost) as Money
    return more > 0n ? `${printMoney(more, currency, { noBreak: true })} more` : ''
  }
  if (byCost(result)) return 'the same cost'
  const more = (row.area ?? 0) - (chosen.area ?? 0)
  if (measure.area(Math.abs(more)) === measure.area(0)) return 'as much cloth'
  return more > 0 ? `${measure.area(more)} more cloth` : ''
}
