import type { Piece, SeamLine, Way } from '@lengthwise/pieces'

/**
 * The seams of a way that are put down to one cloth:
 *
 * - those that join pieces of this cloth with each other;
 * - where the way has a piece of this cloth, also the seams that come of making an item as separate faces instead of in one
 *   piece (`Way.joins` has them, yet they lie between faces and join no pieces inside one).
 *
 * Two pieces may be sewn to each other in several stretches of one seam. So stretches are not counted: a seam counts when it
 * brings together what was still apart, and a face of three panels has two seams.
 */
export function seamsOfCloth(name: string, { pieces, seams, joins }: Way): number {
  const own = pieces.filter((piece) => piece.cloth === name)
  return own.length === 0 ? 0 : joinsIn(own, seams) + joins - joinsIn(pieces, seams)
}

function joinsIn(pieces: readonly Piece[], seams: readonly SeamLine[]): number {
  const face = new Map(pieces.map((piece) => [piece.name, piece.name]))
  let joins = 0
  for (const { role, a, b } of seams) {
    const [first, second] = [face.get(a.piece), face.get(b.piece)]
    if (role !== 'join' || first === undefined || second === undefined || first === second) continue
    joins++
    for (const [piece, of] of face) if (of === second) face.set(piece, first)
  }
  return joins
}
