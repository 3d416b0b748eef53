import type { Length } from '@lengthwise/units'
import { beforeShrinking, length, minus, sum, times, ZERO } from '@lengthwise/units'
import { edgeOf, foldAcross, foldAlong, half, makeSeam } from '../build.ts'
import { cutLength } from '../cut-size.ts'
import type { Edge, EdgeNeed, Hem, Order, Seam, Size } from '../order.ts'
import { hemTake } from '../thread.ts'
import type { Mark, SeamLine, SewingLine } from '../way.ts'
import type { Choice } from './choices.ts'
import { mostShrinking } from './choices.ts'
import type { Draft } from './draft.ts'
import { pillowPiece } from './pillow-piece.ts'
import { handStep, hemStep, layTogether, say, sewingStep } from './seam-words.ts'

/*
 * A pocket whose back is two leaves that overlap, with or without a flange round it: envelope and flanged pillowcases,
 * cushions and shams. The outer size is the finished one and the flange on every side; the two back leaves together
 * are the outer length and the overlap.
 */

export interface Envelope {
  readonly words: string
  /** the pocket, without the flange */
  readonly finished: Size
  readonly flange: Length
  readonly overlap: Length
  readonly hem: Hem
  /** what the back's outer edge at the opening must be made of */
  readonly openingEdge: EdgeNeed
  readonly seam: Seam
}

/** One piece: a back leaf, the front, the other back leaf, and a hem at each end. */
export function envelopeInOne(order: Order, pocket: Envelope, choice: Choice): Draft {
  const { allowance } = pocket.seam
  const outer = outerSize(pocket)
  const isKept = pocket.openingEdge.kind !== 'none'
  const start = isKept ? ZERO : hemTake(pocket.hem)
  const end = hemTake(pocket.hem)
  const size = {
    width: cutLength(order, outer.width, choice.width, times(allowance, 2)),
    length: cutLength(order, sum(outer.length, outer.length, pocket.overlap), choice.length, sum(start, end)),
  }
  const front = beforeShrinking(outer.length, choice.length)
  const firstFold = sum(start, beforeShrinking(half(outer.length + pocket.overlap), choice.length))
  const secondFold = sum(firstFold, front)
  const lastLeaf = length(size.length - end - secondFold)
  const piece = pillowPiece(choice.cloth, 'front', {
    name: '',
    words: pocket.words,
    size,
    run: choice.run,
    needs: { head: pocket.openingEdge },
    marks: [
      ...[start, firstFold, secondFold, sum(secondFold, lastLeaf)].filter((y) => y > 0).map(foldAcross),
      ...flangeLines(pocket, size.width, firstFold, secondFold, choice),
    ],
  })
  const around = (edge: 'left' | 'right', fold: Length, leaf: Length): SeamLine =>
    makeSeam(
      pocket.seam,
      edgeOf('', edge, minus(fold, leaf), fold),
      edgeOf('', edge, fold, sum(fold, leaf)),
      leaf,
      'side',
    )
  const firstLeaf = minus(firstFold, start)
  const seams = (['left', 'right'] as const).flatMap((edge) => [
    around(edge, firstFold, firstLeaf),
    around(edge, secondFold, lastLeaf),
  ])
  const hems = isKept ? 1 : 2
  return {
    id: `one-piece/${choice.cloth.name}/${choice.run}`,
    words: 'one piece with overlapping back',
    pieces: [piece],
    seams,
    joins: 0,
    notions: [],
    hems: hems * size.width + flangeStitching(pocket),
    sewing: [
      hemStep(order, pocket.hem, isKept ? 'the inner short end' : 'both short ends', times(size.width, hems)),
      handStep(
        `Fold both ends to the middle at the marks, ${layTogether(pocket.seam)}, the outer leaf first, so that they overlap.`,
      ),
      sewingStep(order, pocket.seam, 'Both long sides, through the overlap', times(front, 2)),
      ...turnOut(order, pocket),
    ],
  }
}

