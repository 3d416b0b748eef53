import { expect, it } from 'vitest'
import { bestOfAsCheap, compareWishes } from '../src/wishes.ts'

const answer = (opens: string[], seams: number, laid: number) => ({
  opens: new Set(opens),
  wish: { value: 10n, opened: opens.length, seams, laid },
})

it('an owned piece that can be left whole at the same cost is left whole, whatever else it betters', () => {
  const whole = answer([], 3, 900)
  expect(bestOfAsCheap([answer(['a'], 0, 500), whole])).toBe(whole)
  const fewer = answer(['b'], 9, 900)
  // b alone does as well as b with c, so that set is out; a with fewer seams than b is best
  expect(bestOfAsCheap([answer(['a'], 5, 800), answer(['b', 'c'], 3, 700), fewer])).toEqual(answer(['a'], 5, 800))
})

it('then fewer seams, a shorter laid length and fewer owned pieces, in this order', () => {
  const two = answer(['b', 'c'], 0, 700)
  expect(bestOfAsCheap([answer(['a'], 1, 600), two])).toBe(two)
  expect(bestOfAsCheap([answer(['a'], 0, 800), two])).toBe(two)
  const one = answer(['a'], 0, 700)
  expect(bestOfAsCheap([two, one])).toBe(one)
})

it('a search compares what is bought, then what is opened, seams and the laid length', () => {
  const wish = (value: bigint, opened: number, seams: number, laid: number) => ({ value, opened, seams, laid })
  const inOrder = [wish(1n, 9, 9, 9), wish(2n, 1, 8, 8), wish(2n, 2, 7, 7), wish(2n, 2, 8, 6), wish(2n, 2, 8, 7)]
  for (const [i, a] of inOrder.entries())
    for (const [j, b] of inOrder.entries()) expect(Math.sign(compareWishes(a, b))).toBe(Math.sign(i - j))
})
