import type { Length } from '@lengthwise/units'
import { beforeShrinking, length, minus, roundUpTo, sum, times, ZERO } from '@lengthwise/units'
import { edgeOf, foldAcross, foldAlong, makePiece, makeSeam } from '../build.ts'
import { cutLength } from '../cut-size.ts'
import type { Edge, EdgeNeed, Order, Pillowcase } from '../order.ts'
import { layTogether, step } from '../sewing.ts'
import { hemTake } from '../thread.ts'
import type { EdgeRef, Piece, SeamLine, SewingLine } from '../way.ts'
import type { Choice } from './choices.ts'
import { mostShrinking } from './choices.ts'
import type { Draft } from './draft.ts'
import { centred } from './motif.ts'
import { hemStep, sewingStep } from './seam-words.ts'

/*
 * A pillowcase open at one end, the opening hemmed or finished with a cuff, seen as it lies across the bed. Folded along
 * a long side it is one tube, folded at the closed end one long piece, or front and back are separate.
 *
 *        closed  | body                  | trim | cuff, doubled :   the opening
 */

/** Cloths of the cuff and of the narrow trim between cuff and body. */
export interface CuffChoice {
  readonly cuff: Choice
  readonly trim: Choice | null
}

/** One tube, folded along a long side: twice the short side and two seams from head to foot. */
export function openEndTube(order: Order, item: Pillowcase, body: Choice, cuff: CuffChoice | null): Draft {
  const shrinks = mostShrinking(chosen([body], cuff))
  const leaf = sum(item.seam.allowance, beforeShrinking(item.finished.width, shrinks.length))
  const around = evenly(times(leaf, 2), order.markTo)
  const fold = length(around / 2)
  const faces = openFaces(order, item, [{ name: '', words: 'Pillowcase', closed: 'left', body }], cuff, around, fold)
  const [bodyPiece] = faces.bodies
  const closed = makeSeam(
    item.seam,
    edgeOf(bodyPiece!.name, 'left', ZERO, fold),
    edgeOf(bodyPiece!.name, 'left', fold, around),
    fold,
    'side',
  )
  const long = faces.inSideSeams.map((stretch) =>
    makeSeam(item.seam, along(stretch, 'head'), along(stretch, 'foot'), minus(stretch.to, stretch.from), 'side'),
  )
  // folded over the long side, what is upright on the front hangs on the back
  const upsideDown = body.cloth.print.way === 'one-way' ? '; the print runs upside down on the back' : ''
  return {
    id: `one-piece/${body.cloth.name}/${body.run}${cuffId(cuff)}`,
    words: `one piece folded along a long side${cuffWords(cuff)}${upsideDown}`,
    pieces: faces.pieces,
    seams: [...faces.joins, closed, ...long],
    joins: faces.joins.length,
    notions: [],
    hems: faces.hems,
    sewing: [
      ...faces.before,
      step(`Fold along the long side at the fold mark, ${layTogether(item.seam)}.`),
      sewingStep(order, item.seam, 'Long side and closed end', sum(faces.sewn, fold)),
      ...faces.after,
      step('Turn right side out, push out the corners and press.'),
    ],
  }
}

