import type { Item } from '@lengthwise/pieces'

/** Names of the cloths an item may be made from, wherever in it they stand. */
export function clothsNamed(item: Item): ReadonlySet<string> {
  const names = new Set<string>()
  gather(item, names)
  return names
}

function gather(value: unknown, names: Set<string>): void {
  if (typeof value !== 'object' || value === null) return
  for (const [key, inner] of Object.entries(value))
    if (/^(cloth|\w+Cloth)$/.test(key) && Array.isArray(inner)) for (const name of inner) names.add(String(name))
    else gather(inner, names)
}
