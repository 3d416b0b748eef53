import { expect, it } from 'vitest'
import { plan } from '../src/index.ts'
import { bolt, orderOf, rectangle, remnant } from './orders.ts'

/* Six napkins of 40 × 40: the remnant takes two, worked by hand. */

const napkins = (sameCloth: 'item' | 'none' | 'all') =>
  plan(
    orderOf(
      [rectangle('napkin', 40, 40, { count: 6, cloth: ['cloth', 'own'], sameCloth })],
      [bolt('cloth', [80]), remnant('own', 40, 80)],
    ),
  )

it.each(['item', 'none'] as const)('%s: copies come from any cloth, so that less is bought', (sameCloth) => {
  const result = napkins(sameCloth)
  expect(result.cloths.map((c) => [c.name, c.placed.length])).toEqual([
    ['cloth', 4],
    ['own', 2],
  ])
  expect(result.proof.status).toBe('proved')
})

it('all: every copy comes from one cloth', () => {
  const result = napkins('all')
  expect(result.cloths.map((c) => [c.name, c.placed.length])).toEqual([['cloth', 6]])
  expect(result.proof.status).toBe('proved')
})
