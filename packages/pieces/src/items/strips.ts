import type { Problem } from '@lengthwise/units'
import type { Ways } from '../answers.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { Order, Strips } from '../order.ts'

/** Every way to make a strips. */
export function waysForStrips(_order: Order, _item: Strips, _tables: ReadonlyMap<string, ClothOnTable>): Ways {
  return { ways: [], refused: [], capped: false }
}

/** What is wrong with the strips as the plan has it. */
export function checkStrips(_order: Order, _item: Strips): readonly Problem[] {
  return []
}
