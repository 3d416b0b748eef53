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
  'sliced 12 of seed 1': [120, 'proved', 120],
  'sliced 12 of seed 2': [120, 'proved', 120],
  'sliced 12 of seed 3': [120, 'proved', 120],
  'sliced 24 of seed 1': [120, 'proved', 120],
  'sliced 24 of seed 2': [120, 'proved', 120],
  'sliced 60 of seed 1': [208, 'best-found', 200],
  'sliced 120 of seed 1': [246, 'best-found', 240],
  'bedding 1': [2760, 'proved', 2760],
  'bedding 2': [14020, 'proved', 14020],
  'bedding 3': [19870, 'proved', 19870],
  'bedding 4': [5610, 'proved', 5610],
  'bedding 5': [13260, 'best-found', 13200],
  'bedding 6': [14325, 'proved', 14325],
  'bedding 7': [9185, 'proved', 9185],
  'bedding 8': [23170, 'best-found', 21955],
  'bedding 9': [6195, 'proved', 6195],
  'bedding 10': [8820, 'proved', 8820],
  'batch 1': [181165, 'best-found', 180335],
  'sliced 24 of seed 3, free cuts': [120, 'proved', 120],
  'sliced 120 of seed 2, free cuts': [248, 'best-found', 240],
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
