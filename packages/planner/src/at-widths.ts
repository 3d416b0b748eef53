import type { Cloth, Order } from '@lengthwise/pieces'
import type { Length } from '@lengthwise/units'
import { orAsIfBought } from './as-if-bought.ts'
import type { ChoiceAnswer, Chosen } from './choose.ts'
import { chooseWays } from './choose.ts'
import type { Group } from './groups.ts'
import type { LayoutBook } from './layout-book.ts'
import type { Choice } from './options.ts'
import { choicesOf } from './options.ts'
import type { Setting } from './setting.ts'
import { settingOf } from './setting.ts'

/** Which width of each bolt is tried: an index into its widths, by name. */
export type Widths = ReadonlyMap<string, number>

/** The best choice of ways and layouts of one group at given widths. */
export interface AtWidths {
  readonly widths: Widths
  readonly settings: readonly Setting[]
  readonly choices: readonly Choice[]
  readonly answer: ChoiceAnswer
  /** it was left when it could not beat the value given; then `answer` is not the best of these widths */
  readonly cutOff: boolean
}

/** What it costs in steps, about, to find what one way takes from one cloth, and to weigh it. */
export const SETTING_UP_STEPS = 6

export function solveAt(
  book: LayoutBook,
  group: Group,
  widths: Widths,
  steps: number,
  cutOff: bigint | null = null,
  onBetter?: (at: Omit<AtWidths, 'answer' | 'cutOff'>, chosen: Chosen, bound: bigint) => void,
): AtWidths {
  const settings = group.cloths.flatMap((cloth) => settingOf(book.order, cloth, widths.get(cloth.name) ?? -1) ?? [])
  const choices = choicesOf(book.order, settings, group.items)
  book.steps += SETTING_UP_STEPS * settings.length * choices.reduce((sum, choice) => sum + choice.options.length, 0)
  const at = { widths, settings, choices }
  const first = chooseWays(book, settings, choices, steps, cutOff, (chosen, bound) => onBetter?.(at, chosen, bound))
  const answer = orAsIfBought(book, settings, choices, steps, cutOff, first)
  return { ...at, answer, cutOff: cutOff !== null && (answer.best === null || answer.best.wish.value > cutOff) }
}

/** The order with one cloth replaced by another of its name. */
export const withCloth = (order: Order, other: Cloth): Order => ({
  ...order,
  cloths: order.cloths.map((cloth) => (cloth.name === other.name ? other : cloth)),
})

/** A bolt in a width that the shop does not have, in place of one that it has. */
export const inWidth = (cloth: Cloth, index: number, width: Length): Cloth => ({
  ...cloth,
  widths: cloth.widths.map((w, i) => (i === index ? { ...w, width } : w)),
})
