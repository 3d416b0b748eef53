import type { Cloth } from '@lengthwise/pieces'
import { length } from '@lengthwise/units'
import { cutCloths } from './assemble.ts'
import type { AtWidths, Widths } from './at-widths.ts'
import { moneyFor } from './buying.ts'
import { enoughFrom } from './enough.ts'
import { whyNot } from './missing.ts'
import type { CutCloth, WidthRow } from './result.ts'
import type { LayoutBook } from './share.ts'

/** The rows of one bolt: each of its widths, the other bolts as chosen. Empty when it is not used. */
export function widthRows(
  book: LayoutBook,
  cloth: Cloth,
  cloths: readonly Cloth[],
  chosen: AtWidths,
  at: (widths: Widths) => AtWidths,
  drawn: readonly CutCloth[],
): readonly WidthRow[] {
  if (!isUsed(cloth, chosen)) return []
  return cloth.widths.map((_, index): WidthRow => {
    const isChosen = chosen.widths.get(cloth.name) === index
    const found = isChosen ? chosen : at(new Map([...chosen.widths, [cloth.name, index]]))
    return rowOf(book, cloth, cloths, index, found, isChosen ? drawn : null)
  })
}

/** A row for a width that cannot serve, or for one that can; `drawn`: the cloths as shown, for the chosen one. */
export function rowOf(
  book: LayoutBook,
  cloth: Cloth,
  cloths: readonly Cloth[],
  index: number,
  found: AtWidths,
  drawn: readonly CutCloth[] | null,
): WidthRow {
  const { width } = cloth.widths[index]!
  const { best, status } = found.answer
  const common = { cloth: cloth.name, width, chosen: drawn !== null }
  if (!best)
    return {
      ...common,
      possible: false,
      buyLength: null,
      area: null,
      cost: null,
      notUsedPercent: null,
      keepPercent: null,
      seams: null,
      status: null,
      why: whyNot(book, found),
      enoughFrom: null,
      layout: null,
    }
  const cut = (drawn ?? cutCloths(book.order, found.settings, found.choices, best).map((c) => c.cloth)).filter(
    (c) => c.name === cloth.name,
  )
  const layout = cut.find((c) => c.buy) ?? cut[0] ?? null
  const buy = layout?.buy ?? null
  return {
    ...common,
    possible: true,
    buyLength: length(buy?.length ?? 0),
    area: buy ? buy.width * buy.length : 0,
    // nothing to buy costs nothing, where there is a price
    cost: buy ? buy.cost : moneyFor(cloth, index, length(0)),
    notUsedPercent: layout?.notUsed.percent ?? null,
    keepPercent: layout?.notUsed.keepPercent ?? null,
    seams: seamsFrom(cloth, best.options.flat()),
    status,
    why: null,
    enoughFrom: enoughFrom(book, cloth, cloths, index, found, length(buy?.length ?? 0)),
    layout,
  }
}

export const isUsed = (cloth: Cloth, at: AtWidths): boolean =>
  at.settings.some((setting, s) => setting.cloth.name === cloth.name && at.answer.best?.shares[s]?.spreads.length)

// seams inside the faces that this cloth has a piece in
const seamsFrom = (
  cloth: Cloth,
  options: readonly { way: { pieces: readonly { cloth: string }[] }; joins: number }[],
) => options.reduce((sum, o) => sum + (o.way.pieces.some((p) => p.cloth === cloth.name) ? o.joins : 0), 0)
