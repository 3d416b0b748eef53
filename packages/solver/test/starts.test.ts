import { expect, test } from 'vitest'
import type { Request } from '../src/index.ts'
import { check } from '../src/index.ts'
import { answerOf, layoutOf } from '../src/layout.ts'
import { endOf, normalise } from '../src/problem.ts'
import { besideWide } from '../src/starts/beside.ts'
import { quickStart } from '../src/starts/index.ts'
import { ORDERS, rows } from '../src/starts/rows.ts'
import { open, piece, randomOrder } from './orders.ts'

test('two that are longer than a row lie beside three that are wide: 12 by hand, where rows take more', () => {
  // three of 6 x 4 one after another are 12 long, as are two of 4 x 6 beside them
  const problem = normalise(open(10, [piece('wide', 3, 6, 4), piece('long', 2, 4, 6)]))!
  expect(endOf(problem, quickStart(problem)!) * problem.unitAlong).toBe(12)
  for (const order of ORDERS) expect(endOf(problem, rows(problem, order)!) * problem.unitAlong).toBeGreaterThan(12)
})

test('what lies beside wide pieces passes the checker', () => {
  let laid = 0
  for (let seed = 0; seed < 300; seed++) {
    const rules = { pieces: 9, width: 11, turning: seed % 2 === 0, flush: seed % 3 === 0 }
    const request: Request = randomOrder(seed, rules)
    const problem = normalise(request)
    const spots = problem && besideWide(problem)
    const layout = spots && layoutOf(problem, spots)
    if (!layout) continue
    laid++
    expect(check(request, answerOf('best-found', layout, { by: 'area', bound: 0 }, 0)), `seed ${seed}`).toEqual([])
  }
  expect(laid).toBeGreaterThan(100)
})
