import type { CutNode, Placement, Rect } from '@lengthwise/solver'
import { maze } from './maze.ts'

/**
 * How a cloth comes apart, as a person does it: several cuts of one direction one after the other, then each part in turn.
 * Boxes are on the whole cloth. A maze (shears only) is a part that no straight line divides from edge to edge.
 */
export type Part =
  | { readonly kind: 'piece'; readonly box: Rect; readonly placement: number }
  | { readonly kind: 'left-over'; readonly box: Rect }
  | { readonly kind: 'trim'; readonly box: Rect }
  | { readonly kind: 'cuts'; readonly box: Rect; readonly runs: Runs; readonly parts: readonly Part[] }
  | { readonly kind: 'maze'; readonly box: Rect; readonly lines: readonly Line[]; readonly parts: readonly Part[] }
export type Runs = 'across' | 'along'
/** A straight cut that need not reach the edges: across at y = at from x to x, along at x = at from y to y. */
export interface Line {
  readonly runs: Runs
  readonly at: number
  readonly from: number
  readonly to: number
}

/** The solver's cut tree as parts; `dx`, `dy` move it onto the whole cloth, where it ends at the sides of `usable`. */
export function partsOf(node: CutNode, dx: number, dy: number, usable: Rect): Part {
  const box = common({ ...node.rect, x: node.rect.x + dx, y: node.rect.y + dy }, usable)
  if (node.kind === 'piece') return { kind: 'piece', box, placement: node.placement }
  if (node.kind === 'left-over') return { kind: 'left-over', box }
  return inLine(node.runs, [partsOf(node.first, dx, dy, usable), partsOf(node.second, dx, dy, usable)])
}

/** Parts side by side as one part: nested cuts of the same direction become one row, left-overs that meet become one. */
export function inLine(runs: Runs, parts: readonly Part[]): Part {
  const row: Part[] = []
  for (const part of parts) {
    if (part.box.width === 0 || part.box.length === 0) continue
    const same = part.kind === 'cuts' && part.runs === runs ? part.parts : [part]
    for (const next of same) {
      const last = row.at(-1)
      if (last && last.kind === next.kind && (next.kind === 'left-over' || next.kind === 'trim'))
        row[row.length - 1] = { kind: next.kind, box: around(last.box, next.box) }
      else row.push(next)
    }
  }
  if (row.length === 1) return row[0]!
  return { kind: 'cuts', box: row.map((p) => p.box).reduce(around), runs, parts: row }
}

/** Parts for rectangles placed freely: cut from edge to edge wherever a line allows it, a maze where none does. */
export function partsOfFree(
  placements: readonly { readonly box: Rect; readonly placement: number }[],
  box: Rect,
  keeps: (box: Rect) => boolean,
): Part {
  const [first] = placements
  if (!first) return { kind: 'left-over', box }
  if (placements.length === 1 && sameBox(first.box, box)) return { kind: 'piece', box, placement: first.placement }
  const ways = (['across', 'along'] as const).map((runs) => {
    const slabs = slabsOf(placements, box, runs)
    return slabs.length < 2
      ? null
      : inLine(
          runs,
          slabs.map((slab) =>
            partsOfFree(
              placements.filter((p) => inside(p.box, slab)),
              slab,
              keeps,
            ),
          ),
        )
  })
  const found = ways.filter((way) => way !== null)
  if (found.length === 0) return maze(placements, box, keeps)
  return found.reduce((a, b) => (largestLeft(b, keeps) > largestLeft(a, keeps) ? b : a))
}

/** Every part that is not divided further, in the order in which they come free. */
export function leaves(part: Part): readonly Exclude<Part, { kind: 'cuts' | 'maze' }>[] {
  if (part.kind !== 'cuts' && part.kind !== 'maze') return [part]
  const free = part.parts.flatMap((p) => (p.kind === 'cuts' || p.kind === 'maze' ? [] : [p]))
  return [...free, ...part.parts.flatMap((p) => (p.kind === 'cuts' || p.kind === 'maze' ? leaves(p) : []))]
}

