import type { Item } from '@lengthwise/pieces'
import * as z from 'zod'
import { sizesFor } from '../named-size.ts'
import { back, edgeNeed, front, hem, itemCount, joining, lengthRuns } from './face.ts'
import type { Leaves } from './leaves.ts'
import { clothNames, either, hundredths, keys, line, name, namedSize, word, yesNo } from './leaves.ts'
import { cornerTies, opening } from './openings.ts'

/** Everything that can be sewn, told apart by `item`. */
export function item(r: Leaves) {
  return z.discriminatedUnion('item', [
    duvetCover(r),
    pillowcase(r),
    flatSheet(r),
    fittedSheet(r),
    bedSkirt(r),
    bolster(r),
    cushion(r, 'cushion'),
    cushion(r, 'sham'),
    throwOver(r),
    quiltBack(r),
    strips(r),
    rectangle(r),
  ])
}

export const ITEM_NAMES = [
  'duvet-cover',
  'pillowcase',
  'flat-sheet',
  'fitted-sheet',
  'bed-skirt',
  'bolster',
  'cushion',
  'sham',
  'throw',
  'quilt-back',
  'strips',
  'rectangle',
] as const satisfies readonly Item['item'][]

export function seam(r: Leaves) {
  const kind = word(['plain', 'french', 'flat-felled'], { 'run-and-fell': 'flat-felled' })
  const whole = keys({
    kind: kind.optional().describe('plain unless the plan says otherwise. Also read: run-and-fell for flat-felled'),
    allowance: r
      .length()
      .optional()
      .describe(
        'The whole allowance on one edge, all turns and trims included; 1.5 cm (1/2 in) unless the plan says otherwise',
      ),
  })
  return either('plain, french, flat-felled, or { kind: plain, allowance: 1.5 cm }', whole, kind).transform((value) =>
    typeof value === 'string' ? { kind: value } : value,
  )
}

const common = (r: Leaves) => ({
  count: itemCount(),
  for: line().prefault('').describe('Whose it is or where it goes; printed on slips'),
  seam: seam(r).optional().describe('Seams of this item; left out: as the plan says'),
  cot: yesNo().optional().describe('For a cot or an infant; left out: as the named size says'),
})

const cloths = () =>
  clothNames().optional().describe('Any of these cloths; may be left out when the plan has one cloth only')

/** finished, or a named size, or the measured insert, the last two with an ease. */
const sized = (r: Leaves, item: Item['item'], words: string) => ({
  finished: r.size().optional().describe(`Finished size, after sewing and washing: ${words}`),
  size: named(item),
  insert: r.insert().optional().describe('What goes inside, as measured; the ease is added. Goes before size'),
  ease: r
    .ease()
    .optional()
    .describe('How much larger than the insert or the named size, each way; left out: 0; may be below 0'),
})

function named(item: Item['item']) {
  const sizes = sizesFor(item)
  return namedSize(sizes)
    .optional()
    .meta({ description: `A named size: ${sizes.names.join(', ')}`, examples: sizes.names.slice(0, 3) })
}

const ACROSS = 'width across the bed x length'
const SHORT_FIRST = 'short side x long side; the long side lies across the bed'

function duvetCover(r: Leaves) {
  return keys({
    item: z.literal('duvet-cover'),
    ...common(r),
    ...sized(r, 'duvet-cover', ACROSS),
    cloth: clothNames().optional().describe('Cloth of both faces, where a face names none'),
    front: front(r).optional().describe('The upper face'),
    back: back(r).optional().describe('The under face; left out: as the front'),
    opening: opening(r),
    'corner-ties': cornerTies(r),
    'ties-despite-caution': line()
      .optional()
      .describe('Ties on a cot item are refused unless a reason stands here; the caution is printed all the same'),
  })
}

