import type { CutCloth, Result } from '@lengthwise/planner'
import { box, meetsAny } from '../box.ts'
import type { AlikeSet } from '../cloth/alike.ts'
import type { Drawing } from '../cloth/draw.ts'
import { drawStretch } from '../cloth/draw.ts'
import { setName, tableSize } from '../cloth/names.ts'
import { textBoxes } from '../cloth/pieces.ts'
import { rulerWidth } from '../cloth/ruler.ts'
import type { Style } from '../cloth/style.ts'
import { OVERRUN, paperStyle, WEIGHTS } from '../cloth/style.ts'
import type { Stretch } from '../cloth/view.ts'
import { stretches } from '../cloth/view.ts'
import { altOf } from '../figure.ts'
import { frameOf, text } from '../ink.ts'
import type { Measure } from '../measure.ts'
import type { Mark } from '../scene.ts'
import { textWidth } from '../text.ts'
import { clothProof, wasteWords } from '../words/answer.ts'
import { byNumber, capital, ordinal } from '../words/hands.ts'
import { counted, labelsListed, listed } from '../words/list.ts'
import type { KeyRow } from './key.ts'
import { isSign, keyMarks, keyRows } from './key.ts'
import type { Leaf } from './leaf.ts'
import { checkLine, FRAME, leaf } from './leaf.ts'
import { notesBeside } from './remarks.ts'

/** Paper is this many times smaller than cloth: the ratios of ISO 5455 that suit bedding. */
type Scale = 10 | 20 | 50

/** The drawing zone of the frame: where cloth begins and how much of it may be drawn. */
interface Zone {
  readonly top: number
  readonly tall: number
}

/** where the bar scale and the check line stand, and the lowest place of a key above them */
const BAR = 246
const KEY_BOTTOM = 239.5

const TWO_COLUMNS: Zone = { top: 33, tall: 206 }
const AIRY: Zone = { top: 34, tall: 199 }
/** for stretches that would each take a page otherwise: two lengths of 208 cm at 1:20 */
const FULL: Zone = { top: 28.5, tall: 207.8 }
/** how far tears run out at the right where two columns leave little room */
const LEAST_OVERRUN = 1.5

/** The cutting map of one cloth, or of several cut alike: as many pages as it takes at a scale from which one can read. */
export function mapLeaves(result: Result, set: AlikeSet, measure: Measure, style: Style): readonly Leaf[] {
  const { cloth } = set
  const setting = (lettering: Style, scale: Scale): Setting => {
    const ruler = rulerWidth(cloth, measure, lettering)
    return { result, set, zone: AIRY, cloth, measure, style: lettering, scale, perUnit: 1 / (320 * scale), ruler }
  }
  // large lettering gives way where names or flags would find no place, then the scale does
  const usual = paperStyle(false)
  const scale = scaleFor(cloth, rulerWidth(cloth, measure, style))
  const tries = [setting(style, scale), setting(usual, scale), setting(usual, 10)].filter(fitsAcross)
  for (const each of tries) {
    const two = twoColumns({ ...each, zone: TWO_COLUMNS })
    if (two !== null) return two
    const airy = oneByOne(each, false)
    // larger lettering has no room at the head and the foot of a full page
    const full = each.style.small > usual.small ? null : oneByOne({ ...each, zone: FULL }, false)
    if (full && (!airy || full.length < airy.length)) return full
    if (airy) return airy
  }
  return oneByOne(setting(usual, scale), true)!
}

/** One stretch a page, each drawn larger where small pieces have no room for their names; null when a page cannot be set. */
function oneByOne(setting: Setting, whatever: boolean): readonly Leaf[] | null {
  const { cloth, zone, perUnit } = setting
  const pages = stretches(cloth, Math.floor(zone.tall / perUnit)).flatMap((stretch) => {
    const airy = (stretch.to - stretch.from) * perUnit <= AIRY.tall
    const one = bestPage(airy ? { ...setting, zone: AIRY } : setting, stretch, whatever)
    if (one !== null || airy) return [one]
    // names that find no room on a full page do so on two
    return stretches(cloth, Math.floor(AIRY.tall / perUnit), stretch).map((half) =>
      bestPage({ ...setting, zone: AIRY }, half, whatever),
    )
  })
  return pages.every((each) => each !== null) ? pages.map((each) => each.leaf) : null
}

interface Composed {
  readonly leaf: Leaf
  /** names that stand beside the cloth for want of room */
  readonly outside: number
}

