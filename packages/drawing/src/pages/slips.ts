import type { Result } from '@lengthwise/planner'
import { box } from '../box.ts'
import { arrowMarks } from '../cloth/pieces.ts'
import type { Style } from '../cloth/style.ts'
import { WEIGHTS } from '../cloth/style.ts'
import { frameOf, text } from '../ink.ts'
import type { Measure } from '../measure.ts'
import type { Mark } from '../scene.ts'
import { fit, oneLine } from '../text.ts'
import { capital } from '../words/hands.ts'
import type { Leaf } from './leaf.ts'
import { FRAME, leaf } from './leaf.ts'

const ACROSS = 2
const DOWN = 6

/** Small papers to cut apart and pin to the pieces: number, name, whose, size, and an arrow to the top. */
export function slipLeaves(result: Result, measure: Measure, style: Style): readonly Leaf[] {
  const placed = new Map(result.cloths.flatMap((cloth) => cloth.placed.map((p) => [p.piece, p] as const)))
  const slips = [
    ...result.pieces.map((row) => ({
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
        words: `Remnant of ${oneLine(cloth.name)}`,
        whose: r.wouldMake.length > 0 ? `would make ${r.wouldMake[0]!}` : '',
        size: `${measure.size(r.width, r.length)}\u00a0${measure.unit}`,
        arrow: false,
      })),
    ),
  ]
  const small = Math.min(style.small, 3.5)
  const wide = FRAME.width / ACROSS
  const tall = (244 - 20) / DOWN
  const leaves: Leaf[] = []
  for (const [i, slip] of slips.entries()) {
    const place = i % (ACROSS * DOWN)
    if (place === 0) leaves.push(leaf('slips', 'Slips to pin to the pieces', [], { ...style, small }))
    const x = (place % ACROSS) * wide
    const y = 20 + Math.floor(place / ACROSS) * tall
    const left = x + 34
    const room = wide - 34 - (slip.arrow ? 15 : 3)
    const marks: Mark[] = [
      { ...(frameOf(box(x, y, wide, tall), WEIGHTS.thin) as Extract<Mark, { kind: 'path' }>) },
      text(
        fit(slip.label, 28, slip.label.length > 2 ? 10 : 14, 700),
        x + 17,
        y + tall / 2 + 6,
        slip.label.length > 2 ? 10 : 14,
        700,
        'middle',
      ),
      text(fit(slip.words, room, small, 700), left, y + 11, small, 700),
      text(fit(slip.whose, room, small, 500), left, y + 18, small, 500),
      text(fit(slip.size, room, small, 700), left, y + 25, small, 700),
      text(fit(oneLine(result.order.title), room, small, 500), left, y + 32, small, 500),
    ]
    if (slip.arrow)
      marks.push(
        ...arrowMarks(box(x + wide - 11, y + 5, 9, tall - 10), { level: false, heads: 'start' }, { ...style, small }),
      )
    leaves
      .at(-1)!
      .parts.push({ role: 'paragraph', marks: marks.filter((mark) => mark.kind !== 'text' || mark.text !== '') })
  }
  return leaves
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
