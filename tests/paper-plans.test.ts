import { readFileSync } from 'node:fs'
import { cuttingMap } from '@lengthwise/drawing'
import { readPlan } from '@lengthwise/plan-file'
import { plan } from '@lengthwise/planner'
import { expect, test } from 'vitest'
import { clashes, missingLabels, outsiders, struckThrough } from '../packages/drawing/test/faults.ts'
import { printed, textsOf } from './paper/print.ts'
import { rehearse } from './paper/rehearse.ts'

// no straight cut goes through this one: four pieces turn round a fifth
const PINWHEEL = `
plan: 1
title: Pinwheel
measure-in: cm
make:
  - { item: rectangle, name: wide, cut: 60 x 40 cm, count: 2, cloth: velvet, length-runs: along }
  - { item: rectangle, name: tall, cut: 40 x 60 cm, count: 2, cloth: velvet, length-runs: along }
  - { item: rectangle, name: middle, cut: 20 x 20 cm, cloth: velvet }
cloth:
  - { name: velvet, from: bolt, widths: [100 cm], sold-by: 10 cm, divide-by: shears }
`

test('cuts that end inside the cloth say where, and the pieces fall out with the last', async () => {
  const order = readPlan(PINWHEEL)
  if (!order.ok) throw new Error(order.problems.map((each) => each.message).join('\n'))
  const result = plan(order.value)
  expect(result.cloths[0]!.divisions.some((d) => d.to - d.from < d.hand.width)).toBe(true)
  const scene = cuttingMap(result, { paper: 'a4' })
  expect([...clashes(scene), ...outsiders(scene), ...struckThrough(scene), ...missingLabels(result, scene)]).toEqual([])
  const { cut, listed, faults } = rehearse(await textsOf(await printed(scene)))
  expect(faults).toEqual([])
  expect([...cut.keys()].sort()).toEqual([...listed.keys()].sort())
})

test.each(['old-sheets', 'inches', 'half-drop', 'covers-every-opening', 'whole-bed'])(
  '%s: the paper is sound',
  async (name) => {
    const order = readPlan(readFileSync(new URL(`../fixtures/${name}.yaml`, import.meta.url), 'utf8'))
    if (!order.ok) throw new Error(order.problems.map((each) => each.message).join('\n'))
    const result = plan(order.value, { effort: 'quick', compareWidths: false })
    const scene = cuttingMap(result, { paper: 'a4' })
    expect([...clashes(scene), ...outsiders(scene), ...struckThrough(scene), ...missingLabels(result, scene)]).toEqual(
      [],
    )
    const { cut, listed, faults } = rehearse(await textsOf(await printed(scene)))
    expect(faults).toEqual([])
    expect([...cut.keys()].sort()).toEqual([...listed.keys()].sort())
  },
)
