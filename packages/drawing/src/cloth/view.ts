import type { CutCloth, Division } from '@lengthwise/planner'
import type { Box } from '../box.ts'
import { box } from '../box.ts'

/** A stretch of cloth that is drawn in one go, from one tear right across to another. */
export interface Stretch {
  readonly from: number
  readonly to: number
  /** the tear it begins and ends with; null: the end of the cloth, or an interrupted picture */
  readonly fromFlag: string | null
  readonly toFlag: string | null
}

/** Where a stretch lies on paper: x of the cloth's left edge, y of the stretch's start, millimetres of paper per unit of cloth. */
export interface View {
  readonly stretch: Stretch
  readonly left: number
  readonly top: number
  readonly perUnit: number
  /** how far tears run past the cloth's right edge; 4 mm unless given */
  readonly pastRight?: number
}

export const xOn = (view: View, x: number): number => view.left + x * view.perUnit
export const yOn = (view: View, y: number): number => view.top + (y - view.stretch.from) * view.perUnit

/** A rectangle of cloth as it lies on paper, cut off at the ends of the stretch; null when none of it is in the stretch. */
export function boxOn(view: View, b: { x: number; y: number; width: number; length: number }): Box | null {
  const from = Math.max(b.y, view.stretch.from)
  const to = Math.min(b.y + b.length, view.stretch.to)
  if (to <= from || b.width <= 0) return null
  return box(xOn(view, b.x), yOn(view, from), b.width * view.perUnit, (to - from) * view.perUnit)
}

/**
 * Divisions across at which a picture of the cloth can end: no piece and no remnant lies on both sides.
 * One for each place, the first in order; waste at the sides may go on.
 */
export function breaks(cloth: CutCloth): readonly Division[] {
  return dividingNo(cloth, [...cloth.placed, ...cloth.remnants])
}

type Lying = { readonly y: number; readonly length: number }

function dividingNo(cloth: CutCloth, kept: readonly Lying[]): readonly Division[] {
  const found = new Map<number, Division>()
  for (const d of cloth.divisions)
    if (d.runs === 'across' && !found.has(d.at) && !kept.some((b) => b.y < d.at && d.at < b.y + b.length))
      found.set(d.at, d)
  return [...found.values()]
}

export const wholeStretch = (cloth: CutCloth): Stretch => ({ from: 0, to: cloth.length, fromFlag: null, toFlag: null })

/**
 * Stretches of at most `longest` units, each with a piece in it, broken at tears right across; where there is none in reach the picture is
 * interrupted at the piece end that lies farthest, or failing that anywhere.
 */
export function stretches(cloth: CutCloth, longest: number, within: Stretch = wholeStretch(cloth)): readonly Stretch[] {
  const found: Stretch[] = []
  let { from, fromFlag } = within
  while (within.to - from > longest) {
    const inReach = (divisions: readonly Division[]): Division | undefined =>
      divisions
        .filter((d) => d.at - from <= longest && cloth.placed.some((p) => p.y < d.at && p.y + p.length > from))
        .sort((a, b) => b.at - a.at)
        .find((d) => d.at > from)
    // a remnant may be drawn in two parts where nothing else would do
    const tear = inReach(breaks(cloth)) ?? inReach(dividingNo(cloth, cloth.placed))
    const to: number = tear?.at ?? interruption(cloth, from, longest)
    found.push({ from, to, fromFlag, toFlag: tear?.flag ?? null })
    from = to
    fromFlag = tear?.flag ?? null
  }
  found.push({ from, to: within.to, fromFlag, toFlag: within.toFlag })
  return found
}

function interruption(cloth: CutCloth, from: number, longest: number): number {
  const ends = cloth.placed.map((p) => p.y + p.length).filter((y) => y > from + longest / 2 && y <= from + longest)
  return ends.length > 0 ? Math.max(...ends) : from + longest
}
