import type { Problem } from '@lengthwise/units'
import { length, ZERO } from '@lengthwise/units'
import type { Ways } from '../answers.ts'
import { checkFaceSpec, checkSeam } from '../check-parts.ts'
import type { ClothOnTable } from '../cloth.ts'
import { plainEdge } from '../faces/face.ts'
import type { Order, QuiltBack } from '../order.ts'
import { joinSteps, say, step } from '../sewing.ts'
import { NEVER_JOINED } from './duvet-cover.ts'
import { waysOfOneFace } from './one-face.ts'

/** Every way to make the back of a quilt: one face with raw edges, larger than the quilt by the overhang at each side. */
export function waysForQuiltBack(order: Order, item: QuiltBack, tables: ReadonlyMap<string, ClothOnTable>): Ways {
  const raw = plainEdge(ZERO)
  return waysOfOneFace(
    order,
    {
      name: '',
      words: 'Quilt back',
      finished: {
        width: length(item.quilt.width + 2 * item.overhang),
        length: length(item.quilt.length + 2 * item.overhang),
      },
      edges: { head: raw, foot: raw, left: raw, right: raw },
      seam: item.seam,
      spec: item.face,
      neverJoined: item.cot ? NEVER_JOINED : null,
    },
    tables,
    () => 0,
    (face) => [
      ...joinSteps(order, face.pieces, face.seams),
      ...(face.seams.length > 0 ? [step('Press what was joined open.')] : []),
      ...(item.overhang > 0
        ? [step(`The back reaches ${say(order, item.overhang)} beyond the quilt on every side.`)]
        : []),
    ],
  )
}

/** What is wrong with the quilt back as the plan has it. */
export function checkQuiltBack(order: Order, item: QuiltBack): readonly Problem[] {
  return [...checkSeam(item), ...checkFaceSpec(order, item, item.face, item.path)]
}
