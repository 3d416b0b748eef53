import type { Length } from '@lengthwise/units'
import type { Ways } from '../answers.ts'
import { bestWays } from '../build.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { FaceAsk, FaceWay } from '../faces/face.ts'
import { waysOfFace } from '../faces/face-ways.ts'
import type { FaceEdge } from '../faces/lanes.ts'
import type { Hem, Order } from '../order.ts'
import { hemTake, threadLength } from '../thread.ts'
import type { SewingLine } from '../way.ts'

/** An item that is one face: its ways are the ways of the face. `hems`: stitched length of all its hems. */
export function waysOfOneFace(
  order: Order,
  ask: FaceAsk,
  tables: ReadonlyMap<string, ClothOnTable>,
  hems: number,
  sewing: (face: FaceWay) => readonly SewingLine[],
): Ways {
  const found = waysOfFace(order, ask, tables)
  const ways = found.ways.map((face) => {
    const thread = threadLength(face.pieces, face.seams, hems)
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
