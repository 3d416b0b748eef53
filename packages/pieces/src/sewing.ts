import type { Length } from '@lengthwise/units'
import { length, printLength, ZERO } from '@lengthwise/units'
import type { Edge, Order } from './order.ts'
import type { EdgeRef, Piece, SeamLine, SewingLine } from './way.ts'

/** A step of the sewing order; `seamLength` 0 for steps without a seam. */
export const step = (text: string, seamLength: Length = ZERO): SewingLine => ({ text, seamLength })

/** A length in the plan's own unit, to a tenth. */
export const say = (order: Pick<Order, 'measureIn'>, l: Length): string =>
  printLength(l, order.measureIn, { places: 1, noBreak: true })

export const totalOf = (seams: readonly Pick<SeamLine, 'length'>[]): Length =>
  length(seams.reduce((total, seam) => total + seam.length, 0))

/** One step per pair of pieces joined inside a face, in the order given. */
export function joinSteps(order: Order, pieces: readonly Piece[], seams: readonly SeamLine[]): readonly SewingLine[] {
  const byName = new Map(pieces.map((piece) => [piece.name, piece]))
  return seams
    .filter((seam) => seam.role === 'join')
    .map((seam) => {
      const level = seam.a.edge === 'left' || seam.a.edge === 'right' ? 'head' : 'left'
      const matched =
        seam.match === 'none' ? '' : `, matching the print (${seam.match}): it meets where the ${level} edges are level`
      return step(
        `Right sides together, join ${edgeWords(byName, seam.a)} to ${edgeWords(byName, seam.b)}: ` +
          `${say(order, seam.length)}, allowance ${say(order, seam.allowanceA)}${matched}. ${finishOf(byName, seam)}`,
        seam.length,
      )
    })
}

export const OVERCAST = 'Overcast the raw edges; a selvedge needs none.'

/** How the raw edges of a seam are finished. */
export function finishOf(byName: ReadonlyMap<string, Piece>, seam: SeamLine): string {
  if (seam.kind === 'french')
    return 'French seam: wrong sides together first, trim, turn, sew again; it encloses its edges.'
  if (seam.kind === 'flat-felled')
    return 'Trim one edge, fold the other over it and stitch flat; it encloses its edges.'
  const raw = [seam.a, seam.b].filter((ref) => !needsNoFinish(byName.get(ref.piece), ref.edge)).length
  if (raw === 0) return 'Both edges are finished already and need nothing.'
  if (raw === 2 && seam.role === 'side') return 'Overcast the raw edges together.'
  // an edge that need not be a selvedge may be one where it was laid
  return OVERCAST
}

/** A selvedge, a kept hem, or a side of a panel as wide as the cloth. */
function needsNoFinish(piece: Piece | undefined, edge: Edge): boolean {
  if (piece === undefined) return false
  if (piece.needs[edge].kind !== 'none') return true
  const sides: readonly Edge[] = piece.lengthRuns === 'across' ? ['head', 'foot'] : ['left', 'right']
  return piece.spansWidth && sides.includes(edge)
}

function edgeWords(byName: ReadonlyMap<string, Piece>, ref: EdgeRef): string {
  const words = byName.get(ref.piece)?.words ?? ref.piece
  return `the ${ref.edge} edge of '${words}'`
}
