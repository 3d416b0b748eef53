import type { Length, Problem } from '@lengthwise/units'
import { beforeShrinking, cm, minus, roundUpTo, sum, times } from '@lengthwise/units'
import type { Ways } from '../answers.ts'
import { edgeOf, foldAlong, makePiece, makeSeam, stitchedOn } from '../build.ts'
import type { ClothOnTable } from '../cloth.ts'
import { cutLength } from '../cut-size.ts'
import { ONE_POINT } from '../faces/shrinking.ts'
import type { Bolster, Order } from '../order.ts'
import { layTogether, say, step } from '../sewing.ts'
import type { Piece } from '../way.ts'
import { chooseZips, zipNotions } from '../zips.ts'
import type { Choice, Part } from './choices.ts'
import { choicesFor } from './choices.ts'
import { circumference } from './circle.ts'
import type { Draft } from './draft.ts'
import { waysFrom } from './draft.ts'
import { plainly, sewingStep, zipSteps } from './seam-words.ts'
import { shortSideFirst } from './short-side-first.ts'

/** A ribbon or cord for each tied end (common practice, no source). */
const TIE = cm(80)

/**
 * Every way to make a bolster: a body once round and as long as the bolster, with a zip in its long seam and two round
 * ends laid as squares; or a longer body whose ends are tied.
 */
export function waysForBolster(order: Order, item: Bolster, tables: ReadonlyMap<string, ClothOnTable>): Ways {
  const body: Part = { cloths: item.cloth, asked: 'either', hasTop: true }
  const ends: Part = { cloths: item.cloth, asked: 'either', hasTop: false }
  const { choices, capped } = choicesFor(order, tables, item.ends === 'circles' ? [body, ends] : [body])
  const drafts = choices.map(([bodyChoice, endChoice]) =>
    endChoice === undefined ? tied(order, item, bodyChoice!) : withCircles(order, item, bodyChoice!, endChoice),
  )
  return waysFrom(order, drafts.map(shortSideFirst), tables, capped)
}

/** What is wrong with a bolster as the plan has it. */
export function checkBolster(order: Order, item: Bolster): readonly Problem[] {
  const problems: Problem[] = []
  if (item.diameter <= 0 || item.length <= 0)
    problems.push({
      code: 'bolster-without-size',
      path: item.path,
      message: 'A bolster needs a diameter and a length.',
      hint: 'Write both, such as diameter: 20 cm and length: 90 cm.',
    })
  if (2 * item.seam.allowance >= item.diameter)
    problems.push({
      code: 'seam-too-wide',
      path: `${item.path}.seam`,
      message: 'The seam allowances are as wide as the bolster.',
      hint: 'Take an allowance of 1 to 1.5 cm.',
    })
  if (item.cot && item.ends === 'tied')
    problems.push({
      code: 'ties-in-a-cot',
      path: `${item.path}.ends`,
      message: 'A bolster with tied ends has loose ties, which have no place in a cot.',
      hint: 'Write ends: circles.',
    })
  if (order.wash === 'after-sewing' && item.ends === 'circles')
    for (const cloth of order.cloths)
      if (item.cloth.includes(cloth.name) && Math.abs(cloth.shrinks.along - cloth.shrinks.across) > ONE_POINT)
        problems.push({
          code: 'shrinks-apart',
          path: `${item.path}.cloth`,
          message: `${cloth.name} shrinks more one way than the other: round ends would pull out of shape in the wash.`,
          hint: 'Wash before cutting (wash: before-cutting).',
        })
  return problems
}

