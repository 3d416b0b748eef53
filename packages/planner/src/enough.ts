import type { Cloth, Order } from '@lengthwise/pieces'
import type { Length } from '@lengthwise/units'
import { length } from '@lengthwise/units'
import type { AtWidths } from './at-widths.ts'
import { solveAt, withWidth } from './at-widths.ts'
import { buyLength, worth } from './buying.ts'
import type { Counts } from './demand.ts'
import { choicesOf } from './options.ts'
import type { Setting } from './setting.ts'
import { settingOf } from './setting.ts'
import { LayoutBook } from './share.ts'

/**
 * 'N or more is enough': the narrowest width, in marking steps down from this one, from which every step up to it needs the
 * same purchase. Each narrower width is a plan of its own, since joined faces depend on the width. The ways chosen here are
 * tried first, because one layout that does is enough; only where they fail are all ways searched.
 */
export function enoughFrom(
  book: LayoutBook,
  cloth: Cloth,
  cloths: readonly Cloth[],
  index: number,
  found: AtWidths,
  bought: Length,
): Length {
  const { width } = cloth.widths[index]!
  const step = Math.max(1, book.order.markTo)
  let enough = width
  for (let tries = 0; tries < book.effort.narrower; tries++) {
    const next = length(enough - step)
    if (next <= 0 || book.effort.stop?.() || !isEnough(next)) break
    enough = next
  }
  return enough

  function isEnough(next: Length): boolean {
    const order = withWidth(book.order, cloth.name, index, next)
    const narrower = new LayoutBook(order, book.objective, book.effort)
    const names = new Set(cloths.map((c) => c.name))
    const inPlay = order.cloths.filter((c) => names.has(c.name))
    const same = (laid: number | null | undefined) =>
      typeof laid === 'number' && buyLength(order, clothIn(order), laid) === bought
    if (same(sameWays(narrower, inPlay))) return true
    const value = found.answer.best!.wish.value
    const now = worth(book.objective, cloth, index, bought)
    const then = worth(book.objective, clothIn(order), index, bought)
    const { answer, settings } = solveAt(narrower, inPlay, found.widths, value - now + then)
    const setting = settings.findIndex((s) => s.cloth.name === cloth.name)
    return same(answer.best?.shares[setting]?.spreads.find((s) => s.nth === null)?.answer.length)
  }

  /** The laid length of what is bought when every copy is made as it is here; null when a way is gone. */
  function sameWays(narrower: LayoutBook, inPlay: readonly Cloth[]): number | null {
    const settings = inPlay.flatMap((c): Setting[] => {
      const setting = settingOf(narrower.order, c, found.widths.get(c.name) ?? -1)
      return setting ? [setting] : []
    })
    const s = settings.findIndex((setting) => setting.cloth.name === cloth.name)
    const counts = new Map<string, number>()
    for (const [i, choice] of choicesOf(narrower.order, settings).entries())
      for (const chosen of found.answer.best!.options[i]!) {
        const option = choice.options.find((o) => o.way.id === chosen.way.id)
        if (!option) return null
        addTo(counts, option.takes[s]!)
      }
    const { share } = narrower.share(settings[s]!, counts)
    return share?.spreads.find((spread) => spread.nth === null)?.answer.length ?? null
  }

  function clothIn(order: Order): Cloth {
    return order.cloths.find((c) => c.name === cloth.name)!
  }
}

function addTo(counts: Map<string, number>, more: Counts): void {
  for (const [key, n] of more) counts.set(key, (counts.get(key) ?? 0) + n)
}
