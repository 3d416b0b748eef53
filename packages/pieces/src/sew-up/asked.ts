import { length } from '@lengthwise/units'
import { circumference } from '../items/circle.ts'
import type { Hem, Item, Size } from '../order.ts'

/** What the sewn item is held against. */
export interface Asked {
  /** the finished size of the plan, width and length as the pieces have them */
  readonly size: Size
  /** what is sewn reaches so far beyond that size on every side: a flange, the drop and tuck of a fitted sheet */
  readonly beyond: number
  /** the size asked for is a cut size: nothing is taken off for shrinking */
  readonly asCut: boolean
  /** which pieces belong to what is measured */
  measures(piece: string): boolean
}

/** All pieces that are sewn to others: loose ones, such as ties, are left out. */
export const everyPiece = (): boolean => true

/** Null where an item has no size of its own to be held against. */
export function askedOf(item: Item): Asked | null {
  const all = { beyond: 0, asCut: false, measures: everyPiece }
  switch (item.item) {
    case 'duvet-cover':
    case 'flat-sheet':
    case 'throw':
      return { ...all, size: item.finished }
    // their pieces have the short side as width, as the plan does
    case 'pillowcase':
      return { ...all, size: item.finished, beyond: item.style === 'flanged' ? item.flange : 0 }
    case 'cushion':
    case 'sham':
      return { ...all, size: item.finished, beyond: item.flange }
    case 'fitted-sheet': {
      const { width, length, depth } = item.mattress
      return { ...all, size: { width, length }, beyond: depth + item.tuck }
    }
    case 'quilt-back':
      return {
        ...all,
        size: {
          width: length(item.quilt.width + 2 * item.overhang),
          length: length(item.quilt.length + 2 * item.overhang),
        },
      }
    case 'rectangle':
      return 'cut' in item.size ? { ...all, size: item.size.cut, asCut: true } : { ...all, size: item.size.finished }
    case 'bed-skirt':
      return { ...all, size: item.base, measures: (piece) => piece.startsWith('/deck') }
    case 'strips':
      return { ...all, size: { width: item.width, length: item.run }, asCut: true }
    // round the body and, for tied ends, on to the ties
    case 'bolster': {
      const ends = item.ends === 'tied' ? 2 * (item.diameter + item.tieEnd) : 0
      const size = { width: circumference(item.diameter), length: length(item.length + ends) }
      return { ...all, size, measures: (piece) => piece === '/body' }
    }
  }
}

/** What may lie beyond a fold at the edge of a piece: the hems and plackets asked for. Null where it is not known. */
export function turnsOf(item: Item): readonly number[] | null {
  const take = (hem: Hem): number => hem.depth + hem.turnedIn
  switch (item.item) {
    case 'throw':
      return [take(item.hem)]
    case 'flat-sheet':
      return Object.values(item.hems).flatMap((hem) => (typeof hem === 'object' ? [take(hem)] : []))
    case 'rectangle':
      return 'cut' in item.size
        ? []
        : Object.values(item.size.edges).map((edge) =>
            typeof edge === 'object' ? take(edge) : edge === 'seam' ? item.seam.allowance : 0,
          )
    case 'duvet-cover': {
      const { opening } = item
      if (opening.kind === 'buttons' || opening.kind === 'snaps') return [opening.depth + opening.turnedIn]
      return opening.kind === 'ties' || opening.kind === 'flap' ? [take(opening.hem)] : []
    }
    default:
      return null
  }
}
