import type { PieceSketch } from '../build.ts'
import { makePiece } from '../build.ts'
import type { Cloth } from '../cloth.ts'
import type { Piece } from '../way.ts'

/*
 * Pillowcases and cushions: width is the short side, as in the plan, and the length lies across the bed. So a print
 * with a top stands upright when its top faces a long edge of the piece, not the piece's head end:
 *
 *     top of the print, head of the bed
 *     +----------------------------+
 *     | head end      foot end,    |   the front, seen from its right side, opens to the right,
 *     | (closed)      opening      |   so the back, seen from its own, opens to the left
 *     +----------------------------+
 */

/** A piece of a pillow. It may be turned end for end unless an edge needs a hem or selvedge and the print has a top. */
export function pillowPiece(cloth: Cloth, face: 'front' | 'back', sketch: PieceSketch): Piece {
  const piece = makePiece(cloth, sketch)
  const isBound = cloth.print.way === 'one-way' && Object.values(piece.needs).some((need) => need.kind !== 'none')
  return {
    ...piece,
    mayTurnEndForEnd: !isBound,
    headToward: isBound ? HEAD_TOWARD[face][cloth.print.top] : null,
  }
}

// with the print upright the viewer's left is the cloth's left for a top at the cut end, and a quarter turn on for each next top
const HEAD_TOWARD = {
  front: { 'cut-end': 'left', bolt: 'right', left: 'end', right: 'start' },
  back: { 'cut-end': 'right', bolt: 'left', left: 'start', right: 'end' },
} as const
