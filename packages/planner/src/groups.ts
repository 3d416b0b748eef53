import type { Cloth, Order } from '@lengthwise/pieces'
import { clothsNamed } from './named-cloths.ts'

/** Items and cloths that have to do with one another: no item outside may come from these cloths, none inside from others. */
export interface Group {
  /** by index into the plan's items, rising */
  readonly items: readonly number[]
  /** in the order of the plan */
  readonly cloths: readonly Cloth[]
}

/**
 * The plan taken apart into groups that share no cloth. What is best in each is best in all: values, seams and lengths add up,
 * and the wishes compare sums in the same order as their parts. Cloths that nothing names are in none. The smallest group
 * comes first, so that what it leaves of the effort goes to the larger ones.
 */
export function groupsOf(order: Order): readonly Group[] {
  // cloths that stand for their group, each naming the one before it
  const before = new Map<string, string>()
  const standsFor = (name: string): string => {
    let first = name
    for (let next = before.get(first); next !== undefined && next !== first; next = before.get(first)) first = next
    before.set(name, first)
    return first
  }
  const named = order.items.map((item) => [...clothsNamed(item)])
  for (const names of named)
    for (const name of names) {
      if (!before.has(name)) before.set(name, name)
      before.set(standsFor(name), standsFor(names[0]!))
    }
  const groups = new Map<string, { items: number[]; cloths: Cloth[] }>()
  named.forEach(([name], item) => {
    const first = name === undefined ? '' : standsFor(name)
    const group = groups.get(first) ?? { items: [], cloths: [] }
    group.items.push(item)
    groups.set(first, group)
  })
  for (const cloth of order.cloths) if (before.has(cloth.name)) groups.get(standsFor(cloth.name))!.cloths.push(cloth)
  return [...groups.values()].sort((a, b) => a.items.length - b.items.length || a.items[0]! - b.items[0]!)
}
