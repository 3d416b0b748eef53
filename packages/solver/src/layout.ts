import type { Answer, Certificate, CutNode, Placement, Request, Status } from './model.ts'
import type { Problem, Spot } from './problem.ts'
import { placementsOf } from './problem.ts'
import { cutTree } from './tree.ts'

/** A layout in the request's own units. */
export interface Layout {
  readonly length: number
  readonly placements: readonly Placement[]
  readonly tree: CutNode | null
}

/** Spots as a layout; null when the cloth is to be cut edge to edge and they cannot be. */
export function layoutOf(problem: Problem, spots: readonly Spot[]): Layout | null {
  return layoutFrom(problem.request, placementsOf(problem, spots))
}

/** The same of placements in the request's units. */
export function layoutFrom({ field, cuts }: Request, placements: readonly Placement[]): Layout | null {
  const length = Math.max(0, ...placements.map((p) => p.y + p.length))
  if (cuts === 'free') return { length, placements, tree: null }
  const tree = cutTree({ x: 0, y: 0, width: field.width, length: field.length ?? length }, placements)
  return tree && { length, placements, tree }
}

export function answerOf(
  status: Status,
  layout: Layout | null,
  certificate: Certificate,
  steps: number,
  missing: Answer['missing'] = [],
): Answer {
  return {
    status,
    length: layout?.length ?? null,
    bound: certificate.bound,
    certificate,
    placements: layout?.placements ?? [],
    tree: layout?.tree ?? null,
    steps,
    missing,
  }
}
