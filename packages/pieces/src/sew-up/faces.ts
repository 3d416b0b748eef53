import type { Edge } from '../order.ts'
import type { Piece, SeamLine } from '../way.ts'

/** A seam seen from one of the two edges it joins. */
export interface SeamSide {
  readonly seam: SeamLine
  readonly edge: Edge
  readonly from: number
  readonly to: number
  readonly allowance: number
  readonly other: { readonly piece: string; readonly edge: Edge }
  /** joins pieces flat into one face */
  readonly flat: boolean
  /** the part of this edge under the lap */
  readonly under: number
}

export interface SewnPiece {
  readonly piece: Piece
  readonly seams: readonly SeamSide[]
  /** places of folds, and of stitching that is an edge, across the piece, from the head, and along it, from the left */
  readonly folds: { readonly length: readonly number[]; readonly width: readonly number[] }
}

export type Axis = 'width' | 'length'

/** The edges at the start and the end of each direction. */
export const ENDS: Readonly<Record<Axis, readonly [Edge, Edge]>> = {
  width: ['left', 'right'],
  length: ['head', 'foot'],
}
/** The direction an edge runs in. */
export const RUNS: Readonly<Record<Edge, Axis>> = { head: 'width', foot: 'width', left: 'length', right: 'length' }

const OPPOSITE: Readonly<Record<Edge, Edge>> = { head: 'foot', foot: 'head', left: 'right', right: 'left' }

/** Pieces joined flat, by union of their seams. */
export function sewnPieces(pieces: readonly Piece[], seams: readonly SeamLine[]): ReadonlyMap<string, SewnPiece> {
  const sewn = new Map<string, { piece: Piece; seams: SeamSide[]; folds: SewnPiece['folds'] }>()
  for (const piece of pieces) {
    const at = (runs: 'across' | 'along'): number[] =>
      piece.marks
        .filter((mark) => (mark.kind === 'fold' || mark.isEdge === true) && (mark.runs ?? 'across') === runs)
        .map((mark) => (runs === 'across' ? mark.y : mark.x))
        .sort((a, b) => a - b)
    sewn.set(piece.name, { piece, seams: [], folds: { length: at('across'), width: at('along') } })
  }
  for (const seam of seams)
    for (const [own, other, allowance] of [
      [seam.a, seam.b, seam.allowanceA],
      [seam.b, seam.a, seam.allowanceB],
    ] as const) {
      const at = sewn.get(own.piece)
      if (at === undefined) continue
      const whole = sizeOf(at.piece, RUNS[own.edge])
      const later = own.edge === 'head' || own.edge === 'left'
      at.seams.push({
        seam,
        edge: own.edge,
        from: own.from ?? 0,
        to: own.to ?? whole,
        allowance,
        other,
        flat: isFlat(seam),
        under: later ? Math.max(0, seam.lap) : 0,
      })
    }
  return sewn
}

/** In one face: joined, lapped, or an opening between the foot of one piece and the head of the next. */
function isFlat(seam: SeamLine): boolean {
  const opposite = OPPOSITE[seam.a.edge] === seam.b.edge
  if (!opposite || seam.a.piece === seam.b.piece) return false
  return seam.role === 'join' || seam.kind === 'lapped' || (seam.role === 'opening' && RUNS[seam.a.edge] === 'width')
}

/** Names of the pieces of each face: what is joined flat, directly or through others. */
export function facesOf(sewn: ReadonlyMap<string, SewnPiece>): readonly (readonly string[])[] {
  const seen = new Set<string>()
  const faces: string[][] = []
  for (const start of sewn.keys()) {
    if (seen.has(start)) continue
    const face: string[] = []
    const open = [start]
    seen.add(start)
    for (let name = open.pop(); name !== undefined; name = open.pop()) {
      face.push(name)
      for (const side of sewn.get(name)?.seams ?? [])
        if (side.flat && !seen.has(side.other.piece) && sewn.has(side.other.piece)) {
          seen.add(side.other.piece)
          open.push(side.other.piece)
        }
    }
    faces.push(face)
  }
  return faces
}

/** A row of pieces right across a face, each with the seam to the one after it. */
export type Row = readonly { readonly at: SewnPiece; readonly next: SeamSide | null }[]

/** Every row across a face in one direction, from an outer edge to an outer edge. */
export function rowsOf(sewn: ReadonlyMap<string, SewnPiece>, face: readonly string[], axis: Axis): readonly Row[] {
  const [first, last] = ENDS[axis]
  const rows: Row[] = []
  const walk = (name: string, before: Row): void => {
    const at = sewn.get(name)
    if (at === undefined || before.length > face.length) return
    const onward = at.seams.filter((side) => side.flat && side.edge === last && side.other.edge === first)
    if (onward.length === 0) rows.push([...before, { at, next: null }])
    for (const next of onward) walk(next.other.piece, [...before, { at, next }])
  }
  for (const name of face) {
    const at = sewn.get(name)
    if (at !== undefined && !at.seams.some((side) => side.flat && side.edge === first)) walk(name, [])
  }
  return rows
}

export const sizeOf = (piece: Piece, axis: Axis): number => (axis === 'width' ? piece.cutWidth : piece.cutLength)
