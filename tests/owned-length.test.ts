import { readPlan } from '@lengthwise/plan-file'
import { plan } from '@lengthwise/planner'
import { expect, test } from 'vitest'

/* Whoever owns as much of a bolt as the plan would buy buys nothing: the layout found for the shop is used on the owned length. */

const MILLIMETRE = 320

test.each([
  [2, ''],
  [20, ''],
  [3, ''],
  [7, ', divide-by: shears'],
  [9, ', divide-by: shears'],
])('an owned length as long as what would be bought is used, order %d%s', (i, dividedBy) => {
  const make = Array.from(
    { length: 4 + (i % 4) },
    (_, k) =>
      `{ item: rectangle, cut: ${23 + ((i * 17 + k * 31) % 67)} x ${29 + ((i * 13 + k * 41) % 83)}, count: ${2 + ((i + k) % 5)} }`,
  )
  const planned = (have: string) => {
    const read = readPlan(`make: [${make}]\ncloth: [{ name: a, widths: [150], sold-by: 1 cm ${dividedBy} ${have} }]`)
    if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('\n'))
    return plan(read.value, { effort: 'quick', compareWidths: false })
  }
  const bought = planned('').widths[0]!.buyLength!
  expect(bought).toBeGreaterThan(0)
  expect(planned(`, have: ${bought / MILLIMETRE} mm`).proof.value).toBe(0n)
})
