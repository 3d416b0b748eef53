import type { Problem } from '@lengthwise/units'
import type { Ways } from '../answers.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { FittedSheet, Order } from '../order.ts'

/** Every way to make a fitted sheet. */
export function waysForFittedSheet(
  _order: Order,
  _item: FittedSheet,
  _tables: ReadonlyMap<string, ClothOnTable>,
): Ways {
  return { ways: [], refused: [], capped: false }
}

/** What is wrong with the fitted sheet as the plan has it. */
export function checkFittedSheet(_order: Order, _item: FittedSheet): readonly Problem[] {
  return []
}
