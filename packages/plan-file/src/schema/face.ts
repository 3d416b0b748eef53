import * as z from 'zod'
import type { Leaves, Measure } from './leaves.ts'
import { clothNames, count, either, keys, leaves, word, yesNo } from './leaves.ts'

export const lengthRuns = () =>
  word(['along', 'across', 'either'])
    .prefault('either')
    .describe(
      'How the length (head to foot) lies on the cloth. A one-way print fixes it: either then means the way its top allows',
    )

/** Keys of a face that may be joined from several widths; on items of one face they stand on the item itself. */
export function joining(r: Leaves) {
  return {
    joined: word(['any', 'one-piece', 'centre-and-sides', 'centre-seam', 'full-widths'])
      .prefault('any')
      .describe('How a face wider than the cloth may be joined. any leaves out only the centre seam'),
    'smallest-panel': r.usually('15 cm', '6 in').describe('No panel is narrower than this, finished'),
    centre: r
      .wordOrLength('full', 'any')
      .prefault('full')
      .describe(
        'Width of the centre panel: full (the full usable width), any (every marking step), or a finished width',
      ),
    'cross-joins': z
      .int({ error: () => 'Write a whole number such as 1' })
      .min(0)
      .max(10)
      .prefault(0)
      .describe('Most joins across a panel: 1 allows two equal lengths sewn end to end'),
    'selvedge-to-selvedge': yesNo().prefault(false).describe('Panels are joined selvedge to selvedge only'),
    'length-runs': lengthRuns(),
    'most-seams': z
      .int({ error: () => 'Write a whole number such as 2' })
      .min(0)
      .max(50)
      .optional()
      .describe('Most seams inside the face; left out: no limit'),
    band: keys({
      at: word(['head', 'foot']).prefault('head').describe('The end of the face that carries the band'),
      depth: r.length().describe('Depth of the band, finished'),
      cloth: clothNames().optional().describe('Cloth of the band; left out: the cloth of the face'),
    })
      .optional()
      .describe('A strip across the face at one end, of another cloth where asked'),
  }
}

/** The usual figures of a face that says nothing. */
export const usualJoining = (measureIn: Measure) => keys(joining(leaves(measureIn))).parse({})

/** A face of a duvet cover: its cloth alone, or its cloth with how it is joined. */
export function front(r: Leaves) {
  return faceOf({ cloth: faceCloth(), ...joining(r) })
}

/** The back may have its opening edge made from the hems of a ready-made sheet. */
export function back(r: Leaves) {
  return faceOf({
    cloth: faceCloth(),
    ...joining(r),
    'zip-edge': word(['kept-hems'])
      .optional()
      .describe(
        'kept-hems: the deep hem of a sheet is cut off as a strip and becomes one edge of the opening, the foot hem the other',
      ),
    finger: r.usually('2 cm', '3/4 in').describe('The strip is cut this far beyond the stitching of the hem'),
    lap: r.usually('0.4 cm', '3/16 in').describe('How far the two hems lie over each other above the zip'),
    stitching: r
      .usually('0 cm', '0 in')
      .describe('From the stitching of the deep hem to the outer foot seam; 0: the seam is sewn in the stitching line'),
  })
}

const faceCloth = () => clothNames().optional().describe('Any of these cloths; left out: the cloth of the item')

function faceOf<Shape extends z.core.$ZodLooseShape & { cloth: z.ZodType }>(shape: Shape) {
  const whole = keys(shape)
  const named = clothNames().transform((cloth) => whole.parse({ cloth }) as z.output<typeof whole>)
  return either('the name of a cloth, or { cloth: name, joined: any }', whole, named)
}

/** A hem: its depth, or its depth with turns. */
export function hem(r: Leaves, usual: { depth: string; turns: 1 | 2 }) {
  const depth = r.length()
  const whole = keys({
    depth: depth.prefault(usual.depth).describe('Depth of the hem, finished'),
    turns: turns(usual.turns),
    'turned-in': r
      .length()
      .optional()
      .describe('What goes under; left out: the depth again for a double turn, 1 cm (3/8 in) for a single one'),
  })
  return either('a depth such as 2.5 cm, or { depth: 2.5 cm, turns: 2 }', whole, depth).transform((value) =>
    typeof value === 'number' ? { depth: value, turns: usual.turns } : value,
  )
}

export const turns = (usual: 1 | 2) =>
  z
    .literal([1, 2], { error: () => 'Write 1 or 2' })
    .prefault(usual)
    .describe('1: turned once and overcast; 2: turned twice')

/** What an edge must be made of. */
export function edgeNeed(r: Leaves) {
  const whole = keys({ 'kept-hem': r.length().describe('A hem of at least this depth') })
  return either('none, selvedge, kept-hem, or { kept-hem: 2.5 cm }', word(['none', 'selvedge', 'kept-hem']), whole)
}

export const itemCount = () => count().prefault(1).describe('How many of this item')
