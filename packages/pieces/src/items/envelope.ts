import type { Length } from '@lengthwise/units'
import { beforeShrinking, length, minus, sum, times, ZERO } from '@lengthwise/units'
import { edgeOf, foldAcross, foldAlong, half, makePiece, makeSeam } from '../build.ts'
import { cutLength } from '../cut-size.ts'
import type { Edge, EdgeNeed, Hem, Order, Seam, Size } from '../order.ts'
import { layTogether, say, step } from '../sewing.ts'
import { hemTake } from '../thread.ts'
import type { EdgeRef, Mark, SeamLine, SewingLine } from '../way.ts'
import type { Choice } from './choices.ts'
import { mostShrinking } from './choices.ts'
import type { Draft } from './draft.ts'
import { centred } from './motif.ts'
import { hemStep, sewingStep } from './seam-words.ts'

/*
 * A pocket whose back is two leaves that overlap, with or without a flange round it: envelope and flanged pillowcases,
 * cushions and shams. The outer size is the finished one and the flange on every side; the two back leaves together
 * are the outer length and the overlap.
 */

export interface Envelope {
  readonly words: string
  /** the pocket, without the flange; width is the short side, the length lies across the bed */
  readonly finished: Size
  readonly flange: Length
  readonly overlap: Length
  readonly hem: Hem
  /** what the back's outer edge at the opening must be made of */
  readonly openingEdge: EdgeNeed
  readonly seam: Seam
}

/**
 * One piece: the inner leaf of the back, the front, the outer leaf, and a hem at each end.
 *
 *     hem | inner leaf | front | outer leaf | hem, or a kept edge
 */
export function envelopeInOne(order: Order, pocket: Envelope, choice: Choice): Draft {
  const { allowance } = pocket.seam
  const outer = outerSize(pocket)
  const isKept = pocket.openingEdge.kind !== 'none'
  const start = hemTake(pocket.hem)
  const end = isKept ? ZERO : start
  const size = {
    width: cutLength(order, sum(outer.length, outer.length, pocket.overlap), choice.width, sum(start, end)),
    length: cutLength(order, outer.width, choice.length, times(allowance, 2)),
  }
  const front = beforeShrinking(outer.length, choice.width)
  const firstFold = sum(start, beforeShrinking(half(outer.length + pocket.overlap), choice.width))
  const secondFold = sum(firstFold, front)
  const openEdge = minus(size.width, end)
  const outerLeaf = minus(openEdge, secondFold)
  // of the inner leaf only what lies beyond the outer one is sewn to the front alone
  const beyond = minus(front, outerLeaf)
  const piece = makePiece(choice.cloth, {
    name: '',
    words: pocket.words,
    size,
    run: choice.run,
    needs: { right: pocket.openingEdge },
    marks: [
      ...[start, firstFold, secondFold, openEdge].filter((x) => x < size.width).map(foldAlong),
      ...flangeLines(pocket, size.length, firstFold, secondFold, choice),
    ],
  })
  const along = (edge: Edge): SeamLine[] => [
    makeSeam(
      pocket.seam,
      edgeOf('', edge, minus(firstFold, beyond), firstFold),
      edgeOf('', edge, firstFold, sum(firstFold, beyond)),
      beyond,
      'side',
    ),
    makeSeam(
      pocket.seam,
      edgeOf('', edge, minus(secondFold, outerLeaf), secondFold),
      edgeOf('', edge, secondFold, openEdge),
      outerLeaf,
      'side',
    ),
  ]
  const hems = isKept ? 1 : 2
  return {
    id: `one-piece/${choice.cloth.name}/${choice.run}`,
    words: 'one piece with overlapping back',
    pieces: [centred(order, choice, piece, { x: firstFold + front / 2, y: size.length / 2 })],
    seams: [
      ...along('head'),
      ...along('foot'),
      lappedSeam(pocket, edgeOf('', 'right'), edgeOf('', 'left'), size.length, {
        hem: start,
        isKept,
        lap: length(firstFold - start + outerLeaf - front),
      }),
    ],
    joins: 0,
    notions: [],
    hems: hems * size.length + flangeStitching(pocket),
    sewing: [
      hemStep(order, pocket.hem, isKept ? 'the inner short end' : 'both short ends', times(size.length, hems)),
      step(
        `Fold both ends to the middle at the fold marks, ${layTogether(pocket.seam)}, ${firstLeaf(pocket)} leaf first, so that they overlap.`,
      ),
      sewingStep(order, pocket.seam, 'Both long sides, through the overlap', times(front, 2)),
      ...turnOut(order, pocket),
    ],
  }
}

