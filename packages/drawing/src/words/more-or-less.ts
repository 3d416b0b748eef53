import type { Box, CutCloth, Division, Outcome, Placed, Result } from '@lengthwise/planner'
import type { Length } from '@lengthwise/units'
import type { Measure } from '../measure.ts'
import { unbroken } from '../text.ts'
import { byNumber, endsInside, keyOf, measuredFromBefore } from './hands.ts'
import { labelsListed } from './list.ts'

type Direction = 'across' | 'along'

/**
 * The least a cloth must measure in one direction for every division to be made as it is told: what is measured keeps its
 * size, and what is left over on the other side may come to nothing.
 */
export function leastNeeded(cloth: CutCloth, direction: Direction): Length {
  const least = (box: Box): number => {
    const division = divisionOf(cloth, box)
    if (division === undefined || endsInside(division)) return extent(box, direction)
    const [before, after] = division.gives
    if (!parts(division, direction)) return Math.max(beside(before), beside(after))
    return measuredFromBefore(division, cloth)
      ? extent(before.box, direction) + leastOf(after)
      : leastOf(before) + extent(after.box, direction)
  }
  const leastOf = (side: Outcome): number => (side.kind === 'waste' || side.kind === 'remnant' ? 0 : least(side.box))
  // what is trimmed off needs no width of its own
  const beside = (side: Outcome): number => (side.kind === 'trim' ? 0 : leastOf(side))
  return least(wholeOf(cloth)) as Length
}

/** The pieces that come out too large where the cloth is wider or longer than on the map: they reach its far edge. */
function tooLarge(cloth: CutCloth, direction: Direction): readonly string[] {
  const taking = (box: Box): readonly string[] => {
    const division = divisionOf(cloth, box)
    if (division === undefined || endsInside(division))
      return cloth.placed.filter((p) => inside(p, box) && farEnd(p) === farEnd(box)).map((p) => p.label)
    const [before, after] = division.gives
    if (!parts(division, direction)) return [...taking(before.box), ...taking(after.box)]
    return taking(measuredFromBefore(division, cloth) ? after.box : before.box)
  }
  const farEnd = (b: Box): number => (direction === 'across' ? b.x + b.width : b.y + b.length)
  return byNumber(taking(wholeOf(cloth)))
}

/** What to do with the pieces that come out too large where cloth is wider or longer than on the map; '' where there are none. */
export function cutDown(result: Result, cloth: CutCloth, direction: Direction, measure: Measure): string {
  const large = tooLarge(cloth, direction)
  if (large.length === 0) return ''
  const pieces = cloth.placed.filter((p) => large.includes(p.label))
  const more = direction === 'across' ? 'Wider' : 'Longer'
  // what would be cut off holds the line on which the print meets the next panel
  if (pieces.some((p) => meetsAtFarEdge(result, p, direction))) return ` ${more}? Stop, and lay out again.`
  // what two finished edges of the cloth make is as large as the cloth
  if (pieces.every((p) => isFinishedByCloth(result, p, direction)))
    return ` ${more}? ${labelsListed(large)} will be too.`
  const edges = new Set(pieces.map((p) => (direction === 'across' ? p.edges.right : p.edges.end).kind))
  // a hem that is kept stays; a raw end is overcast or hidden anyway, where a selvedge is not
  const place = edges.has('kept-hem') ? 'edge without the hem' : direction === 'across' ? 'right' : 'far end'
  const overcast = edges.has('selvedge') ? ', and overcast there' : ''
  const sizes = new Set(pieces.map((p) => extent(p, direction)))
  const size = sizes.size === 1 ? measure.full([...sizes][0]!) : 'the size on the map'
  return unbroken(` ${more}? Cut ${labelsListed(large)} at the ${place} to ${size}${overcast}.`)
}

/** Are both edges of a piece finished ones of the cloth, neither sewn nor turned? */
function isFinishedByCloth({ seams }: Result, piece: Placed, direction: Direction): boolean {
  const { left, right, start, end } = piece.edges
  const kept = direction === 'across' ? [left, right] : [start, end]
  const sides = (direction === 'across') === piece.turned ? ['head', 'foot'] : ['left', 'right']
  const sewn = seams.some(({ a, b }) => sides.some((side) => [a, b].includes(`${piece.piece}#${side}`)))
  const turned = piece.marks.some((mark) => mark.kind === 'fold' && mark.runs !== direction)
  return kept.every(({ kind }) => kind !== 'cut') && !sewn && !turned
}

/** Is the print to match at a piece's far edge, the right one or the end as it lies? */
function meetsAtFarEdge({ seams }: Result, { piece, top }: Placed, direction: Direction): boolean {
  const turns = SIDES.indexOf(direction === 'across' ? 'right' : 'end') - SIDES.indexOf(top)
  const own = `${piece}#${OWN_EDGES[(turns + 4) % 4]}`
  return seams.some(({ a, b, match }) => match !== 'none' && (a === own || b === own))
}

// both from the top round to the right
const SIDES = ['start', 'right', 'end', 'left'] as const
const OWN_EDGES = ['head', 'right', 'foot', 'left'] as const

const wholeOf = (cloth: CutCloth): Box => ({ x: 0 as Length, y: 0 as Length, width: cloth.width, length: cloth.length })

const divisionOf = (cloth: CutCloth, box: Box): Division | undefined =>
  cloth.divisions.find((each) => keyOf(each.hand) === keyOf(box))

// does a division make what lies beside it narrower in this direction?
const parts = ({ runs }: Division, direction: Direction): boolean => (runs === 'along') === (direction === 'across')

const extent = (box: Box, direction: Direction): Length => (direction === 'across' ? box.width : box.length)

const inside = (a: Box, b: Box): boolean =>
  a.x >= b.x && a.y >= b.y && a.x + a.width <= b.x + b.width && a.y + a.length <= b.y + b.length
