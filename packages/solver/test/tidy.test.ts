import { expect, test } from 'vitest'
import type { CutNode, Placement } from '../src/index.ts'
import { tidiestTree, tidinessOf } from '../src/tidy.ts'

const rect = { x: 0, y: 0, width: 10, length: 10 }
const at = (x: number, y: number, width: number, length: number): Placement => ({
  demand: 0,
  posture: 0,
  x,
  y,
  width,
  length,
})
const tidiness = (placements: Placement[]) => tidinessOf(tidiestTree(rect, placements) as CutNode)

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
  expect(tidiestTree(rect, pinwheel)).toBeNull()
})
