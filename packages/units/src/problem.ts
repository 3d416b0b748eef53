/**
 * Something wrong or worth saying, as data: closed code, where, what, and the next step.
 * Mistakes are collected and handed back together; exceptions are for programmer mistakes.
 */
export interface Problem {
  readonly code: string
  /** where in the plan, such as `make[0].front.joined` or `cloth[1].widths[2]`; empty for the whole plan */
  readonly path: string
  readonly message: string
  /** the next step; never empty */
  readonly hint: string
  /** one-based, when the plan was read from text */
  readonly line?: number
  readonly column?: number
}

export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] }

export const good = <T>(value: T): Outcome<T> => ({ ok: true, value })
export const bad = <T>(...problems: Problem[]): Outcome<T> => ({ ok: false, problems })
