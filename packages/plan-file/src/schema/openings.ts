import * as z from 'zod'
import { hem, turns } from './face.ts'
import type { Leaves } from './leaves.ts'
import { either, keys, oneOrMore, word, yesNo } from './leaves.ts'

const KINDS = ['zip', 'buttons', 'snaps', 'ties', 'flap', 'none'] as const
const ALIASES = { 'press-studs': 'snaps', poppers: 'snaps' } as const

/** The opening of a duvet cover: its kind alone, or its kind with measures. */
export function opening(r: Leaves) {
  const at = word(['foot', 'head', 'left', 'right']).prefault('foot').describe('The edge that opens')
  const spacing = r.usually('20 cm', '8 in').describe('Widest gap from one to the next')
  const fromCorner = r.usually('15 cm', '6 in').describe('From each corner to the first')
  const placket = {
    at,
    depth: r.usually('4 cm', '1 1/2 in').describe('Depth of the hem that carries them, finished'),
    turns: turns(2),
    'turned-in': r
      .length()
      .optional()
      .describe('What goes under; left out: the depth again, 1 cm (3/8 in) for a single turn'),
    spacing,
    'from-corner': fromCorner,
  }
  const zips = either(
    'any, or a list of lengths to hand such as [150 cm, 60 cm]',
    z.literal('any'),
    oneOrMore(r.length(), 'lengths'),
  )
    .prefault('any')
    .describe('Lengths to hand; any: whatever is sold, one or two head to head')
  const whole = z.discriminatedUnion('kind', [
    keys({ kind: z.literal('zip'), at, zips }),
    keys({ kind: z.literal('buttons'), ...placket }),
    keys({ kind: z.literal(['snaps', 'press-studs', 'poppers']), ...placket }),
    keys({
      kind: z.literal('ties'),
      at,
      hem: hem(r, { depth: r.usual('2.5 cm', '1 in'), turns: 2 })
        .prefault({})
        .describe('Hem of both edges of the opening'),
      spacing,
      'from-corner': fromCorner,
      'tie-length': r.usually('25 cm', '10 in').describe('Length of one tie, finished'),
      'tie-width': r.usually('2 cm', '3/4 in').describe('Width of one tie, finished'),
    }),
    keys({
      kind: z.literal('flap'),
      at,
      depth: r.usually('25 cm', '10 in').describe('How deep the flap reaches inside, finished'),
      hem: hem(r, { depth: r.usual('2 cm', '3/4 in'), turns: 2 })
        .prefault({})
        .describe('Hem of the flap and of the edge opposite'),
    }),
    keys({ kind: z.literal('none') }),
  ])
  const named = word(KINDS, ALIASES).transform((kind) => whole.parse({ kind }))
  return either('zip, buttons, snaps, ties, flap, none, or { kind: zip, at: foot }', whole, named)
    .prefault('zip')
    .describe('How the cover closes. Also read: press-studs and poppers for snaps')
}

/** Ties that hold the duvet in the corners: how many, or how many with measures. */
export function cornerTies(r: Leaves) {
  const many = z.literal([0, 2, 4], { error: () => 'Write 0, 2 or 4' })
  const whole = keys({
    count: many.prefault(4),
    length: r.usually('23 cm', '9 in').describe('Length of one tie'),
    width: r.usually('2 cm', '3/4 in').describe('Width of one tie, finished, when it is cut from the cloth'),
    bought: yesNo().prefault(true).describe('Cord or tape is bought; no: ties are cut from the cloth'),
  })
  return either('0, 2, 4, or { count: 4, length: 23 cm }', whole, many)
    .transform((value) => (typeof value === 'number' ? whole.parse({ count: value }) : value))
    .prefault(0)
    .describe('Ties inside the corners')
}
