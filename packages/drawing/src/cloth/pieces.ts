import type { Placed, Remnant } from '@lengthwise/planner'
import type { Length } from '@lengthwise/units'
import type { Box, Segment } from '../box.ts'
import { padded } from '../box.ts'
import { textBox } from '../ink.ts'
import type { Measure } from '../measure.ts'
import type { Mark } from '../scene.ts'
import { fit, oneLine, textWidth, wrap } from '../text.ts'
import type { Block } from './block.ts'
import type { Style } from './style.ts'

/** Something with a number on the drawing: a piece or a remnant, and its lines of text. */
export interface Named {
  readonly label: string
  readonly words: string
  readonly whose: string
  readonly size: string
  readonly kind: 'piece' | 'remnant'
  /** on paper, the visible part */
  readonly box: Box
}

export function namedPiece(p: Placed, on: Box, measure: Measure): Named {
  const [words, whose] = [oneLine(p.words), oneLine(p.whose)]
  return {
    label: p.label,
    // 'tray cloth' says nothing that 'tray cloth 1' does not
    words: whose.toLowerCase().startsWith(words.toLowerCase()) ? '' : words,
    whose,
    size: measure.size(p.width, p.length),
    kind: 'piece',
    box: on,
  }
}

export function namedRemnant(r: Remnant, on: Box, measure: Measure): Named {
  return { label: r.name, words: '', whose: '', size: measure.size(r.width, r.length), kind: 'remnant', box: on }
}

/** The whole label in one block, roomiest first; the last ones read from the right. */
export function wholeLabels(item: Named, style: Style): readonly Block[] {
  const { small, usual, little, number } = style
  const along = Math.max(item.box.height, item.box.width)
  // names too long for the piece are cut short; the number and the size never are
  const named = (capital: number, room: number): Block['lines'] =>
    [item.words, item.whose]
      .filter((words) => words !== '')
      .flatMap((words) => atMostThree(words, Math.max(room - 2.4 * style.by, 12 * style.by), capital))
      .map((words) => ({ text: words, capital, weight: 500 as const }))
  const size = (capital: number) => ({ text: item.size, capital, weight: 700 as const })
  const mark = (capital: number) => ({ text: item.label, capital, weight: 700 as const })
  const level = (lines: Block['lines']): Block => ({ lines, turned: false })
  const turned = (lines: Block['lines']): Block => ({ lines, turned: true })
  if (item.kind === 'remnant')
    return [
      level([mark(little), size(small)]),
      level([mark(usual), size(small)]),
      turned([{ ...size(small), text: `${item.label}  ${item.size}` }]),
    ]
  const room = item.box.width
  const once = [item.words, item.whose].filter((words) => words !== '').join(', ')
  const short = fit(once, Math.max(along - 30 * style.by, 14), small, 500)
  return [
    level([mark(number), ...named(usual, room), size(usual)]),
    level([mark(number), ...named(small, room), size(small)]),
    { lines: [...named(small, room - number), size(small)], turned: false, lead: mark(number) },
    level([mark(number), ...named(small, room), ...brokenSize(item, small)]),
    { lines: [...named(small, room - little), size(small)], turned: false, lead: mark(little) },
    level([mark(little), ...named(small, room), size(small)]),
    level([mark(little), ...named(small, room), ...brokenSize(item, small)]),
    turned([mark(little), ...named(small, item.box.height), size(small)]),
    {
      lines: [
        { text: fit(once, Math.max(room - little - 6 * style.by, 10), small, 500), capital: small, weight: 500 },
        size(small),
      ],
      turned: false,
      lead: mark(little),
    },
    turned([
      { text: short, capital: small, weight: 500 },
      { text: `${item.label}  ${item.size}`, capital: small, weight: 700 },
    ]),
  ]
}

// the size on two lines, for inches in narrow pieces
function brokenSize(item: Named, capital: number): Block['lines'] {
  const [across, along] = item.size.split('\u00a0×\u00a0')
  return [`${across}\u00a0×`, along ?? ''].map((words) => ({ text: words, capital, weight: 700 as const }))
}

// three lines at most, the last cut short
function atMostThree(words: string, room: number, capital: number): readonly string[] {
  const lines = wrap(words, room, capital, 500)
  return lines.length <= 3 ? lines : [...lines.slice(0, 2), fit(lines.slice(2).join(' '), room, capital, 500)]
}

/** Long and thin: the number level, name and size turned below it in one line. */
export function longThinLabel(item: Named, style: Style): { readonly number: Block; readonly rest: Block } {
  const once = [item.words, item.whose].filter((words) => words !== '').join(', ')
  const room = item.box.height - 24 * style.by - textWidth(item.size, style.small, 700)
  const words = fit(once, Math.max(room, 10), style.small, 500)
  return {
    number: { lines: [{ text: item.label, capital: style.little, weight: 700 }], turned: false },
    rest: { lines: [{ text: `${words}  ${item.size}`, capital: style.small, weight: 500 }], turned: true },
  }
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

interface SewingMark {
  readonly kind: 'fold' | 'seam' | 'square' | 'tick'
  readonly segments: readonly Segment[]
}

/** Marks of a piece that show on the drawing, as segments from its upper left corner. */
export function sewingMarks(p: Placed, perUnit: number, by: number): readonly SewingMark[] {
  const mmOf = (l: Length): number => l * perUnit
  const [wide, tall] = [mmOf(p.width), mmOf(p.length)]
  return p.marks.flatMap((m): readonly SewingMark[] => {
    const [x, y] = [mmOf(m.x), mmOf(m.y)]
    if (m.kind === 'corner-square') {
      const side = mmOf(m.size ?? (0 as Length))
      const right = x > wide / 2
      const low = y > tall / 2
      const [inX, inY] = [right ? wide - side : side, low ? tall - side : side]
      return [
        {
          kind: 'square' as const,
          segments: [[inX, low ? tall : 0, inX, inY] as const, [right ? wide : 0, inY, inX, inY] as const],
        },
      ]
    }
    if (m.kind === 'fold' || m.kind === 'seam') {
      const near = 1.1 * by
      const along = m.runs === 'along'
      const inEnough = along ? x > near && x < wide - near : y > near && y < tall - near
      return inEnough
        ? [{ kind: m.kind, segments: [along ? ([x, 0, x, tall] as const) : ([0, y, wide, y] as const)] }]
        : []
    }
    const tick = 1.2 * by
    const atSide = x <= tick || x >= wide - tick
    const inside = Math.min(Math.max(x, 0), wide)
    const low = y >= tall / 2
    return [
      {
        kind: 'tick' as const,
        segments: [
          atSide
            ? ([x < wide / 2 ? 0 : wide, y, x < wide / 2 ? tick * 1.5 : wide - tick * 1.5, y] as const)
            : ([inside, low ? tall : 0, inside, low ? tall - tick * 1.5 : tick * 1.5] as const),
        ],
      },
    ]
  })
}
