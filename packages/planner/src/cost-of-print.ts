import type { Cloth, Order, Print, Remark } from '@lengthwise/pieces'
import type { Length } from '@lengthwise/units'
import { length, printLength } from '@lengthwise/units'
import type { AtWidths } from './at-widths.ts'
import { solveAt, withCloth } from './at-widths.ts'
import { effortOf } from './effort.ts'
import { LayoutBook } from './layout-book.ts'
import type { GroupAnswer } from './search-widths.ts'
import { boughtIn } from './share.ts'

/**
 * What the arrow and the match of a print cost in cloth: the group laid again at the same widths with the print not matched, then
 * with no top as well, and what is bought compared. Said as 'about' unless both purchases are proved.
 */
export function costOfPrint(
  book: LayoutBook,
  cloth: Cloth,
  { group, best }: Pick<GroupAnswer, 'group' | 'best'>,
): readonly Remark[] {
  const { stop } = book.effort
  const { print } = cloth
  const matched = print.match !== 'none' && (print.repeat > 0 || print.acrossRepeat > 0)
  if (cloth.from !== 'bolt' || (!matched && print.way !== 'one-way')) return []
  let before = purchase(book.order, cloth, best)
  const remarks: Remark[] = []
  if (matched) without('cost-of-match', 'The match of the print', { match: 'none' })
  if (print.way === 'one-way') without('cost-of-top', 'The right way up of the print', { match: 'none', way: 'plain' })
  return remarks

  function without(code: string, what: string, change: Partial<Print>): void {
    if (!before || stop?.()) return
    const other: Cloth = { ...cloth, print: { ...print, ...change } }
    const order = withCloth(book.order, other)
    const effort = effortOf({ effort: 'quick', ...(stop ? { stop } : {}) })
    const changed = { ...group, cloths: group.cloths.map((c) => (c === cloth ? other : c)) }
    const found = solveAt(new LayoutBook(order, book.objective, effort), changed, best.widths, effort.steps)
    const after = purchase(order, other, found)
    if (!after || after.bought === 0) return
    const cost = before.bought - after.bought
    const about = before.proved && after.proved ? '' : 'about '
    if (cost > 0)
      remarks.push({
        code,
        text: `${what} costs ${about}${printLength(length(cost), book.order.measureIn, { places: 1 })} of ${cloth.name}.`,
      })
    if (cost >= 0) before = after
  }
}

function purchase(
  order: Order,
  cloth: Cloth,
  at: AtWidths,
): { readonly bought: Length; readonly proved: boolean } | null {
  const s = at.settings.findIndex((setting) => setting.cloth.name === cloth.name)
  const share = at.answer.best?.shares[s]
  return share ? { bought: boughtIn(order, cloth, share), proved: at.answer.status === 'proved' } : null
}
