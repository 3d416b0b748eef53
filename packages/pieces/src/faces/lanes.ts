import type { Length } from '@lengthwise/units'
import { length } from '@lengthwise/units'
import { foldAcross, foldAlong, makePiece, makeSeam, stitchedOn } from '../build.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { Run } from '../cut-size.ts'
import type { Edge, EdgeNeed, Seam } from '../order.ts'
import type { Mark, Piece, SeamLine } from '../way.ts'
import type { Stretch } from './stretches.ts'
import { meet } from './stretches.ts'
import type { FacePhase } from './ties.ts'

/** A panel across the face, of one piece or of parts end to end. */
export interface Lane {
  readonly role: string
  readonly words: string
  /** cut size in the direction the face is split */
  readonly size: Length
  readonly spans: boolean
  readonly cells: readonly Cell[]
}

export interface Cell {
  /** last word of the name; empty when the lane has one cell */
  readonly role: string
  readonly words: string
  /** cut size in the direction the lane runs */
  readonly run: Length
  /** how it meets the cell before it; null for the first */
  readonly joint: Joint | null
  /** needs of its ends inside the face, by the face's own edges */
  readonly needs?: Partial<Record<Edge, EdgeNeed>>
}

/** Sewn together with an allowance on either side, or two finished edges laid over each other over a zip. */
export type Joint =
  | { readonly kind: 'join'; readonly allowance: Length }
  | { readonly kind: 'zip'; readonly lap: Length }

/** One outer edge of a face: what lies beyond the finished edge, where it is folded, what it must be made of. */
export interface FaceEdge {
  readonly beyond: Length
  /** places of folds, beyond the finished edge; 0 is the finished edge itself */
  readonly folds: readonly Length[]
  /** it is not folded there but stitched to what is no edge of a piece */
  readonly stitched?: boolean
  readonly need: EdgeNeed
}
export type FaceEdges = Readonly<Record<Edge, FaceEdge>>

export interface Layout {
  /** columns: lanes run from head to foot, side by side; rows: from left to right, from the head down */
  readonly as: 'columns' | 'rows'
  readonly name: string
  readonly words: string
  readonly table: ClothOnTable
  readonly run: Run | 'either'
  readonly lanes: readonly Lane[]
  /** joining allowance between lanes */
  readonly join: Length
  readonly seam: Seam
  /** joined edges must be selvedges */
  readonly selvedgeJoins: boolean
  readonly edges: FaceEdges
  readonly phase: FacePhase | null
}

/** A face of pieces with its seams, and its outer edges as stretches of piece edges. */
export interface Assembled {
  readonly pieces: readonly Piece[]
  readonly seams: readonly SeamLine[]
  readonly outer: Readonly<Record<Edge, readonly Stretch[]>>
  /** its ends from raw edge to raw edge, for a seam sewn before the sides are hemmed */
  readonly unhemmed: { readonly head: readonly Stretch[]; readonly foot: readonly Stretch[] }
  /** as joined, allowances and hems at its outer edges included */
  readonly width: Length
  readonly length: Length
}

