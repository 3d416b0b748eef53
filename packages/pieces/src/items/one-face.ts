import type { Length } from '@lengthwise/units'
import { length } from '@lengthwise/units'
import type { Ways } from '../answers.ts'
import { bestWays } from '../build.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { FaceAsk, FaceWay } from '../faces/face.ts'
import { waysOfFace } from '../faces/face-ways.ts'
import type { FaceEdge, FaceEdges } from '../faces/lanes.ts'
import type { Edge, Hem, Order } from '../order.ts'
import { hemTake, threadLength } from '../thread.ts'
import type { SewingLine } from '../way.ts'

/** An item that is one face: its ways are the ways of the face. `hems`: stitched length of all its hems, as the face is cut. */
export function waysOfOneFace(
  order: Order,
  ask: FaceAsk,
  tables: ReadonlyMap<string, ClothOnTable>,
  hems: (face: FaceWay) => number,
  sewing: (face: FaceWay) => readonly SewingLine[],
): Ways {
  const found = waysOfFace(order, ask, tables)
  const ways = found.ways.map((face) => {
    const thread = threadLength(face.pieces, face.seams, hems(face))
    return {
      id: face.id,
      words: face.words,
      pieces: face.pieces,
      seams: face.seams,
      joins: face.joins,
      notions: thread > 0 ? [{ what: 'thread' as const, length: thread, words: 'sewing thread' }] : [],
      sewing: sewing(face),
    }
  })
  return bestWays(ways, found.refused, found.capped)
}

/** An edge turned to a hem at the finished edge. */
export const hemmedEdge = (hem: Hem): FaceEdge => ({
  beyond: hemTake(hem),
  folds: [0 as Length],
  need: { kind: 'none' },
})

/** Stitched length of each hem, in the order in which they are turned: a later one begins and ends at the folds of those before. */
export function hemLengths(face: FaceWay, edges: FaceEdges, turned: readonly Edge[]): ReadonlyMap<Edge, Length> {
  const lengths = new Map<Edge, Length>()
  for (const edge of turned) {
    const across = edge === 'head' || edge === 'foot'
    const ends: readonly Edge[] = across ? ['left', 'right'] : ['head', 'foot']
    const taken = ends.reduce((sum, end) => sum + (lengths.has(end) ? edges[end].beyond : 0), 0)
    lengths.set(edge, length((across ? face.width : face.length) - taken))
  }
  return lengths
}

export const totalHems = (lengths: ReadonlyMap<Edge, Length>): number =>
  [...lengths.values()].reduce((total, each) => total + each, 0)
