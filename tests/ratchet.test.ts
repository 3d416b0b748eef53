import type { Request } from '@lengthwise/solver'
import { check, lay } from '@lengthwise/solver'
import { describe, expect, test } from 'vitest'
import type { Case } from './bench/corpus.ts'
import { batch, bedding, sliced } from './bench/corpus.ts'

/**
 * What the solver reaches on frozen orders with 1.5 million steps: length, status, bound. A better result is written into the table
 * by hand; a worse one fails.
 */
const REACHED: Record<string, readonly [length: number, status: string, bound: number]> = {
}

const CASES: readonly Case[] = [
  ...[1, 2, 3].map((seed) => sliced(100, 120, 12, seed)),
  ...[1, 2].map((seed) => sliced(100, 120, 24, seed)),
  sliced(160, 200, 60, 1),
  sliced(200, 240, 120, 1),
  ...Array.from({ length: 10 }, (_, index) => bedding(index + 1)),
  batch(1),
  free(sliced(100, 120, 24, 3)),
  free(sliced(200, 240, 120, 2)),
]

function free(each: Case): Case {
  const request: Request = { ...each.request, cuts: 'free' }
  return { ...each, name: `${each.name}, free cuts`, request }
}

describe('no result gets worse', () => {
  for (const { name, request, known } of CASES) {
    test(name, () => {
      const answer = lay(request, { effort: 1_500_000 })
      expect(check(request, answer)).toEqual([])
      const [length, status, bound] = REACHED[name]!
      const now = `now ${answer.length}, ${answer.status}, ${answer.bound}`
      if (known?.proved) expect(answer.length).toBeGreaterThanOrEqual(known.length)
      expect(answer.length, now).toBeLessThanOrEqual(length)
      expect(answer.bound, now).toBeGreaterThanOrEqual(bound)
      if (status === 'proved') expect(answer.status, now).toBe('proved')
    })
  }
})
