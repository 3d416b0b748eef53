import type { Length, Problem } from '@lengthwise/units'
import type { Cloth, ClothOnTable } from './cloth.ts'
import type { Item, Order, Size } from './order.ts'
import type { Way } from './way.ts'

/** One copy of an item: `duvet-cover-2`; items are numbered through the whole plan by kind, rectangles and strips by name. */
export interface Copy {
  readonly id: string
  readonly item: Item
  /** index into `order.items` */
  readonly itemIndex: number
}

/** Every way to make an item from the cloths as they lie, and why others were refused. */
export interface Ways {
  readonly ways: readonly Way[]
  readonly refused: readonly RefusedWay[]
  /** true when the list was cut short (the best by area and seams are kept): nothing is then 'proved' over all ways */
  readonly capped: boolean
}
export interface RefusedWay {
  readonly words: string
  readonly why: string
  /** the cloth that cannot serve */
  readonly cloth: string
  /** where it is too small; across where the reason is not one of size */
  readonly direction: 'across' | 'along'
  /** by how much, before washing; null when it is not known, or not a matter of size */
  readonly short: Length | null
  /** a wider cloth, before washing, from which the item can be made so; null when no width helps */
  readonly widthThatWouldDo: Length | null
}

/** What comes out when the pieces are sewn by their seams and hems, and shrunk. */
export interface SewnUp {
  readonly finished: Size
  readonly asked: Size
  /** empty when the finished size is the one asked for or more by less than the marking step, and every seam's edges are equal and shrink alike */
  readonly faults: readonly Problem[]
}

/** A named size with where it comes from. */
export interface NamedSize {
  readonly name: string
  readonly region: string
  /** what is measured; the same name may stand for several kinds */
  readonly kind: 'mattress' | 'duvet' | 'pillow' | 'pillowcase' | 'flat-sheet'
  readonly words: string
  readonly size: Size
  /** for a cot or a young child: an item of this size is a cot item */
  readonly cot: boolean
  /** a published page, a standard, or 'common practice' */
  readonly source: string
  /** where sources disagree; empty: nothing known */
  readonly disagreement: string
}

/** A remark with a closed code: cautions concern safety, the rest is good to know. */
export interface Remark {
  readonly code: string
  readonly text: string
}

/* The public functions of this package, for those who build against it:
   copiesOf(order: Order): readonly Copy[]
   onTable(order: Order, cloth: Cloth, widthIndex: number): ClothOnTable
   waysToMake(order: Order, item: Item, tables: ReadonlyMap<string, ClothOnTable>): Ways
   sewUp(order: Order, item: Item, way: Way): SewnUp
   checkOrder(order: Order): readonly Problem[]
   cautionsFor(order: Order): readonly Remark[]      goodToKnowFor(order: Order): readonly Remark[]
   NAMED_SIZES: readonly NamedSize[]                  sizeNamed(name: string, item?: Item['item']): NamedSize | undefined */
export type PiecesApi = {
  copiesOf(order: Order): readonly Copy[]
  onTable(order: Order, cloth: Cloth, widthIndex: number): ClothOnTable
  waysToMake(order: Order, item: Item, tables: ReadonlyMap<string, ClothOnTable>): Ways
  sewUp(order: Order, item: Item, way: Way): SewnUp
  checkOrder(order: Order): readonly Problem[]
  cautionsFor(order: Order): readonly Remark[]
  goodToKnowFor(order: Order): readonly Remark[]
}
