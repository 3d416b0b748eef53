import type { Problem } from '@lengthwise/units'
import { cm } from '@lengthwise/units'
import type { RefusedWay, Ways } from '../answers.ts'
import { clothsNamed } from '../check-parts.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { Hem, Order, Pillowcase } from '../order.ts'
import { otherwise } from '../refusals.ts'
import { hemTake } from '../thread.ts'
import type { Choice, Part } from './choices.ts'
import { choicesFor, isContrary } from './choices.ts'
import type { Draft } from './draft.ts'
import { waysFrom } from './draft.ts'
import type { Envelope } from './envelope.ts'
import { envelopeInOne, envelopeInThree } from './envelope.ts'
import { insideFlapInOne, insideFlapInTwo } from './inside-flap.ts'
import type { CuffChoice } from './open-end.ts'
import { openEndFolded, openEndInTwo, openEndTube } from './open-end.ts'
import { quarterTurn, shortSideFirst } from './short-side-first.ts'

/**
 * The hem of a pillowcase's opening unless the plan says otherwise: one turn of 3.5 cm with 1 cm turned in. With a flap
 * of 15 cm and seams of 1.5 cm a case of 50 × 75 cm is then one piece of 53 × 174 cm.
 */
export const PILLOWCASE_HEM: Hem = { depth: cm(3.5), turns: 1, turnedIn: cm(1) }

/**
 * Every way to make a pillowcase: in one piece from a cloth that may serve for front and back, or with separate faces.
 * Pieces have the short side as width; the long side lies across the bed, so a print with a top faces a long side.
 */
export function waysForPillowcase(order: Order, item: Pillowcase, tables: ReadonlyMap<string, ClothOnTable>): Ways {
  const drafts: Draft[] = []
  let capped = false
  const each = (parts: readonly Part[], draftsOf: (choices: readonly Choice[]) => readonly Draft[]): void => {
    const found = choicesFor(order, tables, parts)
    capped ||= found.capped
    for (const choices of found.choices) drafts.push(...draftsOf(choices))
  }
  const refused: RefusedWay[] = []
  if (item.faces !== 'separate')
    each([onePart(item), ...cuffParts(item)], (choices) => {
      const isUnasked = item.faces === 'any' && choices[0]?.cloth.print.way === 'one-way'
      if (item.style !== 'open-end' || !isUnasked) return inOne(order, item, choices)
      if (refused.length === 0) refused.push({ ...HANGS_ON_THE_BACK, ...otherwise(choices[0]!.cloth.name) })
      return item.cuff === null ? [openEndFolded(order, item, choices[0]!)] : []
    })
  if (item.faces !== 'one-piece')
    each([...twoParts(item), ...cuffParts(item)], (choices) =>
      inTwo(order, item, choices).map((draft) => ({ ...draft, joins: draft.joins + seamsMore(item) })),
    )
  const found = waysFrom(order, drafts.map(shortSideFirst), tables, capped)
  return { ...found, refused: [...refused, ...found.refused] }
}

/**
 * Seams that separate faces have where one piece has a fold: the closed end, and both ends of an envelope. None where the
 * case cannot be of one piece, so that separate faces are the simplest making.
 */
function seamsMore(item: Pillowcase): number {
  if (item.faces !== 'any' || onePart(item).cloths.length === 0) return 0
  return item.style === 'envelope' || item.style === 'flanged' ? 2 : 1
}

const HANGS_ON_THE_BACK = {
  words: 'one piece folded along a long side',
  why: 'the print would hang upside down on the back; faces: one-piece has it so all the same',
}

