import { cm, inches, length, percent, toCoins } from '@lengthwise/units'
import { describe, expect, it } from 'vitest'
import { buyLength, lengthOnTable, moneyFor } from '../src/buying.ts'
import { bolt, orderOf } from './orders.ts'

const first = orderOf([], [], { wash: 'before-cutting' })
const never = orderOf([], [], { wash: 'none' })

describe('what to buy for a laid length', () => {
  it('adds the squared ends, undoes the shrinkage by division, rounds up to the step', () => {
    const cloth = bolt('cloth', [150], { spareEachEnd: cm(5), shrinks: { along: percent(5), across: percent(3) } })
    // (610.5 + 10) / 0.95 = 653.2
    expect(buyLength(first, cloth, cm(610.5))).toBe(cm(660))
    expect(lengthOnTable(first, cloth, cm(660))).toBe(cm(627))
    // (609 + 10) / 0.95 = 651.6, not washed 619
    expect(buyLength(first, cloth, cm(609))).toBe(cm(660))
    expect(buyLength(never, cloth, cm(609))).toBe(cm(620))
  })

  it('200 cm at 5 % takes 210.526 cm, not 210 (shrinkage by division)', () => {
    const cloth = bolt('cloth', [150], { soldBy: length(0), shrinks: { along: percent(5), across: percent(0) } })
    const bought = buyLength(first, cloth, cm(200))
    expect(bought).toBe(Math.ceil(cm(200) / 0.95))
    expect(lengthOnTable(first, cloth, bought)).toBe(cm(200))
    expect(lengthOnTable(first, cloth, length(bought - 1))).toBeLessThan(cm(200))
  })

  it('is at least the smallest sale, then a whole step', () => {
    const cloth = bolt('cloth', [150], { smallestSale: cm(55), soldBy: cm(10) })
    expect(buyLength(never, cloth, cm(12))).toBe(cm(60))
  })

  it('is not rounded when it is a whole step already', () => {
    expect(buyLength(never, bolt('cloth', [150]), cm(950))).toBe(cm(950))
    expect(buyLength(never, bolt('cloth', [150]), length(cm(950) + 1))).toBe(cm(960))
    const yards = bolt('cloth', [150], { soldBy: inches(4.5) })
    expect(buyLength(never, yards, inches(112))).toBe(inches(112.5))
  })

  it('adds one repeat when a motif is to be centred and its place is not known', () => {
    const print = { ...bolt('cloth', [150]).print, repeat: cm(64) }
    const unknown = bolt('cloth', [150], { print: { ...print, motif: { first: null } } })
    const known = bolt('cloth', [150], { print: { ...print, motif: { first: cm(12) } } })
    expect(buyLength(never, unknown, cm(100))).toBe(cm(170))
    expect(buyLength(never, known, cm(100))).toBe(cm(100))
  })

  it('costs price times length', () => {
    expect(toCoins(moneyFor(bolt('cloth', [150]), 0, cm(950))!)).toBe(9500)
  })
})
