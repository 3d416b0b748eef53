import type { Path, Plan } from './plan.ts'
import { put } from './plan.ts'

/** What the page holds, and every state it was in before and after: undo goes back one change at a time. */
export interface History {
  readonly plan: Plan
  readonly past: readonly Plan[]
  readonly future: readonly Plan[]
  /** the box of the last change: typing on in one box is one change */
  readonly last: string | null
}

// undo keeps this many steps; they share what did not change
const KEPT = 200

export const begin = (plan: Plan): History => ({ plan, past: [], future: [], last: null })

/** One change at a path. `typing` names the box it was typed in and joins it to the change before, when that was in the same box. */
export function change(history: History, path: Path, value: unknown, typing: string | null = null): History {
  return replace(history, put(history.plan, path, value), typing)
}

/** The whole plan exchanged, as opening a file does; can be undone like any other change. */
export function replace(history: History, plan: Plan, mark: string | null = null): History {
  if (mark !== null && mark === history.last) return { ...history, plan, future: [] }
  return { plan, past: [...history.past, history.plan].slice(-KEPT), future: [], last: mark }
}

export function undo(history: History): History {
  const before = history.past.at(-1)
  if (before === undefined) return history
  return { plan: before, past: history.past.slice(0, -1), future: [history.plan, ...history.future], last: null }
}

export function redo(history: History): History {
  const [next, ...future] = history.future
  if (next === undefined) return history
  return { plan: next, past: [...history.past, history.plan], future, last: null }
}
