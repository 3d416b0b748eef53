import type { Length, Problem } from '@lengthwise/units'
import { ZERO } from '@lengthwise/units'
import type { Ways } from '../answers.ts'
import { checkClothNeeds, checkRuns, problem } from '../check-parts.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { FaceWay } from '../faces/face.ts'
import { plainEdge } from '../faces/face.ts'
import type { FaceEdge, FaceEdges } from '../faces/lanes.ts'
import type { Edge, Order, Rectangle } from '../order.ts'
import { EDGES } from '../order.ts'
import { say, step } from '../sewing.ts'
import { hemTake } from '../thread.ts'
import type { SewingLine } from '../way.ts'
import { hemLengths, hemmedEdge, totalHems, waysOfOneFace } from './one-face.ts'

/** A rectangle of one's own: one piece of any of its cloths, by its cut size or by its finished size with hems and seams. */
export function waysForRectangle(order: Order, item: Rectangle, tables: ReadonlyMap<string, ClothOnTable>): Ways {
  const asCut = 'cut' in item.size
  const edges = Object.fromEntries(EDGES.map((edge) => [edge, edgeOf(item, edge)])) as unknown as FaceEdges
  const hemmed = EDGES.filter((edge) => edges[edge].folds.length > 0 && !edges[edge].stitched)
  const lengths = (face: FaceWay): ReadonlyMap<Edge, Length> => hemLengths(face, edges, hemmed)
  return waysOfOneFace(
    order,
    {
      name: '',
      words: item.name,
      finished: 'cut' in item.size ? item.size.cut : item.size.finished,
      edges,
      seam: item.seam,
      spec: {
        cloth: item.cloth,
        joined: 'one-piece',
        smallestPanel: ZERO,
        centre: 'full',
        crossJoins: 0,
        selvedgeToSelvedge: false,
        lengthRuns: item.lengthRuns,
        mostSeams: null,
        band: null,
        zipEdge: null,
      },
      neverJoined: 'a rectangle is cut in one piece',
      asCut,
    },
    tables,
    (face) => totalHems(lengths(face)),
    (face) => sewing(order, item, lengths(face)),
  )
}

function edgeOf(item: Rectangle, edge: Edge): FaceEdge {
  const need = item.needs[edge]
  if ('cut' in item.size) return { ...plainEdge(ZERO), need }
  const own = item.size.edges[edge]
  if (own === 'raw') return { ...plainEdge(ZERO), need }
  return own === 'seam'
    ? { beyond: item.seam.allowance, folds: [ZERO], stitched: true, need }
    : { ...hemmedEdge(own), need }
}

function sewing(order: Order, item: Rectangle, lengths: ReadonlyMap<Edge, Length>): readonly SewingLine[] {
  // sewn as one likes
  if ('cut' in item.size) return []
  const { edges } = item.size
  const seams = EDGES.filter((edge) => edges[edge] === 'seam')
  const turned = EDGES.flatMap((edge) => {
    const own = edges[edge]
    if (typeof own !== 'object') return []
    return [
      step(
        `Hem the ${edge}: turn ${say(order, own.turnedIn)} under, then ${say(order, own.depth)} deep at the fold mark; press and stitch.`,
        lengths.get(edge),
      ),
    ]
  })
  const sewn = `Sew the ${seams.join(' and the ')} at the stitching mark to what it belongs to, ${say(order, item.seam.allowance)} inside the edge.`
  return seams.length > 0 ? [...turned, step(sewn)] : turned
}

/** What is wrong with the rectangle as the plan has it. */
export function checkRectangle(order: Order, item: Rectangle): readonly Problem[] {
  const problems = [
    ...checkRuns(order, item.cloth, item.lengthRuns, `${item.path}.length-runs`),
    ...checkClothNeeds(order, item.cloth, item.needs, `${item.path}.edges`),
  ]
  if ('cut' in item.size) return problems
  const { edges, finished } = item.size
  const take = (edge: Edge): number => {
    const own = edges[edge]
    return typeof own === 'object' ? hemTake(own) : 0
  }
  if (take('head') + take('foot') >= finished.length || take('left') + take('right') >= finished.width)
    problems.push(
      problem('hem-too-deep', `${item.path}.hems`, 'the hems are deeper than the rectangle', 'give shallower hems'),
    )
  return problems
}
