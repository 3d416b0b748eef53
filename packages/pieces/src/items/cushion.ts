import type { Length, Problem } from '@lengthwise/units'
import { beforeShrinking, length, minus, roundUpTo, sum, times, ZERO } from '@lengthwise/units'
import type { Ways } from '../answers.ts'
import { edgeOf, half, makePiece, makeSeam } from '../build.ts'
import type { ClothOnTable } from '../cloth.ts'
import { cutLength } from '../cut-size.ts'
import type { Cushion, Edge, Order } from '../order.ts'
import { layTogether, step } from '../sewing.ts'
import { hemTake } from '../thread.ts'
import type { Notion, SeamLine, SewingLine } from '../way.ts'
import { chooseZips, zipNotions } from '../zips.ts'
import type { Choice, Part } from './choices.ts'
import { choicesFor, mostShrinking } from './choices.ts'
import type { Draft } from './draft.ts'
import { waysFrom } from './draft.ts'
import type { Envelope } from './envelope.ts'
import { envelopeInOne, envelopeInThree, flangeLines, flangeStitching, outerSize, turnOut } from './envelope.ts'
import { centred } from './motif.ts'
import { plainly, sewingStep, zipSteps } from './seam-words.ts'
import { shortSideFirst } from './short-side-first.ts'

/**
 * Every way to make a cushion or sham: back in two leaves that overlap, the same in one piece with the front, or with a
 * zip, in a long side or, where there is a flange, across the middle of the back. The long side lies across the bed.
 */
export function waysForCushion(order: Order, item: Cushion, tables: ReadonlyMap<string, ClothOnTable>): Ways {
  const front = part(item.cloth)
  const back = part(item.backCloth)
  const both = part(item.cloth.filter((name) => item.backCloth.includes(name)))
  const { choices, capped } = choicesFor(order, tables, item.back === 'one-piece-envelope' ? [both] : [front, back])
  const drafts = choices.map(([first, second]) => draftOf(order, item, first!, second ?? first!))
  return waysFrom(order, drafts.map(shortSideFirst), tables, capped)
}

/** What is wrong with a cushion or sham as the plan has it. */
export function checkCushion(_order: Order, item: Cushion): readonly Problem[] {
  const { finished } = item
  const problems: Problem[] = []
  const problem = (code: string, key: string, message: string, hint: string): void => {
    problems.push({ code, path: `${item.path}${key}`, message, hint })
  }
  if (2 * item.seam.allowance >= finished.width)
    problem(
      'seam-too-wide',
      '.seam',
      'The seam allowances leave nothing of the cushion.',
      'Take an allowance of 1 to 1.5 cm.',
    )
  if (item.flange < 0 || item.flange >= finished.width)
    problem(
      'flange-too-wide',
      '.flange',
      'The flange is as wide as the cushion.',
      'Take a flange of 5 cm, or 0 for none.',
    )
  if (item.back !== 'zip') {
    if (item.overlap <= 0 || item.overlap >= finished.length)
      problem(
        'overlap-does-not-fit',
        '.overlap',
        'The two leaves of the back must overlap, by less than the length of the cushion.',
        'Take an overlap of 10 to 15 cm.',
      )
    if (hemTake(item.hem) >= finished.length)
      problem('hem-too-deep', '.hem', 'The hem is deeper than the cushion.', 'Take a hem of 2 to 3 cm.')
  }
  if (item.back === 'one-piece-envelope' && !item.cloth.some((name) => item.backCloth.includes(name)))
    problem(
      'one-piece-of-two-cloths',
      '.back',
      'Front and back are of different cloths, so the cushion cannot be in one piece.',
      'Write back: envelope.',
    )
  return problems
}

function draftOf(order: Order, item: Cushion, front: Choice, back: Choice): Draft {
  switch (item.back) {
    case 'envelope':
      return envelopeInThree(order, pocketOf(item), front, back)
    case 'one-piece-envelope':
      return envelopeInOne(order, pocketOf(item), front)
    case 'zip':
      return item.flange === 0 ? zipInTheSide(order, item, front, back) : zipInTheBack(order, item, front, back)
  }
}

function zipInTheSide(order: Order, item: Cushion, front: Choice, back: Choice): Draft {
  const { seam } = item
  const shrinks = mostShrinking([front, back])
  const both = times(seam.allowance, 2)
  const size = {
    width: cutLength(order, item.finished.length, shrinks.width, both),
    length: cutLength(order, item.finished.width, shrinks.length, both),
  }
  const seams: SeamLine[] = [
    makeSeam(seam, edgeOf('/front', 'foot'), edgeOf('/back', 'foot'), size.width, 'opening', { kind: 'zip' }),
    makeSeam(seam, edgeOf('/front', 'head'), edgeOf('/back', 'head'), size.width, 'side'),
    makeSeam(seam, edgeOf('/front', 'left'), edgeOf('/back', 'right'), size.length, 'side'),
    makeSeam(seam, edgeOf('/front', 'right'), edgeOf('/back', 'left'), size.length, 'side'),
  ]
  const middle = { x: size.width / 2, y: size.length / 2 }
  const zipSeam = 'Lower long side, front to back'
  return {
    id: `zip/${front.cloth.name}/${front.run}/${back.cloth.name}/${back.run}`,
    words: 'front and back with a zip in the lower long side',
    pieces: [
      centred(order, front, makePiece(front.cloth, { name: '/front', words: 'Front', size, run: front.run }), middle),
      centred(order, back, makePiece(back.cloth, { name: '/back', words: 'Back', size, run: back.run }), middle),
    ],
    seams,
    joins: 0,
    notions: zipOf(order, item, item.finished.length, 'zip in a long side'),
    hems: 0,
    sewing: [
      ...zippedSeam(order, item, zipSeam, size.width),
      sewingStep(order, seam, 'The other three sides', sum(size.width, times(size.length, 2))),
      step('Turn right side out through the zip, push out the corners and press.'),
    ],
  }
}

