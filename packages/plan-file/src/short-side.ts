import type { Order } from '@lengthwise/pieces'
import type { Problem } from '@lengthwise/units'
import { printSize } from '@lengthwise/units'

/** Pillowcases, cushions and shams say their short side first; the other order would lay a print on its side. */
export function longSideFirst(order: Order): Problem[] {
  return order.items.flatMap((item): Problem[] => {
    if (item.item !== 'pillowcase' && item.item !== 'cushion' && item.item !== 'sham') return []
    const { width, length } = item.finished
    if (width <= length) return []
    const turned = printSize({ width: length, length: width }, order.measureIn).replace('×', 'x')
    const message = 'The short side of a pillowcase or cushion comes first; the long side lies across the bed'
    return [{ code: 'size-order', path: `${item.path}.finished`, message, hint: `Write ${turned}` }]
  })
}
