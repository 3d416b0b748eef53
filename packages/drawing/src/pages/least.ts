import type { CutCloth, Result } from '@lengthwise/planner'
import type { Length } from '@lengthwise/units'
import { beforeShrinking, roundUpTo } from '@lengthwise/units'
import { clothTitle } from '../cloth/names.ts'
import type { Measure } from '../measure.ts'
import { counted } from '../words/list.ts'
import { cutDown, leastNeeded } from '../words/more-or-less.ts'

type Size = { readonly width: Length; readonly length: Length }

/** Sheets and remnants of one name and size, and the least they must measure for all that is cut from them. */
export function ownedSizes(
  result: Result,
  beforeWash: boolean,
): readonly { readonly alike: readonly CutCloth[]; readonly words: string; readonly size: Size }[] {
  const owned = result.cloths.filter((each) => each.buy === null)
  const like = (cloth: CutCloth): readonly CutCloth[] =>
    owned.filter((o) => o.name === cloth.name && o.width === cloth.width && o.length === cloth.length)
  return owned
    .filter((cloth) => like(cloth)[0] === cloth)
    .map((cloth) => {
      // to what a tape finds, never more than is there
      const least = (direction: 'across' | 'along', most: Length): Length => {
        const all = like(cloth).map((each) => leastNeeded(each, direction))
        return Math.min(roundUpTo(Math.max(...all) as Length, result.order.markTo), most) as Length
      }
      const needed = { width: least('across', cloth.width), length: least('along', cloth.length) }
      const words = `${clothTitle(cloth.name)}${beforeWash ? '' : ' again'}${several(owned, cloth)}`
      return { alike: like(cloth), words, size: beforeWash ? asMeasured(result, cloth, needed) : needed }
    })
}

/** How deep the hems must be that pieces keep, of sheets cut from one name: '10 cm at the head, 2.5 cm at the foot'; '' for none. */
export function keptHems(alike: readonly CutCloth[], measure: Measure): string {
  const words = alike.flatMap(({ placed }) =>
    placed.flatMap(({ edges }) =>
      HEM_SIDES.flatMap(([side, where]) => {
        const edge = edges[side]
        return edge.kind === 'kept-hem' ? [`${measure.full(edge.depth)} at the ${where}`] : []
      }),
    ),
  )
  return [...new Set(words)].join(', ')
}

const HEM_SIDES = [
  ['start', 'head'],
  ['end', 'foot'],
  ['left', 'left'],
  ['right', 'right'],
] as const

/** What must be measured before the wash, so that enough is left after it. */
function asMeasured(result: Result, { cloth }: CutCloth, { width, length }: Size): Size {
  if (cloth.size === null || result.order.wash !== 'before-cutting') return { width, length }
  const { along, across } = cloth.shrinks
  const before = (l: Length, share: typeof along, most: Length): Length =>
    Math.min(roundUpTo(beforeShrinking(l, share), result.order.markTo), most) as Length
  return { width: before(width, across, cloth.size.width), length: before(length, along, cloth.size.length) }
}

function several(sheets: readonly CutCloth[], cloth: CutCloth): string {
  const n = sheets.filter((other) => other.name === cloth.name).length
  return n === 1 ? '' : n === 2 ? ', both of them' : `, all ${counted(n)}`
}

/** What to do where a sheet or a remnant is larger than on the map. */
export const moreThan = (result: Result, alike: readonly CutCloth[], measure: Measure): string =>
  alike
    .flatMap((cloth) => (['across', 'along'] as const).map((direction) => cutDown(result, cloth, direction, measure)))
    .join('') || ' More is left over.'

/** The width in the shop that this map needs: as wide as it must lie on the table, and what the wash takes. */
export function widthToBuy(result: Result, cloth: CutCloth): Length {
  const { wash, markTo } = result.order
  const needed = widthNeeded(cloth)
  const asSold = wash === 'before-cutting' ? beforeShrinking(needed, cloth.cloth.shrinks.across) : needed
  return Math.min(roundUpTo(asSold, markTo), cloth.buy!.width) as Length
}

/** What the layout takes along the cloth: spare at both ends and the laid length. */
export const lengthNeeded = (cloth: CutCloth): Length => (cloth.proof.length + 2 * cloth.cloth.spareEachEnd) as Length

/** What is over of the length on the table beside what is laid, for squaring both ends. */
export const spareOf = ({ length: long, proof }: CutCloth): Length => (long - proof.length) as Length

export const widthNeeded = (cloth: CutCloth): Length => leastNeeded(cloth, 'across')
