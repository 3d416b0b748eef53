import type { Piece, SeamLine, Way } from '@lengthwise/pieces'

/**
 * Seams of a way that a cloth brings with it: those that join its own pieces, and, where it has a piece at all, those that
 * separate faces have more than one piece would. Joins of pieces are counted as one counts edges of a forest: n pieces that
 * come together as one face take n − 1 seams, however many stretches each has.
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
