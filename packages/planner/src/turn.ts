import type { Edge, Mark, Piece, Print } from '@lengthwise/pieces'
import type { Length } from '@lengthwise/units'
import { length } from '@lengthwise/units'

/** Where a piece's head lies on the cloth, right side up. Nothing is ever mirrored. */
export type Turn = 'start' | 'end' | 'left' | 'right'
export type ClothSide = 'left' | 'right' | 'start' | 'end'

/**
 * Which side of the cloth each edge of the piece faces (x to the right, y down, as on the map):
 *
 *     start       end         left           right
 *       H          F
 *     L . R      R . L      H ( R above,   F ( L above,
 *       F          H            L below ) F    R below ) H
 */
const FACING: Readonly<Record<Turn, Readonly<Record<Edge, ClothSide>>>> = {
  start: { head: 'start', foot: 'end', left: 'left', right: 'right' },
  end: { head: 'end', foot: 'start', left: 'right', right: 'left' },
  left: { head: 'left', foot: 'right', left: 'end', right: 'start' },
  right: { head: 'right', foot: 'left', left: 'start', right: 'end' },
}

export const facing = (turn: Turn, edge: Edge): ClothSide => FACING[turn][edge]

/** Where the top of a one-way print faces. */
const PRINT_FACES: Readonly<Record<Print['top'], ClothSide>> = {
  'cut-end': 'start',
  bolt: 'end',
  left: 'left',
  right: 'right',
}

/** Where the edge lies that is uppermost in use; of a piece that may be used either way up, where its print's top faces. */
export function topOf(piece: Piece, turn: Turn, print: Print): ClothSide {
  if (piece.uppermost === null) return print.way === 'one-way' ? PRINT_FACES[print.top] : turn
  return facing(turn, piece.uppermost ?? 'head')
}

/** Does the piece's length lie across the cloth? */
export const isTurned = (turn: Turn): boolean => turn === 'left' || turn === 'right'

/** The turns a piece may lie in, the preferred one first. Panels that keep phase all lie one way, or their print would not meet. */
export function turnsOf(piece: Piece): readonly Turn[] {
  if (!piece.mayTurnEndForEnd && piece.headToward) return [piece.headToward]
  const along: Turn[] = piece.mayTurnEndForEnd && !piece.tie ? ['start', 'end'] : ['start']
  const across: Turn[] = piece.mayTurnEndForEnd && !piece.tie ? ['left', 'right'] : ['left']
  if (piece.lengthRuns === 'along') return along
  if (piece.lengthRuns === 'across') return across
  return piece.tie ? along : [...along, ...across]
}

/** Marks of a piece as they lie: x and y from the left and start corner of the placed rectangle. */
export function marksAsTheyLie(marks: readonly Mark[], turn: Turn, width: Length, long: Length): Mark[] {
  return marks.map((mark) => {
    const { x, y } = mark
    // a square is given by the corner next to the piece's own: another of its corners is next after a turn
    const square = mark.kind === 'corner-square' ? (mark.size ?? 0) : 0
    const [fromRight, fromFoot] = [width - x - square, long - y - square]
    const [left, start] =
      turn === 'start'
        ? [x, y]
        : turn === 'end'
          ? [fromRight, fromFoot]
          : turn === 'left'
            ? [y, fromRight]
            : [fromFoot, x]
    const lies = { ...mark, x: length(left), y: length(start) }
    if (!mark.runs) return lies
    const runs = isTurned(turn) ? (mark.runs === 'along' ? 'across' : 'along') : mark.runs
    // a line runs right across the piece: only its distance counts
    return runs === 'across' ? { ...lies, runs, x: length(0) } : { ...lies, runs, y: length(0) }
  })
}
