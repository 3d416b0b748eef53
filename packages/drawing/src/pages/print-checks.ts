import type { CutCloth, Result } from '@lengthwise/planner'
import type { Length } from '@lengthwise/units'
import { beforeShrinking } from '@lengthwise/units'
import { clothTitle } from '../cloth/names.ts'
import type { Measure } from '../measure.ts'
import { counted } from '../words/list.ts'
import type { Runs } from './leaf.ts'

/** What is seen of the print before money is spent: the repeat, and that a print laid either way up has no top. */
export function printBeforeBuying(result: Result, measure: Measure): readonly Runs[] {
  return oneOfEach(result.cloths).flatMap((cloth): readonly Runs[] => {
    const name = clothTitle(cloth.name)
    const repeat: Runs[] =
      cloth.repeat === 0 || cloth.buy === null
        ? []
        : [
            [
              [`Measure the repeat of the ${name} along the selvedge, over several, before buying: one is `, 500],
              [measure.full(repeatAsSold(result, cloth)), 700],
              ['. If not, stop, and lay out again.', 500],
            ],
          ]
    const top: Runs[] =
      cloth.cloth.print.way === 'two-way'
        ? [[[`Has the print of the ${name} a top? Stop, and lay out again: the plan takes it to have none.`, 500]]]
        : []
    return [...repeat, ...top]
  })
}

/** What is seen of the print on the table: the repeat as the map counts it, and where the top lies. */
export function printAtTheTable(result: Result, measure: Measure): readonly Runs[] {
  const cloths = oneOfEach(result.cloths)
  const repeats = cloths
    .filter(({ repeat }) => repeat > 0)
    .map((cloth): Runs => {
      const { repeat, name } = cloth
      const n = repeatsCounted(result, cloth)
      const again = `Measure the repeat of the ${clothTitle(name)}${cloth.buy === null ? '' : ' again'}`
      if (n === 0)
        return [
          [`${again}, over several: one is `, 500],
          [measure.full(repeat), 700],
          [OR_STOP, 500],
        ]
      // of what the repeats are off together nothing can be taken up: pieces have no length to spare
      const off = Math.max(result.order.markTo, ONE_MILLIMETRE) as Length
      return [
        [`${again}: ${n === 1 ? 'one is' : `${counted(n)} are`} `, 500],
        [measure.full((n * repeat) as Length), 700],
        [` on this map. More than ${measure.full(off)} off, and the seams do not match: stop, and lay out again.`, 500],
      ]
    })
  const tops = cloths
    .filter(({ cloth }) => cloth.print.way === 'one-way')
    .map(({ name, cloth, from }): Runs => {
      const top = TOPS[cloth.print.top]
      // where nothing on the cloth has a place from its cut end, either end may be the first
      const either = from === 'bolt' && cloth.flaws.length === 0 && cloth.print.motif === null
      const otherwise = either ? 'If not, turn the cloth end for end' : 'If not, stop, and lay out again'
      return [
        [`The print of the ${clothTitle(name)} has its top toward the ${top}. Look before you cut. ${otherwise}.`, 500],
      ]
    })
  return [...repeats, ...tops]
}

const OR_STOP = ' on this map. If not, stop, and lay out again.'
const ONE_MILLIMETRE = 320
const TOPS = { 'cut-end': 'cut end', bolt: 'bolt end', left: 'left selvedge', right: 'right selvedge' } as const

const oneOfEach = (cloths: readonly CutCloth[]): readonly CutCloth[] =>
  cloths.filter((cloth) => cloths.find((other) => other.name === cloth.name) === cloth)

function repeatAsSold({ order }: Result, { cloth, repeat }: CutCloth): Length {
  const { print, shrinks } = cloth
  if (print.repeatMeasured === 'in-shop') return print.repeat
  return order.wash === 'before-cutting' ? beforeShrinking(repeat, shrinks.along) : repeat
}

/** Whole repeats between the two farthest panels that are to match at a seam; 0 where none are. */
function repeatsCounted({ seams, cloths }: Result, { name, repeat }: CutCloth): number {
  const starts = new Map(cloths.filter((c) => c.name === name).flatMap((c) => c.placed.map((p) => [p.piece, p.y])))
  const apart = seams
    .filter(({ match }) => match !== 'none')
    .map(({ a, b }) => [a, b].map((end) => starts.get(end.slice(0, end.lastIndexOf('#')))))
    .map(([a, b]) => (a === undefined || b === undefined ? 0 : Math.abs(a - b)))
  return Math.floor(Math.max(0, ...apart) / repeat)
}
