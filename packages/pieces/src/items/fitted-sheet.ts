import type { Length, Problem } from '@lengthwise/units'
import { beforeShrinking, cm, length, minus, roundUpTo, sum, times, ZERO } from '@lengthwise/units'
import type { RefusedWay, Ways } from '../answers.ts'
import { bestWays, edgeOf, makeSeam } from '../build.ts'
import { checkFaceSpec, checkSeam, clothsNamed, problem } from '../check-parts.ts'
import type { Cloth, ClothOnTable } from '../cloth.ts'
import { shrinksBy } from '../cut-size.ts'
import type { FaceAsk, FaceWay } from '../faces/face.ts'
import { waysOfFace } from '../faces/face-ways.ts'
import type { FaceEdge } from '../faces/lanes.ts'
import { ONE_POINT } from '../faces/shrinking.ts'
import type { Edge, FittedSheet, Order } from '../order.ts'
import { otherwise } from '../refusals.ts'
import { joinSteps, say, step } from '../sewing.ts'
import type { Mark, Notion, Piece, SeamLine, SewingLine } from '../way.ts'
import type { Draft } from './draft.ts'
import { waysFrom } from './draft.ts'
import { NEVER_JOINED } from './duvet-cover.ts'
import { sewingStep } from './seam-words.ts'

/** Elastic laid over itself where its ends are joined (common practice, no source). */
const OVERLAP = cm(2)
/** How far elastic at the corners reaches to either side of a corner (common practice, no source). */
const FROM_CORNER = cm(30)
/** Turned under inside the casing (common practice, no source). */
const CASING_TURN = cm(1)

/*
 * A fitted sheet laid flat: D depth of the mattress, T tuck, c casing, s seam allowance. At each corner a square is cut
 * out and its two sides are sewn together.
 *
 *          c+T+D      W      c+T+D
 *         +-----+-----------+-----+
 *         | cut |           | cut |      square cut out: D + T + c − s
 *         +-----+-----------+-----+
 *         |     | mattress  |     |
 */

/** Every way to make a fitted sheet: the ways of its face, with the corner squares marked on it. */
export function waysForFittedSheet(order: Order, item: FittedSheet, tables: ReadonlyMap<string, ClothOnTable>): Ways {
  const found = waysOfFace(order, faceOf(item), tables)
  const drafts: Draft[] = []
  const refused: RefusedWay[] = [...found.refused]
  for (const face of found.ways) {
    if (face.cloths.every((cloth) => shrinksEvenly(order, cloth))) drafts.push(draftOf(order, item, face))
    else refused.push({ words: face.words, why: SHRINKS_APART, ...otherwise(face.cloths[0]?.name ?? '') })
  }
  const ways = waysFrom(order, drafts, tables, found.capped)
  return bestWays(ways.ways, [...refused, ...ways.refused], ways.capped)
}

/** What is wrong with a fitted sheet as the plan has it. */
export function checkFittedSheet(order: Order, item: FittedSheet): readonly Problem[] {
  const problems = [...checkSeam(item), ...checkFaceSpec(order, item, item.face, item.path)]
  const add = (code: string, key: string, message: string, hint: string): void => {
    problems.push(problem(code, `${item.path}${key}`, message, hint))
  }
  if (item.mattress.depth <= 0)
    add('no-depth', '.mattress', 'the mattress has no depth', 'measure it from seam to seam and write W x L x depth')
  if (item.tuck < 0) add('tuck', '.tuck', 'the tuck is below nothing', 'take a tuck of 12 cm')
  if (item.casing <= CASING_TURN)
    add(
      'casing-too-narrow',
      '.casing',
      `a casing of ${say(order, item.casing)} has no room for elastic under a turn of ${say(order, CASING_TURN)}`,
      'take a casing of 3 cm',
    )
  if (item.elastic.ratioPercent <= 0 || item.elastic.ratioPercent > 100)
    add('elastic-ratio', '.elastic.ratio', 'elastic must be shorter than its edge', 'take a ratio of 0.6')
  const cloths = clothsNamed(order, item.face.cloth)
  if (cloths.length > 0 && !cloths.some((cloth) => shrinksEvenly(order, cloth)))
    add('shrinks-apart', '.cloth', SHRINKS_APART, 'wash before cutting (wash: before-cutting)')
  return problems
}

