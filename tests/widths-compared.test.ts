import { bestFirst, comparedWords, cuttingMap, marksOf, measureIn, shopNote } from '@lengthwise/drawing'
import { readPlan } from '@lengthwise/plan-file'
import type { Result } from '@lengthwise/planner'
import { plan } from '@lengthwise/planner'
import { expect, test } from 'vitest'

function planned(price: string): Result {
  const order = readPlan(`
plan: 1
measure-in: cm
currency: EUR
wash: none
make:
  - { item: rectangle, name: runner, cut: 60 x 200 cm, count: 4, cloth: stripe, length-runs: along }
  - { item: rectangle, name: cloth, cut: 60 x 60 cm, cloth: lining, length-runs: along }
cloth:
  - { name: stripe, from: bolt, widths: [{ width: 120 cm, price: 20.00 per m }, { width: 250 cm, price: 5.00 per m }], sold-by: 10 cm }
  - { name: lining, from: bolt, widths: [60 cm]${price}, sold-by: 10 cm }
`)
  if (!order.ok) throw new Error(order.problems.map((each) => each.message).join('\n'))
  return plan(order.value, { effort: 'quick' })
}

const rowsOf = (result: Result) =>
  bestFirst(
    result.widths.filter((row) => row.cloth === 'stripe'),
    result,
  )
const compared = (result: Result): readonly string[] =>
  rowsOf(result).map(
    (row) => `${row.width / 3200}: ${said(comparedWords(row, rowsOf(result)[0], result, measureIn('cm')))}`,
  )
const said = (words: string): string => words.replace(/\u00a0/g, ' ')

// four runners and 5 cm at each end take 410 cm of 120 or 210 cm of 250: 4.92 or 5.25 square metres, 82.00 or 10.50
test('where every cloth has a price, cost decides and is told', () => {
  expect(compared(planned(', price: 1.00 per m'))).toEqual(['250: lowest cost', '120: 71.50 more'])
})

test('where one has none, area decides, and nothing is called the lowest cost', () => {
  const result = planned('')
  expect(result.proof.objective).toBe('area')
  expect(compared(result)).toEqual(['120: least cloth', '250: 0.3 m² more cloth'])
  const words = cuttingMap(result, { paper: 'a4' }).pages.flatMap((page) =>
    marksOf(page).flatMap((mark) => (mark.kind === 'text' ? [said(mark.text)] : [])),
  )
  expect(words.join(' ')).not.toMatch(/lowest cost|-\d/i)
  expect(shopNote(result)).toMatch(/120 cm +4\.1 m +82\.00 <- best/)
})
