import type { Box, Segment } from '../box.ts'
import { box, boxOf, inside, padded } from '../box.ts'
import { frameOf, line, text } from '../ink.ts'
import type { Mark } from '../scene.ts'
import { findBox } from './block.ts'
import type { DrawnEdge } from './edges.ts'
import { stepping } from './leader.ts'
import type { Places } from './places.ts'
import { flagHeight, flagWidth } from './ruler.ts'
import type { Style } from './style.ts'
import { WEIGHTS } from './style.ts'

/** done: torn already; now: the one to do; later: as on paper. */
export type Stage = 'done' | 'now' | 'later'

/** Where flags may stand: `ruler` beside the cloth's left edge, `beyond` at its right, `cloth` on it. */
export interface FlagRoom {
  /** millimetres of paper for a unit of cloth */
  readonly perUnit: number
  readonly cloth: Box
  readonly ruler: Box
  readonly beyond: Box
}

export interface Flag {
  readonly box: Box
  /** the line goes on under a flag that stands beside the cloth */
  readonly line: Segment
  readonly marks: readonly Mark[]
}

/** The first place for a flag that touches neither text nor another line; the second flag, at the far end, may be left out. */
export function placeFlag(
  edge: DrawnEdge,
  room: FlagRoom,
  taken: Places,
  edges: Places,
  style: Style,
  stage: Stage,
): Flag | null {
  const name = edge.division!.flag
  for (const place of candidates(edge, room, flagWidth(name, style), flagHeight(style), style)) {
    if (!taken.meets(place.box) && !meetsOther(edges, place.box, edge, style))
      return { ...place, marks: flagMarks(name, place.box, style, stage) }
  }
  return null
}

/** What the line of an edge covers. */
export const edgeBox = (edge: DrawnEdge, style: Style): Box => boxOf(edge.segment, edge.weight + 0.3 * style.by)

// any edge but its own
function meetsOther(edges: Places, at: Box, edge: DrawnEdge, style: Style): boolean {
  const own = edgeBox(edge, style)
  return edges.near(at).some((b) => b.x !== own.x || b.y !== own.y || b.width !== own.width || b.height !== own.height)
}

/** A flag at the other end of the line, where there is room. */
export function placeSecondFlag(
  edge: DrawnEdge,
  room: FlagRoom,
  taken: readonly Places[],
  edges: Places,
  style: Style,
): Flag | null {
  const name = edge.division!.flag
  const [wide, tall] = [flagWidth(name, style), flagHeight(style)]
  const [, , x2, y2] = edge.segment
  const across = edge.division!.runs === 'across'
  const places = across
    ? [box(x2, y2 - tall, wide, tall), box(x2, y2 - tall / 2, wide, tall)]
    : [box(x2 - wide, y2 - 2 * style.by - tall - 1, wide, tall)]
  const long = Math.abs(x2 - edge.segment[0]) + Math.abs(y2 - edge.segment[1])
  if (long < (across ? 0 : 90 * style.by)) return null
  for (const place of places)
    if (
      inside(place, across ? room.beyond : room.cloth) &&
      !taken.some((places) => places.meets(place)) &&
      !meetsOther(edges, place, edge, style)
    )
      return { box: place, line: edge.segment, marks: flagMarks(name, place, style, 'later') }
  return null
}

/** For a line in a crowd: its flag stands where there is room, near its start, with a thin line to a dot on it. */
export function placeFlagAside(
  edge: DrawnEdge,
  room: FlagRoom,
  taken: readonly Places[],
  uncrossed: readonly Places[],
  edges: Places,
  style: Style,
  stage: Stage,
): (Flag & { readonly along: readonly Box[] }) | null {
  const by = style.by
  const name = edge.division!.flag
  const [wide, tall] = [flagWidth(name, style), flagHeight(style)]
  const area = box(
    room.cloth.x + by,
    room.cloth.y + by,
    room.cloth.width + room.beyond.width - 2 * by,
    room.cloth.height - 2 * by,
  )
  const [x1, y1, x2, y2] = edge.segment
  const share = (at: number, from: number, long: number): number =>
    Math.min(1, Math.max(0, (at - from) / Math.max(long, 0.01)))
  for (const reach of REACHES)
    for (const [dx, dy] of ASIDE)
      for (const t of [0.12, 0.3, 0.5, 0.7, 0.88]) {
        const [x, y] = [x1 + (x2 - x1) * t, y1 + (y2 - y1) * t]
        const close = common(area, padded(box(x, y, 0, 0), reach * by))
        const blocked = [...taken, edges].flatMap((places) => places.near(close)).map((b) => padded(b, 0.5 * by))
        const at = findBox(wide, tall, close, blocked, {
          x: share(x + dx * by - wide / 2, close.x, close.width - wide),
          y: share(y + dy * by - tall / 2, close.y, close.height - tall),
        })
        if (at === null) continue
        const leader: Segment = [x, y, near(x, at.x, at.width), near(y, at.y, at.height)]
        if (uncrossed.some((places) => places.crossedBy(leader))) continue
        const dot: Mark = { kind: 'circle', x, y, r: 0.6 * by, weight: 0, fill: 'ink' }
        const marks = [line(leader, WEIGHTS.thin * by), dot, ...flagMarks(name, at, style, stage)]
        return { box: at, line: edge.segment, marks, along: stepping(leader, 1.5 * by) }
      }
  return null
}