function pillowcase(r: Leaves) {
  return keys({
    item: z.literal('pillowcase'),
    ...common(r),
    ...sized(r, 'pillowcase', SHORT_FIRST),
    style: word(['inside-flap', 'flanged', 'envelope', 'open-end'], { housewife: 'inside-flap', oxford: 'flanged' })
      .prefault('inside-flap')
      .describe('Also read: housewife for inside-flap, oxford for flanged'),
    faces: word(['one-piece', 'separate', 'any'])
      .prefault('any')
      .describe('one-piece: front and back folded from one; separate: cut apart; any: whichever saves cloth'),
    flap: r
      .usually('15 cm', '6 in')
      .describe('Depth of the flap inside; envelope and flanged: how far the two backs overlap'),
    flange: r.usually('5 cm', '2 in').describe('Width of the flange beyond the pillow, on flanged cases only'),
    hem: hem(r, { depth: r.usual('3.5 cm', '1 3/8 in'), turns: 1 })
      .optional()
      .describe('Hem at the opening; left out: 3.5 cm (1 3/8 in) turned once, on an open end 10 cm (4 in) turned once'),
    cuff: keys({
      depth: r.usually('12 cm', '5 in').describe('Depth of the cuff, finished'),
      cloth: clothNames().optional().describe('Cloth of the cuff; left out: the cloth of the case'),
      trim: keys({
        depth: r.usually('1 cm', '3/8 in').describe('Depth of the trim, finished'),
        cloth: clothNames().optional().describe('Cloth of the trim; left out: the cloth of the cuff'),
      })
        .optional()
        .describe('A narrow trim between case and cuff'),
    })
      .optional()
      .describe('Open end: a separate cuff instead of a hem'),
    'opening-edge': edgeNeed(r)
      .prefault('none')
      .describe('The opening made from a kept hem of a sheet, or a selvedge, instead of a hem'),
    cloth: cloths(),
    'back-cloth': clothNames().optional().describe('Cloth of the back where it differs'),
    'length-runs': lengthRuns(),
  })
}

function flatSheet(r: Leaves) {
  const edge = (usual: { depth: string; turns: 1 | 2 }) =>
    either(
      'a depth such as 2.5 cm, { depth: 2.5 cm, turns: 2 }, selvedge or kept-hem',
      word(['selvedge', 'kept-hem']),
      hem(r, usual),
    ).prefault({})
  const sides = { depth: r.usual('1 cm', '3/8 in'), turns: 2 } as const
  return keys({
    item: z.literal('flat-sheet'),
    ...common(r),
    ...sized(r, 'flat-sheet', ACROSS),
    hems: keys({
      head: edge({ depth: r.usual('10 cm', '4 in'), turns: 1 }).describe('Left out: 10 cm (4 in), turned once'),
      foot: edge({ depth: r.usual('2.5 cm', '1 in'), turns: 1 }).describe('Left out: 2.5 cm (1 in), turned once'),
      left: edge(sides).describe('Left out: 1 cm (3/8 in), turned twice'),
      right: edge(sides).describe('Left out: 1 cm (3/8 in), turned twice'),
    })
      .prefault({})
      .describe('What each edge is finished with'),
    cloth: cloths(),
    ...joining(r),
  })
}

function fittedSheet(r: Leaves) {
  const where = word(['all-round', 'ends', 'corners']).prefault('all-round').describe('ends: head and foot')
  const elastic = keys({
    where,
    ratio: hundredths(0.2, 1).prefault('0.6').describe('Length of the elastic to the edge it gathers'),
  })
  return keys({
    item: z.literal('fitted-sheet'),
    ...common(r),
    mattress: r.threeMeasures().optional().describe('Width x length x depth of the mattress'),
    size: named('fitted-sheet'),
    depth: r.length().optional().describe('Depth of the mattress, with a named size; left out: 25 cm (10 in)'),
    tuck: r.usually('12 cm', '5 in').describe('Reaches this far under the mattress, casing apart'),
    casing: r.usually('3 cm', '1 1/4 in').describe('Turned in for the elastic'),
    corners: word(['cut', 'kept'])
      .prefault('cut')
      .describe('cut: the corner squares come off; kept: they are folded and left in'),
    elastic: either('all-round, ends, corners, or { where: all-round, ratio: 0.6 }', elastic, where)
      .transform((value) => (typeof value === 'string' ? elastic.parse({ where: value }) : value))
      .prefault({})
      .describe('Elastic in the casing'),
    cloth: cloths(),
    ...joining(r),
  })
}

function bedSkirt(r: Leaves) {
  return keys({
    item: z.literal('bed-skirt'),
    ...common(r),
    base: r.size().optional().describe('Top of the bed base, width x length'),
    size: named('bed-skirt'),
    drop: r.usually('35 cm', '14 in').describe('From the top of the base to the lower edge, finished'),
    style: word(['gathered', 'corner-pleats'])
      .prefault('gathered')
      .describe('corner-pleats: straight, with a pleat at each foot corner'),
    fullness: hundredths(1, 5).prefault('2').describe('Gathered: the skirt is so many times as long as the edge'),
    pleat: r.usually('15 cm', '6 in').describe('Corner pleats: depth of each fold of the pleat'),
    hem: hem(r, { depth: r.usual('2.5 cm', '1 in'), turns: 2 })
      .prefault({})
      .describe('Hem of the lower edge'),
    deck: front(r).optional().describe('The part under the mattress; left out: as the skirt'),
    cloth: cloths(),
    'skirt-cloth': clothNames().optional().describe('Cloth of the skirt where it differs'),
  })
}

