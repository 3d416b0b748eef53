import { readFileSync } from 'node:fs'
import { readPlan } from '@lengthwise/plan-file'
import { plan } from '@lengthwise/planner'
import { expect, test } from 'vitest'

const planned = (text: string) => {
  const order = readPlan(text)
  if (!order.ok) throw new Error(order.problems.map((each) => each.message).join('\n'))
  return plan(order.value, { effort: 'quick' })
}
const chosen = (result: ReturnType<typeof planned>) =>
  Object.fromEntries(result.widths.filter((row) => row.chosen).map((row) => [row.cloth, row.seams]))

test('a back in one piece has no seam, whatever the front of another cloth has', () => {
  // gingham: a centre and two sides, and a pillowcase in two faces; sheeting: one back
  const result = planned(readFileSync(new URL('../fixtures/inches.yaml', import.meta.url), 'utf8'))
  expect(chosen(result)).toEqual({ gingham: 3, sheeting: 0 })
})

test('panels joined across count each seam once, though it meets in several stretches', () => {
  const result = planned(`
plan: 1
measure-in: cm
wash: none
make:
  - item: duvet-cover
    finished: 200 x 200 cm
    front: { cloth: narrow, cross-joins: 2 }
    back: { cloth: wide }
cloth:
  - { name: narrow, from: bolt, widths: [75 cm] }
  - { name: wide, from: bolt, widths: [240 cm] }
`)
  // three widths side by side, whatever parts each is made of: one seam less than there are pieces
  const front = result.pieces.filter(({ piece }) => piece.includes('/front'))
  expect(front.length).toBeGreaterThan(2)
  expect(chosen(result)).toEqual({ narrow: front.length - 1, wide: 0 })
})
