import type { Problem } from '@lengthwise/units'
import type { Ways } from '../answers.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { Order, QuiltBack } from '../order.ts'

/** Every way to make a quilt back. */
export function waysForQuiltBack(_order: Order, _item: QuiltBack, _tables: ReadonlyMap<string, ClothOnTable>): Ways {
  return { ways: [], refused: [], capped: false }
}

/** What is wrong with the quilt back as the plan has it. */
export function checkQuiltBack(_order: Order, _item: QuiltBack): readonly Problem[] {
  return []
}