/** Area of the largest left-over worth keeping; 0: none. */
export function largestLeft(part: Part, keeps: (box: Rect) => boolean): number {
  let largest = 0
  for (const leaf of leaves(part))
    if (leaf.kind === 'left-over' && keeps(leaf.box)) largest = Math.max(largest, leaf.box.width * leaf.box.length)
  return largest
}

export function cutsIn(part: Part): number {
  if (part.kind === 'cuts') return part.parts.length - 1 + part.parts.reduce((n, p) => n + cutsIn(p), 0)
  if (part.kind === 'maze') return part.lines.length
  return 0
}

/**
 * The part made larger by `extra` cloth beyond one side: as one band, or shared out to the parts that reach that side where that
 * leaves a larger remnant or takes fewer divisions.
 */
export function grown(part: Part, side: 'end' | 'left' | 'right', extra: number, keeps: (box: Rect) => boolean): Part {
  if (extra === 0) return part
  const { box } = part
  const runs: Runs = side === 'end' ? 'across' : 'along'
  const band: Part = { kind: 'left-over', box: beside(box, side, extra) }
  if (part.kind === 'left-over') return { kind: 'left-over', box: around(box, band.box) }
  const below = inLine(runs, side === 'left' ? [band, part] : [part, band])
  if (part.kind !== 'cuts') return below
  const last = side === 'left' ? 0 : part.parts.length - 1
  const shared =
    part.runs === runs
      ? inLine(runs, part.parts.with(last, grown(part.parts[last]!, side, extra, keeps)))
      : inLine(
          part.runs,
          part.parts.map((p) => grown(p, side, extra, keeps)),
        )
  const gain = largestLeft(shared, keeps) - largestLeft(below, keeps)
  return gain > 0 || (gain === 0 && cutsIn(shared) < cutsIn(below)) ? shared : below
}

function beside(box: Rect, side: 'end' | 'left' | 'right', extra: number): Rect {
  if (side === 'end') return { ...box, y: box.y + box.length, length: extra }
  return { ...box, x: side === 'left' ? box.x - extra : box.x + box.width, width: extra }
}

export function placedOf(placements: readonly Placement[], dx: number, dy: number) {
  return placements.map((p, placement) => ({
    placement,
    box: { x: p.x + dx, y: p.y + dy, width: p.width, length: p.length },
  }))
}

// the box cut at every piece edge that no piece crosses
function slabsOf(placements: readonly { readonly box: Rect }[], box: Rect, runs: Runs): Rect[] {
  const low = (r: Rect) => (runs === 'across' ? r.y : r.x)
  const high = (r: Rect) => (runs === 'across' ? r.y + r.length : r.x + r.width)
  const edges = new Set(placements.flatMap((p) => [low(p.box), high(p.box)]))
  const lines = [...edges]
    .filter((at) => at > low(box) && at < high(box))
    .filter((at) => placements.every((p) => high(p.box) <= at || low(p.box) >= at))
    .sort((a, b) => a - b)
  const marks = [low(box), ...lines, high(box)]
  return marks.slice(1).map((end, i) => {
    const start = marks[i]!
    return runs === 'across' ? { ...box, y: start, length: end - start } : { ...box, x: start, width: end - start }
  })
}

const inside = (a: Rect, b: Rect): boolean =>
  a.x >= b.x && a.y >= b.y && a.x + a.width <= b.x + b.width && a.y + a.length <= b.y + b.length

function common(a: Rect, b: Rect): Rect {
  const x = Math.max(a.x, b.x)
  const y = Math.max(a.y, b.y)
  const width = Math.max(0, Math.min(a.x + a.width, b.x + b.width) - x)
  return { x, y, width, length: Math.max(0, Math.min(a.y + a.length, b.y + b.length) - y) }
}

const sameBox = (a: Rect, b: Rect): boolean =>
  a.x === b.x && a.y === b.y && a.width === b.width && a.length === b.length

function around(a: Rect, b: Rect): Rect {
  const x = Math.min(a.x, b.x)
  const y = Math.min(a.y, b.y)
  const right = Math.max(a.x + a.width, b.x + b.width)
  const end = Math.max(a.y + a.length, b.y + b.length)
  return { x, y, width: right - x, length: end - y }
}
