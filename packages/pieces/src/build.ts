import type { Length } from '@lengthwise/units'
import { length, ZERO } from '@lengthwise/units'
import type { RefusedWay, Ways } from './answers.ts'
import type { Cloth, ClothOnTable } from './cloth.ts'
import type { Run } from './cut-size.ts'
import type { Edge, EdgeNeed, Seam, Size } from './order.ts'
import type { EdgeRef, Mark, Piece, SeamLine, Way } from './way.ts'

/*
 * Builders for pieces and seams, shared by all items. What the sewing-up check reads from them:
 *
 * - Seams of role 'join' (and 'opening' seams between a foot and a head, and every 'lapped' one) join pieces flat into a face;
 *   all other seams join faces. A face in a cover shows its size between its outer seams and folds.
 * - An outer edge without a seam is finished at its fold mark, at the stitching that is marked as its edge, or at the cut
 *   edge itself where it has neither (a kept hem, a selvedge, a raw edge).
 * - A piece that folds over itself has a fold mark at each fold; the widest leaf between folds is what shows.
 * - The back of a cover is seen from its own right side: the front's left edge meets the back's right edge.
 */

const NONE: EdgeNeed = { kind: 'none' }

/** No edge needs anything. */
export const NO_NEEDS: Piece['needs'] = { head: NONE, foot: NONE, left: NONE, right: NONE }

/** What a piece needs said of it; the rest has defaults. */
export interface PieceSketch {
  readonly name: string
  readonly words: string
  readonly size: Size
  readonly run: Run | 'either'
  readonly needs?: Partial<Record<Edge, EdgeNeed>>
  readonly count?: number
  readonly spansWidth?: boolean
  readonly tie?: Piece['tie']
  readonly marks?: readonly Mark[]
}

/** A piece of `cloth`: the head end toward the top of a one-way print, otherwise free to be turned end for end. */
export function makePiece(cloth: Cloth, sketch: PieceSketch): Piece {
  const oneWay = cloth.print.way === 'one-way'
  return {
    name: sketch.name,
    words: sketch.words,
    cloth: cloth.name,
    cutWidth: sketch.size.width,
    cutLength: sketch.size.length,
    count: sketch.count ?? 1,
    lengthRuns: sketch.run,
    mayTurnEndForEnd: !oneWay,
    headToward: oneWay ? HEAD_TOWARD[cloth.print.top] : null,
    needs: { ...NO_NEEDS, ...sketch.needs },
    spansWidth: sketch.spansWidth ?? false,
    tie: sketch.tie ?? null,
    marks: sketch.marks ?? [],
  }
}

const HEAD_TOWARD = { 'cut-end': 'start', bolt: 'end', left: 'left', right: 'right' } as const

/** A line right across the piece, `y` from the head or `x` from the left. */
export const foldAcross = (y: Length): Mark => ({ kind: 'fold', x: ZERO, y, runs: 'across' })
export const foldAlong = (x: Length): Mark => ({ kind: 'fold', x, y: ZERO, runs: 'along' })

/** A line on which an outer edge is stitched to what is no edge of a piece: a gathered skirt, a circle. */
export const stitchedOn = (fold: Mark): Mark => ({ ...fold, kind: 'seam', isEdge: true })

/** The whole of an edge, or from one place to another. */
export const edgeOf = (piece: string, edge: Edge, from?: Length, to?: Length): EdgeRef =>
  from === undefined || to === undefined ? { piece, edge } : { piece, edge, from, to }

/** A seam of the item's own kind and allowance, unless told otherwise. */
export function makeSeam(
  seam: Seam,
  a: EdgeRef,
  b: EdgeRef,
  seamLength: Length,
  role: SeamLine['role'],
  other: Partial<SeamLine> = {},
): SeamLine {
  return {
    a,
    b,
    length: seamLength,
    allowanceA: seam.allowance,
    allowanceB: seam.allowance,
    lap: ZERO,
    match: 'none',
    kind: seam.kind,
    role,
    ...other,
  }
}

/** The cloths of `names` that lie on a table, in that order. */
export function tablesOf(names: readonly string[], tables: ReadonlyMap<string, ClothOnTable>): readonly ClothOnTable[] {
  return names.map((name) => tables.get(name)).filter((table) => table !== undefined)
}

/** Most ways kept for one item. */
export const MOST_WAYS = 64

/** The best ways by cloth area, then by seams, in a stable order; says when others were left out. */
export function bestWays(ways: readonly Way[], refused: readonly RefusedWay[], capped = false): Ways {
  if (ways.length <= MOST_WAYS) return { ways, refused, capped }
  const ranked = ways
    .map((way, index) => ({ way, index, area: areaOf(way) }))
    .sort((a, b) => a.area - b.area || a.way.joins - b.way.joins || a.index - b.index)
    .slice(0, MOST_WAYS)
    .sort((a, b) => a.index - b.index)
  return { ways: ranked.map((r) => r.way), refused, capped: true }
}

/** Cloth in the pieces of a way, in square units (exact below 2^53). */
export function areaOf(way: Pick<Way, 'pieces'>): number {
  let area = 0
  for (const piece of way.pieces) area += piece.cutWidth * piece.cutLength * piece.count
  return area
}

/** Length of an edge of a piece. */
export const edgeLength = (piece: Piece, edge: Edge): Length =>
  edge === 'head' || edge === 'foot' ? piece.cutWidth : piece.cutLength

export const half = (l: number): Length => length(Math.ceil(l / 2))
