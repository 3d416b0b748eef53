import type { Length, Price, Share } from '@lengthwise/units'

/** What an edge of a cloth is. A selvedge or a hem can stay a finished edge of a piece. */
export type ClothEdge =
  | { readonly kind: 'raw' }
  | { readonly kind: 'selvedge' }
  | { readonly kind: 'hem'; readonly depth: Length }

/**
 * Sides of a cloth as it lies right side up: head and foot are the ends (head at y = 0), left and right the long sides.
 */
export interface ClothEdges {
  readonly head: ClothEdge
  readonly foot: ClothEdge
  readonly left: ClothEdge
  readonly right: ClothEdge
}
export type Side = keyof ClothEdges

/** Where the top of a one-way print faces. */
export type Top = 'cut-end' | 'bolt' | 'left' | 'right'

export interface Print {
  readonly way: 'plain' | 'two-way' | 'one-way'
  /** only read when `way` is one-way */
  readonly top: Top
  /** along the selvedge; 0: none */
  readonly repeat: Length
  readonly acrossRepeat: Length
  readonly match: 'none' | 'straight' | 'half-drop'
  /** in-shop: the repeat shrinks with the cloth when it is washed before cutting */
  readonly repeatMeasured: 'on-the-table' | 'in-shop'
  /** how far inside the selvedge the print meets; joined seams lie on it */
  readonly matchLine: Length
  /** a motif is centred on the main panel of each face: distance from the cut end to the first one, if known */
  readonly motif: { readonly first: Length | null } | null
}

/** A place to keep clear of, as measured before washing, from the left and from the head end (or the cut end). */
export interface Flaw {
  readonly x: Length
  readonly y: Length
  readonly width: Length
  readonly length: Length
  /** on which one of `count` (1 is the first); null: on each */
  readonly on: number | null
}

export interface Cloth {
  readonly name: string
  readonly from: 'bolt' | 'sheet' | 'remnant'
  /** bolt: the widths the shop has, before washing, narrowest need not come first; empty for sheet and remnant */
  readonly widths: readonly { readonly width: Length; readonly price: Price | null }[]
  /** bolt: what a width costs that has no price of its own; null: not known */
  readonly price: Price | null
  /** shop's step; 0: to the exact unit */
  readonly soldBy: Length
  readonly smallestSale: Length
  /** bolt: length already owned, before washing */
  readonly have: Length
  /** bolt: false when no more than `have` can be had */
  readonly sold: boolean
  /** sheet, remnant: as measured, before washing; null for a bolt */
  readonly size: { readonly width: Length; readonly length: Length } | null
  /** how many such sheets or remnants; 1 for a bolt */
  readonly count: number
  readonly edges: ClothEdges
  /** hems that must stay finished edges */
  readonly mustKeep: readonly Side[]
  readonly shrinks: { readonly along: Share; readonly across: Share }
  /** trimmed off each side */
  readonly unusedSelvedge: Length
  /** trimmed off each end, for squaring */
  readonly spareEachEnd: Length
  readonly flaws: readonly Flaw[]
  readonly print: Print
  readonly divideBy: 'tearing' | 'thread' | 'shears'
  /** lost at each torn edge */
  readonly lostPerTear: Length
}

/**
 * A cloth as it lies on the table, at one width: shrunk when it is washed before cutting, rounded down to a unit.
 */
export interface ClothOnTable {
  readonly cloth: Cloth
  /** index into `cloth.widths`; -1 for sheet and remnant */
  readonly widthIndex: number
  readonly width: Length
  /** null: open (a bolt) */
  readonly length: Length | null
  /** without unused selvedges: joined panels and full widths count on this */
  readonly usableWidth: Length
  /** true when `unusedSelvedge` is 0 and both long edges are selvedges */
  readonly selvedges: { readonly left: boolean; readonly right: boolean }
  /** hem depths and edges on the table, shrunk where that applies */
  readonly edges: ClothEdges
  readonly repeat: Length
  readonly acrossRepeat: Length
  readonly matchLine: Length
}
