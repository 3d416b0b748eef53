import { expect, test } from 'vitest'
import type { Demand } from '../src/index.ts'
import { check, lay } from '../src/index.ts'
import { naiveLength } from './naive.ts'
import { open, piece } from './orders.ts'

const tied = (demand: Demand, repeat: number, offset: number, absolute: boolean): Demand => ({
  ...demand,
  tie: { group: 'a', axis: 'along', repeat, offset, absolute },
})

test('what keeps the phase of the cloth itself moves past a flaw by whole repeats', () => {
  const order = open(6, [tied(piece('three', 3, 5, 4), 5, 7, true), tied(piece('wide', 1, 6, 2), 5, 2, true)])
  const flaws = [
    { x: 5, y: 0, width: 1, length: 2 },
    { x: 2, y: 3, width: 1, length: 1 },
  ]
  const flawed = { ...order, field: { ...order.field, flaws } }
  const answer = lay(flawed, { effort: 10_000 })
  expect(check(flawed, answer)).toEqual([])
  expect(answer.length).toBe(naiveLength(flawed, 40))
})

test('an offset below nothing is the same as one of less than a repeat', () => {
  for (const offset of [-320, 320, 960]) {
    const order = open(5, [tied(piece('two', 2, 2, 320), 640, offset, false)])
    const answer = lay(order, { effort: 10_000 })
    expect(check(order, answer)).toEqual([])
    expect([answer.status, answer.length]).toEqual(['proved', 320])
  }
})
