import type { CutCloth } from '@lengthwise/planner'
import type { Segment } from '../box.ts'
import { box } from '../box.ts'
import { arrowMarks } from '../cloth/arrow.ts'
import type { Drawing } from '../cloth/draw.ts'
import { scissors } from '../cloth/edges.ts'
import type { Sign } from '../cloth/pieces.ts'
import { spotSign } from '../cloth/pieces.ts'
import { flagHeight, flagWidth } from '../cloth/ruler.ts'
import type { Style } from '../cloth/style.ts'
import { DASHES, SELVEDGE_INSET, WEIGHTS } from '../cloth/style.ts'
import { signLine } from '../cloth/thin-lines.ts'
import { hatch } from '../hatch.ts'
import { frameOf, line, text } from '../ink.ts'
import type { Measure } from '../measure.ts'
import type { Mark } from '../scene.ts'
import { wrap } from '../text.ts'

/** One line of the key: a swatch drawn at (x, y) to the middle of the row, and what it means. */
export interface KeyRow {
  readonly words: string
  /** taller rows than usual, in rows */
  readonly tall?: number
  swatch(x: number, y: number, style: Style): readonly Mark[]
}

const SWATCH = 14

const SIGNS: readonly (readonly [Sign['kind'], string])[] = [
  ['fold', 'Fold'],
  ['seam', 'Stitching, no cut'],
  ['corner-square', 'Corner square'],
  ['zip-end', 'End of the zip'],
  ['tie', 'Tie'],
  ['button', 'Button or snap'],
]

/** Does this row tell a mark for the sewing? */
export const isSign = ({ words }: KeyRow): boolean => SIGNS.some(([, sign]) => sign === words)

/** The key lists only what is on the page. */
export function keyRows(cloth: CutCloth, drawings: readonly Drawing[] | 'all', measure: Measure): readonly KeyRow[] {
  const rows: KeyRow[] = []
  const kinds = new Set(Object.values(cloth.edges).map((edge) => edge.kind))
  const hatches = new Set(
    drawings === 'all' ? (['waste', 'remnant', 'trim'] as const) : drawings.flatMap((d) => [...d.hatches]),
  )
  if (kinds.has('hem')) rows.push({ words: 'Hem, kept', swatch: (x, y) => doubled(x, y, DASHES.stitching) })
  if (kinds.has('selvedge')) rows.push({ words: 'Selvedge', swatch: (x, y) => doubled(x, y) })
  const flags = new Set(drawings === 'all' ? [] : drawings.flatMap((d) => d.spots.map((spot) => spot.name)))
  const divisions = cloth.divisions.filter((d) => drawings === 'all' || flags.has(d.flag))
  const torn = divisions.find((d) => d.how === 'tear' || d.how === 'shears-through-hem-then-tear')
  if (torn)
    rows.push({
      words: 'Tear, in flag order',
      swatch: (x, y, style) => flagged(torn.flag, x, y, style, true),
    })
  const cut = divisions.find((d) => d.how === 'shears')
  if (cut) rows.push({ words: 'Cut with shears', swatch: (x, y, style) => flagged(cut.flag, x, y, style, false) })
  const drawn = divisions.find((d) => d.how === 'thread')
  if (drawn)
    rows.push({
      words: 'Draw a thread, cut along it',
      swatch: (x, y, style) => flagged(drawn.flag, x, y, style, false),
    })
  const names = { waste: 'Waste', remnant: 'Remnant, worth keeping', trim: 'Trim' } as const
  for (const kind of ['waste', 'remnant', 'trim'] as const)
    if (hatches.has(kind)) rows.push({ words: names[kind], swatch: (x, y) => hatched(kind, x, y) })
  const oneWay = cloth.cloth.print.way === 'one-way'
  rows.push({
    words: oneWay ? 'Toward the top of the print' : 'Grain; top at either end, or as named',
    ...(oneWay ? { tall: 1.7 } : {}),
    swatch: (x, y, style) =>
      oneWay
        ? arrowMarks(box(x + SWATCH / 2 - 4, y - 6, 8, 12), { level: false, heads: 'start' }, style)
        : arrowMarks(box(x + SWATCH / 2 - 1.2, y - 3.3, 2.4, 6.6), { level: false, heads: 'both' }, style),
  })
  if (cloth.repeat > 0)
    rows.push({
      words: 'Repeat of the print',
      swatch: (x, y) => [line([x, y, x + SWATCH, y], WEIGHTS.thin, DASHES.repeat)],
    })
  const signs = new Set(
    drawings === 'all'
      ? cloth.placed.flatMap((p) => p.marks.map((m) => m.kind))
      : drawings.flatMap((d) => [...d.signs]),
  )
  for (const [kind, words] of SIGNS) if (signs.has(kind)) rows.push({ words, swatch: (x, y) => signMarks(kind, x, y) })
  rows.push({
    words: `All sizes: across\u00a0×\u00a0along, in\u00a0${measure.unit === 'in' ? 'inches' : measure.unit}`,
    swatch: () => [],
  })
  return rows
}

