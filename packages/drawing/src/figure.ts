import type { CutCloth, Result } from '@lengthwise/planner'
import { box } from './box.ts'
import { drawStretch } from './cloth/draw.ts'
import { clothName, tableSize } from './cloth/names.ts'
import { rulerWidth } from './cloth/ruler.ts'
import { drawSmall } from './cloth/small.ts'
import { OVERRUN, screenStyle } from './cloth/style.ts'
import { wholeStretch } from './cloth/view.ts'
import { measureIn } from './measure.ts'
import type { Figure, FigureOptions } from './scene.ts'

/** One cloth as a picture for the screen: the map of the paper at another size, or a small picture without flags. */
export function clothFigure(result: Result, cloth: CutCloth, options: FigureOptions): Figure {
  const measure = measureIn(options.unit ?? result.order.measureIn)
  const style = screenStyle(options.smallestCapital)
  const perUnit = options.mmPerMetre / 320_000
  const stretch = wholeStretch(cloth)
  const alt = altOf(result, cloth, measure)
  if (options.full === false) {
    const edge = 0.5 * style.by
    const drawn = drawSmall(cloth, {
      stretch,
      left: edge,
      top: edge,
      perUnit,
      turned: true,
      capital: style.small,
      labels: 'names',
      by: style.by,
    })
    return {
      width: cloth.length * perUnit + 2 * edge,
      height: cloth.width * perUnit + 2 * edge,
      alt,
      marks: drawn.marks,
      spots: drawn.spots,
    }
  }
  const left = rulerWidth(cloth, measure, style)
  const above = style.small * 1.6 + 4 * style.by
  const wide = cloth.width * perUnit
  const tall = cloth.length * perUnit
  const draw = (margin: number) =>
    drawStretch(cloth, {
      view: { stretch, left, top: above, perUnit },
      measure,
      style,
      rulerLeft: 0,
      rightLimit: left + wide + OVERRUN * style.by,
      margins: margin === 0 ? [] : [box(left + wide + 5 * style.by, above, margin - 5 * style.by, tall)],
      done: options.done ?? null,
      goesOn: [],
      taken: [],
    })
  // names go beside the cloth where a piece is too small for its number
  const beside = draw(40 * style.by)
  const margin = beside.bare ? 40 * style.by : 0
  const drawn = margin > 0 ? beside : draw(0)
  return {
    width: left + wide + Math.max(margin, (OVERRUN + 0.5) * style.by),
    height: above + tall + style.small * 1.8 + OVERRUN * style.by,
    alt,
    marks: drawn.marks,
    spots: drawn.spots,
  }
}

/** What the picture shows, for those who hear it: all that lies between two places along the cloth. */
export function altOf(
  result: Result,
  cloth: CutCloth,
  measure: ReturnType<typeof measureIn>,
  { from, to }: { readonly from: number; readonly to: number } = wholeStretch(cloth),
): string {
  const shown = (b: { readonly y: number; readonly length: number }): boolean => b.y < to && b.y + b.length > from
  const pieces = cloth.placed.filter(shown).map((p) => `${p.label} ${p.words} ${measure.size(p.width, p.length)}`)
  const remnants = cloth.remnants
    .filter(shown)
    .map((r) => `${r.name} ${measure.size(r.width, r.length)}, left over and worth keeping`)
  return `${clothName(result, cloth)}, ${tableSize(cloth, measure)}. ${[...pieces, ...remnants].join('; ')}.`
}
