import { readFileSync } from 'node:fs'
import type { Page, Scene } from '@lengthwise/drawing'
import { cuttingMap, marksOf } from '@lengthwise/drawing'
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
    // names are said in full or in fewer words, never cut short
    expect(wordsOf(scene, 'map').filter((words) => words.includes('…'))).toEqual([])
    const { cut, listed, faults } = rehearse(await textsOf(await printed(scene)))
    expect(faults).toEqual([])
    expect([...cut.keys()].sort()).toEqual([...listed.keys()].sort())
  },
)

test('sheets cut alike share one map and one order, which say what the second gives', async () => {
  const order = readPlan(readFileSync(new URL('../fixtures/old-sheets.yaml', import.meta.url), 'utf8'))
  if (!order.ok) throw new Error(order.problems.map((each) => each.message).join('\n'))
  const result = plan(order.value, { effort: 'quick', compareWidths: false })
  const second = result.cloths.find((cloth) => cloth.name === 'old-sheets' && cloth.piece === 2)!
  const scene = cuttingMap(result, { paper: 'a4' })
  expect(wordsOf(scene, 'map').filter((words) => /Two, cut alike; the second gives /.test(words)).length).toBe(1)
  const pages = await textsOf(await printed(scene))
  const { cut, faults } = rehearse(pages)
  expect(faults).toEqual([])
  for (const piece of second.placed) {
    const [across, along] = cut.get(piece.label)!
    expect(Math.abs(across - piece.width / 3200)).toBeLessThan(0.13)
    expect(Math.abs(along - piece.length / 3200)).toBeLessThan(0.13)
  }
  // a wrong pair and a map left out are noticed
  const spoilt = (from: RegExp, to: string) =>
    rehearse(pages.map((page) => page.map((item) => ({ ...item, text: item.text.replace(from, to) })))).faults
  expect(spoilt(/From the second come \d+ for/, 'From the second come 5 for 99 and')).not.toEqual([])
  expect(rehearse(pages.filter((page) => !/^Cutting map: old sheets/.test(page[0]!.text))).faults).not.toEqual([])
})

const wordsOf = (scene: Scene, kind: Page['kind']): readonly string[] =>
  scene.pages
    .filter((page) => page.kind === kind)
    .flatMap((page) => marksOf(page).flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])))