function withCircles(order: Order, item: Bolster, choice: Choice, endChoice: Choice): Draft {
  const { allowance } = item.seam
  const both = times(allowance, 2)
  // the circle is cut to the body as it will be sewn, so it takes the body's own loss
  const diameter = beforeShrinking(item.diameter, choice.length)
  const bodyWidth = cutLength(order, item.length, choice.width, both)
  const round = cutLength(order, circumference(item.diameter), choice.length, both)
  const square = roundUpTo(sum(diameter, both), order.markTo)
  const zip = chooseZips(order, item.length, null)
  const around = circumference(diameter)

  const pieces: Piece[] = [
    bodyPiece(item, choice, bodyWidth, round, true),
    {
      ...makePiece(endChoice.cloth, {
        name: '/end',
        words: `End, a circle ${say(order, sum(diameter, both))} across laid as its square`,
        size: { width: square, length: square },
        run: endChoice.run,
        count: 2,
      }),
      mayTurnEndForEnd: true,
      headToward: null,
      uppermost: null,
    },
  ]
  const seam = makeSeam(item.seam, edgeOf('/body', 'head'), edgeOf('/body', 'foot'), bodyWidth, 'opening', {
    ...(zip === null ? {} : { kind: 'zip' }),
  })
  const notions = zip === null ? [] : zipNotions(zip, 'zip for the long seam of the bolster')
  const opening =
    zip === null
      ? [
          step('Leave a gap in the long seam to turn and fill through, and close it by hand.'),
          sewingStep(order, item.seam, 'Long seam of the body', bodyWidth),
        ]
      : zipSteps(order, item.seam, 'Long seam of the body', bodyWidth, zip)
  return {
    id: `circles/${choice.cloth.name}/${choice.run}`,
    words: 'body and two round ends, laid as squares',
    pieces,
    seams: [seam],
    joins: 0,
    notions,
    hems: 2 * around,
    sewing: [
      step(`Fold each square in four and cut its circle, ${say(order, sum(diameter, both))} across.`),
      ...opening,
      step('Mark body ends and circles in quarters and snip the body’s allowance where it must bend.'),
      sewingStep(
        order,
        plainly(item.seam),
        'A circle to each end of the body at its stitching mark, quarter to quarter',
        times(around, 2),
        around,
      ),
      step('Turn right side out and press.'),
    ],
  }
}

function tied(order: Order, item: Bolster, choice: Choice): Draft {
  const { allowance } = item.seam
  const both = times(allowance, 2)
  const finished = sum(item.length, times(sum(item.diameter, item.tieEnd), 2))
  const bodyWidth = cutLength(order, finished, choice.width, both)
  const round = cutLength(order, circumference(item.diameter), choice.length, both)
  const seam = makeSeam(item.seam, edgeOf('/body', 'head'), edgeOf('/body', 'foot'), bodyWidth, 'side')
  return {
    id: `tied/${choice.cloth.name}/${choice.run}`,
    words: 'one piece, tied at both ends',
    pieces: [bodyPiece(item, choice, bodyWidth, round, false)],
    seams: [seam],
    joins: 0,
    notions: [{ what: 'cord', length: times(TIE, 2), words: `two ties of ${say(order, TIE)} for the ends` }],
    hems: 2 * round,
    sewing: [
      sewingStep(order, item.seam, `Long seam of the body, ${layTogether(item.seam)}`, bodyWidth),
      {
        text: `Turn in ${say(order, allowance)} at the fold mark of each open end, half of it under, and stitch, all round: ${say(order, times(round, 2))}.`,
        seamLength: times(round, 2),
      },
      step('Turn right side out, put the bolster in and tie both ends close to it.'),
    ],
  }
}

/** The bolster lies across the bed: the body's width is its length, and its length goes round. Its ends are stitched to circles or turned. */
function bodyPiece(item: Bolster, choice: Choice, width: Length, round: Length, toCircles: boolean): Piece {
  const { allowance } = item.seam
  const ends = [foldAlong(allowance), foldAlong(minus(width, allowance))]
  return makePiece(choice.cloth, {
    name: '/body',
    words: 'Body',
    size: { width, length: round },
    run: choice.run,
    marks: toCircles ? ends.map(stitchedOn) : ends,
  })
}
