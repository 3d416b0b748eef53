import type { Length, Problem } from '@lengthwise/units'
import { length } from '@lengthwise/units'
import type { Ways } from '../answers.ts'
import { checkFaceSpec, checkSeam, problem } from '../check-parts.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { FaceWay } from '../faces/face.ts'
import { shownOf } from '../faces/face.ts'
import type { Order, Throw } from '../order.ts'
import { joinSteps, say, step } from '../sewing.ts'
import { hemTake } from '../thread.ts'
import { NEVER_JOINED } from './duvet-cover.ts'
import { hemmedEdge, waysOfOneFace } from './one-face.ts'

/** Every way to make a throw: one face, hemmed all round. */
export function waysForThrow(order: Order, item: Throw, tables: ReadonlyMap<string, ClothOnTable>): Ways {
  const edge = hemmedEdge(item.hem)
  const edges = { head: edge, foot: edge, left: edge, right: edge }
  const round = (face: FaceWay): Length => {
    const { width, length: long } = shownOf(face, edges)
    return length(2 * (width + long))
  }
  return waysOfOneFace(
    order,
    {
      name: '',
      words: 'Throw',
      finished: item.finished,
      edges,
      seam: item.seam,
      spec: item.face,
      neverJoined: item.cot ? NEVER_JOINED : null,
    },
    tables,
    round,
    (face) => [
      ...joinSteps(order, face.pieces, face.seams),
      step(
        `Hem all four edges, the corners mitred: turn ${say(order, item.hem.turnedIn)} under, then ${say(order, item.hem.depth)} deep at the fold marks; press and stitch.`,
        round(face),
      ),
    ],
  )
}

/** What is wrong with the throw as the plan has it. */
export function checkThrow(order: Order, item: Throw): readonly Problem[] {
  const problems = [...checkSeam(item), ...checkFaceSpec(order, item, item.face, item.path)]
  if (2 * hemTake(item.hem) >= Math.min(item.finished.width, item.finished.length))
    problems.push(
      problem('hem-too-deep', `${item.path}.hem`, 'the hems are deeper than the throw', 'give a shallower hem'),
    )
  return problems
}
