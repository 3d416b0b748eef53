import type { CutCloth, Result } from '@lengthwise/planner'
import { box } from '../box.ts'
import type { Drawing } from '../cloth/draw.ts'
import { drawStretch } from '../cloth/draw.ts'
import { clothName, tableSize } from '../cloth/names.ts'
import { rulerWidth } from '../cloth/ruler.ts'
import type { Style } from '../cloth/style.ts'
import { OVERRUN, PITCH, WEIGHTS } from '../cloth/style.ts'
import type { Stretch } from '../cloth/view.ts'
import { stretches } from '../cloth/view.ts'
import { altOf } from '../figure.ts'
import { text } from '../ink.ts'
import type { Measure } from '../measure.ts'
import type { Mark } from '../scene.ts'
import { textWidth, wrap } from '../text.ts'
import { clothProof, wasteWords } from '../words/answer.ts'
import { capital } from '../words/hands.ts'
import { keyMarks, keyRows } from './key.ts'
import type { Leaf } from './leaf.ts'
import { checkLine, FRAME, leaf } from './leaf.ts'

/** Paper is this many times smaller than cloth: the ratios of ISO 5455 that suit bedding. */
type Scale = 10 | 20 | 50

// the drawing zone of the frame
const TOP = 33
const ZONE = 206
/** how far tears run out at the right where two columns leave little room */
const LEAST_OVERRUN = 1.5

/** The cutting map of one cloth: as many pages as it takes at a scale from which one can read. */
export function mapLeaves(result: Result, cloth: CutCloth, measure: Measure, style: Style): readonly Leaf[] {
  const wide = rulerWidth(cloth, measure, style)
  const scale = scaleFor(cloth, wide)
  const perUnit = 1 / (320 * scale)
  const clothWide = cloth.width * perUnit
  if (wide + clothWide + LEAST_OVERRUN <= FRAME.width / 2 && cloth.length * perUnit > ZONE - 40) {
    const two = twoColumns(result, cloth, measure, style, scale, wide)
    if (two !== null) return two
  }
  return oneColumn(result, cloth, measure, style, scale, wide)
}

/** The largest scale at which the cloth's width fits; 1:10 only where the whole cloth is small. */
function scaleFor(cloth: CutCloth, ruler: number): Scale {
  const fits = (scale: Scale): boolean => ruler + cloth.width / (320 * scale) + OVERRUN <= FRAME.width
  if (fits(10) && cloth.length / 3200 <= ZONE - 45) return 10
  return fits(20) ? 20 : 50
}

function twoColumns(
  result: Result,
  cloth: CutCloth,
  measure: Measure,
  style: Style,
  scale: Scale,
  ruler: number,
): readonly Leaf[] | null {
  const perUnit = 1 / (320 * scale)
  const column = FRAME.width / 2
  const pastRight = Math.min(OVERRUN, column - ruler - cloth.width * perUnit)
  const found = stretches(cloth, Math.floor(ZONE / perUnit))
  if (found.length < 2) return null
  const leaves: Leaf[] = []
  for (let i = 0; i < found.length; i += 2) {
    const pair = found.slice(i, i + 2)
    const on = titled(result, cloth, measure, style, scale, fromWords(pair[0]!))
    const drawings: Drawing[] = []
    for (const [which, stretch] of pair.entries()) {
      const left = which * column + ruler
      const tall = (stretch.to - stretch.from) * perUnit
      const lastOfPage = which === 1 || pair.length === 1
      const below = TOP + tall + style.small * 2.2
      const drawing = drawStretch(cloth, {
        view: { stretch, left, top: TOP, perUnit, pastRight },
        measure,
        style,
        rulerLeft: which * column,
        rightLimit: left + cloth.width * perUnit + pastRight,
        margins:
          lastOfPage && below < TOP + ZONE - 30
            ? [box(which * column, below, column - 1, Math.min(30, TOP + ZONE - below))]
            : [],
        done: null,
        goesOn: goesOn(stretch, which === 0 ? 'at the right' : 'on the next page'),
      })
      if (drawing.homeless.length > 0) return null
      drawings.push(drawing)
    }
    const last = pair.at(-1)!
    const x = pair.length === 2 ? column + 4 : column + 4
    const lowest = pair.length === 2 ? lowestOf(drawings[1]!, TOP + (last.to - last.from) * perUnit) : TOP
    const rows = keyRows(cloth, result, drawings, measure)
    const key = keyMarks(rows, x, lowest + 7, FRAME.width - x, style, 1)
    const fits = lowest + 7 + key.height + 14 < 236
    if (!fits) return null
    addFigure(on, result, cloth, measure, drawings, [
      ...key.marks,
      ...scaleBar(x, lowest + 7 + key.height + 4, scale, measure, style),
    ])
    on.parts.push(checkLine())
    leaves.push(on)
  }
  return leaves
}

