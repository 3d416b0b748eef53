import type { Request } from '@lengthwise/solver'
import { check, lay } from '@lengthwise/solver'
import { describe, expect, test } from 'vitest'
import { requestOf, seeded } from './bench/corpus.ts'
import type { Piece } from './bench/models.ts'
import { freeModel, levelModel, optimum } from './bench/models.ts'

// The reference is HiGHS (J. A. J. Hall and others, MIT licence), a general solver of integer programmes that shares nothing with ours.

function pieces(seed: number, count: number, sameLength: boolean): Piece[] {
  const below = seeded(seed)
  const length = 10 + below(30)
  return Array.from({ length: count }, () => ({
    width: 10 + below(50),
    length: sameLength ? length : 10 + below(50),
  }))
}

function laid(request: Request) {
  const answer = lay(request, { effort: 2_000_000 })
  expect(check(request, answer)).toEqual([])
  expect(answer.length).not.toBeNull()
  return { length: answer.length!, bound: answer.bound, proved: answer.status === 'proved' }
}

describe('against a general integer programme', () => {
  test('free cuts: 32 small orders have the same shortest length', async () => {
    let proved = 0
    for (let seed = 1; seed <= 32; seed++) {
      const list = pieces(seed, 4 + (seed % 3), false)
      const best = await optimum(freeModel(100, list), 20)
      if (best === null) continue
      const ours = laid(requestOf(100, list, 'free'))
      expect(ours.bound, `seed ${seed}`).toBeLessThanOrEqual(best)
      expect(ours.length, `seed ${seed}`).toBeGreaterThanOrEqual(best)
      if (!ours.proved) continue
      proved++
      expect(ours.length, `seed ${seed}`).toBe(best)
    }
    expect(proved).toBeGreaterThanOrEqual(30)
  })

  test('pieces of one length: levels are all there is, and 30 orders agree with the level model', async () => {
    for (let seed = 101; seed <= 130; seed++) {
      const list = pieces(seed, 9, true)
      const best = await optimum(levelModel(100, list), 20)
      const ours = laid(requestOf(100, list, 'guillotine'))
      expect(ours, `seed ${seed}`).toEqual({ length: best, bound: best, proved: true })
    }
  })

  test('no order needs more than its best levels, nor less than the free optimum', async () => {
    for (let seed = 201; seed <= 215; seed++) {
      const list = pieces(seed, 6, false)
      const levels = await optimum(levelModel(100, list), 20)
      const free = await optimum(freeModel(100, list), 20)
      const ours = laid(requestOf(100, list, 'guillotine'))
      expect(ours.proved, `seed ${seed}`).toBe(true)
      expect(ours.length, `seed ${seed}`).toBeLessThanOrEqual(levels!)
      if (free !== null) expect(ours.length, `seed ${seed}`).toBeGreaterThanOrEqual(free)
    }
  })
})