/** A front and two back leaves. */
export function envelopeInThree(order: Order, pocket: Envelope, front: Choice, back: Choice): Draft {
  const { allowance } = pocket.seam
  const outer = outerSize(pocket)
  const shrinks = mostShrinking([front, back])
  const isKept = pocket.openingEdge.kind !== 'none'
  const hem = hemTake(pocket.hem)
  const both = times(allowance, 2)
  const size = {
    width: cutLength(order, outer.width, shrinks.width, both),
    length: cutLength(order, outer.length, shrinks.length, both),
  }
  const leaf = half(outer.length + pocket.overlap)
  const innerLength = cutLength(order, leaf, shrinks.length, sum(allowance, hem))
  const outerLength = isKept ? cutLength(order, leaf, shrinks.length, allowance) : innerLength
  // from the seam to the finished edge of each leaf, the seam's allowance included
  const outerEdge = isKept ? outerLength : minus(outerLength, hem)
  const innerEdge = minus(innerLength, hem)

  const pieces = [
    pillowPiece(front.cloth, 'front', {
      name: '/front',
      words: 'Front',
      size,
      run: front.run,
      marks: flangeLines(pocket, size.width, allowance, minus(size.length, allowance), shrinks),
    }),
    pillowPiece(back.cloth, 'back', {
      name: '/back/outer',
      words: 'Back, outer leaf',
      size: { width: size.width, length: outerLength },
      run: back.run,
      needs: { foot: pocket.openingEdge },
      marks: isKept ? [] : [foldAcross(outerEdge)],
    }),
    pillowPiece(back.cloth, 'back', {
      name: '/back/inner',
      words: 'Back, inner leaf',
      size: { width: size.width, length: innerLength },
      run: back.run,
      marks: [foldAcross(hem)],
    }),
  ]
  const side = (frontEdge: Edge, backEdge: Edge): SeamLine[] => [
    makeSeam(
      pocket.seam,
      edgeOf('/front', frontEdge, ZERO, outerEdge),
      edgeOf('/back/outer', backEdge, ZERO, outerEdge),
      outerEdge,
      'side',
    ),
    makeSeam(
      pocket.seam,
      edgeOf('/front', frontEdge, minus(size.length, innerEdge), size.length),
      edgeOf('/back/inner', backEdge, hem, innerLength),
      innerEdge,
      'side',
    ),
  ]
  const seams = [
    makeSeam(pocket.seam, edgeOf('/front', 'head'), edgeOf('/back/outer', 'head'), size.width, 'side'),
    makeSeam(pocket.seam, edgeOf('/front', 'foot'), edgeOf('/back/inner', 'foot'), size.width, 'side'),
    ...side('left', 'right'),
    ...side('right', 'left'),
    // laid over each other, not sewn: so far that both faces are equally long
    makeSeam(pocket.seam, edgeOf('/back/outer', 'foot'), edgeOf('/back/inner', 'head'), size.width, 'opening', {
      kind: 'lapped',
      allowanceA: isKept ? ZERO : hem,
      allowanceB: hem,
      lap: length(outerEdge + innerEdge - size.length),
    }),
  ]
  const hems = isKept ? 1 : 2
  return {
    id: `separate/${front.cloth.name}/${front.run}/${back.cloth.name}/${back.run}`,
    words: 'front and overlapping back in two leaves',
    pieces,
    seams,
    joins: 0,
    notions: [],
    hems: hems * size.width + flangeStitching(pocket),
    sewing: [
      hemStep(
        order,
        pocket.hem,
        isKept ? 'the inner leaf at the opening' : 'both leaves at the opening',
        times(size.width, hems),
      ),
      handStep(
        `Lay the leaves on the front, ${layTogether(pocket.seam)}, the outer leaf first, so that their hems overlap.`,
      ),
      sewingStep(order, pocket.seam, 'All four sides', times(sum(size.width, size.length), 2)),
      ...turnOut(order, pocket),
    ],
  }
}

export function outerSize(pocket: Pick<Envelope, 'finished' | 'flange'>): Size {
  const flanges = times(pocket.flange, 2)
  return { width: sum(pocket.finished.width, flanges), length: sum(pocket.finished.length, flanges) }
}

/** Lines to stitch the flange along, inside a face that lies between two places from the head and the side seams. */
export function flangeLines(
  pocket: Pick<Envelope, 'flange' | 'seam'>,
  width: Length,
  from: Length,
  to: Length,
  shrinks: Pick<Choice, 'width' | 'length'>,
): Mark[] {
  if (pocket.flange === 0) return []
  const x = sum(pocket.seam.allowance, beforeShrinking(pocket.flange, shrinks.width))
  const y = beforeShrinking(pocket.flange, shrinks.length)
  const lines = [foldAlong(x), foldAlong(minus(width, x)), foldAcross(sum(from, y)), foldAcross(minus(to, y))]
  return lines.map((line) => ({ ...line, kind: 'seam' }))
}

/** Length of the stitching that sets off the flange, 0 without one. */
export function flangeStitching(pocket: Pick<Envelope, 'finished' | 'flange'>): Length {
  return pocket.flange === 0 ? ZERO : times(sum(pocket.finished.width, pocket.finished.length), 2)
}

/** Turning and pressing, and the line of the flange. */
export function turnOut(order: Order, pocket: Pick<Envelope, 'finished' | 'flange'>): SewingLine[] {
  const turn = handStep('Turn right side out, push out the corners and press.')
  if (pocket.flange === 0) return [turn]
  const stitching = flangeStitching(pocket)
  const text = `Stitch the flange ${say(order, pocket.flange)} inside the edge, all round, through front and back: ${say(order, stitching)}.`
  return [turn, { text, seamLength: stitching }]
}
