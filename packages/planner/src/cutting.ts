import type { Order, Way } from '@lengthwise/pieces'
import type { AtWidths } from './at-widths.ts'
import type { Setting } from './setting.ts'
import type { Share } from './share.ts'

/** What is made how and cut from what: of a whole plan, or of one group of it. */
export interface Cutting {
  /** by index into the plan's items: the way of each copy; empty for items of other groups */
  readonly ways: readonly (readonly Way[])[]
  /** in the order of the plan; share null: nothing is taken */
  readonly cloths: readonly { readonly setting: Setting; readonly share: Share | null }[]
}

/** The best of one or more groups, put together. */
export function cuttingOf(order: Order, groups: readonly AtWidths[]): Cutting {
  const ways: (readonly Way[])[] = order.items.map(() => [])
  const cloths = new Map<string, Cutting['cloths'][number]>()
  for (const { settings, choices, answer } of groups) {
    const { options, shares } = answer.best!
    for (const [c, { itemIndex }] of choices.entries()) ways[itemIndex] = options[c]!.map((option) => option.way)
    for (const [s, setting] of settings.entries()) cloths.set(setting.cloth.name, { setting, share: shares[s]! })
  }
  return { ways, cloths: order.cloths.flatMap((cloth) => cloths.get(cloth.name) ?? []) }
}