const common = (a: Box, b: Box): Box => {
  const [x, y] = [Math.max(a.x, b.x), Math.max(a.y, b.y)]
  return box(x, y, Math.min(a.x + a.width, b.x + b.width) - x, Math.min(a.y + a.height, b.y + b.height) - y)
}

// how far from its line a flag may stand, millimetres
const REACHES = [36, 110] as const

// the side of a box that faces a place, or its middle
const near = (place: number, from: number, long: number): number =>
  place < from ? from : place > from + long ? from + long : from + long / 2

// where to look for room, millimetres from the line
const ASIDE = [
  [9, 6],
  [-12, 6],
  [9, -10],
  [-12, -10],
  [0, 14],
  [0, -18],
  [26, 0],
  [-30, 0],
] as const

function* candidates(
  edge: DrawnEdge,
  room: FlagRoom,
  wide: number,
  tall: number,
  style: Style,
): Generator<{ box: Box; line: Segment }> {
  const [x1, y1, x2, y2] = edge.segment
  const by = style.by
  if (edge.division!.runs === 'across') {
    const y = y1
    const reached: Segment = [room.ruler.x, y, x2, y]
    if (edge.division!.from === 0) {
      yield { box: box(room.ruler.x, y - tall, wide, tall), line: reached }
      yield { box: box(room.ruler.x, y, wide, tall), line: reached }
    }
    if (inside(box(x2, y - tall / 2, wide, tall), room.beyond))
      for (const up of [tall, tall / 2, 0]) yield { box: box(x2, y - up, wide, tall), line: edge.segment }
    for (const x of along(x1 + 2.6 * by, x2 - 2 * by - wide))
      for (const up of [tall, 0, tall / 2]) yield { box: box(x, y - up, wide, tall), line: edge.segment }
    return
  }
  const x = x1
  // where the line begins or ends outside the cloth and the piece is short, the flag stands outside too
  const short = y2 - y1 < 12 * by + tall
  const aside = edge.division!.how.startsWith('shears') ? 2.4 * by : 0
  if (short && y1 < room.cloth.y)
    yield { box: box(x - wide - aside, y1 - tall - 1.2 * by, wide, tall), line: edge.segment }
  if (short && y2 > room.cloth.y + room.cloth.height)
    yield { box: box(x - wide - aside, y2 + 1.2 * by, wide, tall), line: edge.segment }
  // hanging to the left under the line it starts from, else to the right, else astride; off a piece where the other side is not used
  const [before, after] = edge.division!.gives
  const unused = (kind: string): boolean => kind !== 'piece' && kind !== 'part'
  const toRight = unused(after.kind) && !unused(before.kind) && after.box.width * room.perUnit > wide + 2 * by
  const sides = toRight ? [0, wide, wide / 2] : [wide, 0, wide / 2]
  for (const y of along(y1 + 2.6 * by, y2 - 2 * by - tall))
    for (const left of sides) yield { box: box(x - left, y, wide, tall), line: edge.segment }
}

const along = (from: number, to: number): readonly number[] =>
  Array.from({ length: Math.max(0, Math.floor((to - from) / 1.5) + 1) }, (_, i) => from + i * 1.5)

function flagMarks(name: string, at: Box, style: Style, stage: Stage): readonly Mark[] {
  const words = text(name, at.x + at.width / 2, at.y + at.height / 2 + style.small / 2, style.small, 700, 'middle')
  if (stage === 'done') return [{ ...words, weight: 500 }]
  if (stage === 'now') return [frameOf(at, WEIGHTS.raw * style.by, 'ink'), { ...words, ink: 'paper' }]
  return [frameOf(at, WEIGHTS.raw * style.by), words]
}
