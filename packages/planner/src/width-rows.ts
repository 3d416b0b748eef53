import type { Cloth } from '@lengthwise/pieces'
import { length } from '@lengthwise/units'
import { cutCloths } from './assemble.ts'
import type { AtWidths } from './at-widths.ts'
import { moneyFor } from './buying.ts'
import { cuttingOf } from './cutting.ts'
import { enoughFrom } from './enough.ts'
import type { Group } from './groups.ts'
import type { LayoutBook } from './layout-book.ts'
import { whyNot } from './missing.ts'
import type { CutCloth, WidthRow } from './result.ts'
import { seamsOfCloth } from './seams-of-cloth.ts'
import type { GroupAnswer, Searched } from './search-widths.ts'

/**
 * The rows of one bolt: each of its widths, the other bolts as chosen. Empty when it is not used; widths that a run ended by hand
 * never came to are left out.
 */
export function widthRows(
  book: LayoutBook,
  cloth: Cloth,
  { group, best, at }: GroupAnswer,
  drawn: readonly CutCloth[],
): readonly WidthRow[] {
  if (!isUsed(cloth, best)) return []
  return cloth.widths.flatMap((_, index): readonly WidthRow[] => {
    const isChosen = best.widths.get(cloth.name) === index
    const found = isChosen ? best : at(new Map([...best.widths, [cloth.name, index]]))
    return found ? [rowOf(book, cloth, group, index, found, isChosen ? drawn : null)] : []
  })
}

/** The row of the width that is chosen, alone. */
export function chosenRow(
  book: LayoutBook,
  cloth: Cloth,
  { group, best }: GroupAnswer,
  drawn: readonly CutCloth[],
): readonly WidthRow[] {
  return isUsed(cloth, best) ? [rowOf(book, cloth, group, best.widths.get(cloth.name)!, best, drawn)] : []
}

/** The rows of a plan that cannot be cut: as far as widths were tried. */
export function triedRows(book: LayoutBook, cloth: Cloth, { group, tried }: Searched): readonly WidthRow[] {
  return cloth.widths.flatMap((_, index) => {
    const found = tried.find((at) => at.widths.get(cloth.name) === index)
    return found ? [rowOf(book, cloth, group, index, found, null)] : []
  })
}

/** A row for a width that cannot serve, or for one that can; `drawn`: the cloths as shown, for the chosen one. */
function rowOf(
  book: LayoutBook,
  cloth: Cloth,
  group: Group,
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
  const cut = (drawn ?? cutCloths(book.order, cuttingOf(book.order, [found])).map((c) => c.cloth)).filter(
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
    seams: best.options.flat().reduce((sum, { way }) => sum + seamsOfCloth(cloth.name, way), 0),
    status,
    why: null,
    enoughFrom: enoughFrom(book, cloth, group, index, found, length(buy?.length ?? 0)),
    layout,
  }
}

const isUsed = (cloth: Cloth, at: AtWidths): boolean =>
  at.settings.some((setting, s) => setting.cloth.name === cloth.name && at.answer.best?.shares[s]?.spreads.length)
