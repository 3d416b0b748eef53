import type { Order, Remark } from '@lengthwise/pieces'
import { cm, printLength } from '@lengthwise/units'
import type { CutCloth, FinishedRow } from './result.ts'

/** Narrower strips tear badly (quiltingboard 6120: under 2 in). */
const NARROW = cm(5)

/** What the layout itself brings up, each at most once. */
export function remarksOn(cloths: readonly CutCloth[]): readonly Remark[] {
  const remarks: Remark[] = []
  const narrow = cloths
    .filter((cloth) => cloth.cloth.divideBy === 'tearing')
    .flatMap((cloth) => cloth.placed)
    .filter((piece) => Math.min(piece.width, piece.length) < NARROW)
  if (narrow.length > 0)
    remarks.push({
      code: 'narrow-strips',
      text: `Strips under 5 cm (2 in) tear badly: draw a thread for ${narrow.map((p) => p.label).join(', ')} and cut along it.`,
    })
  const crosswise = cloths.flatMap((cloth) => cloth.placed).filter((piece) => piece.crosswise)
  if (crosswise.length > 0)
    remarks.push({
      code: 'crosswise',
      text: `Crosswise to the rest of the same thing ${crosswise.length === 1 ? 'lies' : 'lie'} ${crosswise.map((p) => p.label).join(', ')}: on striped cloth the stripes cross. Give the print a top (way: one-way) and all run one way.`,
    })
  if (cloths.some((cloth) => cloth.cloth.lostPerTear > 0))
    remarks.push({
      code: 'torn-edges',
      text: 'Torn pieces are larger than marked by what is lost at their torn edges: trim the frayed threads off to the size written on them.',
    })
  return remarks
}

/** What comes out smaller than asked, because the cloth itself makes its edges and shrinks. */
export function remarksOnSizes(order: Order, finished: readonly FinishedRow[]): readonly Remark[] {
  const say = (l: FinishedRow['width']): string => printLength(l, order.measureIn, { places: 1 })
  const words = finished.flatMap((row) =>
    (['width', 'length'] as const)
      .filter((side) => row[side] < row.asked[side])
      .map((side) => {
        const dimension = side === 'width' ? 'wide' : 'long'
        return `${row.item.replaceAll('-', ' ')} finishes ${say(row[side])} ${dimension}, as the cloth comes after the wash: ${say(row.asked[side])} was asked.`
      }),
  )
  return words.length === 0 ? [] : [{ code: 'as-the-cloth-comes', text: words.join(' ') }]
}