/** A front and two back leaves; seen from the back's own right side the outer leaf is at the left. */
export function envelopeInThree(order: Order, pocket: Envelope, front: Choice, back: Choice): Draft {
  const { allowance } = pocket.seam
  const outer = outerSize(pocket)
  const shrinks = mostShrinking([front, back])
  const isKept = pocket.openingEdge.kind !== 'none'
  const hem = hemTake(pocket.hem)
  const both = times(allowance, 2)
  const size = {
    width: cutLength(order, outer.length, shrinks.width, both),
    length: cutLength(order, outer.width, shrinks.length, both),
  }
  const leaf = half(outer.length + pocket.overlap)
  const innerWidth = cutLength(order, leaf, shrinks.width, sum(allowance, hem))
  const outerWidth = isKept ? cutLength(order, leaf, shrinks.width, allowance) : innerWidth
  // from the raw edge at the seam to the finished edge at the opening
  const outerEdge = isKept ? outerWidth : minus(outerWidth, hem)
  const innerEdge = minus(innerWidth, hem)
  // of the inner leaf only what lies beyond the outer one is sewn to the front alone
  const beyond = minus(size.width, outerEdge)

  const frontPiece = makePiece(front.cloth, {
    name: '/front',
    words: 'Front',
    size,
    run: front.run,
    marks: flangeLines(pocket, size.length, allowance, minus(size.width, allowance), shrinks),
  })
  const pieces = [
    centred(order, front, frontPiece, { x: size.width / 2, y: size.length / 2 }),
    makePiece(back.cloth, {
      name: '/back/outer',
      words: 'Back, outer leaf',
      size: { width: outerWidth, length: size.length },
      run: back.run,
      needs: { right: pocket.openingEdge },
      marks: isKept ? [] : [foldAlong(outerEdge)],
    }),
    makePiece(back.cloth, {
      name: '/back/inner',
      words: 'Back, inner leaf',
      size: { width: innerWidth, length: size.length },
      run: back.run,
      marks: [foldAlong(hem)],
    }),
  ]
  const along = (edge: Edge): SeamLine[] => [
    makeSeam(
      pocket.seam,
      edgeOf('/front', edge, ZERO, beyond),
      edgeOf('/back/inner', edge, minus(innerWidth, beyond), innerWidth),
      beyond,
      'side',
    ),
    makeSeam(
      pocket.seam,
      edgeOf('/front', edge, beyond, size.width),
      edgeOf('/back/outer', edge, ZERO, outerEdge),
      outerEdge,
      'side',
    ),
  ]
  const seams = [
    makeSeam(pocket.seam, edgeOf('/front', 'left'), edgeOf('/back/inner', 'right'), size.length, 'side'),
    makeSeam(pocket.seam, edgeOf('/front', 'right'), edgeOf('/back/outer', 'left'), size.length, 'side'),
    ...along('head'),
    ...along('foot'),
    lappedSeam(pocket, edgeOf('/back/outer', 'right'), edgeOf('/back/inner', 'left'), size.length, {
      hem,
      isKept,
      lap: length(outerEdge + innerEdge - size.width),
    }),
  ]
  const hems = isKept ? 1 : 2
  const hemmed = isKept ? 'the inner leaf at the opening' : 'both leaves at the opening'
  return {
    id: `separate/${front.cloth.name}/${front.run}/${back.cloth.name}/${back.run}`,
    words: 'front and overlapping back in two leaves',
    pieces,
    seams,
    joins: 0,
    notions: [],
    hems: hems * size.length + flangeStitching(pocket),
    sewing: [
      hemStep(order, pocket.hem, hemmed, times(size.length, hems)),
      step(
        `Lay the leaves on the front, ${layTogether(pocket.seam)}, ${firstLeaf(pocket)} leaf first, so that their hems overlap.`,
      ),
      sewingStep(order, pocket.seam, 'All four sides', times(sum(size.width, size.length), 2)),
      ...turnOut(order, pocket),
    ],
  }
}

/**
 * The leaves laid over each other, not sewn, so far that back and front are equally long. Both edges are hemmed; where
 * the outer one is kept as it is, the hem of the inner one counts as lap.
 */
function lappedSeam(
  pocket: Envelope,
  outerLeaf: EdgeRef,
  innerLeaf: EdgeRef,
  seamLength: Length,
  edges: { readonly hem: Length; readonly isKept: boolean; readonly lap: Length },
): SeamLine {
  const allowance = edges.isKept ? ZERO : edges.hem
  return makeSeam(pocket.seam, outerLeaf, innerLeaf, seamLength, 'opening', {
    kind: 'lapped',
    allowanceA: allowance,
    allowanceB: allowance,
    lap: edges.isKept ? sum(edges.hem, edges.lap) : edges.lap,
  })
}

/** The outer size, short side first, as the finished size of the pocket is. */
export function outerSize(pocket: Pick<Envelope, 'finished' | 'flange'>): Size {
  const flanges = times(pocket.flange, 2)
  return { width: sum(pocket.finished.width, flanges), length: sum(pocket.finished.length, flanges) }
}

// turning puts the leaf next to the front outermost; a French seam is first sewn right side out
const firstLeaf = (pocket: Envelope): string => (pocket.seam.kind === 'french' ? 'the inner' : 'the outer')

/** Lines to stitch the flange along, inside a face that lies between two places from the left and its side seams. */
export function flangeLines(
  pocket: Pick<Envelope, 'flange' | 'seam'>,
  faceLength: Length,
  from: Length,
  to: Length,
  shrinks: Pick<Choice, 'width' | 'length'>,
): Mark[] {
  if (pocket.flange === 0) return []
  const x = beforeShrinking(pocket.flange, shrinks.width)
  const y = sum(pocket.seam.allowance, beforeShrinking(pocket.flange, shrinks.length))
  const lines = [foldAlong(sum(from, x)), foldAlong(minus(to, x)), foldAcross(y), foldAcross(minus(faceLength, y))]
  return lines.map((line) => ({ ...line, kind: 'seam' }))
}

/** Length of the stitching that sets off the flange, 0 without one. */
export function flangeStitching(pocket: Pick<Envelope, 'finished' | 'flange'>): Length {
  return pocket.flange === 0 ? ZERO : times(sum(pocket.finished.width, pocket.finished.length), 2)
}

/** Turning and pressing, and the line of the flange. */
export function turnOut(order: Order, pocket: Pick<Envelope, 'finished' | 'flange'>): SewingLine[] {
  const turn = step('Turn right side out, push out the corners and press.')
  if (pocket.flange === 0) return [turn]
  const stitching = flangeStitching(pocket)
  const over = outerSize(pocket)
  const text = `Stitch the flange at the stitching marks, ${say(order, pocket.flange)} inside the edge, all round, through front and back: ${say(order, stitching)}. With the flange it is ${say(order, over.width)} by ${say(order, over.length)}.`
  return [turn, step(text, stitching)]
}
