import type { Box } from '../box.ts'
import { box, inside, meet, meetsAny } from '../box.ts'
import { text, textBox } from '../ink.ts'
import type { Mark, Weight } from '../scene.ts'
import { textWidth } from '../text.ts'

interface Line {
  readonly text: string
  readonly capital: number
  readonly weight: Weight
}

/** Lines of text set centred one under another, with a large number at their left if given; turned blocks read from bottom to top. */
export interface Block {
  readonly lines: readonly Line[]
  readonly turned: boolean
  /** level blocks only */
  readonly lead?: Line
}

export interface Spot {
  readonly marks: readonly Mark[]
  /** one box per line of text */
  readonly boxes: readonly Box[]
}

/** Width and height the block takes on paper. */
export function blockSize(block: Block): { readonly width: number; readonly height: number } {
  const long = Math.max(...block.lines.map(widthOf))
  const tall = block.lines.reduce((sum, l) => sum + lineHeight(l), 0)
  if (block.lead) return { width: leadWidth(block.lead) + long, height: Math.max(tall, lineHeight(block.lead)) }
  return block.turned ? { width: tall, height: long } : { width: long, height: tall }
}

/** The block with its upper left corner at (x, y). */
export function setBlock(block: Block, x: number, y: number): Spot {
  const { width, height } = blockSize(block)
  const { lead } = block
  const before = lead ? leadWidth(lead) : 0
  let done = lead ? (height - block.lines.reduce((sum, l) => sum + lineHeight(l), 0)) / 2 : 0
  const marks: Extract<Mark, { kind: 'text' }>[] = lead
    ? [text(lead.text, x, y + (height + lead.capital) / 2, lead.capital, lead.weight)]
    : []
  for (const l of block.lines) {
    const down = done + l.capital * (isNumber(l.text) ? NUMBER_BASELINE : BASELINE)
    done += lineHeight(l)
    if (block.turned) marks.push({ ...text(l.text, x + down, y + height / 2, l.capital, l.weight, 'middle'), turn: 90 })
    else marks.push(text(l.text, x + before + (width - before) / 2, y + down, l.capital, l.weight, 'middle'))
  }
  return { marks, boxes: marks.map(textBox) }
}

const widthOf = (l: Line): number => textWidth(l.text, l.capital, l.weight)
const leadWidth = (lead: Line): number => widthOf(lead) + 0.35 * lead.capital

/**
 * Puts a block into `area` clear of `taken`, as near as can be to the preferred place (shares of the room left over);
 * null when there is no such place.
 */
export function findSpot(
  block: Block,
  area: Box,
  taken: readonly Box[],
  prefer: { readonly x: number; readonly y: number },
): Spot | null {
  const { width, height } = blockSize(block)
  const free = findBox(width, height, area, taken, prefer)
  return free === null ? null : setBlock(block, free.x, free.y)
}

/** Likewise for an empty box. */
export function findBox(
  width: number,
  height: number,
  area: Box,
  taken: readonly Box[],
  prefer: { readonly x: number; readonly y: number },
): Box | null {
  const [roomX, roomY] = [area.width - width, area.height - height]
  if (roomX < 0 || roomY < 0) return null
  const near = taken.filter((each) => meet(each, area))
  const xs = outwards(area.x, roomX, prefer.x)
  for (const y of outwards(area.y, roomY, prefer.y))
    for (const x of xs) {
      const candidate = box(x, y, width, height)
      if (inside(candidate, area) && !meetsAny(candidate, near)) return candidate
    }
  return null
}

// places from the preferred one outwards, both ends included
function outwards(from: number, room: number, prefer: number): readonly number[] {
  const first = from + room * prefer
  const step = Math.max(1.5, room / 24)
  const places = [first]
  for (let by = step; by <= room; by += step) {
    if (first + by <= from + room) places.push(first + by)
    if (first - by >= from) places.push(first - by)
  }
  return [...places, from, from + room]
}

const lineHeight = (l: Line): number => l.capital * (isNumber(l.text) ? NUMBER_LINE : LINE)

// labels such as 7 and R1 have nothing above their capitals or below the line
const isNumber = (words: string): boolean => /^[A-Z]?\d+$/.test(words)

// in capital heights: from the top of a line to its baseline, and to the next line
const BASELINE = 1.14
const LINE = 1.5
const NUMBER_BASELINE = 1.06
const NUMBER_LINE = 1.24