function oneColumn(
  result: Result,
  cloth: CutCloth,
  measure: Measure,
  style: Style,
  scale: Scale,
  ruler: number,
): readonly Leaf[] {
  const perUnit = 1 / (320 * scale)
  const clothRight = ruler + cloth.width * perUnit
  const beside = FRAME.width - clothRight - OVERRUN - 2
  const keyBeside = beside >= 62
  const foot = keyBeside ? 10 : 10 + 4 * style.small * 2.1
  const longest = Math.floor((ZONE - foot) / perUnit)
  return stretches(cloth, longest).map((stretch) => {
    const on = titled(result, cloth, measure, style, scale, fromWords(stretch))
    const bottom = TOP + (stretch.to - stretch.from) * perUnit
    const marginLeft = clothRight + OVERRUN + 12.5
    const noteTop = TOP
    const notes = remarks(cloth, stretch, measure)
    const margins = [
      box(marginLeft, noteTop, FRAME.width - marginLeft, bottom - noteTop),
      box(0, bottom + style.small * 2.2, FRAME.width, Math.max(0, TOP + ZONE - foot - bottom - style.small * 2.2)),
    ].filter((each) => each.width > 12 && each.height > 5)
    const drawing = drawStretch(cloth, {
      view: { stretch, left: ruler, top: TOP, perUnit },
      measure,
      style,
      rulerLeft: 0,
      rightLimit: Math.min(clothRight + OVERRUN + 11, FRAME.width),
      margins,
      done: null,
      goesOn: goesOn(stretch, 'on the next page'),
    })
    const extra: Mark[] = []
    const rows = keyRows(cloth, result, [drawing], measure)
    let keyBottom = 0
    if (keyBeside) {
      // remarks at the height where they apply, the key below them, clear of names of small pieces
      const width = FRAME.width - marginLeft
      const placed = notesBeside(notes, marginLeft, width, TOP, bottom, style, drawing, perUnit, stretch)
      extra.push(...placed.marks)
      const key = keyMarks(rows, marginLeft, 0, width, style, 1)
      const y = Math.max(placed.bottom + 4, Math.min(TOP + ZONE - key.height - 16, bottom - key.height))
      if (y + key.height <= 233) extra.push(...keyMarks(rows, marginLeft, y, width, style, 1).marks)
      else extra.push(...keyMarks(rows, 0, lowestOf(drawing, bottom) + 6, Math.min(FRAME.width, 150), style, 2).marks)
    } else {
      const top = Math.min(Math.max(lowestOf(drawing, bottom) + 6, 0), 232 - 4 * style.small * 2.1)
      const key = keyMarks(rows, 0, top, FRAME.width, style, 2)
      extra.push(...key.marks)
      keyBottom = top + key.height
    }
    extra.push(...scaleBar(0, Math.max(238, keyBottom), scale, measure, style))
    addFigure(on, result, cloth, measure, [drawing], extra)
    on.parts.push(checkLine())
    return on
  })
}

function titled(result: Result, cloth: CutCloth, measure: Measure, style: Style, scale: Scale, first: string): Leaf {
  const width = cloth.buy === null ? '' : `, ${measure.full(cloth.buy.width)}`
  const name = `Cutting map: ${decapital(clothName(result, cloth))}${width}`
  const lies = `On the table ${tableSize(cloth, measure)}.`
  const laid = cloth.from === 'bolt' ? ` Laid ${measure.full(cloth.proof.length)}; ${clothProof(cloth, measure)}.` : ''
  const right = `SCALE 1:${scale}`
  return leaf(
    'map',
    first === '' ? name : `Cutting map: ${decapital(clothName(result, cloth))}, ${first}`,
    [`${lies}${laid}`, `${wasteWords(cloth)}. Cut to the numbers, not to the picture.`],
    { ...style, small: Math.min(style.small, 3.5) },
    right,
  )
}

const fromWords = (stretch: Stretch): string =>
  stretch.from === 0 ? '' : stretch.fromFlag ? `from ${stretch.fromFlag}` : 'goes on'

