import type { Length } from '@lengthwise/units'
import { length } from '@lengthwise/units'
import { makeSeam } from './build.ts'
import type { FaceWay } from './faces/face.ts'
import type { Stretch } from './faces/stretches.ts'
import { meet, mirrored, moved } from './faces/stretches.ts'
import type { Edge, Seam } from './order.ts'
import type { Mark, Piece, SeamLine } from './way.ts'

/**
 * The edge of the back, seen from its own right side, that meets an edge of the front: faces lie right sides together,
 * head to head.
 */
export const MEETS: Readonly<Record<Edge, Edge>> = { head: 'head', foot: 'foot', left: 'right', right: 'left' }

/** Seam lines along one edge of a cover, front to back. */
export function coverSeam(
  seam: Seam,
  front: FaceWay,
  back: FaceWay,
  edge: Edge,
  role: SeamLine['role'],
  other: Partial<SeamLine> = {},
): readonly SeamLine[] {
  const ends = edge === 'head' || edge === 'foot'
  const behind = back.outer[MEETS[edge]]
  // the front's left corner meets the back's right one, so the ends of the back count from its right
  const b = ends ? mirrored(behind, back.width) : behind
  return meet(fromStart(front.outer[edge]), fromStart(b)).map((pair) =>
    makeSeam(seam, pair.a, pair.b, pair.length, role, other),
  )
}

/** Counted from where the edge is first sewn: a corner, or the fold of a hem, which may be deeper on one face. */
const fromStart = (stretches: readonly Stretch[]): readonly Stretch[] => moved(stretches, -(stretches[0]?.at ?? 0))

/**
 * Marks at places along an outer edge of a face, `inward` from the cut edge: on whichever piece lies there. A place is
 * measured on the finished edge, from its left or its head.
 */
export function marksOnEdge(
  face: FaceWay,
  edge: Edge,
  kind: 'button' | 'zip-end' | 'tie',
  places: readonly { readonly at: Length; readonly of: Length }[],
  beyond: { readonly start: Length; readonly end: Length },
  inward: Length,
): FaceWay {
  const stretches = face.outer[edge]
  const total = edge === 'head' || edge === 'foot' ? face.width : face.length
  const shown = total - beyond.start - beyond.end
  const marks = new Map<string, Mark[]>()
  for (const { at, of } of places) {
    // cut sizes have room for shrinking and for the marking step, so places are shared out over what shows
    const place = beyond.start + Math.round((at * shown) / of)
    const on = stretches.find((s) => place >= s.at && place <= s.at + s.to - s.from)
    if (on === undefined) continue
    const mark = markOn(face.pieces, on, kind, length(on.from + place - on.at), inward)
    marks.set(on.piece, [...(marks.get(on.piece) ?? []), mark])
  }
  const pieces = face.pieces.map((piece) => ({ ...piece, marks: [...piece.marks, ...(marks.get(piece.name) ?? [])] }))
  return { ...face, pieces }
}

function markOn(pieces: readonly Piece[], on: Stretch, kind: Mark['kind'], along: Length, inward: Length): Mark {
  const piece = pieces.find((p) => p.name === on.piece) as Piece
  switch (on.edge) {
    case 'head':
      return { kind, x: along, y: inward }
    case 'foot':
      return { kind, x: along, y: length(piece.cutLength - inward) }
    case 'left':
      return { kind, x: inward, y: along }
    case 'right':
      return { kind, x: length(piece.cutWidth - inward), y: along }
  }
}
