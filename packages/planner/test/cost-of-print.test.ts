import { cm } from '@lengthwise/units'
import { expect, it } from 'vitest'
import { plan } from '../src/index.ts'
import { bolt, orderOf, rectangle } from './orders.ts'

/* What a print costs in cloth, worked by hand. */

const remarks = (print: Partial<ReturnType<typeof bolt>['print']>) => {
  const plain = bolt('cloth', [100])
  const order = orderOf(
    [rectangle('mat', 60, 100, { lengthRuns: 'either' })],
    [{ ...plain, print: { ...plain.print, ...print } }],
  )
  return plan(order).goodToKnow.filter((r) => r.code.startsWith('cost-of'))
}

it('a print with a top keeps a piece from lying across: 1 m instead of 60 cm', () => {
  expect(remarks({ way: 'one-way', top: 'cut-end' })).toEqual([
    { code: 'cost-of-top', text: 'The right way up of the print costs 40 cm of cloth.' },
  ])
})

it('a print that costs nothing says nothing', () => {
  expect(remarks({ way: 'two-way' })).toEqual([])
  expect(remarks({ way: 'two-way', match: 'straight', repeat: cm(32) })).toEqual([])
})