function bolster(r: Leaves) {
  return keys({
    item: z.literal('bolster'),
    ...common(r),
    diameter: r.length().describe('Across the round end, finished'),
    length: r.length().describe('From end to end, finished'),
    ends: word(['circles', 'tied'])
      .prefault('circles')
      .describe('circles: round ends sewn in, laid out as their squares; tied: gathered and tied beyond each end'),
    'tie-end': r.usually('20 cm', '8 in').describe('Tied: cloth beyond each end'),
    cloth: cloths(),
  })
}

function cushion(r: Leaves, kind: 'cushion' | 'sham') {
  return keys({
    item: z.literal(kind),
    ...common(r),
    ...sized(r, kind, `${SHORT_FIRST}; the flange is not counted`),
    back: word(['envelope', 'zip', 'one-piece-envelope'])
      .prefault('envelope')
      .describe('envelope: two backs that overlap; one-piece-envelope: front and both backs folded from one'),
    overlap: r.usually('12 cm', '5 in').describe('How far the two backs overlap'),
    flange: r
      .usually(kind === 'sham' ? '5 cm' : '0 cm', kind === 'sham' ? '2 in' : '0 in')
      .describe('Width of the flange beyond the cushion, all round'),
    hem: hem(r, { depth: r.usual('2.5 cm', '1 in'), turns: 2 })
      .prefault({})
      .describe('Hem of the edges that overlap'),
    cloth: cloths(),
    'back-cloth': clothNames().optional().describe('Cloth of the back where it differs'),
  })
}

function throwOver(r: Leaves) {
  return keys({
    item: z.literal('throw'),
    ...common(r),
    ...sized(r, 'throw', ACROSS),
    hem: hem(r, { depth: r.usual('2.5 cm', '1 in'), turns: 2 })
      .prefault({})
      .describe('Hem all round'),
    cloth: cloths(),
    ...joining(r),
  })
}

function quiltBack(r: Leaves) {
  return keys({
    item: z.literal('quilt-back'),
    ...common(r),
    quilt: r.size().optional().describe('The quilt top, width x length'),
    size: named('quilt-back'),
    overhang: r.usually('10 cm', '4 in').describe('More than the top at each side'),
    cloth: cloths(),
    ...joining(r),
  })
}

function strips(r: Leaves) {
  return keys({
    item: z.literal('strips'),
    ...common(r),
    name: name().prefault('strips').describe('What they are, such as binding'),
    width: r.length().describe('Width of the strip as cut'),
    run: r.length().describe('Length of one, joined, allowances at its ends included'),
    runs: word(['along', 'across', 'either']).prefault('either').describe('How the strips lie on the cloth'),
    cloth: cloths(),
  })
}

function rectangle(r: Leaves) {
  const edge = () =>
    either(
      'a depth such as 2.5 cm, { depth: 2.5 cm, turns: 2 }, seam or none',
      word(['seam', 'none', 'raw']),
      hem(r, { depth: r.usual('1 cm', '3/8 in'), turns: 2 }),
    ).prefault('seam')
  const all = hem(r, { depth: r.usual('1 cm', '3/8 in'), turns: 2 })
  return keys({
    item: z.literal('rectangle'),
    ...common(r),
    name: name().prefault('rectangle').describe('What it is; its pieces are called by it'),
    cut: r.size().optional().describe('Cut size, width x length; nothing is added'),
    finished: r.size().optional().describe('Finished size, width x length; hems and seams are added'),
    hems: either(
      '{ head: 2 cm, foot: 2 cm, left: 1 cm, right: 1 cm }, or one depth for all',
      keys({ head: edge(), foot: edge(), left: edge(), right: edge() }),
      all,
    )
      .prefault({})
      .describe('With finished: a hem on each edge; seam where nothing is said: the seam allowance'),
    cloth: cloths(),
    'same-cloth': word(['item', 'none', 'all'])
      .prefault('item')
      .describe(
        'item: all of one copy from one cloth, copies as they come; none: every piece as it comes; all: every copy from one cloth, as for a set of napkins',
      ),
    'length-runs': lengthRuns(),
    edges: keys({
      head: edgeNeed(r).prefault('none'),
      foot: edgeNeed(r).prefault('none'),
      left: edgeNeed(r).prefault('none'),
      right: edgeNeed(r).prefault('none'),
    })
      .prefault({})
      .describe('Edges that need a selvedge or a kept hem'),
  })
}
