import { readPlan } from '@lengthwise/plan-file'
import type { Result } from '@lengthwise/planner'
import { plan } from '@lengthwise/planner'
import { expect, test } from 'vitest'

/*
 * Plans that once ran on far beyond their effort. A clock would tell nothing on another machine; a run asks every few
 * milliseconds whether to stop, so the number of questions tells how long it goes on, where it asks as often
 * as it should: work between two questions is not seen here.
 */

function questions(text: string, status: Result['status'] = 'laid'): number {
  const read = readPlan(text)
  if (!read.ok) throw new Error(read.problems.map((p) => `${p.path}: ${p.message}`).join('\n'))
  let asked = 0
  const result = plan(read.value, {
    effort: 'quick',
    stop: () => {
      asked++
      return false
    },
  })
  expect(result.status).toBe(status)
  return asked
}

test('strips on an owned length beside a bolster on a bolt of three widths', () => {
  expect(
    questions(`
measure-in: in
wash: before-cutting
mark-to: 1/4 in
seam: { kind: french, allowance: 6/8 in }
make:
  - { item: bolster, diameter: 5 6/8 in, length: 35 5/8 in, ends: tied, cloth: b }
  - { item: strips, count: 2, name: binding, width: 2 1/8 in, run: 179 5/8 in, cloth: a }
cloth:
  - { name: a, divide-by: shears, widths: [44 7/8], sold: no, have: 323 7/8 in, shrinks: { along: 9 %, across: 1 % } }
  - { name: b, divide-by: shears, widths: [44 5/8, 57 4/8, 68 2/8], sold-by: 1/4 yd }
`),
  ).toBeLessThan(10_000)
})

test('a thousand pillowcases', () => {
  expect(
    questions(`
make: [{ item: pillowcase, finished: 50 x 75, count: 1000 }]
cloth: [{ name: a, widths: [150] }]
`),
  ).toBeLessThan(8_000)
})

test('one pillowcase from any of a hundred bolts in three widths each', () => {
  const names = Array.from({ length: 100 }, (_, i) => `c${i}`)
  const bolts = names.map((n, i) => `{ name: ${n}, widths: [${140 + (i % 7)}, ${150 + (i % 5)}, ${220 + (i % 9)}] }`)
  expect(
    questions(`
make: [{ item: pillowcase, finished: 50 x 75, cloth: [${names.join()}] }]
cloth: [${bolts.join()}]
`),
  ).toBeLessThan(10_000)
})

test('how many more sheets would do, where a hem that must be kept finds no place on any', () => {
  expect(
    questions(
      `
make:
  - { item: rectangle, name: mat, count: 2, cut: 60 x 60, edges: { foot: { kept-hem: 2 } }, length-runs: either, cloth: sheets }
  - { item: rectangle, name: cloth, cut: 30 x 50, length-runs: either, cloth: sheets }
  - { item: rectangle, name: top, count: 2, cut: 60 x 50, edges: { left: { kept-hem: 2 } }, length-runs: either, cloth: sheets }
cloth:
  - { name: sheets, from: sheet, size: 60 x 160, count: 2, divide-by: shears, keep: { left: must }, hems: { head: 10, foot: 2, left: 2, right: none } }
`,
      'cannot-be-cut',
    ),
  ).toBeLessThan(50_000)
})
