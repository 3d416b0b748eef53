import type { Result } from '@lengthwise/planner'
import type { Outcome, Problem } from '@lengthwise/units'
import type { Plan } from './plan.ts'

/** What the page asks of the worker. */
export type Ask =
  | { readonly ask: 'plan'; readonly plan: Plan }
  | { readonly ask: 'open'; readonly text: string }
  | { readonly ask: 'write'; readonly plan: Plan }
  | { readonly ask: 'layout'; readonly result: Result }

/** What the worker tells: `better` may come any number of times before `done`. */
export type Tell =
  | { readonly tell: 'problems'; readonly problems: readonly Problem[] }
  | { readonly tell: 'progress'; readonly words: string }
  | { readonly tell: 'better' | 'done'; readonly result: Result }
  | { readonly tell: 'opened'; readonly outcome: Outcome<Plan> }
  | { readonly tell: 'text'; readonly text: string }
  | { readonly tell: 'fault'; readonly message: string }
