import type { Problem } from '@lengthwise/units'
import type { Ways } from '../answers.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { FlatSheet, Order } from '../order.ts'

/** Every way to make a flat sheet. */
export function waysForFlatSheet(_order: Order, _item: FlatSheet, _tables: ReadonlyMap<string, ClothOnTable>): Ways {
  return { ways: [], refused: [], capped: false }
}

/** What is wrong with the flat sheet as the plan has it. */
export function checkFlatSheet(_order: Order, _item: FlatSheet): readonly Problem[] {
  return []
}
