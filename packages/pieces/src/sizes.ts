import { cm, inches } from '@lengthwise/units'
import type { NamedSize } from './answers.ts'
import type { Item, Size } from './order.ts'

/*
 * Bedding has hardly any governing standard: every row is an editable default that names the page, the standard or
 * the practice it comes from. A name is region and bed (`uk-double`); the same name may stand for a mattress, a duvet,
 * a pillow and a flat sheet, so it is looked up together with what is sewn.
 */

/** Every named size, region by region; within a region mattresses, duvets, pillows and cases, flat sheets, cots. */
export const NAMED_SIZES: readonly NamedSize[] = listed()

/**
 * What each item is measured by, best first: a pillowcase by a case where the trade has case sizes, else by the pillow
 * (in Europe the same). Bolsters, strips and own rectangles have no named sizes.
 */
export const SIZE_KINDS: Readonly<Record<Item['item'], readonly NamedSize['kind'][]>> = {
  'duvet-cover': ['duvet'],
  pillowcase: ['pillowcase', 'pillow'],
  'flat-sheet': ['flat-sheet'],
  'fitted-sheet': ['mattress'],
  'bed-skirt': ['mattress'],
  bolster: [],
  cushion: ['pillow'],
  sham: ['pillow'],
  throw: ['duvet'],
  'quilt-back': ['duvet'],
  strips: [],
  rectangle: [],
}

/**
 * The size called `name` for what is sewn: `sizeNamed('uk-double', 'duvet-cover')` is the duvet of 200 × 200 cm,
 * for a fitted sheet the mattress of 135 × 190 cm. Without `item` the duvet comes first, then mattress, pillow, case,
 * flat sheet. Undefined when there is none of that name for that item.
 */
export function sizeNamed(name: string, item?: Item['item']): NamedSize | undefined {
  const kinds = item === undefined ? ANY_KIND : SIZE_KINDS[item]
  for (const kind of kinds) {
    const found = NAMED_SIZES.find((size) => size.name === name && size.kind === kind)
    if (found !== undefined) return found
  }
  return undefined
}

const ANY_KIND: readonly NamedSize['kind'][] = ['duvet', 'mattress', 'pillow', 'pillowcase', 'flat-sheet']

type Row = readonly [
  name: string,
  kind: NamedSize['kind'],
  words: string,
  size: Size,
  source: string,
  disagreement?: string,
]

