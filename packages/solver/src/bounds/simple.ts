import type { Certificate, Posture } from '../model.ts'
import { END, LEFT, RIGHT, START } from '../model.ts'
import type { Kind, Problem } from '../problem.ts'

/** A bound in the problem's units, with what shows it. */
export type Shown = Certificate

/** All the cloth that is covered, over the width. */
export function areaBound({ kinds, width }: Problem): Shown {
  const area = kinds.reduce((sum, k) => sum + k.count * k.area, 0)
  return { by: 'area', bound: Math.ceil(area / width) }
}

/** The piece that ends farthest even where it lies best. */
export function longestBound({ kinds, zones, length }: Problem): Shown {
  const lengths = kinds.map((k) =>
    least(k, (p) => (p.flush & END ? length! : p.length + (p.flush & START ? 0 : zones.start))),
  )
  return { by: 'longest', bound: Math.max(0, ...lengths) }
}

/** No two pieces wider than half lie side by side. */
export function wideBound({ kinds, width }: Problem): Shown {
  const wide = kinds.filter((k) => k.postures.every((p) => 2 * p.width > width))
  return { by: 'wide', bound: total(wide, (p) => p.length) }
}

/** Each length has one left side and one right side; what must touch a side uses it up. */
export function sidesBound({ kinds }: Problem): Shown {
  const needing = (side: number) => kinds.filter((k) => k.postures.every((p) => p.flush & side))
  const both = total(kinds, (p) => ((p.flush & LEFT ? 1 : 0) + (p.flush & RIGHT ? 1 : 0)) * p.length)
  const one = Math.max(
    total(needing(LEFT), (p) => p.length),
    total(needing(RIGHT), (p) => p.length),
  )
  return { by: 'sides', bound: Math.max(one, Math.ceil(both / 2)) }
}

function total(kinds: readonly Kind[], of: (p: Posture) => number): number {
  return kinds.reduce((sum, k) => sum + k.count * least(k, of), 0)
}

function least(kind: Kind, of: (p: Posture) => number): number {
  return Math.min(...kind.postures.map(of))
}
