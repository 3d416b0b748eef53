import { readFileSync } from 'node:fs'
import { readPlan } from '@lengthwise/plan-file'
import type { Result } from '@lengthwise/planner'
import { plan } from '@lengthwise/planner'
import { cm } from '@lengthwise/units'
import { expect, test } from 'vitest'

/*
 * Figures of one seam are told in several steps: each must be what lies at the machine then. Reckoned by hand from the
 * finished sizes, which the sewing-up check reads from pieces and seams alone.
 */

function planned(name: string): Result {
  const order = readPlan(readFileSync(new URL(`../fixtures/${name}.yaml`, import.meta.url), 'utf8'))
  if (!order.ok) throw new Error(order.problems.map((each) => each.message).join('\n'))
  return plan(order.value, { effort: 'quick', compareWidths: false })
}
const result = planned('whole-bed')
const finished = (item: string) => result.finished.find((row) => row.item === item)!
const steps = (item: string, said: RegExp, of: Result = result) =>
  of.sewing
    .filter((step) => step.item === item && said.test(step.text))
    .map(({ text, seamLength }) => ({ text: text.replace(/\u00a0/g, ' '), seamLength }))

test('a throw is hemmed round what it finishes at, not round what was asked', () => {
  const { width, length } = finished('throw-1')
  expect(steps('throw-1', /^Hem all four/).map((step) => step.seamLength)).toEqual([2 * (width + length)])
})

test('a skirt is hemmed and gathered after its ends are turned in, and drawn up to the deck as it is', () => {
  const { width, length } = finished('bed-skirt-1')
  // both sides and the foot
  const around = 2 * length + width
  const panels = result.pieces.filter((piece) => piece.piece.includes('/skirt'))
  const cut = panels.reduce((sum, piece) => sum + piece.cutWidth, 0)
  // seams of 1.5 cm between the panels, and 1.5 cm turned in at either end
  const run = cut - 2 * cm(1.5) * panels.length
  expect(steps('bed-skirt-1', /^Hem the lower edge/).map((step) => step.seamLength)).toEqual([run])
  expect(steps('bed-skirt-1', /two rows of long stitches/).map((step) => step.seamLength)).toEqual([2 * run])
  expect(steps('bed-skirt-1', /^Skirt to/).map((step) => step.seamLength)).toEqual([around])
  const said = `${around / 3200} cm`
  for (const step of steps('bed-skirt-1', /two rows of long stitches|^Skirt to/)) expect(step.text).toContain(said)
  expect(steps('bed-skirt-1', /at the head of the deck/).map((step) => step.seamLength)).toEqual([width])
})

test('end hems of a sheet run from selvedge to selvedge', () => {
  const { width } = finished('flat-sheet-1')
  expect(steps('flat-sheet-1', /^Hem the (head|foot)/).map((step) => step.seamLength)).toEqual([width, width])
})

test('the casing of a fitted sheet goes round the mattress', () => {
  const { width, length } = finished('fitted-sheet-1')
  expect(steps('fitted-sheet-1', /^Casing/).map((step) => step.seamLength)).toEqual([2 * (width + length)])
})

test('what width and length leave out is told with them', () => {
  expect(finished('sham-1').form).toEqual({ kind: 'flange', size: cm(5) })
  expect(finished('bed-skirt-1').form).toEqual({ kind: 'drop', size: cm(35) })
  expect(finished('fitted-sheet-1').form).toEqual({ kind: 'depth', size: cm(32) })
  expect(finished('bolster-1').form).toEqual({ kind: 'diameter', size: cm(20) })
  expect(finished('throw-1').form).toBeNull()
})

test('both rows of a French seam take up its allowance, and what is trimmed lies inside the second', () => {
  const rows = planned('pillowcases-every-style').sewing.flatMap(({ text }) => [
    ...text
      .replace(/\u00a0/g, ' ')
      .matchAll(
        /allowance ([\d.]+) cm.*?stitch ([\d.]+) cm from the edge, trim to ([\d.]+) cm.*?stitch ([\d.]+) cm from/g,
      ),
  ])
  expect(rows.length).toBeGreaterThan(5)
  for (const [, allowance, first, trimmed, second] of rows) {
    expect(Number(first) + Number(second)).toBeCloseTo(Number(allowance), 6)
    expect(Number(trimmed)).toBeLessThan(Number(second))
  }
})

test('a zip and the hems stitched together beside it are as long as the raw edge', () => {
  const sheets = planned('old-sheets')
  const [strip, beside] = steps('duvet-cover-1, duvet-cover-2', /zip/, sheets)
  // 200 cm wide with 1.5 cm at either side, and a zip of 180 cm
  expect(strip!.seamLength).toBe(cm(180))
  expect(beside!.text).toContain('23 cm in all')
})

test('the seam of a bolster is closed beside its zip', () => {
  // 90 cm long with 1.5 cm at either end, and a zip of 80 cm
  const [seam] = steps('bolster-1', /left open in the middle for the zip/)
  expect(seam!.text).toContain('80 cm left open in the middle for the zip, 6.5 cm from each raw end')
})
