import type { Item } from '@lengthwise/pieces'
import { NAMED_SIZES, SIZE_KINDS, sizeNamed } from '@lengthwise/pieces'

/** The named sizes that serve one kind of item. */
export function sizesFor(item: Item['item']) {
  const kinds = SIZE_KINDS[item]
  const names = [...new Set(NAMED_SIZES.filter((size) => kinds.includes(size.kind)).map((size) => size.name))]
  return { names, find: (name: string) => sizeNamed(name, item) }
}