/** The key in up to three columns. */
export function keyMarks(
  rows: readonly KeyRow[],
  x: number,
  y: number,
  width: number,
  style: Style,
  columns: 1 | 2 | 3,
): { readonly marks: readonly Mark[]; readonly height: number } {
  const small = Math.min(style.small, 3.5)
  const keyStyle: Style = { ...style, small }
  const pitch = small * 2.1
  const columnWidth = width / columns
  const perColumn = Math.ceil(rows.length / columns)
  const marks: Mark[] = []
  let tallest = 0
  for (let c = 0; c < columns; c++) {
    let at = y
    for (const row of rows.slice(c * perColumn, (c + 1) * perColumn)) {
      const left = x + c * columnWidth
      const middle = at + (pitch * (row.tall ?? 1)) / 2
      const swatch = row.swatch(left, middle, keyStyle)
      const textLeft = swatch.length === 0 ? left : left + SWATCH + 4
      const lines = wrap(row.words, columnWidth - (textLeft - left) - 2, small, 500)
      marks.push(...swatch)
      lines.forEach((words, i) => {
        marks.push(text(words, textLeft, middle + small / 2 + i * small * 1.5, small, 500))
      })
      at += pitch * (row.tall ?? 1) + (lines.length - 1) * small * 1.5
    }
    tallest = Math.max(tallest, at - y)
  }
  return { marks, height: tallest }
}

/** A line of its kind; a corner with its square; a place on a stretch of edge. */
function signMarks(kind: Sign['kind'], x: number, y: number): readonly Mark[] {
  if (kind === 'fold' || kind === 'seam') return signLine(kind, [x, y, x + SWATCH, y], 1)
  const [edge, top] = [line([x, y - 1.8, x + SWATCH, y - 1.8], WEIGHTS.tear), y - 1.8]
  const segments: readonly Segment[] =
    kind === 'corner-square'
      ? [
          [x, y + 1.8, x + 6, y + 1.8],
          [x + 6, top, x + 6, y + 1.8],
        ]
      : spotSign(kind, SWATCH / 2, 1.8, SWATCH, 20, 1).map(([x1, y1, x2, y2]) => [x + x1, top + y1, x + x2, top + y2])
  const side = kind === 'corner-square' ? [line([x, top, x, y + 2.6], WEIGHTS.tear)] : []
  return [edge, ...side, ...segments.flatMap((each) => signLine(kind, each, 1))]
}

const doubled = (x: number, y: number, dash?: readonly number[]): readonly Mark[] => [
  line([x, y - 0.6, x + SWATCH, y - 0.6], WEIGHTS.selvedge),
  line([x, y - 0.6 + SELVEDGE_INSET, x + SWATCH, y - 0.6 + SELVEDGE_INSET], WEIGHTS.thin, dash),
]

function flagged(flag: string, x: number, y: number, style: Style, tear: boolean): readonly Mark[] {
  const at = box(x, y - flagHeight(style) / 2 - 0.6, flagWidth(flag, style), flagHeight(style))
  const low = at.y + at.height
  return [
    frameOf(at, WEIGHTS.raw),
    text(flag, at.x + at.width / 2, at.y + at.height / 2 + style.small / 2, style.small, 700, 'middle'),
    line([x, low, x + SWATCH, low], tear ? WEIGHTS.tear : WEIGHTS.shears, tear ? DASHES.tear : undefined),
    ...(tear ? [] : scissors(x + SWATCH + 1, low, 'right', 0.8)),
  ]
}

function hatched(kind: 'waste' | 'remnant' | 'trim', x: number, y: number): readonly Mark[] {
  const at = box(x, y - 2.4, SWATCH, 4.8)
  // in the key the lattice starts at the swatch's own corner
  const moved = hatch(kind, box(0, 0, at.width, at.height), []).map((m) =>
    m.kind === 'lines'
      ? { ...m, segments: m.segments.map(([a, b, c, d]) => [a + at.x, b + at.y, c + at.x, d + at.y] as const) }
      : m,
  )
  return [frameOf(at, WEIGHTS.thin), ...moved]
}
