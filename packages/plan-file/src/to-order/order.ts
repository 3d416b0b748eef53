import type { Order, Seam } from '@lengthwise/pieces'
import type { PlanShape } from '../schema/plan.ts'
import { clothOf } from './cloth.ts'
import { itemOf } from './items.ts'
import { usualFigures } from './usual-figures.ts'

/** A plan that the schema and the checks across it have let through, as an order. */
export function orderOf(plan: PlanShape): Order {
  const measureIn = plan['measure-in']
  const figures = usualFigures(measureIn)
  const seam: Seam = { kind: plan.seam.kind ?? 'plain', allowance: plan.seam.allowance ?? figures.seamAllowance }
  const only = plan.cloth.length === 1 ? [plan.cloth[0]!.name] : []
  return {
    title: plan.title,
    date: plan.date ?? null,
    measureIn,
    currency: plan.currency ?? plan.cloth.find((cloth) => cloth.currency)?.currency ?? null,
    wash: plan.wash,
    seam,
    markTo: plan['mark-to'],
    worthKeeping: plan['worth-keeping'],
    items: plan.make.map((item, i) => itemOf(item, { path: `make[${i}]`, seam, only, figures, measureIn })),
    cloths: plan.cloth.map((cloth) => clothOf(cloth, figures)),
  }
}
