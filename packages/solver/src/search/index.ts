import type { Control } from '../model.ts'
import type { Problem, Spot } from '../problem.ts'
import { growStrip } from './guillotine.ts'
import { spotsOf } from './tree.ts'

/** What a search found within its steps: never a proof. One step is one block of pieces tried in one place. */
export interface Searched {
  /** null: nothing better than what the caller has */
  readonly spots: readonly Spot[] | null
  readonly steps: number
}

/**
 * The shortest layout in guillotine divisions found within `control.effort` steps.
 *
 * @param bound no layout is shorter, in the problem's units: the search ends when it is met
 * @param longest only layouts up to this length are of use: the caller's best, or what its rules allow
 */
export function searchGuillotine(problem: Problem, control: Control, bound: number, longest: number): Searched {
  const { found, steps } = growStrip(problem, control, bound, longest)
  return { spots: found === null ? null : spotsOf(found.part), steps }
}