function bestPage(setting: Setting, stretch: Stretch, whatever: boolean): Composed | null {
  const composed = (each: Setting): Composed | null => keyBeside(each, stretch) ?? keyBelow(each, stretch, whatever)
  const usual = composed(setting)
  if (usual?.outside === 0) return usual
  const larger: Setting = { ...setting, zone: AIRY, scale: 10, perUnit: 1 / 3200 }
  const fits = fitsAcross(larger) && (stretch.to - stretch.from) * larger.perUnit <= larger.zone.tall
  const large = setting.scale > 10 && fits ? composed(larger) : null
  return large !== null && (usual === null || large.outside < usual.outside) ? large : usual
}

interface Setting {
  readonly result: Result
  readonly set: AlikeSet
  readonly zone: Zone
  readonly cloth: CutCloth
  readonly measure: Measure
  readonly style: Style
  readonly scale: Scale
  /** millimetres of paper for a unit of cloth */
  readonly perUnit: number
  readonly ruler: number
}

const fitsAcross = ({ cloth, perUnit, ruler }: Setting): boolean =>
  ruler + cloth.width * perUnit + OVERRUN <= FRAME.width

/** The largest scale at which the cloth's width fits; 1:10 only where the whole cloth is small. */
function scaleFor(cloth: CutCloth, ruler: number): Scale {
  const fits = (scale: Scale): boolean => ruler + cloth.width / (320 * scale) + OVERRUN <= FRAME.width
  if (fits(10) && cloth.length / 3200 <= TWO_COLUMNS.tall - 45) return 10
  return fits(20) ? 20 : 50
}

/** Two columns on a page, the second with the key below it; null when the cloth is too wide, short or full of small pieces. */
function twoColumns(setting: Setting): readonly Leaf[] | null {
  const { zone, cloth, measure, style, perUnit, ruler } = setting
  const column = FRAME.width / 2
  const clothWide = cloth.width * perUnit
  if (ruler + clothWide + LEAST_OVERRUN > column || cloth.length * perUnit <= zone.tall - 40) return null
  const pastRight = Math.min(OVERRUN, column - ruler - clothWide)
  const found = stretches(cloth, Math.floor(zone.tall / perUnit))
  const leaves: Leaf[] = []
  for (let i = 0; i < found.length; i += 2) {
    const pair = found.slice(i, i + 2)
    const on = titled(setting, pair[0]!)
    const drawings: Drawing[] = []
    for (const [which, stretch] of pair.entries()) {
      const left = which * column + ruler
      const below = zone.top + (stretch.to - stretch.from) * perUnit + style.small * 2.2
      const room = zone.top + zone.tall - below
      const drawing = drawStretch(cloth, {
        view: { stretch, left, top: zone.top, perUnit, pastRight },
        measure,
        style,
        rulerLeft: which * column,
        rightLimit: left + clothWide + pastRight,
        margins: room > 30 ? [box(which * column, below, column - 1, Math.min(30, room))] : [],
        done: null,
        goesOn: goesOn(stretch, which === 0 ? 'right' : 'next page'),
        taken: [],
      })
      if (drawing.homeless.length > 0) return null
      drawings.push(drawing)
    }
    const x = column + 4
    const second = pair[1]
    const lowest = second ? lowestOf(drawings[1]!, zone.top + (second.to - second.from) * perUnit) : zone.top - 7
    // without room the key stands with the whole cloth alone; the scale is wanted on every page
    const rows = keyRows(cloth, drawings, measure)
    const full = keyMarks(rows, x, lowest + 7, FRAME.width - x, style, 1)
    const keyed = lowest + full.height + 16 <= 237
    const bar = lowest + (keyed ? full.height : 0) + 13
    if (bar > 234) return null
    addFigure(on, setting, pair, drawings, [...(keyed ? full.marks : []), ...scaleBar(setting, x, bar)])
    on.key = keyOf(rows, keyed)
    on.whole = isWhole(setting, pair[0]!)
    on.parts.push(checkLine())
    leaves.push(on)
  }
  return leaves
}

