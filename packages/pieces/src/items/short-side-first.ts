import type { Length } from '@lengthwise/units'
import { minus } from '@lengthwise/units'
import type { Run } from '../cut-size.ts'
import type { Edge } from '../order.ts'
import type { EdgeRef, Mark, Piece } from '../way.ts'
import type { Draft } from './draft.ts'

/*
 * Pillowcases, cushions and bolsters are worked out as they lie on the bed, long side across. The plan gives their short
 * side first, and so do their pieces: width is the short side, length the long one. A quarter turn clockwise does it:
 *
 *            head                       left
 *       +------------+                +------+
 *  left |    top     | right    foot  |      | head
 *       +------------+          ->    |  top |  (the print's top now faces the right edge)
 *            foot                     +------+
 *                                      right
 */

/** The same way with every piece turned so that its width is the short side of the pillow. */
export function shortSideFirst(draft: Draft): Draft {
  const heights = new Map(draft.pieces.map((piece) => [piece.name, piece.cutLength]))
  const turn = (ref: EdgeRef): EdgeRef => turnedRef(ref, heights.get(ref.piece) ?? (0 as Length))
  return {
    ...draft,
    pieces: draft.pieces.map(turnedPiece),
    seams: draft.seams.map((seam) => ({ ...seam, a: turn(seam.a), b: turn(seam.b) })),
  }
}

/** How the long side runs when the head end runs so, and the other way round. */
export function quarterTurn(run: Run | 'either'): Run | 'either' {
  return run === 'either' ? run : run === 'along' ? 'across' : 'along'
}

const TURNED_EDGE: Readonly<Record<Edge, Edge>> = { left: 'head', head: 'right', right: 'foot', foot: 'left' }

// with the print upright its left is toward the cloth's left, and so on round
const TURNED_HEAD = { start: 'left', end: 'right', left: 'end', right: 'start' } as const

function turnedPiece(piece: Piece): Piece {
  const { needs } = piece
  return {
    ...piece,
    cutWidth: piece.cutLength,
    cutLength: piece.cutWidth,
    lengthRuns: quarterTurn(piece.lengthRuns),
    headToward: piece.headToward === null ? null : TURNED_HEAD[piece.headToward],
    uppermost: piece.uppermost === null ? null : 'right',
    needs: { head: needs.left, right: needs.head, foot: needs.right, left: needs.foot },
    marks: piece.marks.map((mark) => turnedMark(mark, piece.cutLength)),
  }
}

function turnedMark(mark: Mark, height: Length): Mark {
  // lines right across count only in their own direction
  if (mark.runs === 'along') return { ...mark, x: 0 as Length, y: mark.x, runs: 'across' }
  if (mark.runs === 'across') return { ...mark, x: minus(height, mark.y), y: 0 as Length, runs: 'along' }
  return { ...mark, x: minus(height, mark.y), y: mark.x }
}

// places along head and foot keep their order; those along the sides are now counted from the other end
function turnedRef(ref: EdgeRef, height: Length): EdgeRef {
  const edge = TURNED_EDGE[ref.edge]
  if (ref.from === undefined || ref.to === undefined || ref.edge === 'head' || ref.edge === 'foot')
    return { ...ref, edge }
  return { ...ref, edge, from: minus(height, ref.to), to: minus(height, ref.from) }
}
