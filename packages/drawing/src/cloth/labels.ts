import type { Box } from '../box.ts'
import { box } from '../box.ts'
import type { Mark } from '../scene.ts'
import type { Block } from './block.ts'
import { blockSize, findSpot } from './block.ts'
import type { Named } from './pieces.ts'
import { labelsOf, roomIn } from './pieces.ts'
import type { Style } from './style.ts'

/** The best label of a piece or remnant that fits into it clear of what is taken, with names in full or cut short; null when none does. */
export function placeLabel(
  item: Named,
  style: Style,
  taken: readonly Box[],
  names: 'whole' | 'cut short',
): readonly Mark[] | null {
  const area = roomIn(item, style)
  // no line of text fits either way
  if (Math.min(area.width, area.height) < style.small * 1.2) return null
  const near = taken.filter(
    (b) => b.x < area.x + area.width && b.x + b.width > area.x && b.y < area.y + area.height && b.y + b.height > area.y,
  )
  for (const { block, above } of labelsOf(item, style, names)) {
    if (above !== undefined) {
      const both = placeBoth(above, block, area, near, style)
      if (both !== null) return both
      continue
    }
    const spot = findSpot(block, area, near, { x: 0.5, y: item.kind === 'remnant' ? 0.5 : 0.4 })
    if (spot !== null) return spot.marks
  }
  return null
}

// long and thin: the number level at the head, the rest turned below it
function placeBoth(above: Block, block: Block, area: Box, taken: readonly Box[], style: Style): readonly Mark[] | null {
  // in the middle where it can stand there, below a flag rather than beside it
  const middle = blockSize(above).width
  const flags = taken.filter((b) => b.height < 8 * style.by && b.width < area.width && b.y < area.y + 8 * style.by)
  const head = Math.max(area.y + 3 * style.by, ...flags.map((b) => b.y + b.height))
  const strip = box(area.x + (area.width - middle) / 2, head, middle, area.height * 0.4)
  const number = findSpot(above, strip, taken, { x: 0, y: 0 }) ?? findSpot(above, area, taken, { x: 0.5, y: 0 })
  if (number === null) return null
  const below = number.boxes[0]!.y + number.boxes[0]!.height + style.by
  const { height } = blockSize(block)
  const room = box(area.x, below, area.width, area.y + area.height - below)
  const rest = findSpot(block, room, taken, { x: 0.5, y: height > room.height * 0.6 ? 0.5 : 0.2 })
  return rest === null ? null : [...number.marks, ...rest.marks]
}
