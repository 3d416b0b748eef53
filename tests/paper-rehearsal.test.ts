import { readFileSync } from 'node:fs'
import { cuttingMap } from '@lengthwise/drawing'
import { readPlan } from '@lengthwise/plan-file'
import type { Result } from '@lengthwise/planner'
import { plan } from '@lengthwise/planner'
import { expect, test } from 'vitest'
import { cases } from '../packages/drawing/test/cases.ts'
import { printed, textsOf } from './paper/print.ts'
import { rehearse } from './paper/rehearse.ts'

const guestHouse = (): Result => {
  const order = readPlan(readFileSync(new URL('../fixtures/guest-house.yaml', import.meta.url), 'utf8'))
  if (!order.ok) throw new Error(order.problems.map((each) => each.message).join('\n'))
  return plan(order.value, { effort: 'quick', compareWidths: false })
}

for (const [name, result] of Object.entries({ ...cases, 'guest house': guestHouse }))
  test(`${name}: whoever does what the paper says holds exactly the listed pieces`, async () => {
    const laid = result()
    const pages = await textsOf(await printed(cuttingMap(laid, { paper: 'a4' })))
    const { cut, listed, faults } = rehearse(pages)
    expect(faults).toEqual([])
    expect([...cut.keys()].sort()).toEqual([...listed.keys()].sort())
    for (const [label, [across, along]] of cut) {
      // the list gives sizes as they lie on the bed, so a piece may be turned on the cloth
      const wanted = [...listed.get(label)!].sort((a, b) => a - b)
      const got = [across, along].sort((a, b) => a - b)
      expect(Math.abs(got[0]! - wanted[0]!), label).toBeLessThan(0.14)
      expect(Math.abs(got[1]! - wanted[1]!), label).toBeLessThan(0.14)
    }
    expect(listed.size).toBe(laid.pieces.length + laid.cloths.reduce((n, c) => n + c.remnants.length, 0))
  })

test('what is done again and again is followed one by one, and noticed when it is left out', async () => {
  const pages = await textsOf(await printed(cuttingMap(guestHouse(), { paper: 'a4' })))
  const words = pages.flat().map((item) => item.text.replace(/\s+/g, ' '))
  expect(words.filter((each) => /one each time; the rest is (6|10)\.$/.test(each)).length).toBe(2)
  const spoilt = (from: RegExp, to: string) =>
    rehearse(pages.map((page) => page.map((item) => ({ ...item, text: item.text.replace(from, to) })))).faults
  expect(spoilt(/^nothing$/, '')).toEqual([])
  expect(spoilt(/again from each/, 'then from each')).not.toEqual([])
  expect(spoilt(/^Gives 3 to 5, one each time/, 'Gives 3 and 4, one each time')).not.toEqual([])
})

test('a wrong distance, a missing line and a wrong edge are each noticed', async () => {
  const pages = await textsOf(await printed(cuttingMap(cases['twin room']!(), { paper: 'a4' })))
  const spoilt = (from: RegExp, to: string) =>
    rehearse(pages.map((page) => page.map((item) => ({ ...item, text: item.text.replace(from, to) }))))
  const right = spoilt(/^nothing$/, '')
  expect(right.faults).toEqual([])
  const wrong = spoilt(/^123\scm$/, '120 cm')
  expect(wrong.cut.get('1')).not.toEqual(right.cut.get('1'))
  expect(spoilt(/^Tear down the first length,\s*$/, 'Tear the first length,').faults).not.toEqual([])
  expect(spoilt(/^\s*from T3\.$/, 'from T2.').faults).not.toEqual([])
})
