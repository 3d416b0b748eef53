import { describe, expect, test } from 'vitest'
import { check } from '../src/check.ts'
import { lay } from '../src/lay.ts'
import { answerOf, layoutOf } from '../src/layout.ts'
import type { Demand, Request } from '../src/model.ts'
import { END, LEFT, RIGHT, START } from '../src/model.ts'
import { normalise } from '../src/problem.ts'
import { searchFree, searchGuillotine } from '../src/search/index.ts'
import { randomFrom } from '../src/search/random.ts'
import type { Part } from '../src/search/tree.ts'
import { piecesIn, rect, splitOf } from '../src/search/tree.ts'
import { trialOf } from '../src/search/trial.ts'
import { resolved } from '../src/search/windows.ts'

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

/** A field of 11 x 10 whose two gaps of 3 x 5 lie apart, and a piece without room. */
function twoGaps(newcomer: { width: number; length: number }) {
  const demand = (id: string, count: number, width: number, length: number): Demand => {
    return { id, count, tie: null, postures: [{ width, length, flush: 0 }] }
  }
  const demands = [demand('broad', 2, 8, 5), demand('newcomer', 1, newcomer.width, newcomer.length)]
  const problem = normalise({ field: { ...OPEN, width: 11 }, demands, cuts: 'guillotine' })!
  const trial = trialOf(problem, 10, randomFrom(1))
  const row = (y: number, pieceFirst: boolean): Part => {
    const x = pieceFirst ? 0 : 3
    const piece: Part = { kind: 'piece', rect: rect(x, y, 8, 5), of: 0, posture: 0 }
    const spare: Part = { kind: 'spare', rect: rect(pieceFirst ? 8 : 0, y, 3, 5) }
    return splitOf(rect(0, y, 11, 5), false, pieceFirst ? [piece, spare] : [spare, piece])
  }
  const part = splitOf(rect(0, 0, 11, 10), true, [row(0, true), row(5, false)])
  const outArea = newcomer.width * newcomer.length
  return { trial, growth: { part, out: [0, 1], outArea } }
}

describe('windows solved exactly', () => {
  test('two gaps become one that takes a piece neither would', () => {
    const { trial, growth } = twoGaps({ width: 3, length: 9 })
    const now = resolved(trial, growth, 20_000, { steps: 20_000, stop: () => false }, randomFrom(2))
    expect(now.outArea).toBe(0)
    expect(piecesIn(now.part)).toHaveLength(3)
  })

  test('a piece that has no room stays out', () => {
    const { trial, growth } = twoGaps({ width: 4, length: 6 })
    const now = resolved(trial, growth, 20_000, { steps: 20_000, stop: () => false }, randomFrom(2))
    expect(now.outArea).toBe(24)
    expect(piecesIn(now.part)).toHaveLength(2)
  })
})

describe('hundreds of different pieces', () => {
  const request: Request = { field: OPEN, demands: sliced(100, 4000, 400, 5), cuts: 'guillotine' }

  test('few steps give a layout that is of use', () => {
    const answer = lay(request, { effort: 100_000 })
    expect(check(request, answer)).toEqual([])
    // rows with stacks alone: some 15 % over the shortest, as in common practice
    expect(answer.length).toBeLessThanOrEqual(4000 * 1.15)
  })

  test('told to stop, it asks no more, and what it has is sound', () => {
    for (const most of [1, 5, 25, 100]) {
      let asked = 0
      const answer = lay(request, { effort: 20_000_000, stop: () => ++asked >= most })
      expect(answer.status).toBe('stopped')
      expect(asked).toBe(most)
      expect(check(request, answer)).toEqual([])
    }
  })

  test('between two questions whether to stop lie few steps', () => {
    const problem = normalise(request)!
    let asked = 0
    const stop = (): boolean => {
      asked++
      return false
    }
    const { steps } = searchGuillotine(problem, { effort: 2_000_000, stop }, 4000 / problem.unitAlong, 8000)
    expect(steps / asked).toBeLessThan(20_000)
  })
})
