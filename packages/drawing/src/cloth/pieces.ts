import type { Placed, Remnant } from '@lengthwise/planner'
import type { Length } from '@lengthwise/units'
import type { Box, Segment } from '../box.ts'
import { padded } from '../box.ts'
import { textBox } from '../ink.ts'
import type { Measure } from '../measure.ts'
import type { Mark } from '../scene.ts'
import { fit, oneLine, wrap } from '../text.ts'
import { capital } from '../words/hands.ts'
import type { Block } from './block.ts'
import type { Style } from './style.ts'

/** Something with a number on the drawing: a piece or a remnant, and its lines of text. */
export interface Named {
  readonly label: string
  /** what the piece is, alike for every copy */
  readonly thing: string
  readonly words: string
  readonly whose: string
  /** what to write of words and whose, from all of it to the least */
  readonly names: readonly (readonly string[])[]
  readonly size: string
  readonly kind: 'piece' | 'remnant'
  /** on paper, the visible part */
  readonly box: Box
}

/** A piece's name; its side that is its top is told where no arrow can tell it. */
export function namedPiece(p: Placed, on: Box, measure: Measure, hasTopArrow: boolean): Named {
  const thing = oneLine(p.words)
  const rest = { label: p.label, thing, size: measure.size(p.width, p.length), kind: 'piece', box: on } as const
  const aside = !hasTopArrow && (p.top === 'left' || p.top === 'right') ? `top\u00a0at\u00a0${p.top}` : ''
  const top = listing(aside, p.crosswise ? 'crosswise' : '')
  const [words, owner] = [thing, oneLine(p.whose).replace(/ (\d+)$/, '\u00a0$1')]
  const whose = listing(owner, top)
  const item = owner.replace(/\u00a0\d+$/, '')
  if (item !== '' && words.toLowerCase().startsWith(item.toLowerCase())) {
    // 'Pillowcase with inside flap' of 'pillowcase 1' is 'Pillowcase 1', and then 'with inside flap'
    const [first, second] = [capital(owner), listing(words.slice(item.length).replace(/^,? /, ''), top)]
    return { ...rest, words: first, whose: second, names: forms([first, second], [first]) }
  }
  const brief = words.replace(/(,| with ).*$/, '')
  return {
    ...rest,
    words,
    whose,
    names: forms([words, whose], [brief, whose], [brief, aside], [aside], [brief]),
  }
}

const listing = (...words: readonly string[]): string => words.filter((each) => each !== '').join(', ')

const forms = (...names: readonly (readonly string[])[]): Named['names'] => {
  const said = names.map((each) => each.filter((words) => words !== ''))
  return said.filter((each, i) => each.length > 0 && said.findIndex((other) => other.join() === each.join()) === i)
}

export function namedRemnant(r: Remnant, on: Box, measure: Measure): Named {
  const size = measure.size(r.width, r.length)
  return { label: r.name, thing: '', words: '', whose: '', names: [[]], size, kind: 'remnant', box: on }
}

/** A label in one block; where the block is turned, its number may stand level above it. */
export interface Label {
  readonly block: Block
  readonly above?: Block
}

/** Labels with number, name and size, the best first: roomy, level, turned to be read from the right, with fewer words. */
export function labelsOf(item: Named, style: Style, wanted: 'whole' | 'cut short'): readonly Label[] {
  const { small, usual, little } = style
  const size = (capital: number) => ({ text: item.size, capital, weight: 700 as const })
  const mark = (capital: number) => ({ text: item.label, capital, weight: 700 as const })
  if (item.kind === 'remnant')
    return [
      { block: level([mark(little), size(small)]) },
      { block: level([mark(usual), size(small)]) },
      { block: { ...level([size(small)]), lead: mark(usual) } },
      { block: turned([{ ...size(small), text: `${item.label}  ${item.size}` }]) },
    ]
  const [full, ...fewer] = item.names
  const brief = fewer.length > 1 ? fewer.slice(0, 1) : fewer
  const least = fewer.slice(brief.length)
  const all = [
    ...levelLabels(item, full!, style),
    ...brief.flatMap((names) => levelLabels(item, names, style)),
    ...[full!, ...brief].flatMap((names) => turnedLabels(item, names, style)),
    ...least.flatMap((names) => [...levelLabels(item, names, style), ...turnedLabels(item, names, style)]),
  ]
  const cutShort = ({ block }: Label): boolean => block.lines.some((l) => l.text.includes('…'))
  const named = all.filter((label) => cutShort(label) === (wanted === 'cut short'))
  // a long piece is named along its length rather than in a pile of short lines or with its size in two
  const piled = ({ block }: Label): boolean =>
    !block.turned &&
    item.box.height > 1.6 * item.box.width &&
    (block.lines.length > MOST_LINES || block.lines.some((l) => l.text.endsWith('×')))
  return [...named.filter((label) => !piled(label)), ...named.filter(piled)]
}

// number, two lines of name, one of whose it is, and the size
const MOST_LINES = 5

const level = (lines: Block['lines']): Block => ({ lines, turned: false })
const turned = (lines: Block['lines']): Block => ({ lines, turned: true })

