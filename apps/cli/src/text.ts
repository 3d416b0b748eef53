import { answerInWords, clothTitle, measureIn, orderInWords } from '@lengthwise/drawing'
import type { Result } from '@lengthwise/planner'
import type { Length } from '@lengthwise/units'
import { printLength, printMoney } from '@lengthwise/units'
import { table } from './table.ts'

export type Unit = 'cm' | 'mm' | 'in'

/** What `lay` prints: a short page a sewist can read; what to buy first, then widths, then the order of cutting. */
export function layoutPage(result: Result, unit: Unit, bold: (text: string) => string): string {
  const answer = answerInWords(result, unit)
  const lines = [
    bold(result.order.title),
    '',
    ...answer.buy.map(bold),
    answer.proof,
    answer.waste,
    ...heading('Cloth widths', widthsLines(result, unit)),
    ...heading('Pieces', piecesLines(result, unit)),
    ...result.cloths.flatMap((cloth) => [
      '',
      bold(
        `Tear and cut in this order: ${clothTitle(cloth.name)}${cloth.buy === null && cloth.cloth.count > 1 ? ` ${cloth.piece}` : ''}`,
      ),
      ...orderInWords(result, cloth, unit).map(
        (line) => `  ${line.flag.padEnd(4)} ${line.todo.join('')}. ${line.gives}.`,
      ),
    ]),
    ...heading('Remnants worth keeping', remnantLines(result, unit)),
    ...heading(
      'Cautions',
      result.cautions.map((c) => `  ${c.text}`),
    ),
    ...heading(
      'Good to know',
      result.goodToKnow.map((r) => `  ${r.text}`),
    ),
  ]
  return `${lines.join('\n')}\n`

  function heading(title: string, body: readonly string[]): readonly string[] {
    return body.length === 0 ? [] : ['', bold(title), ...body]
  }
}

/** The table of widths, also the whole output of `widths`. */
export function widthsLines(result: Result, unit: Unit): readonly string[] {
  if (result.widths.length === 0) return []
  const several = new Set(result.widths.map((row) => row.cloth)).size > 1
  return table(
    [...(several ? ['Cloth'] : []), 'Width', 'Buy', 'Cost', 'Not used', 'Keep', 'Seams', ''],
    result.widths.map((row) => [
      ...(several ? [clothTitle(row.cloth)] : []),
      spaced(measureIn(unit).sold(row.width)),
      row.buyLength === null ? '-' : bought(row.buyLength, unit),
      row.cost === null ? '-' : printMoney(row.cost, result.order.currency),
      row.notUsedPercent === null ? '-' : `${Math.round(row.notUsedPercent)} %`,
      row.keepPercent === null ? '-' : `${Math.round(row.keepPercent)} %`,
      row.seams === null ? '-' : String(row.seams),
      [
        row.chosen ? 'chosen' : '',
        row.why ?? '',
        row.enoughFrom === null || row.enoughFrom === row.width
          ? ''
          : `${atLeast(row.enoughFrom, unit)} or more is enough`,
      ]
        .filter((text) => text !== '')
        .join('; '),
    ]),
    several ? [false, true, true, true, true, true, true, false] : [true, true, true, true, true, true, false],
  )
}

const piecesLines = (result: Result, unit: Unit): readonly string[] =>
  table(
    ['No.', 'Piece', 'Width', 'Length', 'From'],
    result.pieces.map((piece) => [
      piece.label,
      `${piece.words} (${piece.item})`,
      printLength(piece.cutWidth, unit),
      printLength(piece.cutLength, unit),
      clothTitle(piece.cloth),
    ]),
    [true, false, true, true, false],
  )

const remnantLines = (result: Result, unit: Unit): readonly string[] =>
  result.cloths.flatMap((cloth) =>
    cloth.remnants.map(
      (r) =>
        `  ${r.name}  ${size(r.width, unit)} × ${size(r.length, unit)}, ${clothTitle(cloth.name)}${r.wouldMake.length > 0 ? `; would make: ${r.wouldMake.join(', ')}` : ''}`,
    ),
  )

// the figures of the map and the note, with spaces a terminal can show
const size = (length: Length, unit: Unit): string => spaced(measureIn(unit).full(length))

const atLeast = (length: Length, unit: Unit): string => spaced(measureIn(unit).atLeast(length))

const bought = (length: Length, unit: Unit): string => spaced(measureIn(unit).bought(length))

const spaced = (text: string): string => text.replace(/\u00a0/g, ' ')
