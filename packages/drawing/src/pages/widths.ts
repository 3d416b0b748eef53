import type { Result, WidthRow } from '@lengthwise/planner'
import type { Length } from '@lengthwise/units'
import { printMoney } from '@lengthwise/units'
import { clothTitle } from '../cloth/names.ts'
import { drawSmall } from '../cloth/small.ts'
import type { Style } from '../cloth/style.ts'
import { wholeStretch } from '../cloth/view.ts'
import { text } from '../ink.ts'
import type { Measure } from '../measure.ts'
import type { Mark } from '../scene.ts'
import { fit, oneLine, wrap } from '../text.ts'
import { capital } from '../words/hands.ts'
import { bestFirst, comparedWords } from '../words/widths.ts'
import type { Leaf } from './leaf.ts'
import { BOTTOM, FRAME, leaf } from './leaf.ts'
import type { Cell, Column } from './table.ts'
import { setTable } from './table.ts'

/** The widths of each bolt that comes in several, bolt by bolt: a table, then every layout at one scale from one left edge, so that length is seen. */
export function widthLeaves(result: Result, measure: Measure, style: Style): readonly (readonly Leaf[])[] {
  const names = [...new Set(result.widths.map((row) => row.cloth))]
  return names.flatMap((name) => {
    const rows = bestFirst(
      result.widths.filter((row) => row.cloth === name),
      result,
    )
    return rows.length > 1 ? [widthsOf(name, rows, measure, style, result)] : []
  })
}

function widthsOf(
  name: string,
  rows: readonly WidthRow[],
  measure: Measure,
  style: Style,
  result: Result,
): readonly Leaf[] {
  const small = Math.min(style.small, 3.5)
  const title = `Cloth widths: ${clothTitle(name)}`
  const chosen = rows.find((row) => row.chosen)
  const enough =
    chosen?.enoughFrom != null && chosen.enoughFrom < chosen.width
      ? `Other width? ${measure.atLeast(chosen.enoughFrom)} or more is enough for the same length. `
      : ''
  const leaves = [leaf('widths', title, [`${enough}Not used counts what is worth keeping too.`], { ...style, small })]
  const more = (): Leaf => {
    const next = leaf('widths', `${title}, goes on`, [], { ...style, small })
    leaves.push(next)
    return next
  }
  const priced = rows.some((row) => row.cost !== null)
  const columns: readonly Column[] = [
    { head: 'Width', share: 0 },
    { head: 'Buy', share: 0, right: true },
    ...(priced
      ? [{ head: `Cost${result.order.currency ? `, ${result.order.currency}` : ''}`, share: 0, right: true }]
      : []),
    { head: 'Area', share: 0, right: true },
    { head: 'Not used', share: 0, right: true },
    { head: 'Keep', share: 0, right: true },
    { head: 'Seams', share: 0, right: true },
    { head: 'Result', share: 1 },
  ]
  setTable(
    leaves[0]!,
    columns,
    rows.map((row) => cells(row, chosen, priced, result, measure)),
    { ...style, small },
    more,
  )
  let on = leaves.at(-1)!
  // why a width cannot serve, in full, since the table has no room for it
  for (const row of rows) {
    if (row.possible || row.why === null) continue
    const lines = wrap(`${measure.sold(row.width)}: ${oneLine(row.why)}`, FRAME.width, small, 500)
    if (on.y + lines.length * small * 1.55 > BOTTOM) on = more()
    on.y += small * 0.6
    for (const words of lines) {
      on.y += small * 1.55
      on.parts.push({ role: 'paragraph', marks: [text(words, 0, on.y, small, 500)] })
    }
  }
  on.y += small * 1.9
  const layouts = rows.flatMap((row) => (row.layout === null ? [] : [{ row, cloth: row.layout }]))
  const longest = Math.max(...layouts.map(({ cloth }) => cloth.length), 1)
  const scale = [50, 100, 200, 500].find((each) => longest / (320 * each) <= FRAME.width - 2) ?? 1000
  const perUnit = 1 / (320 * scale)
  for (const { row, cloth } of layouts) {
    const tall = cloth.width * perUnit
    if (on.y + tall + small * 2.4 > BOTTOM) {
      on = more()
      on.y += small * 1.5
    }
    const cost = row.cost === null ? '' : `, ${printMoney(row.cost, result.order.currency, { noBreak: true })}`
    const caption = fit(
      `${measure.sold(row.width)}: ${measure.bought(row.buyLength ?? (0 as Length))}${cost}`,
      FRAME.width,
      small,
      row.chosen ? 700 : 500,
    )
    const marks: Mark[] = [text(caption, 0, on.y, small, row.chosen ? 700 : 500)]
    const drawn = drawSmall(cloth, {
      stretch: wholeStretch(cloth),
      left: 0.4,
      top: on.y + small * 0.8,
      perUnit,
      turned: true,
      capital: small,
      // the numbers of other layouts are not those of the map
      labels: row.chosen ? 'names' : 'names or nothing',
      by: 1,
    })
    on.parts.push({
      role: 'figure',
      alt: `${caption}; ${cloth.placed.length} pieces`,
      marks: [...marks, ...drawn.marks],
    })
    on.y += tall + small * 2.5
  }
  if (layouts.length > 0 && on.y < BOTTOM) {
    on.parts.push({
      role: 'paragraph',
      marks: [
        text(`All at one scale, 1:${scale}, as they lie on the table; the cut end at the left.`, 0, on.y, small, 500),
      ],
    })
    on.y += small * 2
  }
  return leaves
}

function cells(
  row: WidthRow,
  chosen: WidthRow | undefined,
  priced: boolean,
  result: Result,
  measure: Measure,
): readonly Cell[] {
  const dash = '–'
  const values = [
    row.buyLength === null ? dash : measure.bought(row.buyLength),
    ...(priced ? [row.cost === null ? dash : printMoney(row.cost)] : []),
    row.area === null ? dash : measure.area(row.area),
    row.notUsedPercent === null ? dash : `${Math.round(row.notUsedPercent)}\u00a0%`,
    row.keepPercent === null ? dash : `${Math.round(row.keepPercent)}\u00a0%`,
    row.seams === null ? dash : `${row.seams}`,
    capital(comparedWords(row, chosen, result, measure)),
  ]
  const width = measure.sold(row.width)
  return row.chosen ? [width, ...values].map((value) => ({ bold: value })) : [{ bold: width }, ...values]
}
