import type { CutCloth } from '@lengthwise/planner'
import type { Box, Segment } from '../box.ts'
import { boxOf, outside } from '../box.ts'
import { line } from '../ink.ts'
import type { Mark } from '../scene.ts'
import { scissors } from './edges.ts'
import type { Sign } from './pieces.ts'
import { signsOf } from './pieces.ts'
import type { Places } from './places.ts'
import type { Style } from './style.ts'
import { DASHES, WEIGHTS } from './style.ts'
import type { View } from './view.ts'
import { boxOn, xOn, yOn } from './view.ts'

interface ThinLines {
  readonly marks: readonly Mark[]
  /** what the key has to tell */
  readonly signs: ReadonlySet<Sign['kind']>
}

// folds, lines of stitching, corner squares, places of buttons and ties, and the lines of the print's repeat
export function thinLines(cloth: CutCloth, view: View, style: Style, clear: readonly Places[]): ThinLines {
  const by = style.by
  const free = (segment: Segment): readonly Segment[] => {
    const near = boxOf(segment, 0.01)
    return outside(
      segment,
      clear.flatMap((places) => places.near(near)),
    )
  }
  const marks: Mark[] = []
  const signs = new Set<Sign['kind']>()
  for (const p of cloth.placed) {
    const on = boxOn(view, p)
    if (on === null) continue
    const top = yOn(view, p.y)
    for (const each of signsOf(p, view.perUnit, by))
      for (const [x1, y1, x2, y2] of each.segments) {
        const moved = clippedTo([on.x + x1, top + y1, on.x + x2, top + y2], on)
        if (moved === null) continue
        for (const part of free(moved)) {
          signs.add(each.kind)
          marks.push(...signLine(each.kind, part, by))
        }
      }
  }
  const phased = cloth.placed.find((p) => p.phase !== null)
  if (cloth.repeat > 0) {
    const first = phased ? (((phased.y - phased.phase!) % cloth.repeat) + cloth.repeat) % cloth.repeat : 0
    for (let y = first; y <= view.stretch.to; y += cloth.repeat) {
      if (y < view.stretch.from) continue
      const at = yOn(view, y)
      for (const part of free([xOn(view, 0), at, xOn(view, cloth.width), at]))
        marks.push(
          line(
            part,
            WEIGHTS.thin * by,
            DASHES.repeat.map((d) => d * by),
          ),
        )
    }
  }
  return { marks, signs }
}

/** Folds and stitching have dashes of their own; a level line to be cut later has scissors on it. */
export function signLine(kind: Sign['kind'], segment: Segment, by: number): readonly Mark[] {
  const dash = kind === 'fold' ? DASHES.fold : kind === 'seam' ? DASHES.stitching : undefined
  const drawn = line(
    segment,
    WEIGHTS.thin * by,
    dash?.map((d) => d * by),
  )
  const [x1, y1, x2, y2] = segment
  const room = Math.abs(x2 - x1) > 5 * by && y1 === y2
  return kind === 'corner-square' && room ? [drawn, ...scissors((x1 + x2) / 2 + 2.4 * by, y1, 'right', by)] : [drawn]
}

function clippedTo([x1, y1, x2, y2]: Segment, b: Box): Segment | null {
  if (x1 === x2) {
    const [from, to] = [Math.max(Math.min(y1, y2), b.y), Math.min(Math.max(y1, y2), b.y + b.height)]
    return to > from ? [x1, from, x2, to] : null
  }
  return y1 >= b.y - 1e-6 && y1 <= b.y + b.height + 1e-6 ? [x1, y1, x2, y2] : null
}
