import type { Order } from '@lengthwise/pieces'
import type { Result } from '@lengthwise/planner'
import type { Outcome } from '@lengthwise/units'

/** What this package offers. */
export type PlanFileApi = {
  /** YAML or JSON text to an order; every problem at once, with line and column */
  readPlan(text: string): Outcome<Order>
  /** YAML or JSON text to the plain object of the plan's keys, its syntax and limits checked and nothing else: what the page opens and edits */
  parsePlan(text: string): Outcome<Readonly<Record<string, unknown>>>
  /** a plain object of the plan's keys (what the page edits) to the same order */
  readPlanObject(plan: unknown): Outcome<Order>
  /** plan keys back to YAML text, comments not kept: what the page saves */
  writePlan(plan: unknown): string
  /** the layout file, format lengthwise-layout/1: numbers in millimetres */
  writeLayout(result: Result): string
  planSchema(): object
  layoutSchema(): object
  /** the commented sample plan that `new` writes */
  SAMPLE_PLAN: string
}