/** One column, with remarks and the key beside it; null when there is no room for them. */
function keyBeside(setting: Setting, stretch: Stretch): Composed | null {
  const { zone, cloth, measure, style, perUnit } = setting
  const marginLeft = clothRight(setting) + OVERRUN + 12.5
  const width = FRAME.width - marginLeft
  if (width < 50) return null
  const on = titled(setting, stretch)
  if (!hasHeadroom(on, setting)) return null
  const bottom = zone.top + (stretch.to - stretch.from) * perUnit
  const drawing = oneStretch(setting, stretch, on)
  if (drawing.homeless.length > 0) return null
  const notes = notesBeside(
    cloth,
    stretch,
    { left: marginLeft, width, top: zone.top, perUnit, measure },
    style,
    drawing.texts,
  )
  const rows = keyRows(cloth, [drawing], measure)
  const { height } = keyMarks(rows, 0, 0, width, style, 1)
  const y = Math.max(notes.bottom + 4, Math.min(zone.top + zone.tall - height - 6, bottom - height))
  const below = lowestOf(drawing, bottom) + 6
  const wide = marginLeft - 4
  const columns = wide > 105 ? 2 : 1
  const place = [keyMarks(rows, marginLeft, y, width, style, 1), keyMarks(rows, 0, below, wide, style, columns)].find(
    (key, i) => (i === 0 ? y : below) + key.height <= KEY_BOTTOM,
  )
  if (place === undefined) return null
  addFigure(on, setting, [stretch], [drawing], [...notes.marks, ...place.marks, ...scaleBar(setting, 0, BAR)])
  on.key = keyOf(rows, true)
  on.whole = isWhole(setting, stretch)
  on.parts.push(checkLine())
  return { leaf: on, outside: drawing.outside }
}

/** One column for wide cloth, as long as the page; the key stands below it where there is room. */
function keyBelow(setting: Setting, stretch: Stretch, whatever: boolean): Composed | null {
  const { zone, cloth, measure, style, perUnit } = setting
  const on = titled(setting, stretch)
  if (!hasHeadroom(on, setting) && !whatever) return null
  const bottom = zone.top + (stretch.to - stretch.from) * perUnit
  const drawing = oneStretch(setting, stretch, on)
  if (drawing.homeless.length > 0 && !whatever) return null
  // what found no room for its number or flag is not passed over in silence
  const unsaid =
    drawing.homeless.length > 0 ? `No room here for ${labelsListed(byNumber(drawing.homeless))}. Go by the order.` : ''
  const said = lowestOf(drawing, bottom) + 6
  const top = unsaid === '' ? said : said + style.small * 2
  const rows = keyRows(cloth, [drawing], measure)
  const aside = clothRight(setting) + OVERRUN + 5
  const signs = rows.filter(isSign)
  const places: readonly KeyPlace[] = [
    { rows, x: 0, y: top, width: FRAME.width, columns: 2 },
    { rows, x: 0, y: top, width: FRAME.width, columns: 3 },
    ...(FRAME.width - aside < 40
      ? []
      : [{ rows, x: aside, y: zone.top + 9, width: FRAME.width - aside, columns: 1 } as const]),
    // what is said nowhere else than in the key
    ...(signs.length === 0 ? [] : [{ rows: signs, x: 0, y: top, width: FRAME.width, columns: 3 } as const]),
  ]
  const [key] = places.flatMap((place) => {
    const { marks, height } = keyMarks(place.rows, place.x, place.y, place.width, style, place.columns)
    const free = !meetsAny(box(place.x, place.y, place.width, height), drawing.texts)
    return free && place.y + height <= KEY_BOTTOM ? [{ marks, rows: place.rows }] : []
  })
  const note = unsaid === '' ? [] : [text(unsaid, 0, said, style.small, 500)]
  addFigure(on, setting, [stretch], [drawing], [...note, ...(key?.marks ?? []), ...scaleBar(setting, 0, BAR)])
  on.key = { wanted: wordsOf(rows), shown: wordsOf(key?.rows ?? []) }
  on.whole = isWhole(setting, stretch)
  on.parts.push(checkLine())
  return { leaf: on, outside: drawing.outside }
}

// the names of the cloth's edges stand between the head of the page and the cloth
const hasHeadroom = (on: Leaf, { zone, style }: Setting): boolean => zone.top - on.y >= 1.1 + style.small * 1.44

const isWhole = ({ cloth }: Setting, { from, to }: Stretch): boolean => from === 0 && to === cloth.length

const clothRight = ({ ruler, cloth, perUnit }: Setting): number => ruler + cloth.width * perUnit

interface KeyPlace {
  readonly rows: readonly KeyRow[]
  readonly x: number
  readonly y: number
  readonly width: number
  readonly columns: 1 | 2 | 3
}

const wordsOf = (rows: readonly KeyRow[]): readonly string[] => rows.map((row) => row.words)

const keyOf = (rows: readonly KeyRow[], keyed: boolean): NonNullable<Leaf['key']> => ({
  wanted: wordsOf(rows),
  shown: keyed ? wordsOf(rows) : [],
})