function listed(): NamedSize[] {
  // pages read, by the short title under which they can be found
  const scooms = 'scooms duvet and mattress sizes'
  const sheets = 'sizes.com sheets'
  const overstock = 'Overstock bedding size conversion guide'
  const knight = 'Knight Linen bedding sizes'
  const ginger = 'Ginger and May bed and bedding sizes'
  const ibenma = 'Ibenma mattress sizes'
  const pillows = 'pillowsandcushions.com bed pillows'
  const pattern = 'pillowcase pattern of 2011'
  const paradies = 'Paradies Bettwäsche-Größen verschiedener Länder'
  const beratung = 'bettwaren-beratung Bettwäsche'
  const polster = 'myhome.at Polsterbezüge'
  const ktipp = 'K-Tipp Bettwäsche hat andere Grössen'
  const decosy = 'Decosy guide des tailles'
  const linge = 'Amenworld choisir son linge de lit'
  const mums = 'mumsgone2aus making your bed in Australia'
  const quilts = 'Manchester Warehouse everything about quilts'
  const noguchi = 'Noguchi cover sizes'
  const astronomy = 'absoluteastronomy bed size'
  const kool = 'Kool Kids Rooms toddler bedding'
  const nursery = 'Naturalmat nursery mattress size guide'
  const towels = 'handtuchshop24 Bettwäsche'
  const cpsc = 'lists quoting the US Consumer Product Safety Commission (weak)'
  const gost = 'GOST 31307-2005'
  const russian = 'a Russian sewing article on common bed linen sizes'
  const practice = 'common practice'
  const usDuvets =
    'no standard: one name differs by up to 8 in between makers; home sewers report 62 × 87 to 102 × 108. Measure yours'
  const usSheets = 'other charts differ by up to 12 in, and a label may give the size before hemming. Measure yours'
  const measure = 'from memory, makers differ: measure your own'

  return [
    ...region('us', 'United States', [
      ['twin', 'mattress', 'twin', sizeIn(39, 75), overstock, '75 or 76 in long'],
      ['twin-xl', 'mattress', 'twin XL', sizeIn(39, 80), overstock],
      ['full', 'mattress', 'full or double', sizeIn(54, 75), overstock, '75 or 76 in long'],
      ['queen', 'mattress', 'queen', sizeIn(60, 80), overstock],
      ['king', 'mattress', 'king', sizeIn(76, 80), knight, '78 or 79 in wide in sizes.com sheets'],
      ['california-king', 'mattress', 'California king', sizeIn(72, 84), sheets, '73 × 85 in Knight Linen'],
      ['twin', 'duvet', 'duvet for a twin', sizeIn(59, 79), knight, usDuvets],
      ['full', 'duvet', 'duvet for a full', sizeIn(79, 79), knight, usDuvets],
      ['queen', 'duvet', 'duvet for a queen', sizeIn(88, 86), knight, usDuvets],
      ['king', 'duvet', 'duvet for a king', sizeIn(102, 86), knight, usDuvets],
      ['standard', 'pillow', 'standard pillow', sizeIn(20, 26), pillows, 'some charts call 20 × 30 in standard'],
      ['queen', 'pillow', 'queen pillow', sizeIn(20, 30), pillows, 'called standard in some charts'],
      ['king', 'pillow', 'king pillow', sizeIn(20, 36), pillows, 'some charts say 20 × 40 in'],
      ['standard', 'pillowcase', 'case for a standard pillow', sizeIn(21, 30), pattern],
      ['queen', 'pillowcase', 'case for a queen pillow', sizeIn(21, 34), pattern],
      ['king', 'pillowcase', 'case for a king pillow', sizeIn(21, 40), pattern],
      ['twin', 'flat-sheet', 'twin sheet', sizeIn(70, 100), sheets, usSheets],
      ['twin-xl', 'flat-sheet', 'twin XL sheet', sizeIn(70, 106), sheets, usSheets],
      ['full', 'flat-sheet', 'full sheet', sizeIn(80, 100), sheets, usSheets],
      ['queen', 'flat-sheet', 'queen sheet', sizeIn(90, 100), sheets, usSheets],
      ['king', 'flat-sheet', 'king sheet', sizeIn(100, 104), sheets, usSheets],
    ]),
    ...cots('us', 'United States', [
      ['crib', 'mattress', 'full-size crib', sizeIn(27.25, 51.625), cpsc, 'least size; some lists print 51 1/4 in'],
      ['mini-crib', 'mattress', 'mini crib', sizeIn(24, 38), cpsc, '24 × 36 in is printed too'],
    ]),
    ...region('ca', 'Canada', [
      ['twin', 'mattress', 'twin', sizeIn(38, 74.5), ibenma, 'half an inch to an inch less than in the US'],
      ['double', 'mattress', 'double', sizeIn(53, 74.5), ibenma, 'half an inch to an inch less than in the US'],
      ['queen', 'mattress', 'queen', sizeIn(60, 79.5), ibenma, 'half an inch less than in the US'],
      ['king', 'mattress', 'king', sizeIn(76, 79.5), ibenma, 'half an inch less than in the US'],
      ['standard', 'pillow', 'standard pillow', sizeIn(20, 26), practice],
      ['queen', 'pillow', 'queen pillow', sizeIn(20, 30), practice],
      ['king', 'pillow', 'king pillow', sizeIn(20, 36), practice],
    ]),
    ...region('uk', 'UK and Ireland', [
      ['small-single', 'mattress', 'small single', sizeCm(75, 190), scooms, '75 × 180 cm in Ibenma mattress sizes'],
      ['single', 'mattress', 'single', sizeCm(90, 190), scooms],
      ['small-double', 'mattress', 'small double', sizeCm(120, 190), scooms],
      ['double', 'mattress', 'double', sizeCm(135, 190), scooms, '137 cm wide in some lists'],
      ['king', 'mattress', 'king', sizeCm(150, 200), scooms],
      ['super-king', 'mattress', 'super king', sizeCm(180, 200), scooms, '183 cm wide in Knight Linen'],
      ['single', 'duvet', 'single duvet', sizeCm(135, 200), scooms, '140 × 200 cm in some lists'],
      ['double', 'duvet', 'double duvet', sizeCm(200, 200), scooms],
      ['king', 'duvet', 'king duvet: wider than long', sizeCm(225, 220), scooms, 'labels give either order'],
      [
        'super-king',
        'duvet',
        'super king duvet: wider than long',
        sizeCm(260, 220),
        scooms,
        'labels give either order',
      ],
      ['standard', 'pillow', 'standard pillow', sizeCm(50, 75), ginger],
      ['square', 'pillow', 'square pillow', sizeCm(65, 65), pillows],
      ['single', 'flat-sheet', 'single sheet', sizeCm(180, 260), ginger],
      ['double', 'flat-sheet', 'double sheet', sizeCm(230, 260), ginger, '220 to 230 wide, 260 to 275 cm long'],
      ['king', 'flat-sheet', 'king sheet', sizeCm(275, 275), ginger, '265 to 275 cm wide'],
      ['super-king', 'flat-sheet', 'super king sheet', sizeCm(280, 290), ginger],
    ]),
    ...cots('uk', 'UK and Ireland', [
      ['cot', 'mattress', 'cot', sizeCm(60, 120), nursery],
      ['cot-bed', 'mattress', 'cot bed', sizeCm(70, 140), nursery],
      ['travel-cot', 'mattress', 'travel cot', sizeCm(65, 120), nursery],
      ['cot', 'duvet', 'cot duvet, not under twelve months', sizeCm(100, 120), kool, '125 cm long is printed too'],
      [
        'cot-bed',
        'duvet',
        'cot-bed duvet, not under twelve months',
        sizeCm(120, 150),
        kool,
        '120 × 140 cm is printed too',
      ],
      ['cot-bed', 'pillow', 'junior pillow, not under twelve months', sizeCm(40, 60), kool],
      ['pram', 'flat-sheet', 'pram sheet', sizeCm(75, 100), ginger],
      ['cot', 'flat-sheet', 'cot sheet', sizeCm(100, 150), ginger],
      ['cot-bed', 'flat-sheet', 'cot-bed sheet', sizeCm(130, 175), ginger],
    ]),
    ...region('eu', 'continental Europe', [
      ['single', 'mattress', 'single', sizeCm(90, 200), knight, '190 cm long is still met'],
      ['double', 'mattress', 'double', sizeCm(140, 200), knight, '190 cm long is still met'],
      ['queen', 'mattress', 'queen', sizeCm(160, 200), knight],
      ['king', 'mattress', 'king', sizeCm(180, 200), knight],
      ['single', 'duvet', 'single duvet', sizeCm(140, 200), practice, '135 × 200 cm in Germany'],
      ['double', 'duvet', 'double duvet', sizeCm(200, 200), knight],
      ['king', 'duvet', 'king duvet', sizeCm(240, 220), knight],
    ]),
    ...cots('eu', 'continental Europe', [
      ['cot', 'mattress', 'cot', sizeCm(60, 120), practice],
      ['cot-bed', 'mattress', 'cot bed', sizeCm(70, 140), practice],
    ]),
    ...region('de', 'Germany', [
      [
        'single',
        'mattress',
        'single',
        sizeCm(90, 200),
        beratung,
        '80 and 100 cm wide; 190, 210 and 220 cm long are met',
      ],
      ['wide-single', 'mattress', 'wide single', sizeCm(120, 200), beratung],
      ['double', 'mattress', 'double', sizeCm(140, 200), beratung],
      ['queen', 'mattress', 'queen', sizeCm(160, 200), beratung],
      ['king', 'mattress', 'king', sizeCm(180, 200), beratung, '200 cm wide is met'],
      ['single', 'duvet', 'standard duvet', sizeCm(135, 200), paradies, '140 × 200 cm sold by a Nordic chain'],
      ['large-single', 'duvet', 'large duvet', sizeCm(155, 220), paradies, '155 × 200 cm is dying out'],
      ['double', 'duvet', 'double duvet', sizeCm(200, 200), paradies],
      ['square', 'pillow', 'square pillow', sizeCm(80, 80), paradies],
      ['oblong', 'pillow', 'oblong pillow', sizeCm(40, 80), paradies],
    ]),
    ...cots('de', 'Germany', [
      ['child', 'duvet', 'child’s duvet, not under twelve months', sizeCm(100, 135), towels],
      ['cot-bed', 'mattress', 'cot bed', sizeCm(70, 140), practice],
    ]),
    ...region('at', 'Austria', [
      ['single', 'mattress', 'single', sizeCm(90, 200), practice],
      ['king', 'mattress', 'double', sizeCm(180, 200), practice],
      ['single', 'duvet', 'single duvet', sizeCm(140, 200), polster],
      ['standard', 'pillow', 'standard pillow', sizeCm(70, 90), polster],
    ]),
    ...region('ch', 'Switzerland', [
      ['single', 'mattress', 'single', sizeCm(90, 200), practice],
      ['king', 'mattress', 'double', sizeCm(180, 200), practice],
      ['single', 'duvet', 'single duvet', sizeCm(160, 210), ktipp, '180 × 210 cm is met too'],
      ['square', 'pillow', 'square pillow', sizeCm(65, 65), ktipp],
      ['oblong', 'pillow', 'oblong pillow', sizeCm(65, 100), ktipp],
    ]),
    ...region('fr', 'France', [
      ['single', 'mattress', 'one person', sizeCm(90, 190), decosy, '200 cm long is met'],
      ['double', 'mattress', 'two persons, 140', sizeCm(140, 190), decosy, '200 cm long is met'],
      ['queen', 'mattress', 'two persons, 160', sizeCm(160, 200), decosy],
      ['king', 'mattress', 'two persons, 180', sizeCm(180, 200), decosy],
      ['single', 'duvet', 'duvet for one person', sizeCm(140, 200), decosy, '200 × 200 cm is sold for one person too'],
      ['double', 'duvet', 'duvet for a bed of 140', sizeCm(240, 220), decosy],
      ['king', 'duvet', 'duvet for 160 and 180: wider than long', sizeCm(260, 240), decosy, 'labels give either order'],
      ['square', 'pillow', 'square pillow', sizeCm(65, 65), decosy, 'the case is printed 63 × 63 or 65 × 65 cm'],
      ['oblong', 'pillow', 'oblong pillow', sizeCm(50, 70), linge, '50 × 75 cm is met too'],
      ['single', 'flat-sheet', 'sheet for one person', sizeCm(180, 290), decosy],
      ['double', 'flat-sheet', 'sheet for a bed of 140', sizeCm(240, 300), decosy],
      ['king', 'flat-sheet', 'sheet for 160 and 180', sizeCm(270, 300), decosy, '310 cm long is met too'],
    ]),
    ...region('nordic', 'Nordic countries', [
      ['single', 'mattress', 'single', sizeCm(90, 200), practice],
      ['double', 'mattress', 'double', sizeCm(140, 200), practice],
      ['queen', 'mattress', 'double, 160', sizeCm(160, 200), practice],
      ['king', 'mattress', 'double, 180', sizeCm(180, 200), practice],
      ['single', 'duvet', 'single duvet', sizeCm(150, 200), ktipp],
      ['long-single', 'duvet', 'long single duvet', sizeCm(150, 210), practice],
      ['double', 'duvet', 'double duvet', sizeCm(240, 220), practice, measure],
      ['standard', 'pillow', 'standard pillow', sizeCm(50, 60), ktipp],
      ['large', 'pillow', 'large pillow', sizeCm(60, 70), practice],
      ['single', 'flat-sheet', 'single sheet', sizeCm(150, 260), practice, measure],
      ['double', 'flat-sheet', 'double sheet', sizeCm(240, 260), practice, measure],
    ]),
    ...region('au', 'Australia and New Zealand', [
      ['single', 'mattress', 'single', sizeCm(92, 187), mums, '92 × 190 cm in Layered Creations'],
      ['long-single', 'mattress', 'long single', sizeCm(92, 203), mums],
      ['king-single', 'mattress', 'king single', sizeCm(106, 203), mums, '107 cm wide in Layered Creations'],
      ['double', 'mattress', 'double', sizeCm(137, 187), mums, '137 × 190 cm in Layered Creations'],
      ['queen', 'mattress', 'queen', sizeCm(153, 203), mums],
      ['king', 'mattress', 'king', sizeCm(183, 203), mums],
      ['single', 'duvet', 'single quilt', sizeCm(140, 210), quilts],
      ['double', 'duvet', 'double quilt', sizeCm(180, 210), quilts],
      ['queen', 'duvet', 'queen quilt', sizeCm(210, 210), quilts],
      ['king', 'duvet', 'king quilt: wider than long', sizeCm(245, 210), quilts, '240 cm wide in some lists'],
      ['super-king', 'duvet', 'super king quilt: wider than long', sizeCm(270, 240), quilts],
      ['standard', 'pillow', 'standard pillow', sizeCm(48, 73), practice, measure],
      ['single', 'flat-sheet', 'single sheet', sizeCm(180, 254), practice, measure],
      ['double', 'flat-sheet', 'double sheet', sizeCm(228, 254), practice, measure],
      ['queen', 'flat-sheet', 'queen sheet', sizeCm(245, 274), practice, measure],
    ]),
    ...cots('au', 'Australia and New Zealand', [
      ['cot', 'duvet', 'cot quilt, not under twelve months', sizeCm(100, 135), quilts],
    ]),
    ...region('jp', 'Japan', [
      [
        'single',
        'mattress',
        'single futon base',
        sizeCm(100, 210),
        noguchi,
        '100 × 200 cm is older; a bed mattress is 97 × 195',
      ],
      [
        'semi-double',
        'mattress',
        'semi-double futon base',
        sizeCm(120, 210),
        noguchi,
        'a bed mattress is 120 × 195 or 200 cm',
      ],
      ['double', 'mattress', 'double futon base', sizeCm(140, 210), noguchi, 'a bed mattress is 140 × 195 or 200 cm'],
      ['queen', 'mattress', 'queen futon base', sizeCm(160, 210), noguchi, 'a bed mattress is 160 × 195 or 200 cm'],
      ['bed-single', 'mattress', 'single bed', sizeCm(97, 195), astronomy, 'one maker in Kitazawa: 100 × 200 cm'],
      ['single', 'duvet', 'long single duvet', sizeCm(150, 210), noguchi, 'the short single is 150 × 200 cm'],
      ['semi-double', 'duvet', 'long semi-double duvet', sizeCm(170, 210), noguchi, '175 cm wide in some lists'],
      ['double', 'duvet', 'long double duvet', sizeCm(190, 210), noguchi],
      ['queen', 'duvet', 'long queen duvet', sizeCm(210, 210), noguchi, '220 cm wide in some lists'],
      ['king', 'duvet', 'long king duvet: wider than long', sizeCm(230, 210), noguchi],
      ['standard', 'pillow', 'standard pillow', sizeCm(43, 63), practice, measure],
      ['single', 'flat-sheet', 'single sheet', sizeCm(150, 250), practice, measure],
    ]),
    ...cots('jp', 'Japan', [['cot', 'mattress', 'cot', sizeCm(70, 120), practice, measure]]),
    ...region('ru', 'Russia', [
      ['one-and-a-half', 'duvet', 'one and a half', sizeCm(143, 215), russian, '153 cm wide in some lists'],
      ['double', 'duvet', 'double', sizeCm(175, 215), russian, '163 cm wide in some lists'],
      ['square', 'pillow', 'square pillow', sizeCm(70, 70), russian, '60, 75 and 80 cm square are met'],
      ['oblong', 'pillow', 'oblong pillow', sizeCm(50, 70), russian],
      ['single', 'flat-sheet', 'single sheet', sizeCm(120, 203), gost, '214 cm long in the same table'],
      ['one-and-a-half', 'flat-sheet', 'one and a half', sizeCm(130, 214), gost],
      ['double', 'flat-sheet', 'double sheet', sizeCm(150, 214), gost, '138 to 180 wide, 214 or 230 long, same table'],
    ]),
    ...cots('ru', 'Russia', [
      ['child', 'flat-sheet', 'child’s sheet', sizeCm(100, 138), gost, '117 and 159 cm long in the same table'],
      ['youth', 'flat-sheet', 'youth’s sheet', sizeCm(100, 180), gost],
    ]),
  ]
}

function region(prefix: string, words: string, rows: readonly Row[]): NamedSize[] {
  return named(prefix, words, rows, false)
}

function cots(prefix: string, words: string, rows: readonly Row[]): NamedSize[] {
  return named(prefix, words, rows, true)
}

function named(prefix: string, regionWords: string, rows: readonly Row[], cot: boolean): NamedSize[] {
  return rows.map(([name, kind, words, size, source, disagreement = '']) => ({
    name: `${prefix}-${name}`,
    region: regionWords,
    kind,
    words,
    size,
    cot,
    source,
    disagreement,
  }))
}

function sizeCm(width: number, length: number): Size {
  return { width: cm(width), length: cm(length) }
}

function sizeIn(width: number, length: number): Size {
  return { width: inches(width), length: inches(length) }
}
