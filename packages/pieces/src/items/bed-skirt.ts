import type { Problem } from '@lengthwise/units'
import type { Ways } from '../answers.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { BedSkirt, Order } from '../order.ts'

/** Every way to make a bed skirt. */
export function waysForBedSkirt(_order: Order, _item: BedSkirt, _tables: ReadonlyMap<string, ClothOnTable>): Ways {
  return { ways: [], refused: [], capped: false }
}

/** What is wrong with the bed skirt as the plan has it. */
export function checkBedSkirt(_order: Order, _item: BedSkirt): readonly Problem[] {
  return []
}
