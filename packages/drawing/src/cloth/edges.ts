import type { CutCloth, Division } from '@lengthwise/planner'
import type { Segment } from '../box.ts'
import { line } from '../ink.ts'
import type { Mark } from '../scene.ts'
import type { Style } from './style.ts'
import { DASHES, OVERRUN, SELVEDGE_INSET, WEIGHTS } from './style.ts'
import type { View } from './view.ts'
import { xOn, yOn } from './view.ts'

/** One edge on the drawing, classed once: the cloth's own edges, and the divisions. */
export interface DrawnEdge {
  readonly segment: Segment
  readonly kind: 'selvedge' | 'hem' | 'raw' | 'tear' | 'shears'
  readonly weight: number
  /** the cloth's own: which side; a hem's depth on paper */
  readonly side?: 'left' | 'right' | 'start' | 'end'
  readonly depth?: number
  readonly division?: Division
}

/** The cloth's own edges within the view. */
export function clothEdges(cloth: CutCloth, view: View, style: Style): readonly DrawnEdge[] {
  const { from, to } = view.stretch
  const [left, right, top, bottom] = [xOn(view, 0), xOn(view, cloth.width), yOn(view, from), yOn(view, to)]
  const sides = [
    ['left', [left, top, left, bottom]],
    ['right', [right, top, right, bottom]],
    ['start', [left, top, right, top]],
    ['end', [left, bottom, right, bottom]],
  ] as const
  return sides
    .filter(([side]) => (side === 'start' ? from === 0 : side === 'end' ? to === cloth.length : true))
    .map(([side, segment]) => {
      const { kind, ...rest } = cloth.edges[side]
      const weight = (kind === 'raw' ? WEIGHTS.raw : WEIGHTS.selvedge) * style.by
      return { segment, kind, weight, side, ...('depth' in rest ? { depth: rest.depth * view.perUnit } : {}) }
    })
}

/** Divisions within the view, in order, running past both ends. */
export function divisionEdges(cloth: CutCloth, view: View, style: Style): readonly DrawnEdge[] {
  return cloth.divisions.flatMap((division): readonly DrawnEdge[] => {
    const segment = segmentOf(division, cloth, view, style)
    if (segment === null) return []
    const kind = division.how === 'shears' || division.how === 'thread' ? 'shears' : 'tear'
    return [{ segment, kind, weight: WEIGHTS[kind] * style.by, division }]
  })
}

function segmentOf(division: Division, cloth: CutCloth, view: View, style: Style): Segment | null {
  const { from, to } = view.stretch
  // 4 mm past the cloth's own edges, 2 mm into a neighbour; a cut that ends inside what is in hand stops where it ends
  const { hand } = division
  const past = (atEdge: boolean, place: number): number => {
    if (atEdge) return OVERRUN * style.by
    const [low, high] = division.runs === 'across' ? [hand.x, hand.x + hand.width] : [hand.y, hand.y + hand.length]
    return place > low && place < high ? 0 : (OVERRUN / 2) * style.by
  }
  if (division.runs === 'across') {
    if (division.at < from || division.at > to) return null
    const y = yOn(view, division.at)
    return [
      xOn(view, division.from) - past(division.from === 0, division.from),
      y,
      xOn(view, division.to) +
        (division.to === cloth.width ? (view.pastRight ?? past(true, division.to)) : past(false, division.to)),
      y,
    ]
  }
  const start = Math.max(division.from, from)
  const end = Math.min(division.to, to)
  if (end <= start) return null
  const x = xOn(view, division.at)
  const cutOff = { start: division.from < from, end: division.to > to }
  return [
    x,
    yOn(view, start) - (cutOff.start ? 0 : past(false, division.from)),
    x,
    yOn(view, end) + (cutOff.end ? 0 : past(false, division.to)),
  ]
}

/** The line of an edge of the cloth; a selvedge's second line and a hem's stitching are `insideLines`. */
export const edgeMark = (edge: DrawnEdge): Mark => line(edge.segment, edge.weight)

/** The thin line that tells a selvedge or a hem, inside the cloth. */
export function insideLine(edge: DrawnEdge, style: Style): { segment: Segment; dash?: readonly number[] } | null {
  if (edge.kind !== 'selvedge' && edge.kind !== 'hem') return null
  const by = edge.kind === 'hem' ? (edge.depth ?? 0) : SELVEDGE_INSET * style.by
  const [x1, y1, x2, y2] = edge.segment
  const [dx, dy] = INWARDS[edge.side ?? 'left']
  const segment = [x1 + dx * by, y1 + dy * by, x2 + dx * by, y2 + dy * by] as const
  return edge.kind === 'hem' ? { segment, dash: DASHES.stitching.map((d) => d * style.by) } : { segment }
}

const INWARDS = { left: [1, 0], right: [-1, 0], start: [0, 1], end: [0, -1] } as const

/** Scissors, blades toward where they cut: at the start of a cut, outside the cloth where there is room. */
export function scissors(x: number, y: number, toward: 'right' | 'down', by: number): readonly Mark[] {
  const turn = ([a, b]: readonly [number, number]): readonly [number, number] =>
    toward === 'right' ? [x + a * by, y + b * by] : [x + b * by, y + a * by]
  const [ringA, ringB] = [turn([-4.6, -1.1]), turn([-4.6, 1.1])]
  const blade = (from: readonly [number, number], to: readonly [number, number]): Mark =>
    line([...turn(from), ...turn(to)], 0.35 * by)
  return [
    { kind: 'circle', x: ringA[0], y: ringA[1], r: 0.75 * by, weight: 0.35 * by, fill: 'none' },
    { kind: 'circle', x: ringB[0], y: ringB[1], r: 0.75 * by, weight: 0.35 * by, fill: 'none' },
    blade([-3.9, -0.8], [-0.6, 0.7]),
    blade([-3.9, 0.8], [-0.6, -0.7]),
  ]
}
