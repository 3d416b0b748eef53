import { describe, expect, test } from 'vitest'
import { check } from '../src/check.ts'
import { answerOf, layoutOf } from '../src/layout.ts'
import type { Demand, Request } from '../src/model.ts'
import { END, LEFT, RIGHT, START } from '../src/model.ts'
import { normalise } from '../src/problem.ts'
import { searchFree, searchGuillotine } from '../src/search/index.ts'
import { randomFrom } from '../src/search/random.ts'

/** A strip of `width` × `length` divided edge to edge by a seeded generator into `count` pieces: its shortest layout is `length`. */
function sliced(width: number, length: number, count: number, seed: number): Demand[] {
  const random = randomFrom(seed)
  const pieces = [{ width, length }]
  while (pieces.length < count) {
    pieces.sort((a, b) => a.width * a.length - b.width * b.length)
    const { width: w, length: l } = pieces.pop()!
    if (w > l) {
      const at = 1 + Math.floor(w / 4) + random.below(Math.floor(w / 2))
      pieces.push({ width: at, length: l }, { width: w - at, length: l })
    } else {
      const at = 1 + Math.floor(l / 4) + random.below(Math.floor(l / 2))
      pieces.push({ width: w, length: at }, { width: w, length: l - at })
    }
  }
  return pieces.map((piece, index) => ({ id: `p${index}`, count: 1, tie: null, postures: [{ ...piece, flush: 0 }] }))
}

const OPEN = { width: 100, length: null, zones: { left: 0, right: 0, start: 0, end: 0 }, flaws: [] }

/** The length found; every answer goes through the checker. */
function searched(request: Request, bound: number, effort: number): number | null {
  const problem = normalise(request)!
  const area = request.demands.reduce((sum, { count, postures }) => sum + count * postures[0]!.length, 0)
  const { spots } = searchGuillotine(problem, { effort }, bound / problem.unitAlong, 2 * area)
  if (spots === null) return null
  const layout = layoutOf(problem, spots)
  expect(layout).not.toBeNull()
  const answer = answerOf('best-found', layout, { by: 'longest', bound: 0 }, 0)
  const faults = check(request, answer).filter(({ code }) => code !== 'certificate' && code !== 'bound')
  expect(faults).toEqual([])
  return layout!.length
}

describe('guillotine search', () => {
  test('finds a layout sliced from a strip again', () => {
    for (const seed of [1, 2, 3]) {
      const request: Request = { field: OPEN, demands: sliced(100, 120, 30, seed), cuts: 'guillotine' }
      expect(searched(request, 120, 1_500_000)).toBeLessThanOrEqual(140)
    }
  })

  test('the same request gives the same layout', () => {
    const problem = normalise({ field: OPEN, demands: sliced(100, 120, 40, 9), cuts: 'guillotine' })!
    const one = searchGuillotine(problem, { effort: 200_000 }, 120, 500)
    const two = searchGuillotine(problem, { effort: 200_000 }, 120, 500)
    expect(one).toEqual(two)
  })

  test('keeps sides, zones, phases and flaws', () => {
    for (let seed = 1; seed <= 30; seed++) {
      const random = randomFrom(seed)
      const demands = sliced(100, 120, 18, seed).map((demand, index): Demand => {
        const { width, length } = demand.postures[0]!
        const lot = index === 0 ? 5 : random.below(6)
        const tie =
          lot === 0 || lot === 1
            ? { group: 'g', axis: 'along' as const, repeat: 16, offset: random.below(16), absolute: seed % 5 === 0 }
            : null
        if (lot === 2)
          return {
            ...demand,
            postures: [
              { width, length, flush: LEFT },
              { width, length, flush: RIGHT },
            ],
          }
        if (lot === 3 && length <= 100) {
          return {
            ...demand,
            postures: [
              { width, length, flush: 0 },
              { width: length, length: width, flush: 0 },
            ],
          }
        }
        return { ...demand, id: `d${index}`, tie, postures: [{ width, length, flush: index === 0 ? START : 0 }] }
      })
      const zones = seed % 3 === 0 ? { left: 3, right: 2, start: 5, end: 0 } : OPEN.zones
      const flaws = seed % 4 === 0 ? [{ x: 40, y: 50, width: 8, length: 8 }] : []
      const field = { ...OPEN, width: 110, zones, flaws }
      const length = searched({ field, demands, cuts: 'guillotine' }, 120, 100_000)
      expect(length, `seed ${seed}`).not.toBeNull()
    }
  })

  test('fills a finite sheet, with a piece at its end', () => {
    const demands = sliced(90, 100, 12, 4).map((demand, index) =>
      index === 3 ? { ...demand, postures: [{ ...demand.postures[0]!, flush: END }] } : demand,
    )
    const field = { ...OPEN, length: 160, zones: { left: 0, right: 0, start: 0, end: 4 } }
    expect(searched({ field, demands, cuts: 'guillotine' }, 100, 500_000)).toBeLessThanOrEqual(160)
  })
})

test('a free search of pieces of one kind ends, though no order of them is another', () => {
  const demands: Demand[] = [{ id: 'strip', count: 11, tie: null, postures: [{ width: 30, length: 7, flush: 0 }] }]
  // three beside each other, four rows: 28; by area it might be 24
  const problem = normalise({ field: OPEN, demands, cuts: 'free' })!
  const { spots, steps } = searchFree(problem, { effort: 50_000 }, 24, Number.POSITIVE_INFINITY)
  expect(steps).toBeLessThanOrEqual(50_000)
  expect(spots).toHaveLength(11)
})
