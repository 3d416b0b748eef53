import type { Problem } from '@lengthwise/units'
import type { Ways } from '../answers.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { Cushion, Order } from '../order.ts'

/** Every way to make a cushion. */
export function waysForCushion(_order: Order, _item: Cushion, _tables: ReadonlyMap<string, ClothOnTable>): Ways {
  return { ways: [], refused: [], capped: false }
}

/** What is wrong with the cushion as the plan has it. */
export function checkCushion(_order: Order, _item: Cushion): readonly Problem[] {
  return []
}
