import type { Problem } from '@lengthwise/units'
import type { Ways } from '../answers.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { Order, Pillowcase } from '../order.ts'

/** Every way to make a pillowcase. */
export function waysForPillowcase(_order: Order, _item: Pillowcase, _tables: ReadonlyMap<string, ClothOnTable>): Ways {
  return { ways: [], refused: [], capped: false }
}

/** What is wrong with the pillowcase as the plan has it. */
export function checkPillowcase(_order: Order, _item: Pillowcase): readonly Problem[] {
  return []
}
