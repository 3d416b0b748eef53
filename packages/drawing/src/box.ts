/** A rectangle on paper, millimetres, y downwards. */
export interface Box {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** x1, y1, x2, y2 */
export type Segment = readonly [number, number, number, number]

export const box = (x: number, y: number, width: number, height: number): Box => ({ x, y, width, height })

export const padded = (b: Box, by: number): Box => box(b.x - by, b.y - by, b.width + 2 * by, b.height + 2 * by)

export const meet = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width - SLACK &&
  b.x < a.x + a.width - SLACK &&
  a.y < b.y + b.height - SLACK &&
  b.y < a.y + a.height - SLACK

export const meetsAny = (a: Box, others: readonly Box[]): boolean => others.some((b) => meet(a, b))

export const inside = (a: Box, b: Box): boolean =>
  a.x >= b.x - SLACK &&
  a.y >= b.y - SLACK &&
  a.x + a.width <= b.x + b.width + SLACK &&
  a.y + a.height <= b.y + b.height + SLACK

/** The box round a level or upright segment of a given weight. */
export function boxOf([x1, y1, x2, y2]: Segment, weight: number): Box {
  return padded(box(Math.min(x1, x2), Math.min(y1, y2), Math.abs(x2 - x1), Math.abs(y2 - y1)), weight / 2)
}

/** What is left of a segment outside all boxes, in order; pieces shorter than `shortest` go. */
export function outside(segment: Segment, boxes: readonly Box[], shortest = 0.3): readonly Segment[] {
  const [x1, y1, x2, y2] = segment
  const covered = boxes
    .map((b) => overlap(segment, b))
    .filter((span) => span !== null)
    .sort((a, b) => a[0] - b[0])
  const free: Segment[] = []
  const long = Math.abs(x2 - x1) + Math.abs(y2 - y1)
  const at = (t: number): readonly [number, number] => [x1 + (x2 - x1) * t, y1 + (y2 - y1) * t]
  const add = (from: number, to: number): void => {
    if ((to - from) * long >= shortest) free.push([...at(from), ...at(to)])
  }
  let done = 0
  for (const [from, to] of covered) {
    if (from > done) add(done, from)
    done = Math.max(done, to)
  }
  add(done, 1)
  return free
}

export const crosses = (segment: Segment, b: Box): boolean => overlap(segment, b) !== null

// Liang and Barsky's clipping: the part of the segment (0 to 1) that lies inside the box
function overlap([x1, y1, x2, y2]: Segment, b: Box): readonly [number, number] | null {
  let from = 0
  let to = 1
  for (const [step, gap] of [
    [x1 - x2, x1 - b.x],
    [x2 - x1, b.x + b.width - x1],
    [y1 - y2, y1 - b.y],
    [y2 - y1, b.y + b.height - y1],
  ] as const) {
    if (step === 0) {
      if (gap <= 0) return null
    } else if (step < 0) from = Math.max(from, gap / step)
    else to = Math.min(to, gap / step)
  }
  return from < to ? [from, to] : null
}

const SLACK = 1e-6
