import type { Cloth, Order } from '@lengthwise/pieces'
import type { Answer, Certificate } from '@lengthwise/solver'
import type { Length } from '@lengthwise/units'
import { length } from '@lengthwise/units'
import { buyLength, worth } from './buying.ts'
import type { Asked, Counts } from './demand.ts'
import type { Ground } from './field.ts'
import type { How, Laid, LayoutBook } from './layout-book.ts'
import type { Setting } from './setting.ts'

/** One length, sheet or remnant that is used. */
export interface Spread {
  readonly ground: Ground
  /** which one of several like sheets or remnants; null: bought */
  readonly nth: number | null
  readonly counts: Counts
  readonly asked: Asked
  readonly answer: Answer
}

/** How the pieces asked of one cloth are shared among what is owned of it and what is bought. */
export interface Share {
  readonly spreads: readonly Spread[]
  /** in the objective: what must be bought, and what no sharing goes below */
  readonly value: bigint
  readonly bound: bigint
  /** laid length of what is bought */
  readonly laid: number
  /** owned lengths, sheets and remnants opened */
  readonly opened: number
  /** what shows the bound */
  readonly by: Certificate['by']
  readonly stopped: boolean
}

export interface Sharing {
  /** null: no sharing was found */
  readonly share: Share | null
  /** false: with a share, its bound is nothing; without one, there may be a sharing all the same */
  readonly certain: boolean
}

/** All of it from cloth still to be bought; null: no layout was found. */
export function buyAll(book: LayoutBook, setting: Setting, counts: Counts, how: How): Share | null {
  return boughtAs(book, setting, counts, book.lay(setting, setting.open!, counts, how))
}

function boughtAs(book: LayoutBook, setting: Setting, counts: Counts, { asked, answer }: Laid): Share | null {
  if (answer.length === null) return null
  return {
    spreads: [{ ground: setting.open!, nth: null, counts, asked, answer }],
    value: valueToBuy(book, setting, answer.length),
    bound: valueToBuy(book, setting, answer.bound),
    laid: answer.length,
    opened: 0,
    by: answer.certificate.by,
    stopped: answer.status === 'stopped',
  }
}

/**
 * Can these pieces be laid on `long` of a bolt? Cheaper to answer than how short they can be laid, above all where the answer
 * is no. The share is the shortest found; a bound stands for 'perhaps'.
 */
export function within(
  book: LayoutBook,
  setting: Setting,
  counts: Counts,
  long: number,
  how: How,
): { share: Share } | { bound: number } | 'never' {
  const open = setting.open!
  if (long <= 0 || book.bound(setting, open, counts, long + 1).bound > long) return 'never'
  // what was sought on the open bolt and left unsettled is not sought again as hard
  const before = book.laidBefore(setting, open, counts, how)
  if (before && before.bound > long) return 'never'
  if (before && (before.length ?? 0) > long) return { bound: before.bound }
  const quick = book.start(setting, open, counts)
  const { answer: first } = quick
  if (first.length === null || first.length > long) {
    const laid = book.lay(setting, shortened(open, long), counts, how)
    if (laid.answer.status === 'infeasible') return 'never'
    const share = boughtAs(book, { ...setting, open: shortened(open, long) }, counts, laid)
    return share ? { share } : { bound: laid.answer.bound }
  }
  // a stop may end the longer search before it has what the quick one had
  return { share: buyAll(book, setting, counts, how) ?? boughtAs(book, setting, counts, quick)! }
}

/** Do these pieces go on `long` of a bolt, as far as effort tells? */
export function fits(book: LayoutBook, setting: Setting, counts: Counts, long: number): boolean {
  if (long <= 0 || book.bound(setting, setting.open!, counts, long + 1).bound > long) return false
  const { answer: first } = book.start(setting, setting.open!, counts)
  if (first.length !== null && first.length <= long) return true
  return book.lay(setting, shortened(setting.open!, long), counts, 'look').answer.length !== null
}

const shortened = (ground: Ground, long: number): Ground => ({ ...ground, field: { ...ground.field, length: long } })

/** The value of a bolt length on which `laid` of the field lies. */
export const valueToBuy = (book: LayoutBook, setting: Setting, laid: number): bigint =>
  laid === 0 ? 0n : worth(book.objective, setting.cloth, setting.widthIndex, buyLength(book.order, setting.cloth, laid))

/** What a sharing buys; 0: nothing. */
export function boughtIn(order: Order, cloth: Cloth, share: Share): Length {
  const laid = share.spreads.find((spread) => spread.nth === null)?.answer.length ?? 0
  return laid === 0 ? length(0) : buyLength(order, cloth, laid)
}

/** The longest laid length whose purchase is worth at most `most`; 0: none. */
export function longestFor(book: LayoutBook, setting: Setting, most: bigint): number {
  if (most < 0n || valueToBuy(book, setting, 1) > most) return 0
  let low = 1
  let high = 2
  while (valueToBuy(book, setting, high) <= most && high < LONGEST) high *= 2
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if (valueToBuy(book, setting, middle) <= most) low = middle
    else high = middle
  }
  return low
}
const LONGEST = 2 ** 40
