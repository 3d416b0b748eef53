import type { Box, Segment } from './box.ts'
import { box } from './box.ts'
import type { Mark, Weight } from './scene.ts'
import { textWidth } from './text.ts'

export const line = ([x1, y1, x2, y2]: Segment, weight: number, dash?: readonly number[]): Mark =>
  dash ? { kind: 'line', x1, y1, x2, y2, weight, dash } : { kind: 'line', x1, y1, x2, y2, weight }

export const frameOf = (b: Box, weight: number, fill: 'none' | 'ink' = 'none'): Mark => ({
  kind: 'path',
  points: [
    [b.x, b.y],
    [b.x + b.width, b.y],
    [b.x + b.width, b.y + b.height],
    [b.x, b.y + b.height],
  ],
  closed: true,
  weight,
  fill,
})

export const text = (
  words: string,
  x: number,
  y: number,
  capital: number,
  weight: Weight,
  anchor: 'start' | 'middle' | 'end' = 'start',
): Extract<Mark, { kind: 'text' }> => ({ kind: 'text', x, y, anchor, capital, weight, text: words })

/** A line of text in several weights, as marks one after another. */
export function runs(
  words: readonly (readonly [text: string, weight: Weight])[],
  x: number,
  y: number,
  capital: number,
): readonly Mark[] {
  let at = x
  return words
    .filter(([each]) => each !== '')
    .map(([each, weight]) => {
      const mark = text(each, at, y, capital, weight)
      at += textWidth(each, capital, weight)
      return mark
    })
}

/** What a text covers: from the tops of its ascenders to the bottoms of its descenders. */
export function textBox(mark: Extract<Mark, { kind: 'text' }>): Box {
  const long = textWidth(mark.text, mark.capital, mark.weight)
  const before = mark.anchor === 'start' ? 0 : mark.anchor === 'middle' ? long / 2 : long
  // numbers alone, such as 7 and R1, have nothing above their capitals or below the line
  const number = /^[A-Z]?\d+$/.test(mark.text)
  const up = mark.capital * (number ? 1.04 : ASCENDER)
  const tall = up + mark.capital * (number ? 0.04 : DESCENDER)
  return mark.turn === 90
    ? box(mark.x - up, mark.y + before - long, tall, long)
    : box(mark.x - before, mark.y - up, long, tall)
}

/** The same mark elsewhere. */
export function shifted(mark: Mark, dx: number, dy: number): Mark {
  if (mark.kind === 'line') return { ...mark, x1: mark.x1 + dx, y1: mark.y1 + dy, x2: mark.x2 + dx, y2: mark.y2 + dy }
  if (mark.kind === 'lines')
    return { ...mark, segments: mark.segments.map(([a, b, c, d]) => [a + dx, b + dy, c + dx, d + dy] as const) }
  if (mark.kind === 'path') return { ...mark, points: mark.points.map(([x, y]) => [x + dx, y + dy] as const) }
  return { ...mark, x: mark.x + dx, y: mark.y + dy }
}

// in capital heights: the face's ascenders rise a little above its capitals
const ASCENDER = 1.12
const DESCENDER = 0.32
