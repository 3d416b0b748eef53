import type { Copy } from './answers.ts'
import type { Item, Order } from './order.ts'

/**
 * Every copy of every item in plan order: `duvet-cover-1`, `duvet-cover-2` … numbered through the whole plan by kind,
 * rectangles and strips by their name.
 */
export function copiesOf(order: Order): readonly Copy[] {
  const numbers = new Map<string, number>()
  const copies: Copy[] = []
  order.items.forEach((item, itemIndex) => {
    const base = baseName(item)
    for (let i = 0; i < item.count; i++) {
      const n = (numbers.get(base) ?? 0) + 1
      numbers.set(base, n)
      copies.push({ id: `${base}-${n}`, item, itemIndex })
    }
  })
  return copies
}

function baseName(item: Item): string {
  return item.item === 'rectangle' || item.item === 'strips' ? kebab(item.name) || item.item : item.item
}

/** 'Tray cloth' to 'tray-cloth': letters and digits of any script stay, all else becomes a hyphen. */
function kebab(name: string): string {
  return name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
}
