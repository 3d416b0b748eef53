import type { CutCloth } from '@lengthwise/planner'
import type { Box, Segment } from '../box.ts'
import { box, inside, meetsAny, outside, padded } from '../box.ts'
import { hatch } from '../hatch.ts'
import { line, text, textBox } from '../ink.ts'
import type { Figure, Mark } from '../scene.ts'
import { fit, oneLine } from '../text.ts'
import type { Stretch } from './view.ts'

/**
 * A small picture without flags or ruler. `turned`: the cut end at the left, turned as one would turn the cloth,
 * so that its left selvedge lies at the bottom; a mirrored picture would show the wrong side.
 */
export interface SmallOptions {
  readonly stretch: Stretch
  readonly left: number
  readonly top: number
  readonly perUnit: number
  readonly turned: boolean
  readonly capital: number
  /** numbers; the name where it fits, else the number; or nothing where the name does not fit */
  readonly labels: 'numbers' | 'names' | 'names or nothing'
  readonly by: number
}

export function drawSmall(
  cloth: CutCloth,
  options: SmallOptions,
): { readonly marks: readonly Mark[]; readonly texts: readonly Box[]; readonly spots: Figure['spots'] } {
  const { stretch, left, top, perUnit, turned, by } = options
  const { from, to } = stretch
  const boxOf = (b: { x: number; y: number; width: number; length: number }): Box | null => {
    const start = Math.max(b.y, from)
    const end = Math.min(b.y + b.length, to)
    if (end <= start) return null
    return turned
      ? box(
          left + (start - from) * perUnit,
          top + (cloth.width - b.x - b.width) * perUnit,
          (end - start) * perUnit,
          b.width * perUnit,
        )
      : box(left + b.x * perUnit, top + (start - from) * perUnit, b.width * perUnit, (end - start) * perUnit)
  }
  const texts: Box[] = []
  const words: Mark[] = []
  const spots: Figure['spots'][number][] = []
  const label = (name: string, on: Box): void => {
    for (const turn of [0, 90] as const) {
      const at = on.width / 2 + on.x
      const middle = on.y + on.height / 2
      const mark =
        turn === 0
          ? text(name, at, middle + options.capital / 2, options.capital, 500, 'middle')
          : { ...text(name, at + options.capital / 2, middle, options.capital, 500, 'middle'), turn }
      const own = textBox(mark)
      if (!inside(own, padded(on, -0.5 * by)) || meetsAny(own, texts)) continue
      words.push(mark)
      texts.push(own)
      return
    }
  }
  for (const p of cloth.placed) {
    const on = boxOf(p)
    if (on === null) continue
    spots.push({ kind: 'piece', name: p.label, ...on })
    const long = Math.max(on.width, on.height) - 2 * by
    const name = oneLine(p.words)
    const fits = options.labels !== 'numbers' && fit(name, long, options.capital, 500) === name
    if (fits || options.labels !== 'names or nothing') label(fits ? name : p.label, on)
  }
  for (const r of cloth.remnants) {
    const on = boxOf(r)
    if (on === null) continue
    spots.push({ kind: 'remnant', name: r.name, ...on })
    if (options.labels !== 'names or nothing') label(r.name, on)
  }
  const marks: Mark[] = []
  const clear = texts.map((each) => padded(each, 0.9 * by))
  for (const [kind, boxes] of [
    ['waste', cloth.waste],
    ['remnant', cloth.remnants],
    ['trim', cloth.trims],
  ] as const)
    for (const each of boxes) {
      const on = boxOf(each)
      if (on !== null) marks.push(...hatch(kind, on, clear, 0.7 * by))
    }
  const segment = (runs: 'across' | 'along', at: number, a: number, b: number): Segment | null => {
    const [x1, x2, y1, y2] = runs === 'across' ? [a, b, at, at] : [at, at, Math.max(a, from), Math.min(b, to)]
    if (y1 < from || y2 > to || (runs === 'along' && y2 <= y1)) return null
    return turned
      ? [
          left + (y1 - from) * perUnit,
          top + (cloth.width - x1) * perUnit,
          left + (y2 - from) * perUnit,
          top + (cloth.width - x2) * perUnit,
        ]
      : [left + x1 * perUnit, top + (y1 - from) * perUnit, left + x2 * perUnit, top + (y2 - from) * perUnit]
  }
  for (const d of cloth.divisions) {
    const on = segment(d.runs, d.at, d.from, d.to)
    const dash = d.how === 'shears' || d.how === 'thread' ? undefined : [2 * by, 1 * by]
    if (on !== null) for (const each of outside(on, texts)) marks.push(line(each, 0.3 * by, dash))
  }
  for (const [side, runs, at] of [
    ['left', 'along', 0],
    ['right', 'along', cloth.width],
    ['start', 'across', 0],
    ['end', 'across', cloth.length],
  ] as const) {
    const on = segment(runs, at, 0, runs === 'along' ? cloth.length : cloth.width)
    if (on !== null) marks.push(line(on, (cloth.edges[side].kind === 'raw' ? 0.3 : 0.6) * by))
  }
  // a length cut out of the cloth begins and ends at tears that are drawn above, if they lie in it
  return { marks: [...marks, ...words], texts, spots }
}
