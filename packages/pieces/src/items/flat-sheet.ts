import type { Length, Problem } from '@lengthwise/units'
import { length, ZERO } from '@lengthwise/units'
import type { Ways } from '../answers.ts'
import { checkFaceSpec, checkSeam, problem } from '../check-parts.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { FaceWay } from '../faces/face.ts'
import type { FaceEdge, FaceEdges } from '../faces/lanes.ts'
import type { Edge, FlatSheet, Order } from '../order.ts'
import { EDGES } from '../order.ts'
import { joinSteps, say, step } from '../sewing.ts'
import { hemTake } from '../thread.ts'
import type { SewingLine } from '../way.ts'
import { NEVER_JOINED } from './duvet-cover.ts'
import { hemLengths, hemmedEdge, totalHems, waysOfOneFace } from './one-face.ts'

/** Every way to make a flat sheet: hemmed edges, kept selvedges, kept hems. */
export function waysForFlatSheet(order: Order, item: FlatSheet, tables: ReadonlyMap<string, ClothOnTable>): Ways {
  const edges = Object.fromEntries(EDGES.map((edge) => [edge, edgeOf(item.hems[edge])])) as unknown as FaceEdges
  const lengths = (face: FaceWay): ReadonlyMap<Edge, Length> => hemLengths(face, edges, hemmed(item))
  return waysOfOneFace(
    order,
    {
      name: '',
      words: 'Sheet',
      finished: item.finished,
      edges,
      seam: item.seam,
      spec: item.face,
      neverJoined: item.cot ? NEVER_JOINED : null,
    },
    tables,
    (face) => totalHems(lengths(face)),
    (face) => [...joinSteps(order, face.pieces, face.seams), ...hemSteps(order, item, lengths(face))],
  )
}

function edgeOf(hem: FlatSheet['hems'][Edge]): FaceEdge {
  if (hem === 'selvedge') return { beyond: ZERO, folds: [], need: { kind: 'selvedge' } }
  if (hem === 'kept-hem') return { beyond: ZERO, folds: [], need: { kind: 'kept-hem', depth: ZERO } }
  return hemmedEdge(hem)
}

/** Sides before head and foot, so that the end hems close over them. */
const IN_TURN: readonly Edge[] = ['left', 'right', 'foot', 'head']

const hemmed = (item: FlatSheet): readonly Edge[] => IN_TURN.filter((edge) => typeof item.hems[edge] === 'object')

function hemSteps(order: Order, item: FlatSheet, lengths: ReadonlyMap<Edge, Length>): readonly SewingLine[] {
  return IN_TURN.map((edge) => {
    const hem = item.hems[edge]
    if (hem === 'selvedge') return step(`The ${edge} edge is a selvedge and needs nothing.`)
    if (hem === 'kept-hem') return step(`The hem at the ${edge} stays as it is.`)
    const turn = `${say(order, hem.turnedIn)} under, then ${say(order, hem.depth)} deep at the fold mark`
    return step(`Hem the ${edge}: turn ${turn}; press and stitch.`, lengths.get(edge))
  })
}

/** What is wrong with the flat sheet as the plan has it. */
export function checkFlatSheet(order: Order, item: FlatSheet): readonly Problem[] {
  const take = (edge: Edge): number => {
    const hem = item.hems[edge]
    return typeof hem === 'object' ? hemTake(hem) : 0
  }
  const problems = [...checkSeam(item), ...checkFaceSpec(order, item, item.face, item.path)]
  if (take('head') + take('foot') >= item.finished.length || take('left') + take('right') >= item.finished.width)
    problems.push(
      problem(
        'hem-too-deep',
        `${item.path}.hems`,
        'the hems are deeper than the sheet',
        `make them shallower than ${say(order, length(Math.floor(Math.min(item.finished.length, item.finished.width) / 2)))} together`,
      ),
    )
  return problems
}
