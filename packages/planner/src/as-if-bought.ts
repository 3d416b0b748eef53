import type { ChoiceAnswer, Chosen } from './choose.ts'
import { chooseWays } from './choose.ts'
import type { LayoutBook } from './layout-book.ts'
import type { Choice } from './options.ts'
import type { Setting } from './setting.ts'
import type { Share } from './share.ts'
import type { Wish } from './wishes.ts'
import { compareWishes, lesser } from './wishes.ts'

/**
 * The answer with lengths of bolt at hand, or a better one found as if nothing of these bolts were at hand: where all that would be
 * bought goes on a length at hand, nothing is bought. Whoever owns as much as the plan would buy thus buys nothing.
 */
export function orAsIfBought(
  book: LayoutBook,
  settings: readonly Setting[],
  choices: readonly Choice[],
  steps: number,
  cutOff: bigint | null,
  answer: ChoiceAnswer,
): ChoiceAnswer {
  const value = answer.best?.wish.value ?? null
  const atHand = settings.some((setting) => setting.cloth.have > 0 && setting.open)
  if (!atHand || answer.bound === null || answer.bound === value || book.effort.stop?.()) return answer
  const bought = settings.map((setting) => (setting.open ? { ...setting, owned: [] } : setting))
  const found = chooseWays(book, bought, choices, steps, cutOff).best
  // as far as a plan is searched where nothing is at hand
  const better = found && chooseWays(book, bought, choices, steps, null, undefined, found.wish).best
  const other = found && fromHand(book, settings, better ?? found)
  if (!other || (answer.best && compareWishes(other.wish, answer.best.wish) >= 0)) return answer
  const bound = lesser(answer.bound, other.wish.value)
  const proved = bound === other.wish.value
  return { best: other, bound, status: proved ? 'proved' : answer.status, by: answer.by }
}

/** The same choice with each bolt's pieces laid on the length of it at hand, where they go on it. */
function fromHand(book: LayoutBook, settings: readonly Setting[], best: Chosen): Chosen {
  const shares = best.shares.map((share, s) => (share && onLengthAtHand(book, settings[s]!, share)) ?? share)
  const sum = (of: (share: Share) => number) => shares.reduce((all, share) => all + (share ? of(share) : 0), 0)
  const wish: Wish = {
    value: shares.reduce((all, share) => all + (share?.value ?? 0n), 0n),
    opened: sum((share) => share.opened),
    seams: best.wish.seams,
    laid: sum((share) => share.laid),
  }
  return { ...best, shares, wish }
}

function onLengthAtHand(book: LayoutBook, setting: Setting, share: Share): Share | null {
  const [spread] = share.spreads
  const [owned] = setting.owned
  if (!setting.open || !spread || !owned) return null
  const laid = book.moved(owned.ground, spread.counts, setting.bundles, spread.answer)
  if (!laid) return null
  const moved = { ground: owned.ground, nth: owned.nths[0]!, counts: spread.counts, ...laid }
  return { ...share, spreads: [moved], value: 0n, bound: 0n, laid: 0, opened: 1 }
}
