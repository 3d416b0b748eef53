import { readFileSync } from 'node:fs'
import { cuttingMap } from '@lengthwise/drawing'
import { readPlan } from '@lengthwise/plan-file'
import { plan } from '@lengthwise/planner'
import { expect, test } from 'vitest'
import { clashes, missingLabels, outsiders, struckThrough } from '../packages/drawing/test/faults.ts'
import { printed, textsOf } from './paper/print.ts'
import { rehearse } from './paper/rehearse.ts'

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