/** A flange leaves no room for a zip at the edge: the back is two halves, one above the other. */
function zipInTheBack(order: Order, item: Cushion, front: Choice, back: Choice): Draft {
  const { seam } = item
  const pocket = pocketOf(item)
  const outer = outerSize(pocket)
  const shrinks = mostShrinking([front, back])
  const both = times(seam.allowance, 2)
  const size = {
    width: cutLength(order, outer.length, shrinks.width, both),
    length: cutLength(order, outer.width, shrinks.length, both),
  }
  const shown = beforeShrinking(outer.width, shrinks.length)
  const halfCut = roundUpTo(half(shown + 2 * both), order.markTo)
  const halfSize = { width: size.width, length: halfCut }
  const middle = minus(halfCut, seam.allowance)
  // the marking step can leave one face a little longer than the other; that much is trimmed at the foot
  const lowerSeam = length(Math.min(size.length - middle, halfCut - seam.allowance))
  const along = (frontEdge: Edge, backEdge: Edge): SeamLine[] => [
    makeSeam(
      seam,
      edgeOf('/front', frontEdge, ZERO, middle),
      edgeOf('/back/upper', backEdge, ZERO, middle),
      middle,
      'side',
    ),
    makeSeam(
      seam,
      edgeOf('/front', frontEdge, middle, sum(middle, lowerSeam)),
      edgeOf('/back/lower', backEdge, seam.allowance, sum(seam.allowance, lowerSeam)),
      lowerSeam,
      'side',
    ),
  ]
  const seams = [
    makeSeam(seam, edgeOf('/back/upper', 'foot'), edgeOf('/back/lower', 'head'), size.width, 'join', { kind: 'zip' }),
    makeSeam(seam, edgeOf('/front', 'head'), edgeOf('/back/upper', 'head'), size.width, 'side'),
    makeSeam(seam, edgeOf('/front', 'foot'), edgeOf('/back/lower', 'foot'), size.width, 'side'),
    ...along('left', 'right'),
    ...along('right', 'left'),
  ]
  const frontPiece = makePiece(front.cloth, {
    name: '/front',
    words: 'Front',
    size,
    run: front.run,
    marks: flangeLines(pocket, size.length, seam.allowance, minus(size.width, seam.allowance), shrinks),
  })
  const zipSeam = 'Upper to lower half of the back'
  return {
    id: `zip/${front.cloth.name}/${front.run}/${back.cloth.name}/${back.run}`,
    words: 'front, and back in two halves with a zip between',
    pieces: [
      centred(order, front, frontPiece, { x: size.width / 2, y: size.length / 2 }),
      makePiece(back.cloth, { name: '/back/upper', words: 'Back, upper half', size: halfSize, run: back.run }),
      makePiece(back.cloth, { name: '/back/lower', words: 'Back, lower half', size: halfSize, run: back.run }),
    ],
    seams,
    joins: 0,
    notions: zipOf(order, item, item.finished.length, 'zip across the back'),
    hems: flangeStitching(pocket),
    sewing: [
      ...zippedSeam(order, item, zipSeam, size.width),
      sewingStep(order, seam, 'All four sides', times(sum(size.width, size.length), 2)),
      ...turnOut(order, pocket),
    ],
  }
}

/** The seam with its zip, where one is short enough, and what is laid for the seams round it. */
function zippedSeam(order: Order, item: Cushion, what: string, seamLength: Length): readonly SewingLine[] {
  const zip = chooseZips(order, item.finished.length, null)
  const lay = `Lay front and back ${layTogether(item.seam)}`
  return zip === null
    ? [
        sewingStep(order, plainly(item.seam), `${what}, a gap left in its middle to close by hand`, seamLength),
        step(`${lay}.`),
      ]
    : [...zipSteps(order, item.seam, what, seamLength, zip), step(`${lay}, the zip open halfway.`)]
}

function zipOf(order: Order, item: Cushion, edge: Cushion['finished']['width'], words: string): readonly Notion[] {
  const choice = chooseZips(order, edge, null)
  return choice === null ? [] : zipNotions(choice, `${words} of the ${item.item}`)
}

function pocketOf(item: Cushion): Envelope {
  return {
    words: item.item === 'sham' ? 'Sham' : 'Cushion',
    finished: item.finished,
    flange: item.flange,
    overlap: item.overlap,
    hem: item.hem,
    openingEdge: { kind: 'none' },
    seam: item.seam,
  }
}

const part = (cloths: readonly string[]): Part => ({ cloths, asked: 'either', hasTop: true })
