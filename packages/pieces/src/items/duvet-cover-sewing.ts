import type { Length } from '@lengthwise/units'
import { cm, inches, length, sum } from '@lengthwise/units'
import { half } from '../build.ts'
import { MEETS } from '../covers.ts'
import type { DuvetCover, Edge, Hem, Order } from '../order.ts'
import { evenly } from '../rows.ts'
import { finishOf, firstRow, joinSteps, layTogether, say, step, totalOf } from '../sewing.ts'
import type { Piece, SeamLine, SewingLine } from '../way.ts'
import type { ZipChoice } from '../zips.ts'
import { zipBehind } from './seam-words.ts'

/** The zip of the opening, or the stitched length of the hems of both faces there. */
interface OpeningWork {
  readonly zip: ZipChoice | null
  readonly hems: Length
}

/** The cover in the order it is sewn: panels, opening, ties, outer seams, turning. */
export function sewDuvetCover(
  order: Order,
  item: DuvetCover,
  pieces: readonly Piece[],
  seams: readonly SeamLine[],
  opening: OpeningWork,
): readonly SewingLine[] {
  return [
    ...joinSteps(order, pieces, seams),
    ...openingSteps(order, item, pieces, seams, opening),
    ...tieSteps(order, item),
    ...outerSteps(order, item, pieces, seams),
    step(
      `Clip the corners${item.cornerTies.count > 0 ? ' beside the ties' : ''}, turn right side out${item.opening.kind === 'none' ? ' through the gap' : ''}, push the corners out and press.`,
    ),
    ...(item.opening.kind === 'none' ? [step('Put the filling in and close the gap by hand.')] : []),
  ]
}

function openingSteps(
  order: Order,
  item: DuvetCover,
  pieces: readonly Piece[],
  seams: readonly SeamLine[],
  { zip, hems }: OpeningWork,
): readonly SewingLine[] {
  const { opening } = item
  const edge = opening.kind === 'none' ? item.finished.width : edgeLengthOf(item, opening.at)
  switch (opening.kind) {
    case 'none':
      return []
    case 'zip':
      return item.back.zipEdge === null
        ? zipInSeam(order, pieces, seams, zip, opening.at)
        : zipBetweenHems(order, seams, zip)
    case 'buttons':
    case 'snaps': {
      const places = evenly(edge, opening.fromCorner, opening.spacing)
      const what =
        opening.kind === 'buttons'
          ? 'Work the buttonholes at the button marks of the front, sew the buttons to the inside of the back, on its placket'
          : 'Fix the snaps at the snap marks, one half on the inside of each face'
      return [
        step(
          `Turn the placket at ${ofBoth(opening.at)}: ${say(order, opening.turnedIn)} under, then ${say(order, opening.depth)} deep at the fold mark; press and stitch.`,
          hems,
        ),
        step(`${what}: ${places.length}${rowWords(order, item, opening.at, places)}.`),
      ]
    }
    case 'ties': {
      const places = evenly(edge, opening.fromCorner, opening.spacing)
      return [
        step(`Hem ${ofBoth(opening.at)}: ${turnWords(order, opening.hem)} at the fold mark; press and stitch.`, hems),
        step(
          `Fold each tie in four along its length, one end in, and stitch; turn its raw end under and sew one by that end to the inside of each face at the tie marks: ${places.length} places${rowWords(order, item, opening.at, places)}.`,
        ),
      ]
    }
    case 'flap':
      return [
        step(
          `Hem the ${opening.at} of the front and the free edge of the flap: ${turnWords(order, opening.hem)} at the fold marks; press and stitch.`,
          hems,
        ),
        step(
          `Lay front and back ${layTogether(item.seam)}. Fold the flap at the ${MEETS[opening.at]} of the back at its fold mark, ${say(order, opening.depth)} deep, ${item.seam.kind === 'french' ? 'in between them' : 'over the front and its hem'}; pin it so that the seams at its ends catch it: it lies inside the turned cover.`,
        ),
      ]
  }
}

/** An edge of the cover on both faces, each seen from its own right side. */
const ofBoth = (edge: Edge): string =>
  MEETS[edge] === edge ? `the ${edge} of each face` : `the ${edge} of the front and the ${MEETS[edge]} of the back`

const turnWords = (order: Order, hem: Hem): string =>
  `turn ${say(order, hem.turnedIn)} under, then ${say(order, hem.depth)} deep`

/**
 * Where the first of a row lies and how far it is to the next. Openings are worked before the seams at their ends are sewn,
 * so that places are told from the seam to come and, where nothing grows, from the raw edge.
 */
function rowWords(order: Order, item: DuvetCover, at: Edge, [first, second]: readonly Length[]): string {
  if (first === undefined) return ''
  const end = at === 'head' || at === 'foot' ? 'side' : 'head'
  const seam = `${say(order, first)} from the ${end} seam to come`
  const place =
    order.wash === 'after-sewing'
      ? seam
      : `${say(order, sum(first, item.seam.allowance))} from the raw ${end} edge (${seam})`
  return `, the first ${place}${second === undefined ? '' : `, then every ${say(order, length(second - first))}`}`
}

