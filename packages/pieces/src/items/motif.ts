import type { Length } from '@lengthwise/units'
import { phaseOf } from '../faces/ties.ts'
import type { Order } from '../order.ts'
import type { Piece } from '../way.ts'
import type { Choice } from './choices.ts'

/**
 * A piece with a motif of its print in the middle of what shows, where the print has one to centre. `x` and `y`: that
 * middle, from the left and from the head, as cut. The piece is seen as it lies on the bed and must then lie one way up.
 */
export function centred(order: Order, choice: Choice, piece: Piece, middle: { x: number; y: number }): Piece {
  const { run, table } = choice
  if (table.cloth.print.motif === null || run === 'either') return piece
  const phase = phaseOf({
    order,
    table,
    run,
    face: piece.name,
    lanes: 1,
    cells: 1,
    middle: run === 'along' ? middle.y : middle.x,
  })
  if (phase === null) return piece
  const long: Length = run === 'along' ? piece.cutLength : piece.cutWidth
  return { ...piece, tie: phase.tie(0, 0, 0, long), mayTurnEndForEnd: false, headToward: phase.headToward }
}