const SHRINKS_APART =
  'the corner seams join an edge along the cloth to one across it, which shrink apart by more than one point'

function shrinksEvenly(order: Order, cloth: Cloth): boolean {
  return order.wash !== 'after-sewing' || Math.abs(cloth.shrinks.along - cloth.shrinks.across) <= ONE_POINT
}

function faceOf(item: FittedSheet): FaceAsk {
  const { mattress, casing } = item
  const down = times(sum(mattress.depth, item.tuck), 2)
  const edge: FaceEdge = { beyond: casing, folds: [ZERO], need: { kind: 'none' } }
  return {
    name: '',
    words: 'Fitted sheet',
    finished: { width: sum(mattress.width, down), length: sum(mattress.length, down) },
    edges: { head: edge, foot: edge, left: edge, right: edge },
    seam: item.seam,
    spec: item.face,
    neverJoined: item.cot ? NEVER_JOINED : null,
  }
}

function draftOf(order: Order, item: FittedSheet, face: FaceWay): Draft {
  const { seam } = item
  const square = cornerSquare(order, item, face)
  const corners = cornersOn(face, square)
  const pieces = face.pieces.map((piece) => ({
    ...piece,
    marks: [...piece.marks, ...corners.filter((corner) => corner.piece === piece).map((corner) => corner.mark)],
  }))
  const cornerSeams = corners.map((corner): SeamLine => {
    const part = (edge: Edge) => {
      const whole = edge === 'head' || edge === 'foot' ? corner.piece.cutWidth : corner.piece.cutLength
      const atStart = edge === corner.end ? corner.side === 'left' : corner.end === 'head'
      return atStart
        ? edgeOf(corner.piece.name, edge, ZERO, square)
        : edgeOf(corner.piece.name, edge, minus(whole, square), whole)
    }
    return makeSeam(seam, part(corner.end), part(corner.side), square, 'side')
  })
  // the corners take their square and its seam at both ends of every edge
  const corner = item.corners === 'cut' ? sum(square, seam.allowance) : square
  const edgeRound = length(2 * (face.width + face.length) - 8 * corner)
  const unlisted = corners.length === 4 ? 0 : 4 * square
  return {
    id: face.id,
    words: face.words,
    pieces,
    seams: [...face.seams, ...cornerSeams],
    joins: face.joins,
    notions: [elasticOf(order, item)],
    hems: edgeRound + unlisted,
    sewing: [
      ...joinSteps(order, pieces, face.seams),
      step(cornerWords(order, item, square, corners.length === 4)),
      sewingStep(
        order,
        seam,
        'Each corner, edge to edge, from the outer edge of the sheet in',
        times(square, 4),
        square,
      ),
      ...casingSteps(order, item, edgeRound),
    ],
  }
}

/** Side of the square at each corner: what is cut out, or, where the corner is kept, the square inside the stitching. */
function cornerSquare(order: Order, item: FittedSheet, face: FaceWay): Length {
  const drop = sum(item.mattress.depth, item.tuck)
  // where it shrinks a little less one way, the shorter square leaves the top of the mattress its full size
  const shares = face.cloths.map((cloth) => shrinksBy(order, cloth, face.run === 'either' ? 'along' : face.run))
  const least = Math.min(...shares.flatMap((share) => [share.width, share.length])) as Parameters<
    typeof beforeShrinking
  >[1]
  const stitching = sum(beforeShrinking(drop, least), item.casing)
  return item.corners === 'cut' ? minus(stitching, item.seam.allowance) : stitching
}

interface Corner {
  readonly piece: Piece
  readonly end: 'head' | 'foot'
  readonly side: 'left' | 'right'
  readonly mark: Mark
}

