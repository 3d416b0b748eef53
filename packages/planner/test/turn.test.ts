import type { Mark } from '@lengthwise/pieces'
import { length } from '@lengthwise/units'
import { describe, expect, it } from 'vitest'
import type { Turn } from '../src/turn.ts'
import { facing, marksAsTheyLie } from '../src/turn.ts'

/** Quarter turns clockwise, as seen on the map, from head up. */
const QUARTERS: Readonly<Record<Turn, number>> = { start: 0, right: 1, end: 2, left: 3 }
const CLOCKWISE = ['start', 'right', 'end', 'left'] as const
const EDGES = ['head', 'right', 'foot', 'left'] as const

describe('a piece turned on the cloth', () => {
  it.each(Object.keys(QUARTERS) as Turn[])('head toward %s: every edge turns alike, none is mirrored', (turn) => {
    EDGES.forEach((edge, i) => {
      expect(facing(turn, edge)).toBe(CLOCKWISE[(i + QUARTERS[turn]) % 4])
    })
  })

  it.each(Object.keys(QUARTERS) as Turn[])('head toward %s: a mark turns with it', (turn) => {
    // width 3, length 5, a mark 1 from the left and 2 from the head
    let [x, y, width, long] = [1, 2, 3, 5]
    for (let i = 0; i < QUARTERS[turn]; i++) [x, y, width, long] = [long - y, x, long, width]
    const mark: Mark = { kind: 'button', x: length(1), y: length(2) }
    expect(marksAsTheyLie([mark], turn, length(3), length(5))).toEqual([{ ...mark, x, y }])
    expect([width, long]).toEqual(turn === 'start' || turn === 'end' ? [3, 5] : [5, 3])
  })

  it('the square at the head and left corner stays in its corner', () => {
    const square: Mark = { kind: 'corner-square', x: length(0), y: length(0), size: length(2) }
    const at = (turn: Turn) => marksAsTheyLie([square], turn, length(6), length(9)).map((m) => [m.x, m.y])[0]
    expect([at('start'), at('right'), at('end'), at('left')]).toEqual([
      [0, 0],
      [7, 0],
      [4, 7],
      [0, 4],
    ])
  })

  it('a fold across the piece lies along the cloth when the piece is turned', () => {
    const fold: Mark = { kind: 'fold', x: length(0), y: length(2), runs: 'across' }
    expect(marksAsTheyLie([fold], 'left', length(3), length(5))).toEqual([
      { ...fold, runs: 'along', x: length(2), y: length(0) },
    ])
  })
})
