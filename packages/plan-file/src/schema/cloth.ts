import * as z from 'zod'
import type { Leaves } from './leaves.ts'
import { count, either, keys, name, oneOrMore, percentage, price, word, yesNo } from './leaves.ts'

const zeroOrMore = (r: Leaves, words: string) => r.usually('0 cm', '0 in').describe(words)

/** One cloth: a bolt in the shop, ready-made sheets, or a remnant. */
export function cloth(r: Leaves) {
  return keys({
    name: name().describe('The name that items call it by'),
    from: word(['bolt', 'sheet', 'remnant'])
      .prefault('bolt')
      .describe('bolt: sold by length; sheet: ready-made flat sheets; remnant: a rectangle left from something else'),
    widths: oneOrMore(
      either(
        'a width such as 150 cm, or { width: 150 cm, price: 14.50 per m }',
        r.length().transform((width) => ({ width, price: undefined })),
        keys({
          width: r.length().describe('Width between the selvedges'),
          price: price().optional().describe('Price at this width'),
        }),
      ),
      'a width such as 150 cm, or a list of widths',
    )
      .optional()
      .describe('Bolt: the widths the shop has, from the outside of one selvedge to the other, before washing'),
    price: price()
      .optional()
      .describe('Bolt: price of a metre or a yard, such as 14.50 per m; a width may have its own'),
    currency: currency().optional().describe('As at the top of the plan'),
    'sold-by': r.usually('10 cm', '1/8 yd').describe("Bolt: the shop's step; 0: to the exact unit"),
    'smallest-sale': zeroOrMore(r, 'Bolt: the least the shop sells'),
    have: zeroOrMore(r, 'Bolt: length already owned, before washing'),
    sold: yesNo().prefault(true).describe('Bolt: no when there is only what is owned'),
    size: r
      .size()
      .optional()
      .describe('Sheet and remnant: width x length as measured, hem to hem; the length runs along the selvedge'),
    count: count(1000).optional().describe('Sheet and remnant: how many of them; left out: 1'),
    hems: keys({ head: clothEdge(r), foot: clothEdge(r), left: clothEdge(r), right: clothEdge(r) })
      .prefault({})
      .describe(
        'Finished edges of the cloth: the depth of a hem, selvedge, or none. Head and foot are the ends, left and right the long sides',
      ),
    selvedges: word(['left', 'right', 'both', 'none'])
      .optional()
      .describe(
        'Long sides that are selvedges, where hems says nothing; left out: both on a bolt, none on a sheet or remnant',
      ),
    keep: either(
      'may, must, or { head: must }',
      word(['may', 'must']),
      keys({ head: mayMust(), foot: mayMust(), left: mayMust(), right: mayMust() }),
    )
      .prefault('may')
      .describe(
        'must: no part of such a hem goes to waste; it ends on pieces that need it, or on a remnant worth keeping',
      ),
    shrinks: either(
      'none, or { along: 5 %, across: 3 % }',
      word(['none']),
      keys({ along: shrinkage(), across: shrinkage() }),
    )
      .prefault('none')
      .describe(
        'Shrinkage in the wash along the selvedge and across it, in per cent of the size before; two figures, never one',
      ),
    'unused-selvedge': zeroOrMore(r, 'Trimmed off at each side'),
    'spare-each-end': r
      .length()
      .optional()
      .describe('Trimmed off at each end, for squaring; left out: 5 cm (2 in) on a bolt, 0 on a sheet or remnant'),
    print: print(r),
    'divide-by': word(['tearing', 'thread', 'shears'])
      .prefault('tearing')
      .describe(
        'tearing: every division runs edge to edge; thread: the same along a drawn thread; shears: any straight cut',
      ),
    'lost-per-tear': zeroOrMore(r, 'Lost at each torn edge; an edge that stays a selvedge or a hem loses nothing'),
    flaws: z.array(flaw(r)).prefault([]).describe('Places to keep clear of, as measured before washing'),
  })
}

export const currency = () =>
  z
    .string()
    .regex(/^[A-Z]{3}$/, { error: () => 'Write three capital letters, such as EUR' })
    .describe('Of the prices: three letters, such as EUR')

const mayMust = () => word(['may', 'must']).prefault('may')
const shrinkage = () => percentage().prefault('0 %')
const clothEdge = (r: Leaves) => r.wordOrLength('selvedge', 'none').optional()

function print(r: Leaves) {
  const whole = keys({
    way: word(['plain', 'two-way', 'one-way'])
      .prefault('plain')
      .describe('two-way: looks the same upside down; one-way: has a top'),
    top: word(['cut-end', 'bolt', 'left', 'right'])
      .prefault('cut-end')
      .describe('Where the top of a one-way print faces; bolt on a sheet is toward the foot hem'),
    repeat: zeroOrMore(r, 'Repeat of the print along the selvedge; 0: none'),
    'across-repeat': zeroOrMore(r, 'Repeat across; 0: none'),
    match: word(['none', 'straight', 'half-drop'])
      .optional()
      .describe('How the print meets at joined seams; left out: straight when there is a repeat, else none'),
    'repeat-measured': word(['on-the-table', 'in-shop'])
      .prefault('on-the-table')
      .describe('in-shop: measured before the wash, so that it shrinks with the cloth'),
    'match-line': zeroOrMore(r, 'How far inside the selvedge the print meets; joined seams lie on it'),
    motif: either(
      'centred, or { first: 12 cm }',
      word(['centred']),
      keys({ first: r.length().optional().describe('From the cut end to the middle of the first motif') }),
    )
      .optional()
      .describe('A motif is centred on the main panel of each face; without first that adds one repeat to the buy'),
  })
  return either(
    'plain, two-way, one-way, or { way: one-way, top: cut-end }',
    whole,
    word(['plain', 'two-way', 'one-way']),
  )
    .transform((value) => (typeof value === 'string' ? whole.parse({ way: value }) : value))
    .prefault('plain')
    .describe('The print of the cloth')
}

function flaw(r: Leaves) {
  return keys({
    x: r.length().describe('From the left side'),
    y: r.length().describe('From the head end or the cut end'),
    width: r.length().describe('Across the cloth'),
    length: r.length().describe('Along the cloth'),
    on: count(1000).optional().describe('On which of several, 1 is the first; left out: on each'),
  })
}
