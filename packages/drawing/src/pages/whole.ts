import type { CutCloth, Result } from '@lengthwise/planner'
import type { Length } from '@lengthwise/units'
import { clothName, tableSize } from '../cloth/names.ts'
import { squaredEnd } from '../cloth/ruler.ts'
import { drawSmall } from '../cloth/small.ts'
import type { Style } from '../cloth/style.ts'
import { WEIGHTS } from '../cloth/style.ts'
import { breaks, stretches } from '../cloth/view.ts'
import { altOf } from '../figure.ts'
import { line, text } from '../ink.ts'
import type { Measure } from '../measure.ts'
import type { Mark } from '../scene.ts'
import { fit, textWidth } from '../text.ts'
import { keyMarks, keyRows } from './key.ts'
import type { Leaf } from './leaf.ts'
import { checkLine, FRAME, leaf } from './leaf.ts'

const TOP = 40
const TALLEST = 192

/** Every cloth from end to end at 1:50, with piece numbers and the running distance of each tear right across. */
export function wholeLeaves(result: Result, measure: Measure, style: Style): readonly Leaf[] {
  const perUnit = 1 / (320 * 50)
  const small = Math.min(style.small, 3.5)
  const leaves: Leaf[] = []
  let on = begin()
  let x = 0
  let figures: { readonly x: number; readonly bottom: number }[] = []
  for (const cloth of result.cloths) {
    const ruler = rulerWide(cloth)
    for (const [i, stretch] of stretches(cloth, Math.floor(TALLEST / perUnit)).entries()) {
      const wide = Math.max(ruler + cloth.width * perUnit, 34)
      if (x > 0 && x + wide > FRAME.width) {
        on = begin()
        x = 0
        figures = []
      }
      const left = x + ruler
      const drawn = drawSmall(cloth, {
        stretch,
        left,
        top: TOP,
        perUnit,
        turned: false,
        capital: small,
        labels: 'numbers',
        by: 1,
      })
      const name = i === 0 ? clothName(result, cloth) : `From ${stretch.fromFlag ?? 'before'}`
      const size = i === 0 ? tableSize(cloth, measure) : ''
      const heads: Mark[] = [text(fit(name, wide - 1, small, 700), x, TOP - 8, small, 700)]
      if (size !== '') heads.push(text(fit(size, wide - 1, small, 500), x, TOP - 2.6, small, 500))
      on.parts.push({
        role: 'figure',
        alt: altOf(result, cloth, measure),
        marks: [...heads, ...drawn.marks, ...numbers(cloth, stretch, left)],
      })
      figures.push({ x, bottom: TOP + (stretch.to - stretch.from) * perUnit })
      x += wide + 7
    }
  }
  // the key of all maps, since a map page may have no room for one: below the pictures, or below the short ones at the right
  const rows = [
    ...new Map(
      result.cloths.flatMap((cloth) => keyRows(cloth, 'all', measure)).map((row) => [row.words, row]),
    ).values(),
  ]
  const key = figures
    .map((first, i) => {
      const y = Math.max(...figures.slice(i).map((each) => each.bottom)) + 8
      const width = FRAME.width - first.x
      return { y, width, ...keyMarks(rows, first.x, y, width, style, width > 105 ? 2 : 1) }
    })
    .find(({ y, width, height }) => width >= 60 && y + height <= 236)
  if (key === undefined) on = begin()
  const { marks } = key ?? keyMarks(rows, 0, 34, FRAME.width, style, 2)
  on.parts.push({ role: 'figure', alt: `Key: ${rows.map((row) => row.words).join('; ')}.`, marks })
  return leaves

  function begin(): Leaf {
    const title = leaves.length === 0 ? 'The whole cloth' : 'The whole cloth, goes on'
    const fresh = leaf(
      'whole',
      title,
      ['Every piece by its number; what is hatched is not used.'],
      { ...style, small },
      'SCALE 1:50',
    )
    fresh.parts.push(checkLine())
    leaves.push(fresh)
    return fresh
  }

  function rulerWide(cloth: CutCloth): number {
    const all = breaks(cloth).map((d) => textWidth(measure.bare((d.at - squaredEnd(cloth)) as Length), small, 500))
    return Math.max(8, ...all) + 3
  }

  function numbers(cloth: CutCloth, stretch: { from: number; to: number }, left: number): readonly Mark[] {
    const marks: Mark[] = []
    let last = Number.NEGATIVE_INFINITY
    for (const d of breaks(cloth)) {
      if (d.at < stretch.from || d.at > stretch.to) continue
      const y = TOP + (d.at - stretch.from) * perUnit
      if (Math.abs(y - last) < small * 1.5) continue
      last = y
      marks.push(line([left - 2, y, left - 0.6, y], WEIGHTS.thin))
      marks.push(text(measure.bare((d.at - squaredEnd(cloth)) as Length), left - 2.6, y + small / 2, small, 500, 'end'))
    }
    return marks
  }
}
