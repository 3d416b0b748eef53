import type { Length } from '@lengthwise/units'
import { beforeShrinking, length, minus, sum, times, ZERO } from '@lengthwise/units'
import { edgeOf, foldAlong, makePiece, makeSeam } from '../build.ts'
import { cutLength } from '../cut-size.ts'
import type { Order, Pillowcase } from '../order.ts'
import { layTogether, say, step } from '../sewing.ts'
import { hemTake } from '../thread.ts'
import type { SeamLine } from '../way.ts'
import type { Choice } from './choices.ts'
import { mostShrinking } from './choices.ts'
import type { Draft } from './draft.ts'
import { centred } from './motif.ts'
import { hemStep, sewingStep } from './seam-words.ts'

/*
 * A pillowcase with an inside flap, seen as it lies across the bed: L its long side, W its short side, F the flap.
 * In one piece it wraps round the closed end, so the print stays upright on both faces:
 *
 *      head of the bed, top of the print
 *      hem | back L | front L | flap F | hem      W and two seams from head to foot
 *          ^ open   ^ closed  ^ open: the flap folds in over the hem of the back
 */

/** One piece, 2 L + F and two hems across; the first hem falls away where the opening is a kept hem or a selvedge. */
export function insideFlapInOne(order: Order, item: Pillowcase, choice: Choice): Draft {
  const isKept = item.openingEdge.kind !== 'none'
  const start = isKept ? ZERO : hemTake(item.hem)
  const end = hemTake(item.hem)
  const [short, long] = [item.finished.width, item.finished.length]
  const size = {
    width: cutLength(order, sum(long, long, item.flap), choice.width, sum(start, end)),
    length: cutLength(order, short, choice.length, times(item.seam.allowance, 2)),
  }
  const leaf = beforeShrinking(long, choice.width)
  const closed = sum(start, leaf)
  const open = sum(closed, leaf)
  const piece = makePiece(choice.cloth, {
    name: '',
    words: 'Pillowcase with inside flap',
    size,
    run: choice.run,
    needs: { left: item.openingEdge },
    marks: [start, closed, open, minus(size.width, end)].filter((x) => x > 0).map(foldAlong),
  })
  const middle = { x: closed + leaf / 2, y: size.length / 2 }
  const side = (edge: 'head' | 'foot'): SeamLine =>
    makeSeam(item.seam, edgeOf('', edge, start, closed), edgeOf('', edge, closed, open), leaf, 'side')
  const hems = isKept ? 1 : 2
  return {
    id: `one-piece/${choice.cloth.name}/${choice.run}`,
    words: 'one piece with inside flap',
    pieces: [centred(order, choice, piece, middle)],
    seams: [side('head'), side('foot')],
    joins: 0,
    notions: [],
    hems: hems * size.length,
    sewing: [
      hemStep(order, item.hem, isKept ? 'the end of the flap' : 'both short ends', times(size.length, hems)),
      step(
        `Fold at the fold mark of the closed end, ${say(order, leaf)} from the ${isKept ? 'kept edge' : 'hemmed end'} without the flap, ${layTogether(item.seam)}; ${foldFlap(order, item, minus(minus(size.width, end), open))} and pin the sides.`,
      ),
      sewingStep(order, item.seam, 'Both long sides, through the flap', times(leaf, 2)),
      step('Turn right side out, flap inside; push out the corners and press.'),
    ],
  }
}

/** Front with the flap on it, and back: the closed end is a seam too. */
export function insideFlapInTwo(order: Order, item: Pillowcase, front: Choice, back: Choice): Draft {
  const { allowance } = item.seam
  const shrinks = mostShrinking([front, back])
  const isKept = item.openingEdge.kind !== 'none'
  const hem = hemTake(item.hem)
  const [short, long] = [item.finished.width, item.finished.length]
  // a kept edge cannot be folded to measure: the back is marked off first, and the front's opening follows it
  const backWidth = cutLength(order, long, shrinks.width, isKept ? allowance : sum(allowance, hem))
  const open = isKept ? backWidth : sum(allowance, beforeShrinking(long, shrinks.width))
  const frontWidth = cutLength(order, sum(long, item.flap), shrinks.width, sum(allowance, hem))
  const faceLength = cutLength(order, short, shrinks.length, times(allowance, 2))
  // the front is closed at its left, so the back, seen from its own right side, is closed at its right
  const backOpen = minus(backWidth, open)

  const y = faceLength / 2
  const frontPiece = makePiece(front.cloth, {
    name: '/front',
    words: 'Front with flap',
    size: { width: frontWidth, length: faceLength },
    run: front.run,
    marks: [foldAlong(open), foldAlong(minus(frontWidth, hem))],
  })
  const backPiece = makePiece(back.cloth, {
    name: '/back',
    words: 'Back',
    size: { width: backWidth, length: faceLength },
    run: back.run,
    needs: { left: item.openingEdge },
    marks: isKept ? [] : [foldAlong(backOpen)],
  })
  const pieces = [
    centred(order, front, frontPiece, { x: (allowance + open) / 2, y }),
    centred(order, back, backPiece, { x: (backOpen + backWidth - allowance) / 2, y }),
  ]
  const longSide = (edge: 'head' | 'foot'): SeamLine =>
    makeSeam(item.seam, edgeOf('/front', edge, ZERO, open), edgeOf('/back', edge, backOpen, backWidth), open, 'side')
  const seams = [
    makeSeam(item.seam, edgeOf('/front', 'left'), edgeOf('/back', 'right'), faceLength, 'side'),
    longSide('head'),
    longSide('foot'),
  ]
  const hems = isKept ? 1 : 2
  const hemmed = isKept ? 'the end of the flap' : 'the end of the flap and the open end of the back'
  return {
    id: `separate/${front.cloth.name}/${front.run}/${back.cloth.name}/${back.run}`,
    words: 'front with inside flap and separate back',
    pieces,
    seams,
    joins: 0,
    notions: [],
    hems: hems * faceLength,
    sewing: [
      hemStep(order, item.hem, hemmed, times(faceLength, hems)),
      step(
        `Lay front and back ${layTogether(item.seam)}; ${foldFlap(order, item, minus(minus(frontWidth, hem), open))} and pin.`,
      ),
      sewingStep(order, item.seam, 'Closed end, front to back', faceLength),
      sewingStep(order, item.seam, 'Both long sides, through the flap', length(2 * open)),
      step('Turn right side out, flap inside; push out the corners and press.'),
    ],
  }
}

// right side out, as for the first row of a French seam, the flap lies where it will be: inside
function foldFlap(order: Order, item: Pillowcase, flap: Length): string {
  const where = `at its fold mark, ${say(order, flap)} from its hemmed end`
  return item.seam.kind === 'french'
    ? `fold the flap in ${where}, between front and back,`
    : `fold the flap over the back ${where},`
}
