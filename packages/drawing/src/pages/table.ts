import { box } from '../box.ts'
import type { Style } from '../cloth/style.ts'
import { WEIGHTS } from '../cloth/style.ts'
import { frameOf, line, text } from '../ink.ts'
import type { Mark, Part } from '../scene.ts'
import { fit, textWidth, wrap } from '../text.ts'
import type { Leaf } from './leaf.ts'
import { BOTTOM, FRAME } from './leaf.ts'

export interface Column {
  readonly head: string
  /** share of what the fixed columns leave; 0: as wide as its widest cell */
  readonly share: number
  readonly right?: boolean
}

/** A cell's text; `ticks`, in the last column, draws a box to tick before each label, below the row where there are many. */
export type Cell = string | { readonly ticks: readonly string[] } | { readonly bold: string }

/** Sets rows under a head, over as many leaves as it takes; `more` begins the next leaf. */
export function setTable(
  first: Leaf,
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  style: Style,
  more: () => Leaf,
): void {
  const { small } = style
  const pitch = small * 1.85
  const gap = small < 4 ? 3.4 : 3
  const side = small * 1.1
  // from one box to tick to the next: as wide as the widest label of the table needs
  const between = small * 0.6
  const tickStep =
    side +
    small * 0.4 +
    between +
    Math.max(
      0,
      ...rows
        .flat()
        .flatMap(ticksOf)
        .map((label) => textWidth(label, small, 700)),
    )
  const widest = columns.map((column, c) =>
    Math.max(
      textWidth(column.head, small, 700),
      ...rows.map((row) => Math.min(ticksOf(row[c]).length, 2) * tickStep),
      ...rows.flatMap((row) => ([500, 700] as const).map((weight) => textWidth(wordsOf(row[c]), small, weight))),
    ),
  )
  const words = columns.map((column, c) =>
    Math.max(
      ...rows.map((row) => Math.min(ticksOf(row[c]).length, 1) * tickStep),
      ...[{ bold: column.head }, ...rows.map((row) => row[c])].flatMap((cell) =>
        wordsOf(cell)
          .split(' ')
          .map((word) => textWidth(word, small, 700)),
      ),
    ),
  )
  const fixed = columns.reduce((sum, column, c) => sum + (column.share === 0 ? widest[c]! : 0), 0)
  const rest = FRAME.width - fixed - gap * (columns.length - 1)
  const widths = shared(columns, words, widest, rest)
  const lineStep = small * 1.45
  const tickLine = small * 1.65
  // boxes that have room in the last column, and in a line across the frame
  const inLast = widths.slice(0, -1).reduce((room, width) => room - width - gap, FRAME.width)
  const [beside, acrossAll] = [inLast, FRAME.width].map((room) =>
    Math.max(1, Math.floor((room + between) / tickStep)),
  ) as [number, number]
  let on = first
  let left = rows
  do {
    let room = BOTTOM - on.y - pitch
    let fitting = 0
    for (const row of left) {
      room -= tallOf(row)
      if (room < 0) break
      fitting += 1
    }
    const shown = Math.max(1, fitting)
    on.parts.push(part(left.slice(0, shown)))
    left = left.slice(shown)
    if (left.length > 0) on = more()
  } while (left.length > 0)

  function part(shown: readonly (readonly Cell[])[]): Part {
    const rules: Mark[] = []
    const ruled = (weight: number): void => {
      rules.push(line([0, on.y + small * 0.55, FRAME.width, on.y + small * 0.55], weight))
    }
    const head = cellsOf(
      columns.map((column) => ({ bold: column.head })),
      true,
    )
    ruled(WEIGHTS.raw)
    const body = shown.map((row) => {
      const cells = cellsOf(row, false)
      on.y += tallOf(row) - pitch
      ruled(WEIGHTS.thin)
      return cells
    })
    on.y += small
    return { role: 'table', marks: rules, rows: [head, ...body].map((cells) => ({ cells })) }
  }

  function cellsOf(
    row: readonly Cell[],
    header: boolean,
  ): readonly { readonly header: boolean; readonly marks: readonly Mark[] }[] {
    on.y += pitch
    let x = 0
    return row.map((cell, c) => {
      const width = widths[c]!
      const right = columns[c]!.right === true
      const weight = typeof cell !== 'string' ? 700 : 500
      const at = right ? x + width : x
      x += width + gap
      if (typeof cell !== 'string' && 'ticks' in cell) return { header, marks: ticked(cell.ticks, at, wordLines(row)) }
      const lines = cellLines(cell, c).filter((words) => words !== '')
      const marks = lines.map((words, i) =>
        text(words, at, on.y + i * lineStep, small, weight, right ? 'end' : 'start'),
      )
      return { header, marks }
    })
  }

  function ticked(labels: readonly string[], column: number, down: number): readonly Mark[] {
    const below = labels.length > beside
    const across = below ? acrossAll : beside
    return labels.flatMap((label, i) => {
      const left = (below ? 0 : column) + (i % across) * tickStep
      const baseline = on.y + (below ? down * lineStep + 0.3 * small + Math.floor(i / across) * tickLine : 0)
      return [
        frameOf(box(left, baseline - small, side, side), WEIGHTS.raw),
        text(label, left + side + small * 0.4, baseline, small, 700),
      ]
    })
  }

  // three lines at most, the last cut short
  function cellLines(cell: Cell, c: number): readonly string[] {
    const weight = typeof cell !== 'string' ? 700 : 500
    const width = widths[c]! + 0.01
    const lines = wrap(wordsOf(cell), width, small, weight)
    return lines.length <= 3 ? lines : [...lines.slice(0, 2), fit(lines.slice(2).join(' '), width, small, weight)]
  }

  function wordLines(row: readonly Cell[]): number {
    return Math.max(...row.map((cell, c) => cellLines(cell, c).length))
  }

  function tallOf(row: readonly Cell[]): number {
    const ticks = ticksOf(row.at(-1)).length
    const below = ticks > beside ? Math.ceil(ticks / acrossAll) * tickLine + 0.15 * small : 0
    return pitch + (wordLines(row) - 1) * lineStep + below
  }
}

const wordsOf = (cell: Cell = ''): string => (typeof cell === 'string' ? cell : 'bold' in cell ? cell.bold : '')
const ticksOf = (cell: Cell = ''): readonly string[] => (typeof cell !== 'string' && 'ticks' in cell ? cell.ticks : [])

// every column as wide as its longest word, and what is left shared out up to the widest cell; without room for that, by share alone
function shared(
  columns: readonly Column[],
  words: readonly number[],
  widest: readonly number[],
  rest: number,
): readonly number[] {
  const open = new Set([...columns.keys()].filter((c) => columns[c]!.share > 0))
  const least = [...open].reduce((sum, c) => sum + words[c]!, 0)
  const from = least <= rest ? words : columns.map(() => 0)
  const widths = columns.map((column, c) => (column.share > 0 ? from[c]! : widest[c]!))
  let room = rest - (least <= rest ? least : 0)
  while (open.size > 0) {
    const shares = [...open].reduce((sum, c) => sum + columns[c]!.share, 0)
    const given = (c: number): number => widths[c]! + (room * columns[c]!.share) / shares
    const full = [...open].filter((c) => widest[c]! <= given(c))
    if (full.length === 0) for (const c of open) widths[c] = given(c)
    if (full.length === 0) return widths
    for (const c of full) {
      open.delete(c)
      room -= widest[c]! - widths[c]!
      widths[c] = widest[c]!
    }
  }
  return widths
}