function zipInSeam(
  order: Order,
  pieces: readonly Piece[],
  seams: readonly SeamLine[],
  zip: ZipChoice | null,
  at: Edge,
): readonly SewingLine[] {
  const own = seams.filter((seam) => seam.role === 'opening')
  const first = own[0]
  if (first === undefined) return []
  const byName = new Map(pieces.map((piece) => [piece.name, piece]))
  const total = totalOf(own)
  const opened =
    zip === null
      ? ''
      : `, ${say(order, zip.opening)} of it open between the zip-end marks${order.wash === 'after-sewing' ? '' : `, ${say(order, length(Math.floor((total - zip.opening) / 2)))} from each raw end`}`
  return [
    step(
      `Right sides together, sew front to back at the ${at} (${say(order, total)}, allowance ${say(order, first.allowanceA)})${opened}: close the seam outside the marks past the stops of the zip. ${finishOf(order, byName, first)}`,
      total,
    ),
    zipBehind(order, zip),
  ]
}

/**
 * A zip that one hem covers, both hems finished folds right side up. Stitching lies beside the teeth and clear of the slider
 * (common practice, no source).
 *
 *     body      ______________________ 1.3 from its fold, through the tape
 *     zip strip ________|  :            0.4 of lap
 *                     0.3 ::: teeth
 */
function zipBetweenHems(order: Order, seams: readonly SeamLine[], zip: ZipChoice | null): readonly SewingLine[] {
  const own = seams.filter((seam) => seam.role === 'opening')
  const total = totalOf(own)
  const lap = own[0]?.lap ?? 0
  const [close, beyondTeeth] = order.measureIn === 'in' ? [inches(1 / 8), inches(3 / 8)] : [cm(0.3), cm(0.9)]
  const opening = zip?.opening ?? total
  const two = zip?.zips.length === 2 ? ' Two zips lie head to head, so that their sliders meet in the middle.' : ''
  const open = zip === null ? '' : ` It opens ${say(order, opening)}.`
  // the upper hem covers the teeth and is stitched beyond the slider; hems set apart are both stitched close
  const over =
    lap >= 0
      ? `over the teeth, so that it laps ${say(order, length(lap))} over the strip; stitch it ${say(order, length(lap + beyondTeeth))} from its fold through the other tape`
      : `to the other side of the teeth, ${say(order, length(-lap))} from the strip; stitch it ${say(order, close)} from its fold to the other tape`
  const beside =
    lap >= 0
      ? 'stitch the lapped hems to each other, there and back in the middle of the lap'
      : 'lay a strip of cloth under both hems and stitch each to it'
  const ends = zip === null || order.wash === 'after-sewing' ? '' : `: ${say(order, length(total - opening))} in all`
  return [
    step(
      `Close the zip and lay it face up. Lay the zip strip on one tape, right side up, its kept fold beside the teeth, between the zip-end marks; stitch ${say(order, close)} from the fold.${two}`,
      opening,
    ),
    step(`Lay the kept foot hem of the body, right side up, ${over}, mark to mark.${open}`, opening),
    step(`Beside both ends of the zip, past its stops, ${beside}, out to the sides${ends}. Leave the zip open.`),
  ]
}

function tieSteps(order: Order, item: DuvetCover): readonly SewingLine[] {
  const { count, length: tieLength, bought } = item.cornerTies
  if (count === 0) return []
  const make = bought ? 'Cut the cord or tape' : 'Fold each corner tie in four along its length, one end in, and stitch'
  const where = count === 4 ? 'in all four corners' : 'in the two head corners'
  return [
    step(
      `${make}: ${count} of ${say(order, tieLength)}. Baste one end of each to the wrong side of the front at the tie mark ${where}, where the seams to come cross, from the raw corner straight toward the middle, and pin the rest out of the way: so they hang inside the turned cover.`,
    ),
  ]
}

/** The seams between front and back, each edge of the cover one step. */
function outerSteps(
  order: Order,
  item: DuvetCover,
  pieces: readonly Piece[],
  seams: readonly SeamLine[],
): readonly SewingLine[] {
  const byName = new Map(pieces.map((piece) => [piece.name, piece]))
  const sides = seams.filter((seam) => seam.role === 'side')
  const steps: SewingLine[] = []
  for (const edge of ['left', 'right', 'foot', 'head'] as const) {
    const own = sides.filter((seam) => seam.a.edge === edge)
    const first = own[0]
    if (first === undefined) continue
    const gap =
      item.opening.kind === 'none' && edge === 'foot'
        ? ` Leave the middle half open, ${say(order, half(totalOf(own)))}, to turn and fill through.`
        : ''
    steps.push(
      step(
        `${firstRow(first)}, sew the ${edge} seam, front to back: ${say(order, totalOf(own))}, allowance ${say(order, first.allowanceA)}.${gap} ${finishOf(order, byName, first)}`,
        totalOf(own),
      ),
    )
  }
  return steps
}

const edgeLengthOf = (item: DuvetCover, edge: Edge): DuvetCover['finished']['width'] =>
  edge === 'head' || edge === 'foot' ? item.finished.width : item.finished.length