/** The corner squares on the pieces they lie on; none when a corner spans a joining seam: it is marked after joining. */
function cornersOn(face: FaceWay, square: Length): readonly Corner[] {
  const corners: Corner[] = []
  for (const end of ['head', 'foot'] as const)
    for (const side of ['left', 'right'] as const) {
      const stretches = face.outer[end]
      const name = (side === 'left' ? stretches[0] : stretches.at(-1))?.piece
      const piece = face.pieces.find((p) => p.name === name)
      if (piece === undefined || !hasRoom(piece, face, square)) return []
      const x = side === 'left' ? ZERO : minus(piece.cutWidth, square)
      const y = end === 'head' ? ZERO : minus(piece.cutLength, square)
      corners.push({ piece, end, side, mark: { kind: 'corner-square', x, y, size: square } })
    }
  return corners
}

function hasRoom(piece: Piece, face: FaceWay, square: Length): boolean {
  const joined = face.seams.reduce((most, seam) => Math.max(most, seam.allowanceA, seam.allowanceB), 0)
  const across = face.pieces.length === 1 ? 2 * square : square + joined
  return piece.cutWidth >= across && piece.cutLength >= across
}

function cornerWords(order: Order, item: FittedSheet, square: Length, isMarked: boolean): string {
  const where = isMarked ? 'at each corner mark' : 'at each corner of the joined sheet'
  return item.corners === 'cut'
    ? `Cut out a square of ${say(order, square)} ${where}.`
    : `Fold each corner to a point, right sides together, so that its edges meet; the stitching, ${say(order, square)} long, ` +
        `lies square to the edges${isMarked ? ', on the sides of the corner mark' : ''}. The corner stays in, folded flat.`
}

function casingSteps(order: Order, item: FittedSheet, edgeRound: Length): SewingLine[] {
  const turn = `Casing: turn ${say(order, CASING_TURN)} under, then ${say(order, minus(item.casing, CASING_TURN))} at the fold marks; press`
  const elastic = say(order, elasticLength(order, item))
  const text = `${turn} and stitch ${say(order, edgeRound)} all round, leaving ${item.elastic.where === 'all-round' ? 'a gap' : 'gaps'} to thread the elastic through.`
  switch (item.elastic.where) {
    case 'all-round':
      return [step(text, edgeRound), step(`Thread ${elastic} of elastic all round, join its ends and close the gap.`)]
    case 'ends':
      return [
        step(text, edgeRound),
        step(`Thread half of the ${elastic} of elastic along the head, half along the foot; stitch its ends down.`),
      ]
    case 'corners':
      return [
        step(text, edgeRound),
        step(
          `Thread a quarter of the ${elastic} of elastic round each corner, ${say(order, FROM_CORNER)} to either side; stitch its ends down.`,
        ),
      ]
  }
}

function elasticOf(order: Order, item: FittedSheet): Notion {
  const narrow = `elastic narrower than ${say(order, minus(item.casing, CASING_TURN))}`
  const words = {
    'all-round': `${narrow}, for the casing all round`,
    ends: `${narrow}, for the casing at head and foot`,
    corners: `${narrow}, for the casing at the four corners`,
  }
  return { what: 'elastic', length: elasticLength(order, item), words: words[item.elastic.where] }
}

/** Edge × ratio, and the overlap where the ends are joined. */
function elasticLength(order: Order, item: FittedSheet): Length {
  const { width, length: long } = item.mattress
  const shortened = (edge: number): Length => length(Math.ceil((edge * item.elastic.ratioPercent) / 100))
  switch (item.elastic.where) {
    case 'all-round':
      return roundUpTo(sum(shortened(2 * (width + long)), OVERLAP), order.markTo)
    case 'ends':
      return roundUpTo(times(shortened(width), 2), order.markTo)
    case 'corners':
      return roundUpTo(times(shortened(2 * FROM_CORNER), 4), order.markTo)
  }
}
