import type { Box } from '../box.ts'
import { box } from '../box.ts'
import type { Mark } from '../scene.ts'
import { blockSize, findSpot } from './block.ts'
import type { Named } from './pieces.ts'
import { longThinLabel, roomIn, wholeLabels } from './pieces.ts'
import type { Style } from './style.ts'

export function placeLabel(item: Named, style: Style, taken: readonly Box[]): readonly Mark[] | null {
  const area = roomIn(item, style)
  const near = taken.filter(
    (b) => b.x < area.x + area.width && b.x + b.width > area.x && b.y < area.y + area.height && b.y + b.height > area.y,
  )
  const all = wholeLabels(item, style)
  // names in full before names cut short
  const cutShort = all.filter((block) => block.lines.some((l) => l.text.endsWith('…')))
  const blocks = [...all.filter((block) => !cutShort.includes(block)), ...cutShort]
  for (const block of blocks) {
    if (block === all[0] && item.kind === 'piece' && item.box.width < 3 * style.number) continue
    if (block.turned && item.kind === 'piece') {
      const thin = placeLongThin(item, style, near, cutShort.includes(block))
      if (thin !== null) return thin
    }
    const spot = findSpot(block, area, near, { x: 0.5, y: item.kind === 'remnant' ? 0.5 : 0.4 })
    if (spot !== null) return spot.marks
  }
  return null
}

function placeLongThin(item: Named, style: Style, taken: readonly Box[], mayCut: boolean): readonly Mark[] | null {
  const area = roomIn(item, style)
  const parts = longThinLabel(item, style)
  if (!mayCut && parts.rest.lines.some((l) => l.text.includes('…'))) return null
  const number = findSpot(parts.number, area, taken, { x: 0.5, y: 0 })
  if (number === null) return null
  const below = number.boxes[0]!.y + number.boxes[0]!.height + style.by
  const { height } = blockSize(parts.rest)
  const room = box(area.x, below, area.width, area.y + area.height - below)
  const rest = findSpot(parts.rest, room, taken, { x: 0.5, y: height > room.height * 0.6 ? 0.5 : 0.2 })
  return rest === null ? null : [...number.marks, ...rest.marks]
}