/** Puts lanes together: pieces with marks and needs, seams between them, outer edges. */
export function assemble(layout: Layout): Assembled {
  const columns = layout.as === 'columns'
  // the four edges by the lanes: the sides of lanes, and their ends
  const [firstSide, lastSide, firstEnd, lastEnd]: readonly [Edge, Edge, Edge, Edge] = columns
    ? ['left', 'right', 'head', 'foot']
    : ['head', 'foot', 'left', 'right']
  const { lanes, edges } = layout
  const places = lanes.map(placesOf)
  const runTotal = length(Math.min(...places.map((p) => p.total)))
  const laneStarts = startsOf(lanes, layout.join)
  const sizeTotal = length((laneStarts.at(-1) ?? 0) + (lanes.at(-1)?.size ?? 0))

  const pieces = lanes.flatMap((lane, i) => lane.cells.map((cell, k) => pieceOf(lane, i, cell, k)))
  const seams: SeamLine[] = []
  lanes.forEach((lane, i) => {
    lane.cells.forEach((cell, k) => {
      if (cell.joint !== null) seams.push(jointSeam(lane, k, cell.joint))
    })
    if (i > 0) seams.push(...laneSeams(i))
  })
  return {
    pieces,
    seams,
    outer: { head: outerOf('head'), foot: outerOf('foot'), left: outerOf('left'), right: outerOf('right') },
    unhemmed: { head: outerOf('head', false), foot: outerOf('foot', false) },
    width: columns ? sizeTotal : runTotal,
    length: columns ? runTotal : sizeTotal,
  }

  function outerOf(edge: Edge, hemmed = true): readonly Stretch[] {
    if (edge === firstSide) return sideOf(0, edge, hemmed)
    return edge === lastSide ? sideOf(lanes.length - 1, edge, hemmed) : endOf(edge, hemmed)
  }

  function nameOf(lane: Lane, cell: Cell): string {
    const words = [lanes.length > 1 ? lane.role : '', cell.role].filter((word) => word !== '')
    return words.length === 0 ? layout.name : `${layout.name}/${words.join('-')}`
  }

  function pieceOf(lane: Lane, i: number, cell: Cell, k: number): Piece {
    const first = i === 0
    const last = i === lanes.length - 1
    const selvedge: EdgeNeed = { kind: 'selvedge' }
    const joined: EdgeNeed = layout.selvedgeJoins ? selvedge : { kind: 'none' }
    const needs: Partial<Record<Edge, EdgeNeed>> = {
      [firstSide]: first ? edges[firstSide].need : joined,
      [lastSide]: last ? edges[lastSide].need : joined,
      ...(k === 0 ? { [firstEnd]: edges[firstEnd].need } : {}),
      ...(k === lane.cells.length - 1 ? { [lastEnd]: edges[lastEnd].need } : {}),
      ...cell.needs,
    }
    const at = places[i]?.starts[k] ?? 0
    const piece = makePiece(layout.table.cloth, {
      name: nameOf(lane, cell),
      words: [layout.words, lanes.length > 1 ? lane.words : '', cell.words].filter((word) => word !== '').join(', '),
      size: columns ? { width: lane.size, length: cell.run } : { width: cell.run, length: lane.size },
      run: layout.run,
      needs,
      spansWidth: lane.spans,
      tie: layout.phase?.tie(i, k, at, cell.run) ?? null,
      marks: marksOf(i, lane, k, at),
    })
    // panels that share a print must all lie the same way up
    return layout.phase === null ? piece : { ...piece, mayTurnEndForEnd: false, headToward: layout.phase.headToward }
  }

  function marksOf(i: number, lane: Lane, k: number, at: number): Mark[] {
    const marks: Mark[] = []
    const line = (edge: Edge, place: Length): Mark =>
      edge === 'head' || edge === 'foot' ? foldAcross(place) : foldAlong(place)
    const folds = (edge: Edge, place: (fold: Length) => number): void => {
      const { folds: own, stitched } = edges[edge]
      for (const fold of own) {
        const mark = line(edge, length(place(fold)))
        marks.push(stitched ? stitchedOn(mark) : mark)
      }
    }
    if (k === 0) folds(firstEnd, (fold) => edges[firstEnd].beyond - fold)
    if (k === lane.cells.length - 1) folds(lastEnd, (fold) => runTotal - edges[lastEnd].beyond + fold - at)
    if (i === 0) folds(firstSide, (fold) => edges[firstSide].beyond - fold)
    if (i === lanes.length - 1) folds(lastSide, (fold) => lane.size - edges[lastSide].beyond + fold)
    return marks
  }

  function jointSeam(lane: Lane, k: number, joint: Joint): SeamLine {
    const before = lane.cells[k - 1] as Cell
    const cell = lane.cells[k] as Cell
    const a = { piece: nameOf(lane, before), edge: lastEnd }
    const b = { piece: nameOf(lane, cell), edge: firstEnd }
    return joint.kind === 'zip'
      ? makeSeam(layout.seam, a, b, lane.size, 'opening', {
          kind: 'zip',
          lap: joint.lap,
          allowanceA: 0 as Length,
          allowanceB: 0 as Length,
        })
      : makeSeam(layout.seam, a, b, lane.size, 'join', {
          allowanceA: joint.allowance,
          allowanceB: joint.allowance,
          match: matchOf(layout),
        })
  }

  function laneSeams(i: number): SeamLine[] {
    const a = sideOf(i - 1, lastSide, false)
    const b = sideOf(i, firstSide, false)
    return meet(a, b).map((pair) =>
      makeSeam(layout.seam, pair.a, pair.b, pair.length, 'join', {
        allowanceA: layout.join,
        allowanceB: layout.join,
        match: matchOf(layout),
      }),
    )
  }

  /** The long edge of a lane; hemmed, it reaches from fold to fold only, since hems are turned before covers are closed. */
  function sideOf(i: number, edge: Edge, hemmed: boolean): Stretch[] {
    const lane = lanes[i] as Lane
    const { starts } = places[i] as Places
    const low = hemmed ? foldedBy(edges[firstEnd]) : 0
    const high = hemmed ? runTotal - foldedBy(edges[lastEnd]) : Number.POSITIVE_INFINITY
    return lane.cells.flatMap((cell, k) => {
      const start = starts[k] as number
      const next = lane.cells[k + 1]?.joint ?? null
      const from = Math.max(reach(cell.joint, 'after'), low - start)
      const to = Math.min(cell.run - reach(next, 'before'), high - start)
      if (to <= from) return []
      return [stretch(nameOf(lane, cell), edge, start + from, from, to, cell.run)]
    })
  }

  /** The short edges of all lanes at one end, from seam line to seam line. */
  function endOf(edge: Edge, hemmed: boolean): Stretch[] {
    const low = hemmed ? foldedBy(edges[firstSide]) : 0
    const high = hemmed ? sizeTotal - foldedBy(edges[lastSide]) : sizeTotal
    return lanes.flatMap((lane, i) => {
      const start = laneStarts[i] as number
      const from = Math.max(i === 0 ? 0 : layout.join, low - start)
      const to = Math.min(lane.size - (i === lanes.length - 1 ? 0 : layout.join), high - start)
      const cell = edge === firstEnd ? lane.cells[0] : lane.cells.at(-1)
      return to <= from || cell === undefined
        ? []
        : [stretch(nameOf(lane, cell), edge, start + from, from, to, lane.size)]
    })
  }
}