/** One piece folded at the closed end; hems, or kept edges, at both ends meet at the opening. */
export function openEndFolded(order: Order, item: Pillowcase, body: Choice): Draft {
  const isKept = item.openingEdge.kind !== 'none'
  const hem = isKept ? ZERO : hemTake(item.hem)
  const faceLength = cutLength(order, item.finished.width, body.length, times(item.seam.allowance, 2))
  const cut = evenly(times(sum(hem, beforeShrinking(item.finished.length, body.width)), 2), order.markTo)
  const closed = length(cut / 2)
  const piece = makePiece(body.cloth, {
    name: '',
    words: 'Pillowcase',
    size: { width: cut, length: faceLength },
    run: body.run,
    needs: { left: item.openingEdge, right: item.openingEdge },
    marks: (isKept ? [closed] : [hem, closed, minus(cut, hem)]).map(foldAlong),
  })
  const side = (edge: 'head' | 'foot'): SeamLine =>
    makeSeam(item.seam, edgeOf('', edge, ZERO, closed), edgeOf('', edge, closed, cut), closed, 'side')
  return {
    id: `one-piece-end-fold/${body.cloth.name}/${body.run}`,
    words: 'one piece folded at the closed end',
    pieces: [centred(order, body, piece, { x: (hem + closed) / 2, y: faceLength / 2 })],
    seams: [side('head'), side('foot')],
    joins: 0,
    notions: [],
    hems: isKept ? 0 : 2 * faceLength,
    sewing: [
      step(
        `Fold in the middle, at the fold mark of the closed end, ${layTogether(item.seam)}${isKept ? ': the kept edges meet at the opening' : ''}.`,
      ),
      sewingStep(order, item.seam, 'Both long sides', times(closed, 2)),
      ...(isKept ? [] : [hemStep(order, item.hem, 'the opening, all round', times(faceLength, 2))]),
      step('Turn right side out, push out the corners and press.'),
    ],
  }
}

/** Front and back, each with its own cuff where there is one: three sides are seams. */
export function openEndInTwo(
  order: Order,
  item: Pillowcase,
  front: Choice,
  back: Choice,
  cuff: CuffChoice | null,
): Draft {
  const shrinks = mostShrinking(chosen([front, back], cuff))
  const faceLength = cutLength(order, item.finished.width, shrinks.length, times(item.seam.allowance, 2))
  const ask: readonly OpenFace[] = [
    { name: '/front', words: 'Front', closed: 'left', body: front },
    { name: '/back', words: 'Back', closed: 'right', body: back },
  ]
  const faces = openFaces(order, item, ask, cuff, faceLength, null)
  const perFace = faces.inSideSeams.length / 2
  const sides = faces.inSideSeams.slice(0, perFace).flatMap((stretch, i) => {
    const behind = faces.inSideSeams[perFace + i]!
    const seamLength = minus(stretch.to, stretch.from)
    return (['head', 'foot'] as const).map((edge) =>
      makeSeam(item.seam, along(stretch, edge), along(behind, edge), seamLength, 'side'),
    )
  })
  const [frontBody, backBody] = faces.bodies
  const closed = makeSeam(
    item.seam,
    edgeOf(frontBody!.name, 'left'),
    edgeOf(backBody!.name, 'right'),
    faceLength,
    'side',
  )
  return {
    id: `separate/${front.cloth.name}/${front.run}/${back.cloth.name}/${back.run}${cuffId(cuff)}`,
    words: `separate front and back${cuffWords(cuff)}`,
    pieces: faces.pieces,
    seams: [...faces.joins, closed, ...sides],
    joins: faces.joins.length,
    notions: [],
    hems: faces.hems,
    sewing: [
      ...faces.before,
      step(`Lay front and back ${layTogether(item.seam)}${keptOpening(item)}.`),
      sewingStep(order, item.seam, 'Long sides and closed end, front to back', sum(times(faces.sewn, 2), faceLength)),
      ...faces.after,
      step('Turn right side out, push out the corners and press.'),
    ],
  }
}

interface OpenFace {
  readonly name: string
  readonly words: string
  /** the closed end, seen from the right side of the face */
  readonly closed: 'left' | 'right'
  readonly body: Choice
}

/** The part of a piece's head and foot edge that lies in the side seams, from its left. */
interface Stretch {
  readonly piece: string
  readonly from: Length
  readonly to: Length
}

const along = (stretch: Stretch, edge: 'head' | 'foot'): EdgeRef =>
  edgeOf(stretch.piece, edge, stretch.from, stretch.to)

