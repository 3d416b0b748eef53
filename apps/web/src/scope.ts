import type { Problem } from '@lengthwise/units'
import type { Path, Plan } from './plan.ts'
import { at, pathText } from './plan.ts'

/** `typing` names the box that is being written in: writing on in one box is one change. */
export type Change = (path: Path, value: unknown, typing?: string) => void

/** The part of the plan that a section of the form edits, and what its fields need to know. */
export interface Scope {
  readonly base: Path
  readonly value: unknown
  readonly change: Change
  readonly measureIn: 'cm' | 'mm' | 'in'
  readonly currency: string
  readonly cloths: readonly string[]
  readonly problems: readonly Problem[]
}

/** A key below a scope, written with dots: `opening.kind`. */
export const below = (scope: Scope, key: string): unknown => at(scope.value, keyPath(key))
export const setBelow = (scope: Scope, key: string, value: unknown): void =>
  scope.change([...scope.base, ...keyPath(key)], value)
/** The same while someone writes; `box` tells the boxes of one value apart. */
export const typeBelow = (scope: Scope, key: string, value: unknown, box = 0): void =>
  scope.change([...scope.base, ...keyPath(key)], value, `${fieldId(scope, key)}/${box}`)

/** The name of a field in the document, from its place in the plan; problems find their field by it. */
export const fieldId = (scope: Scope, key: string): string => idOf(pathText([...scope.base, ...keyPath(key)]))
export const idOf = (path: string): string => `at-${path.replace(/[[\].]+/g, '-').replace(/-$/, '')}`

/** Problems of a field, or of anything inside it. */
export function problemsAt(scope: Scope, key: string): readonly Problem[] {
  const path = pathText([...scope.base, ...keyPath(key)])
  return scope.problems.filter((problem) => problem.path === path || inside(problem.path, path))
}

export const inside = (path: string, outer: string): boolean =>
  path.startsWith(`${outer}.`) || path.startsWith(`${outer}[`)

export const keyPath = (key: string): Path =>
  key === '' ? [] : key.split('.').map((part) => (/^\d+$/.test(part) ? Number(part) : part))

export function measureInOf(plan: Plan): 'cm' | 'mm' | 'in' {
  const unit = plan['measure-in']
  return unit === 'in' || unit === 'mm' ? unit : 'cm'
}

export const UNIT_WORDS = { cm: 'centimetres', mm: 'millimetres', in: 'inches' } as const