interface Places {
  readonly starts: readonly number[]
  readonly total: number
}

/** Where the cells of a lane begin when joined, and how long it is then. */
function placesOf(lane: Lane): Places {
  let end = 0
  const starts: number[] = []
  for (const cell of lane.cells) {
    const overlap = cell.joint === null ? 0 : cell.joint.kind === 'join' ? 2 * cell.joint.allowance : cell.joint.lap
    starts.push(end - overlap)
    end += cell.run - overlap
  }
  return { starts, total: end }
}

function startsOf(lanes: readonly Lane[], join: Length): number[] {
  let end = 0
  return lanes.map((lane, i) => {
    const start = i === 0 ? 0 : end - 2 * join
    end = start + lane.size
    return start
  })
}

/** How much of a cell lies beyond the seam line at a joint; of two edges over a zip the later one lies under the lap. */
function reach(joint: Joint | null, side: 'before' | 'after'): number {
  if (joint === null) return 0
  if (joint.kind === 'join') return joint.allowance
  return side === 'after' ? Math.max(0, joint.lap) : 0
}

const foldedBy = (edge: FaceEdge): number => (edge.folds.length === 0 ? 0 : edge.beyond)

const matchOf = (layout: Layout): SeamLine['match'] => (layout.phase === null ? 'none' : layout.table.cloth.print.match)

function stretch(piece: string, edge: Edge, at: number, from: number, to: number, of: number): Stretch {
  return { piece, edge, at: length(at), from: length(from), to: length(to), of: length(of) }
}
