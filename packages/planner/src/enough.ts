import type { Cloth } from '@lengthwise/pieces'
import type { Length } from '@lengthwise/units'
import { length } from '@lengthwise/units'
import type { AtWidths } from './at-widths.ts'
import { inWidth, SETTING_UP_STEPS, solveAt, withCloth } from './at-widths.ts'
import { worth } from './buying.ts'
import type { Effort } from './effort.ts'
import type { Group } from './groups.ts'
import { LayoutBook } from './layout-book.ts'
import { choicesOf } from './options.ts'
import { settingOf } from './setting.ts'
import { boughtIn, fits, longestFor, valueToBuy } from './share.ts'
import { shareOut } from './sharing.ts'

/**
 * 'N or more is enough': the narrowest width, in marking steps down from this one, from which every step up to it needs the
 * same purchase. Each narrower width is a plan of its own, since joined faces depend on the width. The ways chosen here are
 * tried first, because one layout that does is enough; only where they fail are all ways searched.
 */
export function enoughFrom(
  book: LayoutBook,
  cloth: Cloth,
  group: Group,
  index: number,
  found: AtWidths,
  bought: Length,
): Length {
  const { width } = cloth.widths[index]!
  const { stop } = book.effort
  if (book.aside > MOST_ASIDE * book.effort.steps || stop?.()) return width
  const best = found.answer.best!
  const step = Math.max(1, book.order.markTo)
  const narrower = new LayoutBook(book.order, book.objective, narrowEffort(book), book)
  // pieces that do not depend on the width need only be tried at ever closer widths: what fits on narrower cloth fits on wider
  const fixed = best.options.flat().every(({ way }) => way.pieces.every((p) => p.cloth !== cloth.name || !p.spansWidth))
  // where the purchase itself is not proved, no width can be shown to be too narrow for it
  const proved = found.answer.status === 'proved'
  let enough = width
  if (fixed) {
    let low = 0
    let high = Math.floor((width - 1) / step)
    while (low < high && !overspent()) {
      const middle = Math.ceil((low + high) / 2)
      if (sameWaysDo(length(width - middle * step))) low = middle
      else high = middle - 1
    }
    enough = length(width - low * step)
  }
  for (let tries = 0; proved && tries < book.effort.narrower; tries++) {
    const next = length(enough - step)
    if (next <= 0 || overspent() || !(sameWaysDo(next) || someWaysDo(next))) break
    enough = next
  }
  book.aside += narrower.steps
  return enough

  function overspent(): boolean {
    return book.aside + narrower.steps > MOST_ASIDE * book.effort.steps || (stop?.() ?? false)
  }

  function at(next: Length) {
    const other = inWidth(cloth, index, next)
    const changed = { ...group, cloths: group.cloths.map((c) => (c === cloth ? other : c)) }
    return { order: withCloth(book.order, other), changed, other }
  }

  /** Is the purchase the same when every copy is made as it is here? */
  function sameWaysDo(next: Length): boolean {
    const { order, changed } = at(next)
    const settings = changed.cloths.flatMap((c) => settingOf(order, c, found.widths.get(c.name) ?? -1) ?? [])
    const s = settings.findIndex((setting) => setting.cloth.name === cloth.name)
    const setting = settings[s]
    const share = best.shares[s]
    if (!setting || !share) return false
    const counts = new Map<string, number>()
    narrower.steps += SETTING_UP_STEPS * settings.length * best.options.length
    for (const [i, choice] of choicesOf(order, settings, group.items).entries())
      for (const chosen of best.options[i]!) {
        const option = choice.options.find((o) => o.way.id === chosen.way.id)
        if (!option) return false
        for (const [key, n] of option.takes[s]!) counts.set(key, (counts.get(key) ?? 0) + n)
      }
    if (setting.owned.length > 0) {
      const then = shareOut(narrower, setting, counts, 'look').share
      return then !== null && boughtIn(order, setting.cloth, then) === bought
    }
    const laid = share.spreads.find((x) => x.nth === null)?.answer.length ?? 0
    return fits(narrower, setting, counts, longestFor(narrower, setting, valueToBuy(narrower, setting, laid)))
  }

  /** Is it the same with the best ways for that width? */
  function someWaysDo(next: Length): boolean {
    const { order, changed, other } = at(next)
    const value =
      best.wish.value - worth(book.objective, cloth, index, bought) + worth(book.objective, other, index, bought)
    const { answer, settings } = solveAt(narrower, changed, found.widths, book.effort.narrowSteps, value)
    const s = settings.findIndex((setting) => setting.cloth.name === cloth.name)
    const share = answer.best?.shares[s]
    return (
      answer.best !== null &&
      answer.best.wish.value <= value &&
      share != null &&
      boughtIn(order, other, share) === bought
    )
  }
}

/** For all rows together this question may take so many times the steps for a choice. */
const MOST_ASIDE = 4

/** A narrower width is a question aside: it may take a part of the effort. */
const narrowEffort = ({ effort }: LayoutBook): Effort => ({
  ...effort,
  lookSteps: effort.narrowSteps,
  deepSteps: effort.narrowSteps,
})
