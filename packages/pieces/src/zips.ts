import type { Length } from '@lengthwise/units'
import { cm, inches, length } from '@lengthwise/units'
import type { Order } from './order.ts'
import type { Notion } from './way.ts'

/** Lengths zips are commonly sold in (common practice, no source). */
const SOLD_CM = [20, 30, 40, 50, 60, 70, 80, 90, 100, 120, 140, 150, 160, 180, 200].map(cm)
const SOLD_INCHES = [9, 12, 14, 16, 18, 20, 22, 24, 30, 36, 42, 48, 54, 60, 72].map(inches)

/** Closed at each end of the opening at least so far, to clear the corner (common practice, no source). */
const CLOSED_AT_EACH_END = cm(2)
/** An opening of less than this share of the edge makes the filling hard to get in (common practice, no source). */
const ENOUGH_PERCENT = 60

export interface ZipChoice {
  /** one zip, or two that meet head to head in the middle */
  readonly zips: readonly Length[]
  readonly opening: Length
  /** the opening is a good part of the edge */
  readonly enough: boolean
}

/**
 * The zip for an edge of finished length `edge`: the longest single one that fits if it opens enough of the edge, else the
 * two that open most. `hand`: lengths to hand, each as often as needed; null: any that is sold. Null when none is short enough.
 */
export function chooseZips(
  order: Pick<Order, 'measureIn'>,
  edge: Length,
  hand: readonly Length[] | null,
): ZipChoice | null {
  const most = edge - 2 * CLOSED_AT_EACH_END
  const lengths = [...(hand ?? (order.measureIn === 'in' ? SOLD_INCHES : SOLD_CM))].sort((a, b) => b - a)
  const choices: ZipChoice[] = []
  const offer = (...zips: Length[]): void => {
    const opening = length(zips.reduce((total: number, zip) => total + zip, 0))
    if (opening <= most) choices.push({ zips, opening, enough: opening * 100 >= edge * ENOUGH_PERCENT })
  }
  for (const zip of lengths) offer(zip)
  lengths.forEach((zip, i) => {
    for (const other of lengths.slice(i)) offer(zip, other)
  })
  const one = choices.find((choice) => choice.enough && choice.zips.length === 1)
  return (
    one ?? choices.reduce<ZipChoice | null>((best, c) => (best === null || c.opening > best.opening ? c : best), null)
  )
}

/** The zips as they are bought, equal ones together; `where`: 'zip at the foot'. */
export function zipNotions({ zips }: ZipChoice, where: string): readonly Notion[] {
  const words = zips.length === 2 ? `${where}, head to head` : where
  return [...new Set(zips)].map((zip) => ({
    what: 'zip',
    length: zip,
    count: zips.filter((other) => other === zip).length,
    words,
  }))
}
