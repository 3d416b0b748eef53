import type { Result, WidthRow } from '@lengthwise/planner'
import type { Length } from '@lengthwise/units'
import { printMoney, printPercent } from '@lengthwise/units'
import { clothTitle } from '../cloth/names.ts'
import type { Measure, Unit } from '../measure.ts'
import { measureIn } from '../measure.ts'
import { oneLine } from '../text.ts'
import { notionWords } from './answer.ts'
import { bestFirst } from './widths.ts'

/** The note for the shop: plain text of at most 40 columns, to be read on a phone. */
export function shopNote(result: Result, unit?: Unit): string {
  const measure = measureIn(unit ?? result.order.measureIn)
  const lines: string[] = [...columns(`Cloth for: ${oneLine(result.order.title)}`)]
  if (result.status === 'cannot-be-cut') {
    for (const each of result.missing) lines.push(...columns(each.words))
    return finished(lines)
  }
  const names = [...new Set(result.widths.map((row) => row.cloth))]
  for (const name of names) lines.push('', ...clothLines(result, name, measure))
  if (names.length === 0) lines.push('', ...columns('No cloth to buy: what is there will do.'))
  const rest = result.buy.filter((row) => row.what !== 'cloth')
  if (rest.length > 0) {
    lines.push('', 'Also')
    for (const row of rest) lines.push(...columns(`- ${notionWords(row, measure)}`))
  }
  return finished(lines)
}

function clothLines(result: Result, name: string, measure: Measure): readonly string[] {
  const rows = result.widths.filter((row) => row.cloth === name)
  const bought = result.cloths.find((each) => each.name === name && each.buy !== null)
  const cloth = bought?.cloth ?? result.order.cloths.find((each) => each.name === name)
  const priced = rows.some((row) => row.cost !== null)
  const head = priced ? 'Cost' : 'Waste'
  const lines = [...columns(clothTitle(name)), `${'Width'.padEnd(12)}${'Buy'.padEnd(11)}${head}`]
  for (const row of bestFirst(rows, result)) lines.push(...rowLines(row, measure, priced))
  const chosen = rows.find((row) => row.chosen)
  if (chosen?.enoughFrom != null && chosen.enoughFrom < chosen.width)
    lines.push(...columns(`Other width? ${measure.atLeast(chosen.enoughFrom)} or more is enough.`))
  if (cloth !== undefined) {
    const way = { plain: 'plain cloth', 'two-way': 'looks the same upside down', 'one-way': 'has a top' }[
      cloth.print.way
    ]
    lines.push(...columns(`Print: ${way}.`))
    const repeat = cloth.print.repeat > 0 ? `Repeat: ${measure.full(cloth.print.repeat)}. ` : ''
    const { along, across } = cloth.shrinks
    const shrink =
      along > 0 || across > 0 ? `Shrinks: ${printPercent(along)} along, ${printPercent(across)} across.` : ''
    if (repeat + shrink !== '') lines.push(...columns(`${repeat}${shrink}`.trim()))
  }
  lines.push(...columns('Look for: width between the selvedges, one length, no join, one dye lot.'))
  return lines
}

function rowLines(row: WidthRow, measure: Measure, priced: boolean): readonly string[] {
  const width = measure.sold(row.width).padEnd(12)
  if (!row.possible || row.buyLength === null) return [`${width}no`, ...columns(row.why === null ? '' : `  ${row.why}`)]
  const last = priced
    ? row.cost === null
      ? 'no price'
      : printMoney(row.cost)
    : `${Math.round(row.notUsedPercent ?? 0)} %`
  return columns(`${width}${measure.bought(row.buyLength as Length).padEnd(11)}${last}${row.chosen ? ' <- best' : ''}`)
}

/** Lines of at most 40 columns, broken at spaces, and inside a word only where it is longer than a line. */
function columns(words: string): readonly string[] {
  if ([...words].length <= WIDE) return words === '' ? [] : [words]
  const letters = [...words]
  const space = letters.slice(0, WIDE + 1).lastIndexOf(' ')
  const at = space > WIDE / 3 ? space : WIDE
  return [letters.slice(0, at).join(''), ...columns(letters.slice(at).join('').trimStart())]
}

const WIDE = 40

const finished = (lines: readonly string[]): string =>
  `${lines.map((each) => each.replace(/\u00a0/g, ' ').trimEnd()).join('\n')}\n`
