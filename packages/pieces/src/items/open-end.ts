import type { Length } from '@lengthwise/units'
import { beforeShrinking, length, minus, roundUpTo, sum, times, ZERO } from '@lengthwise/units'
import { edgeOf, foldAcross, foldAlong, makeSeam } from '../build.ts'
import { cutLength } from '../cut-size.ts'
import type { Order, Pillowcase } from '../order.ts'
import { hemTake } from '../thread.ts'
import type { Piece, SeamLine, SewingLine } from '../way.ts'
import type { Choice } from './choices.ts'
import { mostShrinking } from './choices.ts'
import type { Draft } from './draft.ts'
import { pillowPiece } from './pillow-piece.ts'
import { handStep, hemStep, layTogether, sewingStep } from './seam-words.ts'

/*
 * A pillowcase open at one end, the opening hemmed or finished with a cuff. Folded along a long edge it is one tube,
 * folded at the closed end one long piece, or front and back are separate.
 */

/** Cloths of the cuff and of the narrow trim between cuff and body. */
export interface CuffChoice {
  readonly cuff: Choice
  readonly trim: Choice | null
}

/** One tube, folded along a long edge: twice the width and two seams across, body and cuff down. */
export function openEndTube(order: Order, item: Pillowcase, body: Choice, cuff: CuffChoice | null): Draft {
  const shrinks = mostShrinking(chosen(body, cuff))
  const leaf = sum(item.seam.allowance, beforeShrinking(item.finished.width, shrinks.width))
  const width = roundUpTo(times(leaf, 2), order.markTo)
  const fold = length(Math.floor(width / 2))
  const ring = openFaces(order, item, [{ name: '', words: 'Pillowcase', face: 'front', body }], cuff, width, fold)
  const closed = makeSeam(
    item.seam,
    edgeOf(ring.bodies[0]!.name, 'head', ZERO, fold),
    edgeOf(ring.bodies[0]!.name, 'head', fold, times(fold, 2)),
    fold,
    'side',
  )
  const long = ring.pieces.map((piece) =>
    makeSeam(item.seam, sideOf(ring, piece, 'left'), sideOf(ring, piece, 'right'), ring.shown(piece), 'side'),
  )
  const upsideDown = body.cloth.print.way === 'one-way' ? '; the print runs upside down on the back' : ''
  return {
    id: `one-piece/${body.cloth.name}/${body.run}${cuffId(cuff)}`,
    words: `one piece folded along a long edge${cuffWords(cuff)}${upsideDown}`,
    pieces: ring.pieces,
    seams: [...ring.joins, closed, ...long],
    joins: ring.joins.length,
    notions: [],
    hems: ring.hems,
    sewing: [
      ...ring.before,
      handStep(`Fold along the long edge at the mark, ${layTogether(item.seam)}.`),
      sewingStep(order, item.seam, 'Long side and closed end', sum(ring.length, fold)),
      ...ring.after,
      handStep('Turn right side out, push out the corners and press.'),
    ],
  }
}

