import { readPlan } from '@lengthwise/plan-file'
import { plan } from '@lengthwise/planner'
import { cm } from '@lengthwise/units'
import { expect, test } from 'vitest'

/* A sheet from selvedge to selvedge is as wide as its cloth, never less than asked. */

const sheetFrom = (widths: string) => {
  const read = readPlan(`
plan: 1
title: Selvedge to selvedge
wash: none
mark-to: 0.5 cm
make:
  - { item: flat-sheet, finished: 150 x 200 cm, hems: { left: selvedge, right: selvedge }, cloth: linen }
cloth:
  - { name: linen, from: bolt, widths: [${widths}], price: 10.00 per m }
`)
  if (!read.ok) throw new Error('the plan has mistakes')
  return plan(read.value, { effort: 'quick' })
}

test('a width below the size asked is never enough', () => {
  expect(sheetFrom('160 cm').widths[0]).toMatchObject({ possible: true, enoughFrom: cm(150) })
})

test('narrower cloth cannot serve, and how wide it must be is said', () => {
  const result = sheetFrom('140 cm')
  expect(result.status).toBe('cannot-be-cut')
  expect(result.missing).toMatchObject([{ cloth: 'linen', direction: 'across', short: cm(10) }])
  expect(result.missing[0]?.words).toMatch(/150 cm or more would do/)
})