/** Bodies with their cuffs and trims, or with their hems. */
interface OpenFaces {
  readonly pieces: readonly Piece[]
  readonly bodies: readonly Piece[]
  /** bodies up to the cuff and cuffs up to their fold, face by face; a trim is folded and only caught */
  readonly inSideSeams: readonly Stretch[]
  readonly joins: readonly SeamLine[]
  /** from the closed end to the opening as it is sewn */
  readonly sewn: Length
  readonly hems: number
  readonly before: readonly SewingLine[]
  readonly after: readonly SewingLine[]
}

function openFaces(
  order: Order,
  item: Pillowcase,
  asked: readonly OpenFace[],
  cuff: CuffChoice | null,
  faceLength: Length,
  longFold: Length | null,
): OpenFaces {
  const folds = longFold === null ? [] : [foldAcross(longFold)]
  const { width: s } = mostShrinking(
    chosen(
      asked.map((face) => face.body),
      cuff,
    ),
  )
  const around = times(faceLength, asked.length)
  return item.cuff === null || cuff === null ? hemmed() : cuffed(item.cuff, cuff)

  /** The motif lies in the middle between closed end and hem or cuff, on a tube in the middle of its front. */
  function centredFace(face: OpenFace, open: Length, piece: Piece): Piece {
    const fromClosed = (item.seam.allowance + open) / 2
    const x = face.closed === 'left' ? fromClosed : piece.cutWidth - fromClosed
    const y = longFold === null ? faceLength / 2 : (item.seam.allowance + longFold) / 2
    return centred(order, face.body, piece, { x, y })
  }

  function hemmed(): OpenFaces {
    const { allowance } = item.seam
    const isKept = item.openingEdge.kind !== 'none'
    const cut = cutLength(order, item.finished.length, s, isKept ? allowance : sum(allowance, hemTake(item.hem)))
    const open = sum(allowance, beforeShrinking(item.finished.length, s))
    const pieces = asked.map((face) =>
      centredFace(
        face,
        open,
        makePiece(face.body.cloth, {
          name: face.name,
          words: face.words,
          size: { width: cut, length: faceLength },
          run: face.body.run,
          needs: { [opposite(face.closed)]: item.openingEdge } as Partial<Record<Edge, EdgeNeed>>,
          marks: isKept ? folds : [...folds, foldAlong(face.closed === 'left' ? open : minus(cut, open))],
        }),
      ),
    )
    return {
      pieces,
      bodies: pieces,
      inSideSeams: pieces.map((piece) => ({ piece: piece.name, from: ZERO, to: cut })),
      joins: [],
      sewn: cut,
      hems: isKept ? 0 : around,
      before: [],
      after: isKept ? [] : [hemStep(order, item.hem, 'the opening, all round', around)],
    }
  }

  // the cuff is doubled, both its raw edges in the seam; the trim is folded and caught in the same seam
  function cuffed({ depth, trim }: NonNullable<Pillowcase['cuff']>, choice: CuffChoice): OpenFaces {
    const { allowance } = item.seam
    const cuffCut = evenly(times(sum(allowance, beforeShrinking(depth, s)), 2), order.markTo)
    const cuffFold = length(cuffCut / 2)
    // what the marking step added to the cuff the body need not give
    const cuffShown = minus(cuffFold, allowance)
    const bodyShown = minus(beforeShrinking(item.finished.length, s), cuffShown)
    const bodyCut = roundUpTo(sum(bodyShown, allowance, allowance), order.markTo)
    const pieces: Piece[] = []
    const bodies: Piece[] = []
    const inSideSeams: Stretch[] = []
    const joins: SeamLine[] = []
    for (const face of asked) {
      const body = centredFace(
        face,
        minus(bodyCut, allowance),
        makePiece(face.body.cloth, {
          name: `${face.name}/body`,
          words: `${face.words}, body`,
          size: { width: bodyCut, length: faceLength },
          run: face.body.run,
          marks: folds,
        }),
      )
      const cuffPiece = makePiece(choice.cuff.cloth, {
        name: `${face.name}/cuff`,
        words: `${face.words}, cuff`,
        size: { width: cuffCut, length: faceLength },
        run: choice.cuff.run,
        marks: [...folds, foldAlong(cuffFold)],
      })
      bodies.push(body)
      // seen from its own right side the back is the other way round
      const isMirrored = face.closed === 'right'
      inSideSeams.push(
        isMirrored
          ? { piece: body.name, from: allowance, to: bodyCut }
          : { piece: body.name, from: ZERO, to: minus(bodyCut, allowance) },
        isMirrored
          ? { piece: cuffPiece.name, from: cuffFold, to: minus(cuffCut, allowance) }
          : { piece: cuffPiece.name, from: allowance, to: cuffFold },
      )
      pieces.push(body, cuffPiece)
      const open = opposite(face.closed)
      joins.push(makeSeam(item.seam, edgeOf(body.name, open), edgeOf(cuffPiece.name, face.closed), faceLength, 'join'))
      if (trim !== null && choice.trim !== null) {
        const trimCut = evenly(times(sum(allowance, beforeShrinking(trim.depth, s)), 2), order.markTo)
        const piece = makePiece(choice.trim.cloth, {
          name: `${face.name}/trim`,
          words: `${face.words}, trim`,
          size: { width: trimCut, length: faceLength },
          run: choice.trim.run,
          marks: [foldAlong(length(trimCut / 2))],
        })
        // folded lengthwise, a trim has no upper edge
        pieces.push({ ...piece, mayTurnEndForEnd: true, headToward: null, uppermost: null })
      }
    }
    // a French seam turns what lies between its first rows inside, where nobody sees it
    const basted = trim !== null && item.seam.kind === 'french'
    const caught = trim === null || basted ? 'Cuff to body' : 'Cuff to body, the folded trim caught between'
    return {
      pieces,
      bodies,
      inSideSeams,
      joins,
      sewn: sum(minus(bodyCut, allowance), cuffShown),
      hems: 0,
      before: [
        step(
          `Press ${trim === null ? 'the cuff in half at its fold mark' : 'cuff and trim in half at their fold marks'}, wrong sides together.`,
        ),
        ...(basted
          ? [
              step(
                'Baste the folded trim to the right side of the body at its open end, raw edges level, the fold of the trim toward the body.',
              ),
            ]
          : []),
        sewingStep(order, item.seam, `${caught}, both raw edges of the cuff in the seam`, around),
      ],
      after: [],
    }
  }
}

