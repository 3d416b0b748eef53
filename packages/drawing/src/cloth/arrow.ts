import type { CutCloth, Placed } from '@lengthwise/planner'
import type { Box } from '../box.ts'
import { box, padded } from '../box.ts'
import { line, text } from '../ink.ts'
import type { Mark } from '../scene.ts'
import { textWidth } from '../text.ts'
import { findBox } from './block.ts'
import type { Style } from './style.ts'
import { WEIGHTS } from './style.ts'

export function placeArrow(
  cloth: CutCloth,
  p: Placed,
  on: Box,
  style: Style,
  taken: readonly Box[],
): { readonly at: Box; readonly marks: readonly Mark[] } | null {
  const arrow = arrowBlock(cloth, p)
  const area = padded(on, -1.2 * style.by)
  const wide = on.width > 3.4 * style.number
  const around = taken.map((b) => padded(b, 0.6 * style.by))
  const sizes = arrowSizes(on, arrow, style)
  // in a narrow piece below the label and in the middle, else wherever there is room
  const middle = sizes.flatMap((size) => {
    const strip = box(on.x + (on.width - size.width) / 2, area.y, size.width, area.height)
    return wide ? [] : [{ size, room: strip, prefer: { x: 0, y: 0.85 } }]
  })
  const anywhere = sizes.map((size) => ({
    size,
    room: area,
    prefer: wide ? { x: 0.12, y: 0.42 } : { x: 0.5, y: 0.85 },
  }))
  for (const { size, room, prefer } of [...middle, ...anywhere]) {
    const at = findBox(size.width, size.height, room, around, prefer)
    if (at !== null) return { at, marks: arrowMarks(at, arrow, style) }
  }
  return null
}

/** The arrow of a piece: both heads where either end may be the top, one head and TOP for a one-way print. */
export function arrowBlock(
  cloth: CutCloth,
  p: Placed,
): { readonly level: boolean; readonly heads: 'both' | 'start' | 'end' | 'left' | 'right' } {
  const oneWay = cloth.cloth.print.way === 'one-way'
  if (!oneWay) return { level: false, heads: 'both' }
  return { level: p.top === 'left' || p.top === 'right', heads: p.top }
}

export const TOP_WORD = 'TOP'

/** Draws the arrow into a box that was found free for it. */
export function arrowMarks(at: Box, arrow: ReturnType<typeof arrowBlock>, style: Style): readonly Mark[] {
  const by = style.by
  const weight = WEIGHTS.raw * by
  const word = arrow.heads === 'both' ? null : TOP_WORD
  const wordLong = textWidth(TOP_WORD, style.small, 700)
  const mid = arrow.level ? at.y + at.height / 2 : at.x + at.width / 2
  const head = (tip: number, back: 1 | -1): Mark => {
    const [long, half] = [2.6 * by, 0.8 * by]
    const points = [
      [mid, tip],
      [mid - half, tip + back * long],
      [mid + half, tip + back * long],
    ] as const
    return {
      kind: 'path',
      points: points.map(([a, b]) => (arrow.level ? ([b, a] as const) : ([a, b] as const))),
      closed: true,
      weight: 0,
      fill: 'ink',
    }
  }
  const stroke = (a: number, b: number): Mark => line(arrow.level ? [a, mid, b, mid] : [mid, a, mid, b], weight)
  const across = (c: number): Mark =>
    line(arrow.level ? [c, mid - by, c, mid + by] : [mid - by, c, mid + by, c], weight)
  const [from, to] = arrow.level ? [at.x, at.x + at.width] : [at.y, at.y + at.height]
  if (word === null) return [head(from, 1), stroke(from + 2 * by, to - 2 * by), head(to, -1)]
  const space = arrow.level ? wordLong + by : style.small * 1.5
  if (arrow.heads === 'start' || arrow.heads === 'left')
    return [
      arrow.level
        ? text(word, from, mid + style.small / 2, style.small, 700)
        : text(word, mid, from + style.small * 1.15, style.small, 700, 'middle'),
      head(from + space, 1),
      stroke(from + space + 2 * by, to),
      across(to),
    ]
  return [
    across(from),
    stroke(from, to - space - 2 * by),
    head(to - space, -1),
    arrow.level
      ? text(word, to, mid + style.small / 2, style.small, 700, 'end')
      : text(word, mid, to - style.small * 0.3, style.small, 700, 'middle'),
  ]
}

/** How long and wide an arrow should be in a piece, from the best to the least. */
export function arrowSizes(item: Box, arrow: ReturnType<typeof arrowBlock>, style: Style): readonly Box[] {
  const word = arrow.heads === 'both' ? 0 : arrow.level ? textWidth(TOP_WORD, style.small, 700) : style.small * 1.5
  const thick =
    arrow.heads === 'both' ? 2.4 * style.by : arrow.level ? style.small * 1.5 : textWidth(TOP_WORD, style.small, 700)
  const room = arrow.level ? item.width : item.height
  return [Math.min(room * 0.4, 40 * style.by), 16 * style.by, 8 * style.by]
    .filter((long) => long >= 7.9 * style.by)
    .map((long) => (arrow.level ? box(0, 0, long + word, thick) : box(0, 0, thick, long + word)))
}
