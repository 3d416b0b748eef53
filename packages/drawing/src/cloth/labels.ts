import type { Box } from '../box.ts'
import { box } from '../box.ts'
import type { Mark } from '../scene.ts'
import type { Block } from './block.ts'
import { blockSize, findSpot } from './block.ts'
import type { Named } from './pieces.ts'
import { roomIn, wholeLabels } from './pieces.ts'
import type { Style } from './style.ts'

/** The best label of a piece or remnant that fits into it clear of what is taken; null when none does. */
export function placeLabel(item: Named, style: Style, taken: readonly Box[]): readonly Mark[] | null {
  const area = roomIn(item, style)
  const near = taken.filter(
    (b) => b.x < area.x + area.width && b.x + b.width > area.x && b.y < area.y + area.height && b.y + b.height > area.y,
  )
  for (const { block, above } of wholeLabels(item, style)) {
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
  const number = findSpot(above, area, taken, { x: 0.5, y: 0 })
  if (number === null) return null
  const below = number.boxes[0]!.y + number.boxes[0]!.height + style.by
  const { height } = blockSize(block)
  const room = box(area.x, below, area.width, area.y + area.height - below)
  const rest = findSpot(block, room, taken, { x: 0.5, y: height > room.height * 0.6 ? 0.5 : 0.2 })
  return rest === null ? null : [...number.marks, ...rest.marks]
}
