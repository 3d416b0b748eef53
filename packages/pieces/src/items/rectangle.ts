import type { Problem } from '@lengthwise/units'
import type { Ways } from '../answers.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { Order, Rectangle } from '../order.ts'

/** Every way to make a rectangle. */
export function waysForRectangle(_order: Order, _item: Rectangle, _tables: ReadonlyMap<string, ClothOnTable>): Ways {
  return { ways: [], refused: [], capped: false }
}

/** What is wrong with the rectangle as the plan has it. */
export function checkRectangle(_order: Order, _item: Rectangle): readonly Problem[] {
  return []
}
