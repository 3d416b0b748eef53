import type { CutCloth, Result } from '@lengthwise/planner'
import type { Length } from '@lengthwise/units'
import type { Box } from '../box.ts'
import { box, meetsAny } from '../box.ts'
import { clothName, tableSize } from '../cloth/names.ts'
import { squaredEnd } from '../cloth/ruler.ts'
import { drawSmall } from '../cloth/small.ts'
import type { Style } from '../cloth/style.ts'
import { WEIGHTS } from '../cloth/style.ts'
import { breaks, stretches } from '../cloth/view.ts'
import { altOf } from '../figure.ts'
import { line, text } from '../ink.ts'
import type { Measure } from '../measure.ts'
import type { Mark, Part } from '../scene.ts'
import { fit, textWidth } from '../text.ts'
import type { KeyRow } from './key.ts'
import { keyMarks, keyRows } from './key.ts'
import type { Leaf } from './leaf.ts'
import { checkLine, FRAME, leaf } from './leaf.ts'

const TOP = 40
const LOWEST = 232
/** name and size over a picture */
const HEAD = 13
// width and columns, the best first
const KEY_WIDTHS = [
  [140, 2],
  [128, 2],
  [74, 1],
  [112, 2],
  [106, 2],
  [60, 1],
  [100, 2],
  [48, 1],
] as const

/**
 * Every cloth from end to end at 1:50, with piece numbers and the running distance of each tear right across, and the key
 * of all maps where there is room for it.
 */
export function wholeLeaves(
  result: Result,
  measure: Measure,
  style: Style,
): { readonly leaves: readonly Leaf[]; readonly keyed: boolean } {
  const perUnit = 1 / (320 * 50)
  const small = Math.min(style.small, 3.5)
  const leaves: Leaf[] = []
  let on = begin()
  let filled: Box[] = []
  for (const cloth of result.cloths) {
    const ruler = rulerWide(cloth)
    for (const [i, stretch] of stretches(cloth, Math.floor((LOWEST - TOP) / perUnit)).entries()) {
      const name = i === 0 ? clothName(result, cloth) : `From ${stretch.fromFlag ?? 'before'}`
      const size = i === 0 ? tableSize(cloth, measure) : ''
      const drawn = ruler + cloth.width * perUnit
      const wide = Math.min(FRAME.width, Math.max(drawn, textWidth(name, small, 700), textWidth(size, small, 500)) + 1)
      const tall = (stretch.to - stretch.from) * perUnit + small * 1.2
      let at = freePlace(filled, wide, HEAD + tall, TOP - HEAD, LOWEST + small)
      if (at === null) {
        on = begin()
        filled = []
        at = { x: 0, y: TOP - HEAD }
      }
      filled.push(box(at.x, at.y, wide + 6, HEAD + tall + 4))
      const [x, top] = [at.x, at.y + HEAD]
      const left = x + ruler
      const picture = drawSmall(cloth, {
        stretch,
        left,
        top,
        perUnit,
        turned: false,
        capital: small,
        labels: 'numbers',
        by: 1,
      })
      const heads: Mark[] = [text(fit(name, wide, small, 700), x, top - 8, small, 700)]
      if (size !== '') heads.push(text(fit(size, wide, small, 500), x, top - 2.6, small, 500))
      on.parts.push({
        role: 'figure',
        alt: altOf(result, cloth, measure, stretch),
        marks: [...heads, ...picture.marks, ...numbers(cloth, stretch, left, top)],
      })
    }
  }
  const rows = allRows(result, measure)
  const place = KEY_WIDTHS.flatMap(([width, columns]) => {
    const { height } = keyMarks(rows, 0, 0, width, style, columns)
    const at = freePlace(filled, width, height, TOP - HEAD + 5, 237)
    return at === null ? [] : [{ ...at, width, columns }]
  })[0]
  if (place !== undefined) on.parts.push(keyFigure(rows, place.x, place.y, place.width, place.columns, style).part)
  return { leaves, keyed: place !== undefined }

  function begin(): Leaf {
    const title = leaves.length === 0 ? 'The whole cloth' : 'The whole cloth, goes on'
    const lead = 'The larger pieces by their numbers; what is hatched is not used.'
    const fresh = leaf('whole', title, [lead], { ...style, small }, 'SCALE 1:50')
    fresh.parts.push(checkLine())
    leaves.push(fresh)
    return fresh
  }

  function rulerWide(cloth: CutCloth): number {
    const all = breaks(cloth).map((d) => textWidth(measure.bare((d.at - squaredEnd(cloth)) as Length), small, 500))
    return Math.max(8, ...all) + 3
  }

  function numbers(cloth: CutCloth, stretch: { from: number; to: number }, left: number, top: number): readonly Mark[] {
    const marks: Mark[] = []
    let last = Number.NEGATIVE_INFINITY
    for (const d of [...breaks(cloth)].sort((a, b) => a.at - b.at)) {
      if (d.at < stretch.from || d.at > stretch.to) continue
      const y = top + (d.at - stretch.from) * perUnit
      if (Math.abs(y - last) < small * 1.5) continue
      last = y
      marks.push(line([left - 2, y, left - 0.6, y], WEIGHTS.thin))
      marks.push(text(measure.bare((d.at - squaredEnd(cloth)) as Length), left - 2.6, y + small / 2, small, 500, 'end'))
    }
    return marks
  }
}

/** These rows of the key by themselves, for maps that have no room for theirs. */
export function keyLeaf(wanted: ReadonlySet<string>, result: Result, measure: Measure, style: Style): Leaf {
  const on = leaf('pieces', 'How to read the maps', ['Each edge is drawn as what it is.'], style)
  const rows = allRows(result, measure).filter(({ words }) => wanted.has(words))
  const { part, height } = keyFigure(rows, 0, on.y + 2, FRAME.width, 2, style)
  on.parts.push(part)
  on.y += height + 6
  return on
}

/** Each row once, as the first cloth has it: its flags stand on a map, while those of a sheet cut like another do not. */
function allRows(result: Result, measure: Measure): readonly KeyRow[] {
  const rows = result.cloths.flatMap((cloth) => keyRows(cloth, 'all', measure))
  return rows.filter((row, i) => rows.findIndex(({ words }) => words === row.words) === i)
}

function keyFigure(
  rows: readonly KeyRow[],
  x: number,
  y: number,
  width: number,
  columns: 1 | 2,
  style: Style,
): { readonly part: Part; readonly height: number } {
  const { marks, height } = keyMarks(rows, x, y, width, style, columns)
  return { part: { role: 'figure', alt: `Key: ${rows.map((row) => row.words).join('; ')}.`, marks }, height }
}

/** The highest free place, then the farthest left, for something of this size below `from` and above `to`. */
function freePlace(
  filled: readonly Box[],
  wide: number,
  tall: number,
  from: number,
  to: number,
): { readonly x: number; readonly y: number } | null {
  const xs = [0, ...filled.map((each) => each.x + each.width), ...filled.map((each) => each.x)]
  const ys = [from, ...filled.map((each) => each.y + each.height).filter((y) => y > from)]
  const free = ys
    .flatMap((y) => xs.map((x) => box(x, y, wide, tall)))
    .filter((each) => each.x + wide <= FRAME.width && each.y + tall <= to && !meetsAny(each, filled))
  return free.sort((a, b) => a.y - b.y || a.x - b.x)[0] ?? null
}
