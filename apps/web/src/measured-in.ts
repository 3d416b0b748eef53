import { EXAMPLES } from './examples.ts'
import type { Plan } from './plan.ts'
import { at, isRecord, listOf, nameUnits, put } from './plan.ts'
import { inShopsStep, roundInches } from './round-inches.ts'
import type { Unit } from './said.ts'
import { measureInOf } from './scope.ts'
import type { History } from './store.ts'
import { replace, undo } from './store.ts'

const MARK = 'measure in'

/**
 * The plan measured in another unit. Sizes that someone gave stay what they are to the last digit, each with its unit;
 * an example nobody has changed gets round figures. Choosing the unit of before again goes back.
 */
export function measuredIn(history: History, unit: Unit): History {
  const { plan, past, last } = history
  const before = past.at(-1)
  if (last === MARK && before !== undefined && measureInOf(before) === unit) return undo(history)
  const asGiven = unit === 'in' && EXAMPLES.some((example) => example.plan === plan)
  const next = asGiven ? roundInches(plan) : soldAsUsual(nameUnits(plan, measureInOf(plan)), unit)
  return { ...replace(history, { ...next, 'measure-in': unit }), last: MARK }
}

function soldAsUsual(plan: Plan, unit: Unit): Plan {
  return listOf(plan.cloth).reduce<Plan>(
    (changed, cloth, n) =>
      isRecord(cloth) && cloth['sold-by'] !== undefined
        ? put(changed, ['cloth', n, 'sold-by'], inShopsStep(at(cloth, ['sold-by']), unit))
        : changed,
    plan,
  )
}
