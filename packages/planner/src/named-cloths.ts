import type { Item, Order } from '@lengthwise/pieces'

/** Names of the cloths an item may be made from, wherever in it they stand. */
export function clothsNamed(item: Item): ReadonlySet<string> {
  const names = new Set<string>()
  gather(item, names)
  return names
}

/** Names of all cloths that some item may use. */
export function clothsWanted(order: Order): ReadonlySet<string> {
  return new Set(order.items.flatMap((item) => [...clothsNamed(item)]))
}

function gather(value: unknown, names: Set<string>): void {
  if (typeof value !== 'object' || value === null) return
  for (const [key, inner] of Object.entries(value))
    if (/^(cloth|\w+Cloth)$/.test(key) && Array.isArray(inner)) for (const name of inner) names.add(String(name))
    else gather(inner, names)
}