function levelLabels(item: Named, names: readonly string[], style: Style): readonly Label[] {
  const { small, usual, little, number } = style
  const room = item.box.width
  const size = (capital: number) => ({ text: item.size, capital, weight: 700 as const })
  const mark = (capital: number) => ({ text: item.label, capital, weight: 700 as const })
  const named = (capital: number, wide: number) => namedLines(names, wide, capital, style)
  const [across, along] = item.size.split('\u00a0×\u00a0')
  // the size on two lines, for inches in narrow pieces
  const broken = [`${across}\u00a0×`, along ?? ''].map((words) => ({ ...size(small), text: words }))
  const blocks: readonly Block[] = [
    ...(item.box.width < 3 * number ? [] : [level([mark(number), ...named(usual, room), size(usual)])]),
    level([mark(number), ...named(small, room), size(small)]),
    { ...level([...named(small, room - number), size(small)]), lead: mark(number) },
    level([mark(number), ...named(small, room), ...broken]),
    { ...level([...named(small, room - little), size(small)]), lead: mark(little) },
    level([mark(little), ...named(small, room), size(small)]),
    level([mark(little), ...named(small, room), ...broken]),
  ]
  return blocks.map((block) => ({ block }))
}

function turnedLabels(item: Named, names: readonly string[], style: Style): readonly Label[] {
  const { small, little } = style
  const size = { text: item.size, capital: small, weight: 700 as const }
  const mark = { text: item.label, capital: little, weight: 700 as const }
  const word = (words: string) => ({ text: words, capital: small, weight: 500 as const })
  const long = item.box.height
  const once = names.join(', ')
  const short = fit(once, Math.max(long - 30 * style.by, 14), small, 500)
  const above = level([mark])
  return [
    { above, block: turned([word(once), size]) },
    { above, block: turned([...names.map(word), size]) },
    { above, block: turned([word(`${once}  ${item.size}`)]) },
    { block: turned([mark, ...namedLines(names, long, small, style), size]) },
    { above, block: turned([word(`${short}  ${item.size}`)]) },
    { block: turned([word(short), { ...size, text: `${item.label}  ${item.size}` }]) },
  ]
}

// each name in three lines at most, the last cut short where it is too long; the number and the size never are
function namedLines(names: readonly string[], room: number, capital: number, style: Style): Block['lines'] {
  const wide = Math.max(room - 2.4 * style.by, 12 * style.by)
  return names
    .flatMap((words) => {
      const lines = wrap(words, wide, capital, 500)
      return lines.length <= 3 ? lines : [...lines.slice(0, 2), fit(lines.slice(2).join(' '), wide, capital, 500)]
    })
    .map((words) => ({ text: words, capital, weight: 500 as const }))
}

/** The number alone, when the rest goes to the margin; turned only where the piece is narrow. */
export function numberAlone(item: Named, style: Style): readonly Block[] {
  const ways = item.box.height > item.box.width ? [false, true] : [false]
  return [style.little, style.usual, style.small].flatMap((capital) =>
    ways.map((turned) => ({ lines: [{ text: item.label, capital, weight: 700 as const }], turned })),
  )
}

/** Room for text inside a piece: clear of its edges. */
export const roomIn = (item: Named, style: Style): Box => padded(item.box, -1.1 * style.by)

export const textBoxes = (marks: readonly Mark[]): readonly Box[] =>
  marks.filter((m) => m.kind === 'text').map((m) => textBox(m))

/** A mark for the sewing as it is drawn: the key tells each. */
export interface Sign {
  readonly kind: Placed['marks'][number]['kind']
  readonly segments: readonly Segment[]
}

/** Marks of a piece that show on the drawing, as segments from its upper left corner. */
export function signsOf(p: Placed, perUnit: number, by: number): readonly Sign[] {
  const mmOf = (l: Length): number => l * perUnit
  const [wide, tall] = [mmOf(p.width), mmOf(p.length)]
  return p.marks.flatMap(({ kind, runs, ...m }): readonly Sign[] => {
    const [x, y] = [mmOf(m.x), mmOf(m.y)]
    if (kind === 'corner-square') {
      const side = mmOf(m.size ?? (0 as Length))
      const right = x > wide / 2
      const low = y > tall / 2
      const [inX, inY] = [right ? wide - side : side, low ? tall - side : side]
      return [
        {
          kind,
          segments: [
            [inX, low ? tall : 0, inX, inY],
            [right ? wide : 0, inY, inX, inY],
          ],
        },
      ]
    }
    if (kind === 'fold' || kind === 'seam') {
      const near = 1.1 * by
      const along = runs === 'along'
      const inEnough = along ? x > near && x < wide - near : y > near && y < tall - near
      return inEnough ? [{ kind, segments: [along ? [x, 0, x, tall] : [0, y, wide, y]] }] : []
    }
    return [{ kind, segments: spotSign(kind, x, y, wide, tall, by) }]
  })
}

/** A place at an edge: one tick for the end of a zip, two for a tie, an upright cross for a button. */
export function spotSign(
  kind: Sign['kind'],
  x: number,
  y: number,
  wide: number,
  tall: number,
  by: number,
): readonly Segment[] {
  const tick = 1.2 * by
  const clear = (place: number, whole: number): number => Math.min(Math.max(place, tick), Math.max(whole - tick, tick))
  const [inX, inY] = [clear(x, wide), clear(y, tall)]
  if (kind === 'button')
    return [
      [inX - tick, inY, inX + tick, inY],
      [inX, inY - tick, inX, inY + tick],
    ]
  const steps = kind === 'tie' ? [-0.4 * by, 0.4 * by] : [0]
  const atSide = x <= tick || x >= wide - tick
  const inward = (place: number, whole: number): readonly [number, number] =>
    place < whole / 2 ? [0, tick * 1.5] : [whole, whole - tick * 1.5]
  return steps.map((step): Segment => {
    const [from, to] = atSide ? inward(x, wide) : inward(y, tall)
    return atSide ? [from, inY + step, to, inY + step] : [inX + step, from, inX + step, to]
  })
}
