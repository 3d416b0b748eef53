import type { Problem } from '@lengthwise/units'
import type { Ways } from '../answers.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { DuvetCover, Order } from '../order.ts'

/** Every way to make a duvet cover. */
export function waysForDuvetCover(_order: Order, _item: DuvetCover, _tables: ReadonlyMap<string, ClothOnTable>): Ways {
  return { ways: [], refused: [], capped: false }
}

/** What is wrong with the duvet cover as the plan has it. */
export function checkDuvetCover(_order: Order, _item: DuvetCover): readonly Problem[] {
  return []
}
