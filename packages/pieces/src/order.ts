import type { Length } from '@lengthwise/units'
import type { Cloth } from './cloth.ts'

/** Everything the user asked for: what to sew, from which cloth. The plan file reads into this. */
export interface Order {
  readonly title: string
  /** as written in the plan, ISO 8601; never the clock */
  readonly date: string | null
  readonly measureIn: 'cm' | 'mm' | 'in'
  /** ISO 4217, such as EUR; null when no price is given */
  readonly currency: string | null
  readonly wash: 'before-cutting' | 'after-sewing' | 'none'
  readonly seam: Seam
  /** cut sizes round up to this; 0: to the exact unit */
  readonly markTo: Length
  readonly worthKeeping: { readonly width: Length; readonly length: Length }
  readonly items: readonly Item[]
  readonly cloths: readonly Cloth[]
}

/** `allowance` is the whole allowance on one edge, all turns and trims included. */
export interface Seam {
  readonly kind: 'plain' | 'french' | 'flat-felled'
  readonly allowance: Length
}

/** A hem: `depth` finished, turned once or twice; `turnedIn` is what goes under: 1 cm for single, `depth` for double unless given. */
export interface Hem {
  readonly depth: Length
  readonly turns: 1 | 2
  readonly turnedIn: Length
}

/** Edges of a piece as it lies on the bed: head at the pillow end. */
export type Edge = 'head' | 'foot' | 'left' | 'right'
export const EDGES: readonly Edge[] = ['head', 'foot', 'left', 'right']

/** What an edge of a piece must be made of. */
export type EdgeNeed =
  | { readonly kind: 'none' }
  | { readonly kind: 'selvedge' }
  | { readonly kind: 'kept-hem'; readonly depth: Length }

/** How a face wider than the cloth may be joined. */
export interface FaceSpec {
  /** names of cloths, any of which may serve */
  readonly cloth: readonly string[]
  readonly joined: 'any' | 'one-piece' | 'centre-and-sides' | 'centre-seam' | 'full-widths'
  readonly smallestPanel: Length
  /** full: the full usable width; any: every marking step down to the smallest panel; or a finished width */
  readonly centre: 'full' | 'any' | Length
  readonly crossJoins: number
  readonly selvedgeToSelvedge: boolean
  readonly lengthRuns: 'along' | 'across' | 'either'
  /** most seams inside the face; null: no limit */
  readonly mostSeams: number | null
  /** a strip across the face at one end, of another cloth where asked; `depth` finished */
  readonly band: { readonly at: 'head' | 'foot'; readonly depth: Length; readonly cloth: readonly string[] } | null
  /** the opening edge of a back made from the hems of a ready-made sheet */
  readonly zipEdge: {
    readonly kind: 'kept-hems'
    readonly finger: Length
    readonly lap: Length
    readonly stitching: Length
  } | null
}

/** `finished` is after sewing and washing; W across the bed. Pillowcases and cushions: W is the short side. */
export interface Size {
  readonly width: Length
  readonly length: Length
}

interface Common {
  /** how many of this item */
  readonly count: number
  /** printed on slips; empty: nothing */
  readonly for: string
  /** the name of the size it was read from, such as uk-double; null when typed */
  readonly sizeName: string | null
  /** for a cot or an infant: cautions and refusals follow */
  readonly cot: boolean
  readonly seam: Seam
  /** where the item stands in the plan, such as `make[0]`: the path of its problems */
  readonly path: string
}

export type Opening =
  | { readonly kind: 'none' }
  | {
      readonly kind: 'zip'
      readonly at: OpeningEdge /** lengths to hand; null: any sold */
      readonly zips: readonly Length[] | null
    }
  | {
      readonly kind: 'buttons' | 'snaps'
      readonly at: OpeningEdge
      readonly depth: Length
      readonly turnedIn: Length
      readonly spacing: Length
      readonly fromCorner: Length
    }
  | {
      readonly kind: 'ties'
      readonly at: OpeningEdge
      readonly hem: Hem
      readonly spacing: Length
      readonly fromCorner: Length
      readonly tieLength: Length
      readonly tieWidth: Length
    }
  | { readonly kind: 'flap'; readonly at: OpeningEdge; readonly depth: Length; readonly hem: Hem }
export type OpeningEdge = 'foot' | 'head' | 'left' | 'right'

export interface DuvetCover extends Common {
  readonly item: 'duvet-cover'
  readonly finished: Size
  readonly front: FaceSpec
  readonly back: FaceSpec
  readonly opening: Opening
  readonly cornerTies: {
    readonly count: 0 | 2 | 4
    readonly length: Length
    readonly width: Length /** ribbon or tape bought instead of cut from cloth */
    readonly bought: boolean
  }
  /** a reason given in the plan for ties on a cot item; null: none given */
  readonly tiesDespiteCaution: string | null
}

