import type { Problem } from '@lengthwise/units'
import type { Ways } from '../answers.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { Order, Throw } from '../order.ts'

/** Every way to make a throw. */
export function waysForThrow(_order: Order, _item: Throw, _tables: ReadonlyMap<string, ClothOnTable>): Ways {
  return { ways: [], refused: [], capped: false }
}

/** What is wrong with the throw as the plan has it. */
export function checkThrow(_order: Order, _item: Throw): readonly Problem[] {
  return []
}