function oneStretch(setting: Setting, stretch: Stretch, on: Leaf): Drawing {
  const { zone, cloth, measure, style, perUnit, ruler } = setting
  const right = clothRight(setting)
  const bottom = zone.top + (stretch.to - stretch.from) * perUnit
  const marginLeft = right + OVERRUN + 12.5
  const below = bottom + style.small * 2.2
  return drawStretch(cloth, {
    view: { stretch, left: ruler, top: zone.top, perUnit },
    measure,
    style,
    rulerLeft: 0,
    rightLimit: Math.min(right + OVERRUN + 11, FRAME.width),
    margins: [
      box(marginLeft, zone.top, FRAME.width - marginLeft, bottom - zone.top),
      box(0, below, FRAME.width, zone.top + zone.tall - below),
    ].filter((each) => each.width > 12 && each.height > 5),
    done: null,
    goesOn: goesOn(stretch, 'next page'),
    taken: [...on.parts, checkLine(), { marks: scaleBar(setting, 0, BAR) }].flatMap(({ marks }) => textBoxes(marks)),
  })
}

function titled({ result, set, cloth, measure, style, scale }: Setting, stretch: Stretch): Leaf {
  const name = `Cutting map: ${decapital(setName(result, set))}`
  const width = cloth.buy === null ? '' : `, ${measure.sold(cloth.buy.width)}`
  const from = fromWords(stretch)
  const laid = cloth.from === 'bolt' ? ` Laid ${measure.full(cloth.proof.length)}` : ''
  const lies = [
    laid === ''
      ? ''
      : `${laid}; ${cloth.proof.status === 'proved' ? '' : 'another layout is '}${clothProof(cloth, measure)}.`,
    laid === '' ? '' : `${laid}.`,
  ].map((length) => `On the table ${tableSize(cloth, measure)}.${length}${alikeWords(set)}`)
  const small = Math.min(style.small, 3.5)
  return leaf(
    'map',
    from === '' ? `${name}${width}` : `${name}, ${from}`,
    [
      lies.find((words) => textWidth(words, small, 500) <= FRAME.width) ?? lies[0]!,
      `${wasteWords(cloth)}. Cut to the numbers, not to the picture.`,
    ],
    { ...style, small },
    `SCALE 1:${scale}`,
  )
}

// 'Two, cut alike; the second gives 12, 13, R4 and R5.'
function alikeWords({ cloth, others }: AlikeSet): string {
  if (others.length === 0) return ''
  const given = others.map((other, i) => `the ${ordinal(i + 1)} gives ${labelsListed(labelsOf(other))}`)
  return ` ${capital(counted(others.length + 1))}, cut alike${cloth.placed.length > 0 ? `; ${listed(given)}` : ''}.`
}

const labelsOf = (cloth: CutCloth): readonly string[] =>
  byNumber([...cloth.placed.map((p) => p.label), ...cloth.remnants.map((r) => r.name)])

const fromWords = (stretch: Stretch): string =>
  stretch.from === 0 ? '' : stretch.fromFlag ? `from ${stretch.fromFlag}` : 'goes on'

const decapital = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1)

const goesOn = ({ toFlag }: Stretch, where: 'right' | 'next page'): readonly string[] => {
  const from = toFlag ? ` from ${toFlag}` : ''
  return where === 'right'
    ? [`Goes on at the right,${from}`.replace(/,$/, ''), `At the right${from}`]
    : [`The next page goes on${from}`, `Next page${from}`]
}

function addFigure(
  on: Leaf,
  { result, cloth, measure }: Setting,
  shown: readonly Stretch[],
  drawings: readonly Drawing[],
  extra: readonly Mark[],
): void {
  const alt = altOf(result, cloth, measure, { from: shown[0]!.from, to: shown.at(-1)!.to })
  on.parts.push({ role: 'figure', alt, marks: [...drawings.flatMap((d) => d.marks), ...extra] })
}

const lowestOf = (drawing: Drawing, clothEnd: number): number =>
  Math.max(clothEnd, ...drawing.texts.map((each) => each.y + each.height))

/** A bar that shrinks with the picture when the paper was printed too small, its lower edge at y. */
function scaleBar({ scale, measure, style }: Setting, x: number, y: number): readonly Mark[] {
  const inch = measure.unit === 'in'
  const steps = scale === 10 ? 2 : 4
  const each = inch ? (scale === 50 ? 20 : 10) : scale === 50 ? 50 : 25
  const long = (each * (inch ? 25.4 : 10)) / scale
  const bars = Array.from({ length: steps }, (_, i) =>
    frameOf(box(x + i * long, y - 1.9, long, 1.9), WEIGHTS.thin, i % 2 === 0 ? 'ink' : 'none'),
  )
  const all = steps * each
  const inMetres = all % 100 === 0 || measure.unit === 'mm'
  const words = `${inch ? `${all} in` : inMetres ? `${all / 100} m` : `${all} cm`} of cloth`
  return [...bars, text(words, x + steps * long + 2, y + 0.8, Math.min(style.small, 3.5), 500)]
}
