import type { Box } from '../box.ts'
import { box } from '../box.ts'
import { text } from '../ink.ts'
import type { Mark } from '../scene.ts'
import { textWidth, wrap } from '../text.ts'
import { capital } from '../words/hands.ts'
import { labelsListed } from '../words/list.ts'
import type { DrawOptions, Ground } from './draw.ts'
import type { Named } from './pieces.ts'
import { PITCH } from './style.ts'

export function alike(small: readonly Named[]): readonly (readonly Named[])[] {
  const groups = new Map<string, Named[]>()
  for (const item of small) {
    const key = item.kind === 'remnant' ? item.label : `${item.thing}|${item.size}`
    groups.set(key, [...(groups.get(key) ?? []), item])
  }
  return [...groups.values()]
}

type Row = readonly (readonly [words: string, weight: 500 | 700])[]

/** Number, name and size in a margin, as near to the piece as can be: beside the cloth all from one edge, one under another. */
export function marginLabel(
  group: readonly Named[],
  options: DrawOptions,
  ground: Ground,
): { readonly marks: readonly Mark[]; readonly at: Box } | null {
  const { style, margins } = options
  const { small } = style
  const pitch = small * PITCH
  for (const margin of margins) {
    const rows = rowsOf(group, margin.width, small)
    if (rows === null) continue
    const wide = Math.max(...rows.map((row) => rowWidth(row, small)))
    const at = freePlace(wide, rows.length * pitch, margin, group[0]!.box, style.by, ground)
    if (at === null) continue
    const marks = rows.flatMap((row, i) => {
      let x = at.x
      return row.map(([words, weight]) => {
        const mark = text(words, x, at.y + small * 1.14 + i * pitch, small, weight)
        x += textWidth(words, small, weight)
        return mark
      })
    })
    return { at, marks }
  }
  return null
}

// everything in one row where that fits, else the numbers, the name and the size one under another
function rowsOf(group: readonly Named[], wide: number, small: number): readonly Row[] | null {
  const [first] = group
  const label = labelsListed(group.map((item) => item.label))
  const name = capital(
    group.length > 1 ? first!.thing : [first!.words, first!.whose].filter((words) => words !== '').join(', '),
  )
  const one: Row = [[`${label}  `, 700], ...(name === '' ? [] : [[`${name}  `, 500] as const]), [first!.size, 700]]
  if (rowWidth(one, small) <= wide) return [one]
  if (textWidth(first!.size, small, 700) > wide) return null
  return [
    ...wrap(label, wide, small, 700).map((words): Row => [[words, 700]]),
    ...(name === '' ? [] : wrap(name, wide, small, 500).slice(0, 3)).map((words): Row => [[words, 500]]),
    [[first!.size, 700]],
  ]
}

const rowWidth = (row: Row, small: number): number =>
  row.reduce((sum, [words, weight]) => sum + textWidth(words, small, weight), 0)

function freePlace(wide: number, tall: number, margin: Box, piece: Box, by: number, ground: Ground): Box | null {
  const beside = margin.x >= piece.x + piece.width
  const [left, top] = [piece.x + (piece.width - wide) / 2, piece.y + (piece.height - tall) / 2]
  const xs = beside ? [margin.x] : outwards(margin.x, margin.width - wide, left, 3 * by)
  const ys = beside
    ? outwards(margin.y, margin.height - tall, top, 1.2 * by)
    : Array.from(
        { length: Math.max(0, Math.floor((margin.height - tall) / (1.2 * by)) + 1) },
        (_, i) => margin.y + i * 1.2 * by,
      )
  for (const y of ys)
    for (const x of xs) {
      const at = box(x, y, wide, tall)
      // air enough that two names are not read as one
      if (ground.isFree(box(x - 1.5 * by, y - 1.4 * by, wide + 5.5 * by, tall + 2.8 * by))) return at
    }
  return null
}

// places from the preferred one outwards
function outwards(from: number, room: number, prefer: number, step: number): readonly number[] {
  if (room < 0) return []
  const first = Math.min(from + room, Math.max(from, prefer))
  const places = [first]
  for (let off = step; off <= room; off += step) {
    if (first + off <= from + room) places.push(first + off)
    if (first - off >= from) places.push(first - off)
  }
  return places
}
