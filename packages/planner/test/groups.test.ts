import { describe, expect, it } from 'vitest'
import { groupsOf } from '../src/groups.ts'
import { plan } from '../src/index.ts'
import { bolt, orderOf, rectangle, remnant } from './orders.ts'

/* Items that share no cloth have nothing to do with one another: planned together they are what each is planned alone. */

describe('groups', () => {
  it('hold what is linked by a cloth, be it through a third item; cloths that nothing names are in none', () => {
    const order = orderOf(
      [
        rectangle('first', 40, 40, { cloth: ['a', 'b'] }),
        rectangle('second', 40, 40, { cloth: ['d'] }),
        rectangle('third', 40, 40, { cloth: ['c'] }),
        rectangle('fourth', 40, 40, { cloth: ['c', 'b'] }),
      ],
      [bolt('a', [150]), bolt('b', [150]), bolt('c', [150]), bolt('d', [150]), bolt('e', [150])],
    )
    expect(groupsOf(order).map(({ items, cloths }) => [items, cloths.map((c) => c.name)])).toEqual([
      [[1], ['d']],
      [
        [0, 2, 3],
        ['a', 'b', 'c'],
      ],
    ])
  })
})

describe('a plan of two groups', () => {
  const mats = [
    rectangle('mat', 66, 50, { count: 5, lengthRuns: 'either', cloth: ['a', 'left'] }),
    rectangle('rug', 47, 83, { count: 3, lengthRuns: 'either', cloth: ['a'] }),
  ]
  const towels = [rectangle('towel', 80, 51, { count: 4, lengthRuns: 'either', cloth: ['b'] })]
  const forMats = [bolt('a', [120, 150]), remnant('left', 80, 60)]
  const forTowels = [bolt('b', [100, 170])]

  it('buys, lays and proves what each group does alone, in the order of the plan', () => {
    const [mat, rug] = mats
    const both = plan(orderOf([mat!, ...towels, rug!], [forTowels[0]!, ...forMats]))
    const first = plan(orderOf(mats, forMats))
    const second = plan(orderOf(towels, forTowels))
    expect(both.proof.value).toBe(first.proof.value + second.proof.value)
    expect(both.proof.bound).toBe(first.proof.bound + second.proof.bound)
    expect(both.cloths.map((c) => [c.name, c.proof.length])).toEqual(
      [...second.cloths, ...first.cloths].map((c) => [c.name, c.proof.length]),
    )
    expect(both.widths.map((w) => [w.cloth, w.width, w.buyLength, w.chosen, w.enoughFrom])).toEqual(
      [...second.widths, ...first.widths].map((w) => [w.cloth, w.width, w.buyLength, w.chosen, w.enoughFrom]),
    )
  })

  it('that cannot be cut names what is missing in each of them, and in no other', () => {
    const result = plan(
      orderOf(
        [rectangle('wide', 130, 50, { cloth: ['a'] }), ...towels, rectangle('long', 50, 90, { cloth: ['left'] })],
        [bolt('a', [120]), ...forTowels, remnant('left', 80, 60)],
      ),
    )
    expect(result.status).toBe('cannot-be-cut')
    expect(result.missing.map((m) => m.cloth)).toEqual(['a', 'left'])
    expect(result.widths.map((w) => [w.cloth, w.possible])).toEqual([
      ['a', false],
      ['b', true],
      ['b', true],
    ])
  })
})
