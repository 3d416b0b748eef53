import type { Cloth } from '@lengthwise/pieces'
import type { Length } from '@lengthwise/units'
import { length } from '@lengthwise/units'
import type { AtWidths } from './at-widths.ts'
import { solveAt, withWidth } from './at-widths.ts'
import { buyLength } from './buying.ts'
import { LayoutBook } from './share.ts'

/**
 * 'N or more is enough': the narrowest width, in marking steps down from this one, from which every step up to it needs the
 * same purchase. Each narrower width is a plan of its own, since joined faces depend on the width; the ways chosen here are
 * tried first, because one layout that does is enough, and only a width where they fail is searched through.
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
    if (next <= 0) break
    const { order, at } = narrower(next)
    const setting = at.settings.findIndex((s) => s.cloth.name === cloth.name)
    const share = at.answer.best?.shares[setting]
    const laid = share?.spreads.find((s) => s.nth === null)?.answer.length
    if (laid === undefined || laid === null) break
    const same = buyLength(order, order.cloths.find((c) => c.name === cloth.name)!, laid) === bought
    if (!same) break
    enough = next
  }
  return enough

  function narrower(next: Length) {
    const order = withWidth(book.order, cloth.name, index, next)
    const smaller = new LayoutBook(order, book.objective, book.effort)
    const names = new Set(cloths.map((c) => c.name))
    const at = solveAt(
      smaller,
      order.cloths.filter((c) => names.has(c.name)),
      found.widths,
    )
    return { order, at }
  }
}
