import { cm } from '@lengthwise/units'
import { expect, it } from 'vitest'
import { plan } from '../src/index.ts'
import { bolt, orderOf, rectangle } from './orders.ts'

/* Rows of widths, worked by hand. */

it('a width with nothing to buy costs 0, and is enough down to where nothing need be bought', () => {
  // two of 60 × 100 beside each other on 115 cm of a bolt at hand
  const order = orderOf(
    [rectangle('mat', 60, 100, { count: 2 })],
    [bolt('cloth', [150], { have: cm(115), spareEachEnd: cm(5) })],
  )
  const [row] = plan(order).widths
  expect(row).toMatchObject({ buyLength: 0, cost: 0n, enoughFrom: cm(120) })
})
