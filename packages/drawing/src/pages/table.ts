import { box } from '../box.ts'
import type { Style } from '../cloth/style.ts'
import { WEIGHTS } from '../cloth/style.ts'
import { frameOf, line, text } from '../ink.ts'
import type { Mark, Part } from '../scene.ts'
import { fit, textWidth } from '../text.ts'
import type { Leaf } from './leaf.ts'
import { BOTTOM, FRAME } from './leaf.ts'

export interface Column {
  readonly head: string
  /** share of what the fixed columns leave; 0: as wide as its widest cell */
  readonly share: number
  readonly right?: boolean
}

/** A cell's text; 'tick' draws a box to tick. */
export type Cell = string | { readonly tick: true } | { readonly bold: string }

/** Sets rows under a head, over as many leaves as it takes; `more` begins the next leaf. */
export function setTable(
  first: Leaf,
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  style: Style,
  more: () => Leaf,
): void {
  const { small } = style
  const pitch = small * 2
  const gap = 4
  const wordsOf = (cell: Cell): string => (typeof cell === 'string' ? cell : 'bold' in cell ? cell.bold : '')
  const widest = columns.map((column, c) =>
    Math.max(
      textWidth(column.head, small, 700),
      ...rows.flatMap((row) => ([500, 700] as const).map((weight) => textWidth(wordsOf(row[c] ?? ''), small, weight))),
    ),
  )
  const fixed = columns.reduce((sum, column, c) => sum + (column.share === 0 ? widest[c]! : 0), 0)
  const rest = FRAME.width - fixed - gap * (columns.length - 1)
  const widths = shared(columns, widest, rest)
  let on = first
  let left = rows
  do {
    const room = Math.max(1, Math.floor((BOTTOM - on.y) / pitch) - 1)
    on.parts.push(part(left.slice(0, room)))
    left = left.slice(room)
    if (left.length > 0) on = more()
  } while (left.length > 0)

  function part(shown: readonly (readonly Cell[])[]): Part {
    const rules: Mark[] = []
    const head = cellsOf(
      columns.map((column) => ({ bold: column.head })),
      true,
    )
    rules.push(line([0, on.y + small * 0.55, FRAME.width, on.y + small * 0.55], WEIGHTS.raw))
    const body = shown.map((row) => {
      const cells = cellsOf(row, false)
      rules.push(line([0, on.y + small * 0.55, FRAME.width, on.y + small * 0.55], WEIGHTS.thin))
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
      if (typeof cell !== 'string' && 'tick' in cell)
        return { header, marks: [frameOf(box(at, on.y - small * 1.1, small * 1.25, small * 1.25), WEIGHTS.raw)] }
      const words = fit(wordsOf(cell), width + 0.01, small, weight)
      return { header, marks: words === '' ? [] : [text(words, at, on.y, small, weight, right ? 'end' : 'start')] }
    })
  }
}

// fixed columns as wide as they need; the others too where there is room, else what is left is shared out
function shared(columns: readonly Column[], widest: readonly number[], rest: number): readonly number[] {
  const open = new Set([...columns.keys()].filter((c) => columns[c]!.share > 0))
  const widths = [...widest]
  let room = rest
  for (;;) {
    const shares = [...open].reduce((sum, c) => sum + columns[c]!.share, 0)
    const small = [...open].filter((c) => widest[c]! <= (room * columns[c]!.share) / shares)
    if (small.length === 0) {
      for (const c of open) widths[c] = (room * columns[c]!.share) / shares
      return widths
    }
    for (const c of small) {
      open.delete(c)
      room -= widest[c]!
    }
  }
}
