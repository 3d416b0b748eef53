import { LETTERS } from './letters.ts'
import type { Weight } from './scene.ts'

/** Type size (em, any unit) whose capitals are `capital` high. */
export const typeSize = (capital: number, weight: Weight): number => (capital * 1000) / LETTERS[weight].capital

/** Width of a line of text with capitals `capital` high, in the unit of `capital`; kerning is counted, ligatures are not used. */
export function textWidth(text: string, capital: number, weight: Weight): number {
  return (thousandthsOf(text, weight) * typeSize(capital, weight)) / 1000
}

// a drawing asks for the same words again and again
const measured: Readonly<Record<Weight, Map<string, number>>> = { 500: new Map(), 700: new Map() }
const MOST_MEASURED = 4000

function thousandthsOf(text: string, weight: Weight): number {
  const known = measured[weight].get(text)
  if (known !== undefined) return known
  const face = FACES[weight]
  let thousandths = 0
  let left = ''
  for (const letter of printable(text)) {
    thousandths += face.advances.get(letter.codePointAt(0)!) ?? 0
    const base = baseLetter(letter)
    if (left !== '') thousandths += face.kerning.get(left + base) ?? 0
    left = base
  }
  if (measured[weight].size >= MOST_MEASURED) measured[weight].clear()
  measured[weight].set(text, thousandths)
  return thousandths
}

/** The text itself, or as much of it as fits into `width` with an ellipsis. */
export function fit(text: string, width: number, capital: number, weight: Weight): string {
  if (textWidth(text, capital, weight) <= width) return text
  const letters = [...text]
  while (letters.length > 1) {
    letters.pop()
    const cut = `${letters.join('').trimEnd()}…`
    if (textWidth(cut, capital, weight) <= width) return cut
  }
  return '…'
}

/** Lines no wider than `width`, broken at spaces (never at no-break spaces); a word too long by itself is cut short. */
export function wrap(text: string, width: number, capital: number, weight: Weight): readonly string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`
    if (line === '' || textWidth(longer, capital, weight) <= width) line = longer
    else {
      lines.push(line)
      line = word
    }
  }
  lines.push(line)
  return lines.map((each) => fit(each, width, capital, weight))
}

/** User text made safe for one line: no control, bidirectional or zero-width characters, spaces run together. */
export function oneLine(text: string): string {
  return text.replace(HIDDEN, ' ').replace(/\s+/g, ' ').trim()
}

/** Sizes and measures that a line does not break: no-break spaces round × and before units. */
export const unbroken = (words: string): string =>
  words.replace(/ × /g, '\u00a0×\u00a0').replace(/(\d) (cm|mm|m|in|yd|%)(?![\w])/g, '$1\u00a0$2')

/** The text with a box in place of each letter that the typeface lacks, as it is printed. */
export function printable(text: string): string {
  let shown = ''
  for (const letter of text) shown += FACES[500].advances.has(letter.codePointAt(0)!) ? letter : NO_LETTER
  return shown
}

/** True when the typeface has every letter of the text. */
export const hasAllLetters = (text: string): boolean => printable(text) === text

const NO_LETTER = '□'

const HIDDEN = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Co}\p{Cs}]+/gu

const baseLetter = (letter: string): string => (letter < '\u007f' ? letter : letter.normalize('NFD').charAt(0))

interface Face {
  readonly advances: ReadonlyMap<number, number>
  readonly kerning: ReadonlyMap<string, number>
}

const FACES: Readonly<Record<Weight, Face>> = faces()

function faces(): Readonly<Record<Weight, Face>> {
  const medium = new Map<number, number>()
  for (const run of LETTERS[500].advances.split(';')) {
    const [first, ...widths] = run.split(',')
    widths.forEach((width, i) => {
      medium.set(Number.parseInt(first!, 36) + i, Number(width))
    })
  }
  const wider = LETTERS[700].wider.split(',')
  const bold = new Map([...medium].map(([point, width], i) => [point, width + Number(wider[i])] as const))
  return {
    500: { advances: medium, kerning: kerned(LETTERS[500].kerning) },
    700: { advances: bold, kerning: kerned(LETTERS[700].kerning) },
  }
}

function kerned(rows: string): ReadonlyMap<string, number> {
  const kerning = new Map<string, number>()
  for (const row of rows.split('\n')) {
    const [lefts, ...pairs] = row.split('\t')
    for (const pair of pairs) for (const left of lefts!) kerning.set(left + pair.charAt(0), Number(pair.slice(1)))
  }
  return kerning
}
