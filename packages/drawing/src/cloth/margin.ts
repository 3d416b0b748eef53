import type { Box, Segment } from '../box.ts'
import { box, crosses, meetsAny } from '../box.ts'
import { line, text } from '../ink.ts'
import type { Mark } from '../scene.ts'
import { textWidth, wrap } from '../text.ts'
import { labelsListed } from '../words/list.ts'
import { findBox } from './block.ts'
import type { DrawOptions } from './draw.ts'
import type { Named } from './pieces.ts'
import { PITCH, WEIGHTS } from './style.ts'

export function alike(small: readonly Named[]): readonly (readonly Named[])[] {
  const groups = new Map<string, Named[]>()
  for (const item of small) {
    const key =
      item.kind === 'remnant' ? item.label : `${item.words}|${item.words === '' ? item.whose : ''}|${item.size}`
    groups.set(key, [...(groups.get(key) ?? []), item])
  }
  return [...groups.values()]
}

/** Number, name and size in a margin, as near to the piece as can be. */
export function marginLabel(
  group: readonly Named[],
  options: DrawOptions,
  taken: readonly Box[],
): { readonly marks: readonly Mark[]; readonly at: Box } | null {
  const { style } = options
  const { small } = style
  const [first] = group
  const label = labelsListed(group.map((item) => item.label))
  const name = [first!.words, group.length === 1 ? first!.whose : ''].filter((words) => words !== '').join(', ')
  for (const margin of options.margins) {
    const size = textWidth(first!.size, small, 700)
    const labels = wrap(label, margin.width, small, 700)
    const oneRow = `${label}  ${name === '' ? '' : `${name}  `}`
    const fitsOneRow = textWidth(oneRow, small, 700) + size <= margin.width
    const rows: readonly (readonly [string, 500 | 700])[] = fitsOneRow
      ? []
      : [
          ...labels.map((words) => [words, 700] as const),
          ...(name === '' ? [] : wrap(name, margin.width, small, 500).slice(0, 3)).map(
            (words) => [words, 500] as const,
          ),
          [first!.size, 700],
        ]
    if (!fitsOneRow && size > margin.width) continue
    const pitch = small * PITCH
    const wide = fitsOneRow
      ? textWidth(`${label}  `, small, 700) + (name === '' ? 0 : textWidth(`${name}  `, small, 500)) + size
      : Math.max(...rows.map(([words, weight]) => textWidth(words, small, weight)))
    const tall = (fitsOneRow ? 1 : rows.length) * pitch
    const anchor = first!.box
    const preferX = (anchor.x + anchor.width / 2 - margin.x - wide / 2) / Math.max(margin.width - wide, 0.01)
    const preferY = (anchor.y + anchor.height / 2 - margin.y - tall / 2) / Math.max(margin.height - tall, 0.01)
    const clamp = (n: number): number => Math.min(1, Math.max(0, n))
    const at = findBox(
      wide,
      tall,
      margin,
      taken.map((b) =>
        box(b.x - 4 * style.by, b.y - 0.4 * style.by, b.width + 8 * style.by, b.height + 0.8 * style.by),
      ),
      { x: margin.x > anchor.x + anchor.width ? 0 : clamp(preferX), y: clamp(preferY) },
    )
    if (at === null) continue
    const baseline = at.y + small * 1.14
    if (!fitsOneRow) {
      return { at, marks: rows.map(([words, weight], i) => text(words, at.x, baseline + i * pitch, small, weight)) }
    }
    const parts = [
      [`${label}  `, 700],
      ...(name === '' ? [] : [[`${name}  `, 500] as const]),
      [first!.size, 700],
    ] as const
    let x = at.x
    const marks = parts.map(([words, weight]) => {
      const mark = text(words, x, baseline, small, weight)
      x += textWidth(words, small, weight)
      return mark
    })
    return { at, marks }
  }
  return null
}

/** A slanted thin line from a dot in the piece to the nearest side of its text, crossing no text. */
export function leaderTo(
  item: Named,
  at: Box,
  texts: readonly Box[],
  by: number,
): {
  readonly marks: readonly Mark[]
  readonly boxes: readonly Box[]
  readonly along: readonly Box[]
  readonly long: number
} | null {
  const { box: piece } = item
  const ends: readonly (readonly [number, number])[] = [
    [at.x - 0.8 * by, at.y + at.height * 0.5],
    [at.x + at.width / 2, at.y - 0.4 * by],
    [at.x + at.width / 2, at.y + at.height + 0.2 * by],
    [at.x + at.width * 0.15, at.y - 0.4 * by],
    [at.x + at.width + 0.8 * by, at.y + at.height * 0.5],
  ]
  const starts = [
    [0.8, 0.5],
    [0.75, 0.75],
    [0.75, 0.25],
    [0.5, 0.8],
    [0.5, 0.2],
    [0.25, 0.5],
    [0.5, 0.5],
    [0.92, 0.5],
  ] as const
  const others = texts.filter((each) => each !== at)
  let best: Segment | null = null
  let shortest = Number.POSITIVE_INFINITY
  for (const [fx, fy] of starts)
    for (const [x2, y2] of ends) {
      const segment = [piece.x + piece.width * fx, piece.y + piece.height * fy, x2, y2] as const
      const [dx, dy] = [Math.abs(segment[0] - x2), Math.abs(segment[1] - y2)]
      // slanted, so that it cannot be taken for an edge
      const long = dx + dy + (dx < 1.2 * by || dy < 1.2 * by ? 25 * by : 0)
      const dot = box(segment[0] - 0.8 * by, segment[1] - 0.8 * by, 1.6 * by, 1.6 * by)
      if (long >= shortest || meetsAny(dot, others) || others.some((each) => crosses(segment, each))) continue
      shortest = long
      best = segment
    }
  if (best === null) return null
  const dot: Mark = { kind: 'circle', x: best[0], y: best[1], r: 0.6 * by, weight: 0, fill: 'ink' }
  return {
    marks: [line(best, WEIGHTS.thin * by), dot],
    boxes: [box(best[0] - by, best[1] - by, 2 * by, 2 * by)],
    along: stepping(best, 1.5 * by),
    long: Math.abs(best[2] - best[0]) + Math.abs(best[3] - best[1]),
  }
}

// small boxes that cover a slanted line
export function stepping([x1, y1, x2, y2]: Segment, step: number): readonly Box[] {
  const n = Math.max(1, Math.ceil(Math.max(Math.abs(x2 - x1), Math.abs(y2 - y1)) / step))
  const [dx, dy] = [(x2 - x1) / n, (y2 - y1) / n]
  return Array.from({ length: n }, (_, i) =>
    box(Math.min(x1 + i * dx, x1 + (i + 1) * dx), Math.min(y1 + i * dy, y1 + (i + 1) * dy), Math.abs(dx), Math.abs(dy)),
  )
}
