import type { Answer, Certificate, CutNode, Placement, Status } from './model.ts'
import type { Problem, Spot } from './problem.ts'
import { endOf, placementsOf } from './problem.ts'
import { cutTree } from './tree.ts'

/** A layout in the request's own units. */
export interface Layout {
  readonly length: number
  readonly placements: readonly Placement[]
  readonly tree: CutNode | null
}

/** Spots as a layout; null when the cloth is to be cut edge to edge and they cannot be. */
export function layoutOf(problem: Problem, spots: readonly Spot[]): Layout | null {
  const placements = placementsOf(problem, spots)
  const length = endOf(problem, spots) * problem.unitAlong
  if (problem.cuts === 'free') return { length, placements, tree: null }
  const { field } = problem.request
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
