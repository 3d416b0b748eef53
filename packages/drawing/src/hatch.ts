import type { Box, Segment } from './box.ts'
import { box, meetsAny, outside } from './box.ts'
import type { Mark } from './scene.ts'

export type Hatch = 'waste' | 'remnant' | 'trim'

/**
 * A hatch as real lines and points inside `b`, leaving `clear` boxes empty. One lattice serves the whole page, so hatches
 * of neighbours go through; pattern tiles would turn into grey pictures in print. `by`: 1 on paper.
 */
export function hatch(kind: Hatch, b: Box, clear: readonly Box[], by = 1): readonly Mark[] {
  const field = box(b.x + 0.5 * by, b.y + 0.5 * by, b.width - by, b.height - by)
  if (field.width <= 0 || field.height <= 0) return []
  if (kind === 'remnant') return points(field, clear, 3 * by, 0.6 * by)
  const lines =
    kind === 'waste' ? oblique(field, 2 * by * Math.SQRT2) : [...level(field, 2 * by), ...upright(field, 2 * by)]
  const segments = lines.flatMap((each) => outside(each, clear, 0.4 * by))
  return segments.length === 0 ? [] : [{ kind: 'lines', segments, weight: 0.25 * by }]
}

function points(field: Box, clear: readonly Box[], step: number, size: number): readonly Mark[] {
  const segments: Segment[] = []
  for (const y of lattice(field.y, field.y + field.height, step))
    for (const x of lattice(field.x, field.x + field.width, step))
      if (!meetsAny(box(x - size / 2, y - size / 2, size, size), clear)) segments.push([x, y, x, y])
  // a strip narrower than the lattice may hold none of its points; it gets a row of its own
  if (segments.length === 0 && clear.length === 0) {
    const [x, y] = [field.x + field.width / 2, field.y + field.height / 2]
    if (field.width < field.height)
      for (const at of lattice(field.y, field.y + field.height, step)) segments.push([x, at, x, at])
    else for (const at of lattice(field.x, field.x + field.width, step)) segments.push([at, y, at, y])
  }
  return segments.length === 0 ? [] : [{ kind: 'lines', segments, weight: size, cap: 'round' }]
}

// lines x + y = c, from lower left to upper right
function oblique(field: Box, step: number): readonly Segment[] {
  const [left, top, right, bottom] = [field.x, field.y, field.x + field.width, field.y + field.height]
  return lattice(left + top, right + bottom, step).map((c) => {
    const x1 = Math.max(left, c - bottom)
    const x2 = Math.min(right, c - top)
    return [x1, c - x1, x2, c - x2] as const
  })
}

const level = (field: Box, step: number): readonly Segment[] =>
  lattice(field.y, field.y + field.height, step).map((y) => [field.x, y, field.x + field.width, y] as const)

const upright = (field: Box, step: number): readonly Segment[] =>
  lattice(field.x, field.x + field.width, step).map((x) => [x, field.y, x, field.y + field.height] as const)

function lattice(from: number, to: number, step: number): readonly number[] {
  const places: number[] = []
  for (let n = Math.ceil(from / step); n * step <= to; n++) places.push(n * step)
  return places
}