/** What is wrong with a pillowcase as the plan has it. */
export function checkPillowcase(order: Order, item: Pillowcase): readonly Problem[] {
  const { width, length } = item.finished
  const problems: Problem[] = []
  const problem = (code: string, key: string, message: string, hint: string): void => {
    problems.push({ code, path: `${item.path}${key}`, message, hint })
  }

  if (2 * item.seam.allowance >= width)
    problem(
      'seam-too-wide',
      '.seam',
      'The seam allowances leave nothing of the case.',
      'Take an allowance of 1 to 1.5 cm.',
    )
  if (item.cuff === null && hemTake(item.hem) >= length)
    problem('hem-too-deep', '.hem', 'The hem is deeper than the case.', 'Take a hem of 2 to 10 cm.')
  if (item.style === 'inside-flap' && (item.flap <= 0 || item.flap >= length))
    problem(
      'flap-does-not-fit',
      '.flap',
      'The flap must be deeper than nothing and shorter than the case.',
      'Take a flap of 15 to 20 cm.',
    )
  if ((item.style === 'envelope' || item.style === 'flanged') && (item.flap <= 0 || item.flap >= length))
    problem(
      'flap-does-not-fit',
      '.flap',
      'The two backs must overlap, by less than the length of the case.',
      'Take an overlap of 15 to 20 cm.',
    )
  if (item.style === 'flanged' && (item.flange <= 0 || item.flange >= width))
    problem(
      'flange-too-wide',
      '.flange',
      'The flange must be wider than nothing and narrower than the case.',
      'Take a flange of 5 cm.',
    )
  if (item.cuff !== null) {
    if (item.style !== 'open-end')
      problem(
        'cuff-not-open-end',
        '.cuff',
        'Only an open end has a cuff.',
        'Write style: open-end, or leave the cuff out.',
      )
    if (item.cuff.depth <= 0 || item.cuff.depth >= length)
      problem('cuff-does-not-fit', '.cuff.depth', 'The cuff must be shorter than the case.', 'Take a cuff of 10 cm.')
    if (item.cuff.trim !== null && (item.cuff.trim.depth <= 0 || item.cuff.trim.depth > item.cuff.depth))
      problem('trim-does-not-fit', '.cuff.trim', 'The trim must be narrower than the cuff.', 'Take a trim of 1 cm.')
    if (item.openingEdge.kind !== 'none')
      problem(
        'cuff-and-kept-edge',
        '.cuff',
        'The opening is a kept edge and has a cuff too.',
        'Leave one of the two out.',
      )
  }
  if (item.faces === 'one-piece' && onePart(item).cloths.length === 0)
    problem(
      'one-piece-of-two-cloths',
      '.faces',
      'Front and back are of different cloths, so the case cannot be in one piece.',
      'Write faces: separate.',
    )
  for (const part of twoParts(item)) {
    const cloths = clothsNamed(order, part.cloths)
    const [contrary] = cloths.filter((cloth) => isContrary(order, cloth, part))
    if (contrary === undefined || cloths.some((cloth) => !isContrary(order, cloth, part))) continue
    problem(
      'length-runs',
      '.length-runs',
      `The print of ${contrary.name} has a top, which faces a long side of the case, so the length cannot run ${item.lengthRuns}.`,
      'Leave length-runs out.',
    )
    return problems
  }
  return problems
}

function inOne(order: Order, item: Pillowcase, [body, ...rest]: readonly Choice[]): Draft[] {
  if (body === undefined) return []
  switch (item.style) {
    case 'inside-flap':
      return [insideFlapInOne(order, item, body)]
    case 'envelope':
    case 'flanged':
      return [envelopeInOne(order, envelopeOf(item), body)]
    case 'open-end': {
      const tube = openEndTube(order, item, body, cuffOf(rest))
      return item.cuff === null ? [tube, openEndFolded(order, item, body)] : [tube]
    }
  }
}

function inTwo(order: Order, item: Pillowcase, [front, back, ...rest]: readonly Choice[]): Draft[] {
  if (front === undefined || back === undefined) return []
  switch (item.style) {
    case 'inside-flap':
      return [insideFlapInTwo(order, item, front, back)]
    case 'envelope':
    case 'flanged':
      return [envelopeInThree(order, envelopeOf(item), front, back)]
    case 'open-end':
      return [openEndInTwo(order, item, front, back, cuffOf(rest))]
  }
}

function envelopeOf(item: Pillowcase): Envelope {
  return {
    words: item.style === 'flanged' ? 'Flanged pillowcase' : 'Pillowcase with envelope back',
    finished: item.finished,
    flange: item.style === 'flanged' ? item.flange : cm(0),
    overlap: item.flap,
    hem: item.hem,
    openingEdge: item.openingEdge,
    seam: item.seam,
  }
}

function onePart(item: Pillowcase): Part {
  return part(
    item.cloth.filter((name) => item.backCloth.includes(name)),
    item.lengthRuns,
  )
}

const twoParts = (item: Pillowcase): Part[] => [
  part(item.cloth, item.lengthRuns),
  part(item.backCloth, item.lengthRuns),
]

function cuffParts(item: Pillowcase): Part[] {
  if (item.cuff === null) return []
  const cuff = part(item.cuff.cloth, 'either')
  return item.cuff.trim === null ? [cuff] : [cuff, { cloths: item.cuff.trim.cloth, asked: 'either', hasTop: false }]
}

function cuffOf([cuff, trim]: readonly Choice[]): CuffChoice | null {
  return cuff === undefined ? null : { cuff, trim: trim ?? null }
}

// the length of a pillowcase is its long side, that of a part runs from head to foot
const part = (cloths: readonly string[], asked: Part['asked']): Part => ({
  cloths,
  asked: quarterTurn(asked),
  hasTop: true,
})
