import { expect, test } from 'vitest'
import type { CutNode, Demand, Placement } from '../src/index.ts'
import { check, LEFT, lay, RIGHT } from '../src/index.ts'
import { tidiestTree, tidinessOf, worthOf } from '../src/tidy.ts'
import { tidiestByTrying } from './naive-tidiness.ts'
import { open, piece, seeded } from './orders.ts'

const rect = { x: 0, y: 0, width: 10, length: 10 }
const at = (x: number, y: number, width: number, length: number): Placement => ({
  demand: 0,
  posture: 0,
  x,
  y,
  width,
  length,
})
const ALL = worthOf(undefined)
const tidiness = (placements: Placement[]) => tidinessOf(tidiestTree(rect, placements, ALL) as CutNode, ALL)

test('the larger left-over of the two choices is kept whole', () => {
  // a corner piece 4 x 3: across first leaves 10 x 7, along first leaves 6 x 10
  expect(tidiness([at(0, 0, 4, 3)])).toEqual({ largest: 70, cuts: 2, changes: 1 })
  expect(tidiness([at(0, 0, 3, 4)])).toEqual({ largest: 70, cuts: 2, changes: 1 })
})

test('a left-over that reaches past several pieces is not cut into pieces of itself', () => {
  // a column of two on the left: one cut along frees all the rest
  expect(tidiness([at(0, 0, 4, 5), at(0, 5, 4, 5)])).toEqual({ largest: 60, cuts: 2, changes: 1 })
})

test('what cannot be freed by cuts right across has no tree', () => {
  // a pinwheel
  const pinwheel = [at(0, 0, 6, 4), at(6, 0, 4, 6), at(4, 6, 6, 4), at(0, 4, 4, 6)]
  expect(tidiestTree(rect, pinwheel, ALL)).toBeNull()
})

test('of all layouts of small orders, tried one and all, none is tidier than the one chosen', () => {
  let compared = 0
  for (let seed = 1; seed <= 120; seed++) {
    const below = seeded(seed)
    const width = 5 + below(4)
    const demands: Demand[] = []
    for (let left = 2 + below(3); left > 0; ) {
      const count = Math.min(left, 1 + below(2))
      left -= count
      const p = piece(
        `d${demands.length}`,
        count,
        1 + below(Math.min(6, width)),
        1 + below(5),
        [0, 0, LEFT, RIGHT][below(4)]!,
      )
      const [{ width: w, length: l }] = p.postures as [Demand['postures'][number]]
      const turned = { width: l, length: w, flush: 0 }
      demands.push(below(4) === 0 && l <= width ? { ...p, postures: [...p.postures, turned] } : p)
    }
    const request = open(width, demands, below(3) === 0 ? 9 : null)
    const worthKeeping = { width: 1 + below(2), length: 1 + below(4) }
    const answer = lay(request, { effort: 100_000, worthKeeping })
    if (answer.length === null) continue
    compared++
    expect(check(request, answer)).toEqual([])
    const worth = worthOf(worthKeeping)
    expect(tidinessOf(answer.tree!, worth), `seed ${seed}`).toEqual(tidiestByTrying(request, answer.length, worth))
  }
  expect(compared).toBeGreaterThan(100)
})