export interface Pillowcase extends Common {
  readonly item: 'pillowcase'
  readonly style: 'inside-flap' | 'flanged' | 'envelope' | 'open-end'
  readonly faces: 'one-piece' | 'separate' | 'any'
  readonly finished: Size
  /** inside-flap: depth of the flap; envelope: overlap of the two backs */
  readonly flap: Length
  readonly flange: Length
  /** hem at the opening */
  readonly hem: Hem
  /** open-end: a separate cuff, finished depth, with an optional narrow trim of another cloth; null: hemmed instead */
  readonly cuff: {
    readonly depth: Length
    readonly cloth: readonly string[]
    readonly trim: { readonly depth: Length; readonly cloth: readonly string[] } | null
  } | null
  /** the opening is a kept hem of the sheet */
  readonly openingEdge: EdgeNeed
  readonly cloth: readonly string[]
  readonly backCloth: readonly string[]
  readonly lengthRuns: 'along' | 'across' | 'either'
}

export interface FlatSheet extends Common {
  readonly item: 'flat-sheet'
  readonly finished: Size
  readonly hems: Readonly<Record<Edge, Hem | 'selvedge' | 'kept-hem'>>
  readonly face: FaceSpec
}

export interface FittedSheet extends Common {
  readonly item: 'fitted-sheet'
  readonly mattress: { readonly width: Length; readonly length: Length; readonly depth: Length }
  readonly tuck: Length
  readonly casing: Length
  /** cut: the corner squares come off; kept: folded and left in */
  readonly corners: 'cut' | 'kept'
  readonly elastic: {
    readonly where: 'all-round' | 'ends' | 'corners' /** elastic ÷ edge, in hundredths */
    readonly ratioPercent: number
  }
  readonly face: FaceSpec
}

export interface BedSkirt extends Common {
  readonly item: 'bed-skirt'
  /** top of the bed base */
  readonly base: Size
  readonly drop: Length
  /** hundredths: 250 is two and a half times */
  readonly fullnessPercent: number
  readonly style: 'gathered' | 'corner-pleats'
  readonly pleat: Length
  readonly hem: Hem
  readonly deck: FaceSpec
  readonly skirtCloth: readonly string[]
}

export interface Bolster extends Common {
  readonly item: 'bolster'
  readonly diameter: Length
  readonly length: Length
  readonly ends: 'circles' | 'tied'
  /** tied: how far the cloth reaches beyond each end */
  readonly tieEnd: Length
  readonly cloth: readonly string[]
}

/** Square or oblong cushion, or sham with a flange. */
export interface Cushion extends Common {
  readonly item: 'cushion' | 'sham'
  readonly finished: Size
  readonly back: 'envelope' | 'zip' | 'one-piece-envelope'
  readonly overlap: Length
  readonly flange: Length
  readonly hem: Hem
  readonly cloth: readonly string[]
  readonly backCloth: readonly string[]
}

export interface Throw extends Common {
  readonly item: 'throw'
  readonly finished: Size
  readonly hem: Hem
  readonly face: FaceSpec
}

export interface QuiltBack extends Common {
  readonly item: 'quilt-back'
  readonly quilt: Size
  /** added at each side */
  readonly overhang: Length
  readonly face: FaceSpec
}

/** Binding, tie or ruffle strips, joined from several where the run is longer than the cloth. */
export interface Strips extends Common {
  readonly item: 'strips'
  readonly name: string
  /** cut width of the strip */
  readonly width: Length
  /** joined length of one run, allowances at its ends included */
  readonly run: Length
  readonly runs: 'along' | 'across' | 'either'
  readonly cloth: readonly string[]
}

export interface Rectangle extends Common {
  readonly item: 'rectangle'
  readonly name: string
  readonly size:
    | { readonly cut: Size }
    | { readonly finished: Size; readonly edges: Readonly<Record<Edge, Hem | 'seam' | 'raw'>> }
  readonly cloth: readonly string[]
  /** item: all pieces of a copy from one cloth, which is so for one piece; none: each as it comes; all: every copy from one cloth */
  readonly sameCloth: 'item' | 'none' | 'all'
  readonly lengthRuns: 'along' | 'across' | 'either'
  readonly needs: Readonly<Record<Edge, EdgeNeed>>
}

export type Item =
  | DuvetCover
  | Pillowcase
  | FlatSheet
  | FittedSheet
  | BedSkirt
  | Bolster
  | Cushion
  | Throw
  | QuiltBack
  | Strips
  | Rectangle