/** One piece folded at the closed end; hems, or kept edges, at both ends meet at the opening. */
export function openEndFolded(order: Order, item: Pillowcase, body: Choice): Draft {
  const isKept = item.openingEdge.kind !== 'none'
  const hem = isKept ? ZERO : hemTake(item.hem)
  const width = cutLength(order, item.finished.width, body.width, times(item.seam.allowance, 2))
  const cut = roundUpTo(times(sum(hem, beforeShrinking(item.finished.length, body.length)), 2), order.markTo)
  // both ends are at the opening, so the fold lies in the middle
  const leaf = length(Math.floor((cut - 2 * hem) / 2))
  const closed = sum(hem, leaf)
  const marks = [hem, closed, length(closed + leaf)].filter((y) => y > 0 && y < cut).map(foldAcross)
  const piece = pillowPiece(body.cloth, 'front', {
    name: '',
    words: 'Pillowcase',
    size: { width, length: cut },
    run: body.run,
    needs: { head: item.openingEdge, foot: item.openingEdge },
    marks,
  })
  const side = (edge: 'left' | 'right'): SeamLine =>
    makeSeam(item.seam, edgeOf('', edge, ZERO, closed), edgeOf('', edge, closed, times(closed, 2)), closed, 'side')
  return {
    id: `one-piece-end-fold/${body.cloth.name}/${body.run}`,
    words: 'one piece folded at the closed end',
    pieces: [piece],
    seams: [side('left'), side('right')],
    joins: 0,
    notions: [],
    hems: isKept ? 0 : 2 * width,
    sewing: [
      handStep(`Fold at the closed end, ${layTogether(item.seam)}.`),
      sewingStep(order, item.seam, 'Both long sides', times(closed, 2)),
      ...(isKept ? [] : [hemStep(order, item.hem, 'the opening, all round', times(width, 2))]),
      handStep('Turn right side out, push out the corners and press.'),
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
  const shrinks = mostShrinking([...chosen(front, cuff), back])
  const width = cutLength(order, item.finished.width, shrinks.width, times(item.seam.allowance, 2))
  const faces = [
    { name: '/front', words: 'Front', face: 'front', body: front },
    { name: '/back', words: 'Back', face: 'back', body: back },
  ] as const
  const ring = openFaces(order, item, faces, cuff, width, null)
  const [fronts, backs] = [ring.pieces.slice(0, ring.pieces.length / 2), ring.pieces.slice(ring.pieces.length / 2)]
  const sides = fronts.flatMap((piece, i) => [
    makeSeam(item.seam, sideOf(ring, piece, 'left'), sideOf(ring, backs[i]!, 'right'), ring.shown(piece), 'side'),
    makeSeam(item.seam, sideOf(ring, piece, 'right'), sideOf(ring, backs[i]!, 'left'), ring.shown(piece), 'side'),
  ])
  const closed = makeSeam(
    item.seam,
    edgeOf(ring.bodies[0]!.name, 'head'),
    edgeOf(ring.bodies[1]!.name, 'head'),
    width,
    'side',
  )
  return {
    id: `separate/${front.cloth.name}/${front.run}/${back.cloth.name}/${back.run}${cuffId(cuff)}`,
    words: `separate front and back${cuffWords(cuff)}`,
    pieces: ring.pieces,
    seams: [...ring.joins, closed, ...sides],
    joins: ring.joins.length,
    notions: [],
    hems: ring.hems,
    sewing: [
      ...ring.before,
      handStep(`Lay front and back ${layTogether(item.seam)}.`),
      sewingStep(
        order,
        item.seam,
        'Both long sides and the closed end, front to back',
        sum(times(ring.length, 2), width),
      ),
      ...ring.after,
      handStep('Turn right side out, push out the corners and press.'),
    ],
  }
}

interface OpenFace {
  readonly name: string
  readonly words: string
  readonly face: 'front' | 'back'
  readonly body: Choice
}

/** Bodies with their trims and cuffs, or with their hems, `width` across each. */
interface OpenFaces {
  readonly pieces: readonly Piece[]
  readonly bodies: readonly Piece[]
  readonly joins: readonly SeamLine[]
  /** from the closed end to the opening as it is sewn */
  readonly length: Length
  readonly hems: number
  readonly before: readonly SewingLine[]
  readonly after: readonly SewingLine[]
  /** how much of a piece's length lies in the side seam: cuffs and trims are doubled */
  shown(piece: Piece): Length
}

const sideOf = (ring: OpenFaces, piece: Piece, edge: 'left' | 'right') =>
  edgeOf(piece.name, edge, ZERO, ring.shown(piece))

function openFaces(
  order: Order,
  item: Pillowcase,
  faces: readonly OpenFace[],
  cuff: CuffChoice | null,
  width: Length,
  fold: Length | null,
): OpenFaces {
  const { allowance } = item.seam
  const foldMarks = fold === null ? [] : [foldAlong(fold)]
  const shrinks = mostShrinking(chosen(faces[0]!.body, cuff).concat(faces.map((face) => face.body)))

  if (item.cuff === null || cuff === null) {
    const isKept = item.openingEdge.kind !== 'none'
    const hem = isKept ? ZERO : hemTake(item.hem)
    const cut = cutLength(order, item.finished.length, shrinks.length, sum(allowance, hem))
    const opening = sum(allowance, beforeShrinking(item.finished.length, shrinks.length))
    const pieces = faces.map((face) =>
      pillowPiece(face.body.cloth, face.face, {
        name: face.name,
        words: face.words,
        size: { width, length: cut },
        run: face.body.run,
        needs: { foot: item.openingEdge },
        marks: isKept ? foldMarks : [...foldMarks, foldAcross(opening)],
      }),
    )
    const around = times(width, faces.length)
    return {
      pieces,
      bodies: pieces,
      joins: [],
      length: cut,
      hems: isKept ? 0 : around,
      before: [],
      after: isKept ? [] : [hemStep(order, item.hem, 'the opening, all round', around)],
      shown: (piece) => piece.cutLength,
    }
  }

  // the cuff is doubled, both its raw edges in the seam; the trim is folded and caught in the same seam
  const { depth, trim } = item.cuff
  const cuffLength = roundUpTo(times(sum(allowance, beforeShrinking(depth, shrinks.length)), 2), order.markTo)
  const cuffFold = length(Math.floor(cuffLength / 2))
  const cuffShown = minus(cuffFold, allowance)
  // what the marking step added to the cuff the body need not give
  const bodyShown = minus(beforeShrinking(item.finished.length, shrinks.length), cuffShown)
  const bodyLength = roundUpTo(sum(bodyShown, allowance, allowance), order.markTo)
  const pieces: Piece[] = []
  const bodies: Piece[] = []
  const joins: SeamLine[] = []
  for (const face of faces) {
    const body = pillowPiece(face.body.cloth, face.face, {
      name: `${face.name}/body`,
      words: `${face.words}, body`,
      size: { width, length: bodyLength },
      run: face.body.run,
      marks: foldMarks,
    })
    const cuffPiece = pillowPiece(cuff.cuff.cloth, face.face, {
      name: `${face.name}/cuff`,
      words: `${face.words}, cuff`,
      size: { width, length: cuffLength },
      run: cuff.cuff.run,
      marks: [...foldMarks, foldAcross(cuffFold)],
    })
    bodies.push(body)
    pieces.push(body, cuffPiece)
    joins.push(makeSeam(item.seam, edgeOf(body.name, 'foot'), edgeOf(cuffPiece.name, 'head'), width, 'join'))
    if (trim !== null && cuff.trim !== null) {
      const trimFold = sum(allowance, beforeShrinking(trim.depth, shrinks.length))
      const trimLength = roundUpTo(times(trimFold, 2), order.markTo)
      pieces.push(
        pillowPiece(cuff.trim.cloth, face.face, {
          name: `${face.name}/trim`,
          words: `${face.words}, trim`,
          size: { width, length: trimLength },
          run: cuff.trim.run,
          marks: [foldAcross(length(Math.floor(trimLength / 2)))],
        }),
      )
    }
  }
  const around = times(width, faces.length)
  const caught = trim === null ? 'Cuff to body' : 'Cuff to body, the folded trim caught between'
  return {
    pieces,
    bodies,
    joins,
    length: sum(bodyLength, minus(cuffShown, allowance)),
    hems: 0,
    before: [
      handStep(`Press the cuff${trim === null ? '' : ' and the trim'} in half along its fold, wrong sides together.`),
      sewingStep(order, item.seam, `${caught}, both raw edges of the cuff in the seam`, around),
    ],
    after: [],
    shown: (piece) => (bodies.includes(piece) ? piece.cutLength : length(Math.floor(piece.cutLength / 2))),
  }
}

function chosen(body: Choice, cuff: CuffChoice | null): Choice[] {
  return cuff === null ? [body] : cuff.trim === null ? [body, cuff.cuff] : [body, cuff.cuff, cuff.trim]
}

const cuffWords = (cuff: CuffChoice | null): string =>
  cuff === null ? '' : cuff.trim === null ? ', with cuff' : ', with cuff and trim'

function cuffId(cuff: CuffChoice | null): string {
  if (cuff === null) return ''
  const parts = cuff.trim === null ? [cuff.cuff] : [cuff.cuff, cuff.trim]
  return parts.map((part) => `/${part.cloth.name}/${part.run}`).join('')
}