const decapital = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1)

const goesOn = (stretch: Stretch, where: string): string =>
  `Goes on ${where}${stretch.toFlag ? `, from ${stretch.toFlag}` : ''}`

function addFigure(
  on: Leaf,
  result: Result,
  cloth: CutCloth,
  measure: Measure,
  drawings: readonly Drawing[],
  extra: readonly Mark[],
): void {
  on.parts.push({
    role: 'figure',
    alt: altOf(result, cloth, measure),
    marks: [...drawings.flatMap((d) => d.marks), ...extra],
  })
}

const lowestOf = (drawing: Drawing, clothEnd: number): number =>
  Math.max(clothEnd, ...drawing.texts.map((each) => each.y + each.height))

/** A bar that shrinks with the picture when the paper was printed too small. */
function scaleBar(x: number, y: number, scale: Scale, measure: Measure, style: Style): readonly Mark[] {
  const inch = measure.unit === 'in'
  const steps = scale === 10 ? 2 : 4
  const each = inch ? (scale === 50 ? 20 : 10) : scale === 50 ? 50 : 25
  const long = (each * (inch ? 25.4 : 10)) / scale
  const small = Math.min(style.small, 3.5)
  const shown = measure.unit === 'mm' ? each * 10 : each
  const marks: Mark[] = []
  for (let i = 0; i < steps; i++)
    marks.push({
      kind: 'path',
      points: [
        [x + i * long, y - 1.9],
        [x + (i + 1) * long, y - 1.9],
        [x + (i + 1) * long, y],
        [x + i * long, y],
      ],
      closed: true,
      weight: WEIGHTS.thin,
      fill: i % 2 === 0 ? 'ink' : 'none',
    })
  const baseline = y + small * 1.5
  marks.push(text('0', x, baseline, small, 500))
  if (steps === 4) marks.push(text(`${2 * shown}`, x + 2 * long, baseline, small, 500, 'middle'))
  const last = `${steps * shown}`
  const end = x + steps * long - textWidth(last, small, 500) / 2
  marks.push(text(`${last} ${measure.unit} of cloth`, end, baseline, small, 500))
  return marks
}

interface Note {
  readonly at: number
  readonly words: string
}

// remarks that belong to a place on the cloth
function remarks(cloth: CutCloth, stretch: Stretch, measure: Measure): readonly Note[] {
  const notes: Note[] = []
  for (const r of cloth.remnants)
    if (r.y < stretch.to && r.y + r.length > stretch.from && r.wouldMake.length > 0)
      notes.push({
        at: Math.max(r.y, stretch.from),
        words: `${r.name} would make: ${r.wouldMake.slice(0, 2).join('; ')}`,
      })
  for (const d of cloth.divisions) {
    const at = d.runs === 'across' ? d.at : d.to
    if (at < stretch.from || at > stretch.to) continue
    if (d.how === 'shears-through-hem-then-tear')
      notes.push({
        at: at - 20 * 3200,
        words: `At ${d.flag} go through the hem with shears, then tear. Along a hem never tear.`,
      })
  }
  void measure
  return notes.sort((a, b) => a.at - b.at)
}

function notesBeside(
  notes: readonly Note[],
  x: number,
  width: number,
  top: number,
  bottom: number,
  style: Style,
  drawing: Drawing,
  perUnit: number,
  stretch: Stretch,
): { readonly marks: readonly Mark[]; readonly bottom: number } {
  const pitch = style.small * PITCH
  const marks: Mark[] = []
  const beside = drawing.texts.filter((each) => each.x + each.width > x - 2)
  let y = top
  for (const note of notes) {
    const lines = wrap(capital(note.words), width, style.small, 500)
    y = Math.max(y, top + (note.at - stretch.from) * perUnit)
    const blocked = (): boolean =>
      beside.some((each) => each.y < y + lines.length * pitch + 2 && each.y + each.height + 2 > y)
    while (blocked()) y += 2
    if (y + lines.length * pitch > 228) break
    lines.forEach((words, i) => {
      marks.push(text(words, x, y + style.small * 1.14 + i * pitch, style.small, 500))
    })
    y += (lines.length + 0.7) * pitch
  }
  void bottom
  return {
    marks,
    bottom: Math.max(y, ...beside.filter((each) => each.x + each.width > x + 2).map((each) => each.y + each.height)),
  }
}
