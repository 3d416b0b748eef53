import type { Result } from '@lengthwise/planner'
import { box } from '../box.ts'
import { arrowMarks } from '../cloth/arrow.ts'
import { clothTitle } from '../cloth/names.ts'
import type { Style } from '../cloth/style.ts'
import { WEIGHTS } from '../cloth/style.ts'
import { frameOf, text } from '../ink.ts'
import type { Measure } from '../measure.ts'
import type { Mark, Weight } from '../scene.ts'
import { fit, oneLine, textWidth, wrap } from '../text.ts'
import { capital } from '../words/hands.ts'
import type { Leaf } from './leaf.ts'
import { BOTTOM, FRAME, leaf } from './leaf.ts'

const ACROSS = 2
const DOWN = 8
const TOP = 15
/** room for the number, and for the arrow at the right */
const LEFT = 22.5
const ARROW = 10.4
const PITCH = 5.3

/** Small papers to cut apart and pin to the pieces: number, name, whose, size, and an arrow to the top. */
export function slipLeaves(result: Result, measure: Measure, style: Style): readonly Leaf[] {
  const placed = new Map(result.cloths.flatMap((cloth) => cloth.placed.map((p) => [p.piece, p] as const)))
  const slips = [
    ...[...result.pieces]
      .sort((a, b) => Number(a.label) - Number(b.label))
      .map((row) => ({
        label: row.label,
        words: capital(oneLine(row.words)),
        whose: [oneLine(placed.get(row.piece)?.whose ?? row.item), oneLine(forWhom(result, row.item))]
          .filter((w) => w !== '')
          .join(', '),
        size: `${measure.size(row.cutWidth, row.cutLength)}\u00a0${measure.unit}`,
        arrow: true,
      })),
    ...result.cloths.flatMap((cloth) =>
      cloth.remnants.map((r) => ({
        label: r.name,
        words: `Remnant of ${clothTitle(cloth.name)}`,
        whose: r.wouldMake.length > 0 ? `would make ${r.wouldMake[0]!}` : '',
        size: `${measure.size(r.width, r.length)}\u00a0${measure.unit}`,
        arrow: false,
      })),
    ),
  ]
  const small = Math.min(style.small, 3.5)
  const wide = FRAME.width / ACROSS
  const tall = (BOTTOM - TOP) / DOWN
  const leaves: Leaf[] = []
  for (const [i, slip] of slips.entries()) {
    const place = i % (ACROSS * DOWN)
    if (place === 0) leaves.push(leaf('slips', 'Slips to pin to the pieces', [], { ...style, small }))
    const x = (place % ACROSS) * wide
    const y = TOP + Math.floor(place / ACROSS) * tall
    const left = x + LEFT
    const room = wide - LEFT - (slip.arrow ? ARROW : 3)
    const capital = [14, 12].find((each) => textWidth(slip.label, each, 700) <= LEFT - 4) ?? 10
    const lines = [
      ...atMost(2, slip.words, room, small, 700),
      ...atMost(2, slip.whose, room, small, 500),
      [fit(slip.size, room, small, 700), 700] as const,
    ]
    const first = y + (tall - (lines.length - 1) * PITCH + small) / 2
    const marks: Mark[] = [
      frameOf(box(x, y, wide, tall), WEIGHTS.thin),
      text(fit(slip.label, LEFT - 1, capital, 700), x + LEFT / 2, y + tall / 2 + capital / 2, capital, 700, 'middle'),
      ...lines.map(([words, weight], n) => text(words, left, first + n * PITCH, small, weight)),
    ]
    if (slip.arrow)
      marks.push(
        ...arrowMarks(box(x + wide - 10, y + 4, 9, tall - 8), { level: false, heads: 'start' }, { ...style, small }),
      )
    leaves.at(-1)!.parts.push({ role: 'paragraph', marks })
  }
  return leaves
}

function atMost(
  n: number,
  words: string,
  room: number,
  capital: number,
  weight: Weight,
): readonly (readonly [string, Weight])[] {
  if (words === '') return []
  const lines = wrap(words, room, capital, weight)
  const shown =
    lines.length <= n ? lines : [...lines.slice(0, n - 1), fit(lines.slice(n - 1).join(' '), room, capital, weight)]
  return shown.map((each) => [each, weight] as const)
}

// copies are numbered by kind in the order of the plan
function forWhom(result: Result, item: string): string {
  const [, kind, n] = /^(.*)-(\d+)$/.exec(item) ?? []
  let left = Number(n)
  for (const each of result.order.items) {
    const name = each.item === 'rectangle' || each.item === 'strips' ? each.name.replace(/\s+/g, '-') : each.item
    if (name !== kind) continue
    if (left <= each.count) return each.for
    left -= each.count
  }
  return ''
}
