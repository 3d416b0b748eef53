import { answerInWords, shopNote } from '@lengthwise/drawing'
import { readPlan } from '@lengthwise/plan-file'
import { plan } from '@lengthwise/planner'
import { expect, test } from 'vitest'

/* Thread is bought by the reel: one figure in the basket, on the note and in words. */

const basket = (unit: 'cm' | 'in') => {
  const read = readPlan(`
plan: 1
title: Pillowcases
wash: none
measure-in: ${unit}
make:
  - { item: pillowcase, style: inside-flap, count: 4, finished: 50 cm x 75 cm, cloth: linen }
cloth:
  - { name: linen, from: bolt, widths: [150 cm], price: 10.00 per m }
`)
  if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('\n'))
  return plan(read.value, { effort: 'quick' })
}

test.each([
  ['cm', 3_200_000, 320_000, 'm'],
  ['in', 360 * 8128, 292_608, 'yd'],
] as const)('thread in %s', (unit, step, one, sign) => {
  const result = basket(unit)
  const { quantity } = result.buy.find((line) => line.what === 'thread')!
  expect(quantity % step).toBe(0)
  const words = new RegExp(`\\b${quantity / one}[ \\u00a0]${sign} of sewing thread`)
  expect(answerInWords(result).buy.join('\n')).toMatch(words)
  expect(shopNote(result)).toContain(`${quantity / one}`)
})
