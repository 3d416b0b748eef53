import type { Length } from '@lengthwise/units'
import { cm, inches, length, printLength, ZERO } from '@lengthwise/units'
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
        seam.match === 'none'
          ? ''
          : `, matching the print (${seam.match}): pin on the print, the ${level} edges as level as it lets them`
      return step(
        `${firstRow(seam)}, join ${edgeWords(byName, seam.a)} to ${edgeWords(byName, seam.b)}: ` +
          `${say(order, seam.length)}, allowance ${say(order, seam.allowanceA)}${matched}. ${finishOf(order, byName, seam)}`,
        seam.length,
      )
    })
}

/** What lies inside for the first row of stitching. */
export const layTogether = ({ kind }: Pick<SeamLine, 'kind'>): string =>
  kind === 'french' ? 'wrong sides together' : 'right sides together'

/** The same at the head of a sentence. */
export const firstRow = (seam: Pick<SeamLine, 'kind'>): string =>
  seam.kind === 'french' ? 'Wrong sides together' : 'Right sides together'

/**
 * Both rows of a French seam, which together take up its allowance: three fifths and two fifths of it, trimmed between them
 * to half of the second row, all to a millimetre or a sixteenth of an inch (common practice, no source).
 */
export function frenchRows(order: Pick<Order, 'measureIn'>, allowance: Length): string {
  const least = order.measureIn === 'in' ? inches(1 / 16) : cm(0.1)
  const second = Math.max(1, Math.round((allowance * 0.4) / least)) * least
  const trimmed = Math.floor(second / 2 / least) * least
  const trim = trimmed > 0 ? `to ${say(order, length(trimmed))}` : 'close to it'
  return `stitch ${say(order, length(allowance - second))} from the edge, trim ${trim}, turn right sides together, and stitch ${say(order, length(second))} from the fold: the raw edges are enclosed.`
}

export const OVERCAST = 'Overcast the raw edges; a selvedge needs none.'

/** How the raw edges of a seam are finished. */
export function finishOf(order: Order, byName: ReadonlyMap<string, Piece>, seam: SeamLine): string {
  if (seam.kind === 'french') return `French seam: ${frenchRows(order, seam.allowanceA)}`
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
