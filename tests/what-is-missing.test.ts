import { readPlan } from '@lengthwise/plan-file'
import type { Missing } from '@lengthwise/planner'
import { plan } from '@lengthwise/planner'
import { mm } from '@lengthwise/units'
import { expect, test } from 'vitest'

/* Plans that cannot be cut: which cloth is too small, in which direction and by how much; worked by hand. */

function missing(make: string, cloth: string): readonly Missing[] {
  const read = readPlan(`
plan: 1
title: Too small
wash: none
mark-to: 0.5 cm
make:
  - ${make}
cloth:
  - { name: print, from: bolt, widths: [240 cm], price: 10.00 per m }
  - ${cloth}
`)
  if (!read.ok) throw new Error(read.problems.map((p) => `${p.path}: ${p.message}`).join('\n'))
  const result = plan(read.value, { effort: 'quick' })
  expect(result.status).toBe('cannot-be-cut')
  return result.missing
}

test('a cover’s back from kept hems on a sheet 4 cm too short', () => {
  const short = missing(
    `{ item: duvet-cover, finished: 200 x 200 cm, front: { cloth: print }, back: { cloth: sheet, zip-edge: kept-hems }, opening: { kind: zip, at: foot } }`,
    '{ name: sheet, from: sheet, size: 204 x 200 cm, hems: { head: 10 cm, foot: 2.5 cm, left: selvedge, right: selvedge } }',
  )
  expect(short).toMatchObject([{ cloth: 'sheet', direction: 'along', short: mm(40), width: mm(2040) }])
})

test('how much a sheet is too short is said once', () => {
  const [lacks] = missing(
    '{ item: rectangle, name: runner, cut: 60 x 206.5 cm, length-runs: along, cloth: sheet }',
    '{ name: sheet, from: sheet, size: 204 x 200 cm }',
  )
  expect(lacks?.words).toMatch(/the cloth is too short; it is 6.5 cm too short$/)
})

test('a right selvedge from a remnant that has only the left one, its print one way up', () => {
  const [lacks] = missing(
    '{ item: rectangle, name: runner, cut: 40 x 60 cm, cloth: left-over, edges: { right: selvedge } }',
    '{ name: left-over, from: remnant, size: 110 x 140 cm, selvedges: left, print: { way: one-way, top: cut-end } }',
  )
  expect(lacks).toMatchObject({ cloth: 'left-over', short: null })
  expect(lacks?.words).toMatch(
    /needs a selvedge at its right edge, and as its print must lie left-over has none at its right/,
  )
})

test('a width that was tried is not recommended', () => {
  const [lacks] = missing(
    '{ item: rectangle, name: mat, cut: 100 x 150 cm, cloth: left-over }',
    '{ name: left-over, from: remnant, size: 110 x 140 cm }',
  )
  expect(lacks).toMatchObject({ cloth: 'left-over', direction: 'along', short: mm(100) })
  expect(lacks?.words).not.toMatch(/or more would do/)
})
