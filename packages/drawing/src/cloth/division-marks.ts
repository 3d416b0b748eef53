import type { Segment } from '../box.ts'
import { line } from '../ink.ts'
import type { Mark } from '../scene.ts'
import type { DrawnEdge } from './edges.ts'
import { scissors } from './edges.ts'
import type { Stage } from './flags.ts'
import type { Places } from './places.ts'
import type { Style } from './style.ts'
import { DASHES } from './style.ts'
import type { View } from './view.ts'

export function divisionMarks(
  edge: DrawnEdge,
  segment: Segment,
  texts: Places,
  style: Style,
  stage: Stage,
): readonly Mark[] {
  const by = style.by
  const weight = stage === 'done' ? 0.5 * by : stage === 'now' ? 1.5 * by : edge.weight
  const dash = edge.kind === 'tear' && stage !== 'done' ? DASHES.tear.map((d) => d * by) : undefined
  const parts = texts.outside(segment, 0.6 * by)
  const marks = parts.map((part) => line(part, weight, dash))
  return edge.kind === 'tear' && stage !== 'done' ? [...marks, ...snip(edge, by)] : marks
}

// a small V where the selvedge is snipped: at the end of a tear that lies on the cloth's own edge
function snip(edge: DrawnEdge, by: number): readonly Mark[] {
  const { division, segment } = edge
  if (division!.how !== 'tear') return []
  const [x1, y1] = segment
  if (division!.runs === 'across') {
    if (division!.from !== 0) return []
    const x = x1 + 4 * by
    return [
      line([x, y1 - 1.3 * by, x + 2.2 * by, y1], 0.35 * by),
      line([x, y1 + 1.3 * by, x + 2.2 * by, y1], 0.35 * by),
    ]
  }
  const y = y1 + 0.1 * by
  return [line([x1 - 1.3 * by, y, x1, y + 2.2 * by], 0.35 * by), line([x1 + 1.3 * by, y, x1, y + 2.2 * by], 0.35 * by)]
}

export function scissorsAt(edge: DrawnEdge, view: View, by: number): readonly Mark[] {
  const { division, segment } = edge
  const [x1, y1, , y2] = segment
  if (division!.runs === 'across') return scissors(x1 + 3.4 * by, y1, 'right', by)
  // through a hem: at the end where the hem is
  const hemAtEnd =
    division!.how === 'shears-through-hem-then-tear' && division!.to * view.perUnit > 0 && throughFoot(edge)
  if (!hemAtEnd) return scissors(x1, y1 + 1.4 * by, 'down', by)
  return scissors(x1, y2 - 1.4 * by, 'down', by).map((m) => flippedOver(m, y2 - 1.4 * by))
}

const throughFoot = (edge: DrawnEdge): boolean => edge.division!.hand.y > 0

const flippedOver = (m: Mark, y: number): Mark =>
  m.kind === 'line' ? { ...m, y1: 2 * y - m.y1, y2: 2 * y - m.y2 } : m.kind === 'circle' ? { ...m, y: 2 * y - m.y } : m
