import type { Order } from '@lengthwise/pieces'
import * as pieces from '@lengthwise/pieces'
import type { Problem } from '@lengthwise/units'

/** What the trade knows to be wrong with an order that reads well. */
export function checkOrder(order: Order): readonly Problem[] {
  const { checkOrder: check } = pieces as { checkOrder?: (order: Order) => readonly Problem[] }
  return check?.(order) ?? []
}
