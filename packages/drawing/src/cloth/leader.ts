import type { Box, Segment } from '../box.ts'
import { box } from '../box.ts'
import { line } from '../ink.ts'
import type { Mark } from '../scene.ts'
import type { Named } from './pieces.ts'
import type { Places } from './places.ts'
import { WEIGHTS } from './style.ts'

type Point = readonly [number, number]

export interface Leader {
  readonly marks: readonly Mark[]
  /** what its dot covers */
  readonly dots: readonly Box[]
  /** small boxes along the line */
  readonly along: readonly Box[]
  readonly long: number
}

/**
 * A slanted thin line from a dot in the piece to the nearest side of its text, crossing no text; bent once where no
 * straight one is free.
 */
export function leaderTo(item: Named, at: Box, texts: readonly Places[], by: number): Leader | null {
  const { box: piece } = item
  const ends: readonly Point[] = [
    [at.x - 0.8 * by, at.y + at.height * 0.5],
    [at.x + at.width / 2, at.y - 0.4 * by],
    [at.x + at.width / 2, at.y + at.height + 0.2 * by],
    [at.x + at.width * 0.15, at.y - 0.4 * by],
    [at.x + at.width + 0.8 * by, at.y + at.height * 0.5],
  ]
  // of a narrow piece the middle: a dot on its edge would point at its neighbour as well
  const within = (from: number, size: number, share: number): number => {
    const clear = Math.min(size / 2, 1.2 * by)
    return from + Math.min(size - clear, Math.max(clear, size * share))
  }
  const starts = STARTS.map(
    ([x, y]): Point => [within(piece.x, piece.width, x), within(piece.y, piece.height, y)],
  ).filter(([x, y]) => !texts.some((places) => places.meets(box(x - 0.8 * by, y - 0.8 * by, 1.6 * by, 1.6 * by))))
  return (
    shortest(starts, ends, () => [[]], texts, by) ??
    shortest(starts.slice(0, 4), ends, (from, to) => knees(from, to, by), texts, by)
  )
}

function shortest(
  starts: readonly Point[],
  ends: readonly Point[],
  bends: (from: Point, to: Point) => readonly (readonly Point[])[],
  texts: readonly Places[],
  by: number,
): Leader | null {
  let best: readonly Segment[] | null = null
  let least = Number.POSITIVE_INFINITY
  for (const from of starts)
    for (const to of ends)
      for (const bend of bends(from, to)) {
        const points = [from, ...bend, to]
        const parts = points.slice(1).map((point, i): Segment => [...points[i]!, ...point])
        const long = parts.reduce((sum, part) => sum + lengthOf(part, by), 0)
        if (long >= least || parts.some((part) => texts.some((places) => places.crossedBy(part)))) continue
        least = long
        best = parts
      }
  if (best === null) return null
  const [x, y] = best[0]!
  return {
    marks: [
      ...best.map((part) => line(part, WEIGHTS.thin * by)),
      { kind: 'circle', x, y, r: 0.6 * by, weight: 0, fill: 'ink' },
    ],
    dots: [box(x - by, y - by, 2 * by, 2 * by)],
    along: best.flatMap((part) => stepping(part, 1.5 * by)),
    long: best.reduce((sum, [x1, y1, x2, y2]) => sum + Math.abs(x2 - x1) + Math.abs(y2 - y1), 0),
  }
}

// slanted, so that it cannot be taken for an edge
function lengthOf([x1, y1, x2, y2]: Segment, by: number): number {
  const [dx, dy] = [Math.abs(x1 - x2), Math.abs(y1 - y2)]
  return dx + dy + (dx < 1.2 * by || dy < 1.2 * by ? 25 * by : 0)
}

function knees([x1, y1]: Point, [x2, y2]: Point, by: number): readonly (readonly Point[])[] {
  const xs = [0.2, 0.5, 0.8].map((share) => x1 + (x2 - x1) * share)
  const ys = [y2, y1 - 8 * by, y1 + 8 * by, y1 - 16 * by, y1 + 16 * by, (y1 + y2) / 2]
  return xs.flatMap((x) => ys.map((y) => [[x, y] as const]))
}

const STARTS: readonly Point[] = [
  [0.8, 0.5],
  [0.75, 0.75],
  [0.75, 0.25],
  [0.5, 0.8],
  [0.5, 0.2],
  [0.25, 0.5],
  [0.5, 0.5],
  [0.92, 0.5],
]

/** Small boxes that cover a slanted line. */
export function stepping([x1, y1, x2, y2]: Segment, step: number): readonly Box[] {
  const n = Math.max(1, Math.ceil(Math.max(Math.abs(x2 - x1), Math.abs(y2 - y1)) / step))
  const [dx, dy] = [(x2 - x1) / n, (y2 - y1) / n]
  return Array.from({ length: n }, (_, i) =>
    box(Math.min(x1 + i * dx, x1 + (i + 1) * dx), Math.min(y1 + i * dy, y1 + (i + 1) * dy), Math.abs(dx), Math.abs(dy)),
  )
}
