import { readPlan } from '@lengthwise/plan-file'
import { plan, verify } from '@lengthwise/planner'
import { cm } from '@lengthwise/units'
import { expect, it } from 'vitest'

it('four pillowcases from 240 cm are all of one piece: separate faces would be a seam more for the same 1.9 m', () => {
  const read = readPlan(`
plan: 1
title: Pillowcases
wash: none
make:
  - item: pillowcase
    style: inside-flap
    faces: any
    count: 4
    finished: 50 x 75 cm
    cloth: percale
cloth:
  - name: percale
    from: bolt
    widths: [240 cm]
    sold-by: 10 cm
    spare-each-end: 5 cm
`)
  if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('\n'))
  const result = plan(read.value)
  expect(verify(result)).toEqual([])
  // 4 × 53 across, 174 along
  expect(result.cloths[0]?.buy?.length).toBe(cm(190))
  expect(result.pieces.map((p) => [p.piece, p.cutWidth, p.cutLength])).toEqual(
    [1, 2, 3, 4].map((n) => [`pillowcase-${n}`, cm(53), cm(174)]),
  )
  expect(result.widths[0]?.seams).toBe(0)
})
