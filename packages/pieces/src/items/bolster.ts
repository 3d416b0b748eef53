import type { Problem } from '@lengthwise/units'
import type { Ways } from '../answers.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { Bolster, Order } from '../order.ts'

/** Every way to make a bolster. */
export function waysForBolster(_order: Order, _item: Bolster, _tables: ReadonlyMap<string, ClothOnTable>): Ways {
  return { ways: [], refused: [], capped: false }
}

/** What is wrong with the bolster as the plan has it. */
export function checkBolster(_order: Order, _item: Bolster): readonly Problem[] {
  return []
}
