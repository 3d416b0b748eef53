import type { Length } from '@lengthwise/units'
import { cm } from '@lengthwise/units'
import { describe, expect, test } from 'vitest'
import type { Item, Piece } from '../src/index.ts'
import { waysToMake } from '../src/index.ts'
import { asItLies, bolt, cushion, orderOf, PLAIN, pillowcase } from './item-orders.ts'

/* A motif centred on a pillow: wherever the layout may put the piece, a motif lies in the middle of what shows. */

const REPEAT = cm(60)
const FIRST = cm(20)
const printed = (top: 'cut-end' | 'bolt' | 'left' | 'right', way: 'one-way' | 'two-way' = 'one-way') =>
  bolt('cotton', cm(200), { print: { ...PLAIN, way, top, repeat: REPEAT, motif: { first: FIRST } } })

function piecesOf(item: Item, cloth: ReturnType<typeof printed>): readonly Piece[] {
  const order = orderOf([item], [cloth])
  return waysToMake(order, item, new Map([['cotton', asItLies(cloth)]])).ways.flatMap((way) => way.pieces)
}

/** From the edge of a piece that lies nearer the cut end to the middle of its face, along the cloth. */
function alongTo(piece: Piece, middle: { fromLeft: number; fromHead: number }): number {
  switch (piece.headToward) {
    case 'start':
      return middle.fromHead
    case 'end':
      return piece.cutLength - middle.fromHead
    case 'left':
      // a quarter turn to the left: what was at the right is now toward the cut end
      return piece.cutWidth - middle.fromLeft
    case 'right':
      return middle.fromLeft
    case null:
      return Number.NaN
  }
}

function expectCentred(piece: Piece, middle: { fromLeft: number; fromHead: number }) {
  const start = piece.tie!.offset + alongTo(piece, middle)
  expect(piece.tie).toMatchObject({ axis: 'along', repeat: REPEAT, absolute: true })
  expect((((start - FIRST) % REPEAT) + REPEAT) % REPEAT).toBe(0)
}

describe('a motif in the middle of a pillow', () => {
  test.each(['cut-end', 'bolt', 'left', 'right'] as const)('cushion, top toward %s', (top) => {
    const item = cushion({ back: 'zip', finished: { width: cm(40), length: cm(50) } })
    const pieces = piecesOf(item, printed(top))
    expect(pieces).toHaveLength(2)
    for (const piece of pieces) expectCentred(piece, { fromLeft: piece.cutWidth / 2, fromHead: piece.cutLength / 2 })
  })

  test('inside flap in one piece: the middle of the front, not of the piece', () => {
    const [piece] = piecesOf(pillowcase({ faces: 'one-piece' }), printed('cut-end'))
    // hem 4.5, back 75, then half the front, from the open end, which is the head of the piece
    expectCentred(piece!, { fromLeft: piece!.cutWidth / 2, fromHead: cm(4.5 + 75 + 37.5) })
  })

  test('a two-way print is centred along and across the cloth', () => {
    const item = cushion({ back: 'zip', finished: { width: cm(40), length: cm(50) } })
    const pieces = piecesOf(item, printed('cut-end', 'two-way'))
    expect(new Set(pieces.map((piece) => piece.lengthRuns))).toEqual(new Set(['along', 'across']))
    for (const piece of pieces) expectCentred(piece, { fromLeft: piece.cutWidth / 2, fromHead: piece.cutLength / 2 })
  })

  test('where the first motif is not known all pieces keep one phase, and none is set', () => {
    const cloth = bolt('cotton', cm(200), {
      print: { ...PLAIN, way: 'one-way', repeat: REPEAT, motif: { first: null } },
    })
    const pieces = piecesOf(cushion({ back: 'zip', finished: { width: cm(40), length: cm(50) } }), cloth)
    expect(pieces).toHaveLength(2)
    for (const { tie } of pieces) expect(tie).toMatchObject({ absolute: false, oneForAll: true, repeat: REPEAT })
  })

  test('without a motif pieces are free', () => {
    const cloth = bolt('cotton', cm(200), { print: { ...PLAIN, way: 'two-way', repeat: REPEAT as Length } })
    for (const piece of piecesOf(pillowcase(), cloth)) expect(piece.tie).toBeNull()
  })
})