/** Which end is the opening, where the cloth has finished it. */
function keptOpening({ openingEdge: { kind } }: Pillowcase): string {
  if (kind === 'none') return ''
  const edge = kind === 'selvedge' ? 'selvedge' : 'kept hem'
  return `, ${edge} to ${edge}: that end is the opening`
}

const opposite = (edge: 'left' | 'right'): 'left' | 'right' => (edge === 'left' ? 'right' : 'left')

/** Up to the marking step, and to an even number of units so that it can be folded in half. */
function evenly(l: Length, markTo: Length): Length {
  const rounded = roundUpTo(l, markTo)
  return rounded % 2 === 0 ? rounded : sum(rounded, markTo)
}

function chosen(bodies: readonly Choice[], cuff: CuffChoice | null): readonly Choice[] {
  if (cuff === null) return bodies
  return cuff.trim === null ? [...bodies, cuff.cuff] : [...bodies, cuff.cuff, cuff.trim]
}

const cuffWords = (cuff: CuffChoice | null): string =>
  cuff === null ? '' : cuff.trim === null ? ', with cuff' : ', with cuff and trim'

function cuffId(cuff: CuffChoice | null): string {
  if (cuff === null) return ''
  const parts = cuff.trim === null ? [cuff.cuff] : [cuff.cuff, cuff.trim]
  return parts.map((part) => `/${part.cloth.name}/${part.run}`).join('')
}
