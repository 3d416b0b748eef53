import type { CutCloth } from '@lengthwise/planner'
import type { Length } from '@lengthwise/units'
import type { Box } from '../box.ts'
import { box, meetsAny } from '../box.ts'
import { line, text, textBox } from '../ink.ts'
import type { Measure, Unit } from '../measure.ts'
import type { Mark } from '../scene.ts'
import { textWidth } from '../text.ts'
import type { Places } from './places.ts'
import type { Style } from './style.ts'
import { WEIGHTS } from './style.ts'
import type { View } from './view.ts'
import { yOn } from './view.ts'

/** Where running distances count from: the first tear that takes a trim off the start, or the start itself. */
export function squaredEnd(cloth: CutCloth): number {
  const first = cloth.divisions.find((d) => d.runs === 'across' && d.gives[0].kind === 'trim' && d.hand.y === 0)
  return first?.at ?? 0
}

/** Room for flags and for the widest number beside the cloth. */
export function rulerWidth(cloth: CutCloth, measure: Measure, style: Style): number {
  const zero = squaredEnd(cloth)
  const widest = Math.max(
    ...cloth.divisions
      .filter((d) => d.runs === 'across')
      .map((d) => textWidth(measure.bare((d.at - zero) as Length), style.small, 700)),
    // scissors stand between the flag and the cloth
    ...cloth.divisions.map((d) => flagWidth(d.flag, style) + (d.how === 'shears' ? 4.5 * style.by : 0)),
    textWidth(measure.bare(cloth.length).replace(/[.\s].*$/, ''), style.small, 500) + 0.3,
    0,
  )
  return Math.max(widest + GAP * style.by + 0.3, 12 * style.by)
}

export const flagWidth = (flag: string, style: Style): number => textWidth(flag, style.small, 700) + 2.4 * style.by
export const flagHeight = (style: Style): number => style.small * 1.5

/**
 * The ruler along the left edge: running distance at every division across, in bold below its line; ticks and round
 * numbers between them where they do not touch. `taken` holds the flags.
 */
export function ruler(
  cloth: CutCloth,
  view: View,
  measure: Measure,
  style: Style,
  taken: readonly Places[],
): { readonly marks: readonly Mark[]; readonly boxes: readonly Box[] } {
  const marks: Mark[] = []
  const boxes: Box[] = []
  const zero = squaredEnd(cloth)
  const right = view.left - GAP * style.by
  const isTaken = (own: Box): boolean => taken.some((places) => places.meets(own)) || meetsAny(own, boxes)
  const put = (at: number, below: boolean, weight: 500 | 700): boolean => {
    const y = yOn(view, at)
    // a little lower where scissors or a flag are in the way
    for (const down of below ? [1.36, 1.75] : [0.5]) {
      const mark = text(measure.bare((at - zero) as Length), right, y + style.small * down, style.small, weight, 'end')
      const own = textBox(mark)
      if (isTaken(own)) continue
      marks.push(mark)
      boxes.push(own)
      return true
    }
    return false
  }
  const { from, to } = view.stretch
  const seen = new Set<number>()
  for (const d of cloth.divisions)
    if (d.runs === 'across' && d.at >= from && d.at <= to && !seen.has(d.at)) {
      seen.add(d.at)
      put(d.at, true, 700)
    }
  const [tick, number] = STEPS[measure.unit][view.perUnit * 320 > 1 / 15 ? 'large' : 'usual']
  const ticks: (readonly [number, number, number, number])[] = []
  for (let n = Math.ceil((from - zero) / tick); n * tick + zero <= to; n++) {
    const at = n * tick + zero
    if (n < 0) continue
    const y = yOn(view, at)
    const numbered = (n * tick) % number === 0
    const tall = numbered ? 1.9 : 1.1
    const own = box(view.left - (0.7 + tall) * style.by, y - 0.2 * style.by, tall * style.by, 0.4 * style.by)
    if (isTaken(own)) continue
    ticks.push([own.x, y, own.x + own.width, y])
    if (numbered && !seen.has(at)) put(at, false, 500)
  }
  if (ticks.length > 0) marks.push({ kind: 'lines', segments: ticks, weight: WEIGHTS.thin * style.by })
  return { marks, boxes }
}

export const rulerLine = (view: View, style: Style): Mark =>
  line(
    [view.left - 0.7 * style.by, yOn(view, view.stretch.from), view.left - 0.7 * style.by, yOn(view, view.stretch.to)],
    WEIGHTS.thin * style.by,
  )

// tick and number, in units of cloth, at 1:20 and smaller and at 1:10
const CM = 3200
const INCH = 8128
const STEPS: Readonly<Record<Unit, Readonly<Record<'usual' | 'large', readonly [number, number]>>>> = {
  cm: { usual: [10 * CM, 50 * CM], large: [5 * CM, 20 * CM] },
  mm: { usual: [10 * CM, 50 * CM], large: [5 * CM, 20 * CM] },
  in: { usual: [5 * INCH, 20 * INCH], large: [2 * INCH, 10 * INCH] },
}

// from the cloth to the right end of the numbers
const GAP = 3.2
