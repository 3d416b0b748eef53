import { beforeShrinking, length, sum, times, ZERO } from '@lengthwise/units'
import { edgeOf, foldAcross, makeSeam } from '../build.ts'
import { cutLength } from '../cut-size.ts'
import type { Order, Pillowcase } from '../order.ts'
import { hemTake } from '../thread.ts'
import type { SeamLine } from '../way.ts'
import type { Choice } from './choices.ts'
import { mostShrinking } from './choices.ts'
import type { Draft } from './draft.ts'
import { pillowPiece } from './pillow-piece.ts'
import { handStep, hemStep, layTogether, sewingStep } from './seam-words.ts'

/*
 * A pillowcase with an inside flap. One piece wraps round the closed end; L finished length, F flap, fold marks |
 *
 *     head  hem | back L | front L | flap F | hem  foot
 *               ^ opening          ^ opening: the flap folds in over the back's hem
 */

/** One piece, 2 L + F and two hems long; the first hem falls away where the opening is a kept hem or a selvedge. */
export function insideFlapInOne(order: Order, item: Pillowcase, choice: Choice): Draft {
  const { allowance } = item.seam
  const isKept = item.openingEdge.kind !== 'none'
  const start = isKept ? ZERO : hemTake(item.hem)
  const end = hemTake(item.hem)
  const leaf = beforeShrinking(item.finished.length, choice.length)
  const finished = sum(item.finished.length, item.finished.length, item.flap)
  const size = {
    width: cutLength(order, item.finished.width, choice.width, times(allowance, 2)),
    length: cutLength(order, finished, choice.length, sum(start, end)),
  }
  const closed = sum(start, leaf)
  const opening = sum(closed, leaf)
  const piece = pillowPiece(choice.cloth, 'front', {
    name: '',
    words: 'Pillowcase with inside flap',
    size,
    run: choice.run,
    needs: { head: item.openingEdge },
    marks: [start, closed, opening, length(size.length - end)].filter((y) => y > 0).map(foldAcross),
  })
  const side = (edge: 'left' | 'right'): SeamLine =>
    makeSeam(item.seam, edgeOf('', edge, start, closed), edgeOf('', edge, closed, opening), leaf, 'side')
  const hems = isKept ? 1 : 2
  return {
    id: `one-piece/${choice.cloth.name}/${choice.run}`,
    words: 'one piece with inside flap',
    pieces: [piece],
    seams: [side('left'), side('right')],
    joins: 0,
    notions: [],
    hems: hems * size.width,
    sewing: [
      hemStep(order, item.hem, isKept ? 'the end of the flap' : 'both short ends', times(size.width, hems)),
      handStep(
        `Fold at the closed end, ${layTogether(item.seam)}; fold the flap over the back at its mark and pin the sides.`,
      ),
      sewingStep(order, item.seam, 'Both long sides, through the flap', times(leaf, 2)),
      handStep('Turn right side out, flap inside; push out the corners and press.'),
    ],
  }
}

/** Front with the flap on it, and back: the closed end is a seam too. */
export function insideFlapInTwo(order: Order, item: Pillowcase, front: Choice, back: Choice): Draft {
  const { allowance } = item.seam
  const shrinks = mostShrinking([front, back])
  const isKept = item.openingEdge.kind !== 'none'
  const hem = hemTake(item.hem)
  const finished = item.finished.length
  // a kept edge cannot be folded to measure: the back is marked off first, and the front's opening follows it
  const backLength = cutLength(order, finished, shrinks.length, isKept ? allowance : sum(allowance, hem))
  const opening = isKept ? backLength : sum(allowance, beforeShrinking(finished, shrinks.length))
  const frontLength = cutLength(order, sum(finished, item.flap), shrinks.length, sum(allowance, hem))
  const width = cutLength(order, item.finished.width, shrinks.width, times(allowance, 2))

  const pieces = [
    pillowPiece(front.cloth, 'front', {
      name: '/front',
      words: 'Front with flap',
      size: { width, length: frontLength },
      run: front.run,
      marks: [foldAcross(opening), foldAcross(length(frontLength - hem))],
    }),
    pillowPiece(back.cloth, 'back', {
      name: '/back',
      words: 'Back',
      size: { width, length: backLength },
      run: back.run,
      needs: { foot: item.openingEdge },
      marks: isKept ? [] : [foldAcross(opening)],
    }),
  ]
  const seams = [
    makeSeam(item.seam, edgeOf('/front', 'head'), edgeOf('/back', 'head'), width, 'side'),
    makeSeam(
      item.seam,
      edgeOf('/front', 'left', ZERO, opening),
      edgeOf('/back', 'right', ZERO, opening),
      opening,
      'side',
    ),
    makeSeam(
      item.seam,
      edgeOf('/front', 'right', ZERO, opening),
      edgeOf('/back', 'left', ZERO, opening),
      opening,
      'side',
    ),
  ]
  const hems = isKept ? 1 : 2
  return {
    id: `separate/${front.cloth.name}/${front.run}/${back.cloth.name}/${back.run}`,
    words: 'front with inside flap and separate back',
    pieces,
    seams,
    joins: 0,
    notions: [],
    hems: hems * width,
    sewing: [
      hemStep(
        order,
        item.hem,
        isKept ? 'the end of the flap' : 'the end of the flap and the open end of the back',
        times(width, hems),
      ),
      handStep(`Lay front and back ${layTogether(item.seam)}; fold the flap over the back at its mark and pin.`),
      sewingStep(order, item.seam, 'Closed end, front to back', width),
      sewingStep(order, item.seam, 'Both long sides, through the flap', times(opening, 2)),
      handStep('Turn right side out, flap inside; push out the corners and press.'),
    ],
  }
}
