import type { Order } from '@lengthwise/pieces'
import { checkOrder } from '@lengthwise/pieces'
import type { Outcome, Problem } from '@lengthwise/units'
import { bad, good } from '@lengthwise/units'
import { foundAcross } from './across.ts'
import { LIMITS } from './limits.ts'
import type { Path } from './path.ts'
import { isRecord, pathOf } from './path.ts'
import { notAPlan, plainObject } from './plain-data.ts'
import type { Place } from './plan-text.ts'
import { planText } from './plan-text.ts'
import { foundIn } from './problems.ts'
import { measureInOf, planShape } from './schema/plan.ts'
import { longSideFirst } from './short-side.ts'
import { orderOf } from './to-order/order.ts'

type Places = (path: Path, what?: 'key' | 'value') => Place | undefined

/** A plan in YAML or JSON to an order. Every problem at once, each with its path, line, column and next step. */
export function readPlan(text: string): Outcome<Order> {
  const { data, problems, place } = planText(text)
  return orderFrom(data, problems, place)
}

/** A plan as an object of its keys, such as the page edits, to the same order; problems have a path and no line. */
export function readPlanObject(plan: unknown): Outcome<Order> {
  const { data, problems } = plainObject(plan)
  return orderFrom(data, problems, () => undefined)
}

/** The keys of a plan as a plain object; only its syntax and its limits are looked at. */
export function parsePlan(text: string): Outcome<Readonly<Record<string, unknown>>> {
  const { data, problems, place } = planText(text)
  const unread = problems.length > 0 ? problems : [notAPlan(data)].filter((problem) => problem !== undefined)
  return unread.length > 0 || !isRecord(data) ? { ok: false, problems: told(unread, place) } : good(data)
}

function orderFrom(data: unknown, problems: readonly Problem[], places: Places): Outcome<Order> {
  if (!isRecord(data)) {
    const none = notAPlan(data)
    return { ok: false, problems: told(problems.length > 0 || !none ? problems : [none], places) }
  }
  const parsed = planShape(measureInOf(data)).safeParse(data)
  const found = [...problems, ...(parsed.success ? [] : foundIn(parsed.error.issues, data)), ...foundAcross(data)]
  if (found.length > 0 || !parsed.success) return { ok: false, problems: told(found, places) }
  const order = orderOf(parsed.data)
  const contrary = [...longSideFirst(order), ...checkOrder(order)]
  return contrary.length > 0 ? bad(...told(contrary, places)) : good(order)
}

/** Problems with their places, in the order of the text, each told once, and no more of them than anyone reads. */
function told(problems: readonly Problem[], places: Places): Problem[] {
  const empty = new Set(problems.filter(({ code }) => code === 'no-value').map(({ path }) => path))
  const once = new Map<string, Problem>()
  for (const problem of problems) {
    const { code, path, message, hint } = problem
    if (code === 'missing' && empty.has(path)) continue
    const aboutKey = 'aboutKey' in problem && problem.aboutKey === true
    const place = problem.line === undefined ? places(pathOf(path), aboutKey ? 'key' : 'value') : (problem as Place)
    const entry = place
      ? { code, path, message, hint, line: place.line, column: place.column }
      : { code, path, message, hint }
    const name = JSON.stringify([code, path, message])
    if (!once.has(name)) once.set(name, entry)
  }
  const inOrder = [...once.values()].sort((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0))
  if (inOrder.length <= LIMITS.problems) return inOrder
  return [
    ...inOrder.slice(0, LIMITS.problems),
    { code: 'more-problems', path: '', message: 'There are more problems than these', hint: 'Mend these first' },
  ]
}
