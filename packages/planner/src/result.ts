import type { Cloth, ClothEdge, Mark, Order, Remark } from '@lengthwise/pieces'
import type { Length, Money } from '@lengthwise/units'

/** The whole answer to a plan, checked. The layout file is this in millimetres; the drawing and the page read it as it is. */
export interface Result {
  readonly order: Order
  /** cannot-be-cut: `missing` says what is short; cloths, pieces and so on are then empty */
  readonly status: 'laid' | 'cannot-be-cut'
  /** true when a clock or a hand ended the run */
  readonly timed: boolean
  readonly proof: PlanProof
  readonly cloths: readonly CutCloth[]
  readonly widths: readonly WidthRow[]
  readonly missing: readonly Missing[]
  readonly buy: readonly BuyLine[]
  readonly pieces: readonly PieceRow[]
  readonly seams: readonly SeamRow[]
  readonly finished: readonly FinishedRow[]
  readonly sewing: readonly SewingStep[]
  readonly cautions: readonly Remark[]
  readonly goodToKnow: readonly Remark[]
}

export interface PlanProof {
  readonly status: 'proved' | 'best-found' | 'stopped'
  readonly objective: 'cost' | 'area'
  /** Money for cost, square units (bigint) for area */
  readonly value: bigint
  readonly bound: bigint
  readonly by: 'area' | 'bars' | 'exhausted'
}

export interface Box {
  readonly x: Length
  readonly y: Length
  readonly width: Length
  readonly length: Length
}

/** One bolt length, sheet or remnant with what is cut from it. x = 0 is its true left edge, y = 0 its cut end or head hem. */
export interface CutCloth {
  readonly cloth: Cloth
  readonly name: string
  readonly from: Cloth['from']
  /** 1, 2 … when several sheets of one name are used */
  readonly piece: number
  /** `piece` of the first cloth of its name that is cut alike and has the same flags; its own where it is the first */
  readonly cutLike: number
  readonly width: Length
  readonly length: Length
  readonly usable: Box
  readonly edges: {
    readonly left: ClothEdge
    readonly right: ClothEdge
    readonly start: ClothEdge
    readonly end: ClothEdge
  }
  /** bought cloth: width and length as sold; null for owned cloth */
  readonly buy: { readonly width: Length; readonly length: Length; readonly cost: Money | null } | null
  readonly proof: {
    readonly status: 'proved' | 'best-found' | 'stopped'
    readonly length: Length
    readonly bound: Length
    readonly by: 'area' | 'longest' | 'wide' | 'sides' | 'bars' | 'scales' | 'exhausted'
    readonly certificate:
      | { readonly prices: readonly number[]; readonly capacity: number }
      | { readonly across: readonly number[]; readonly along: readonly number[] }
      | null
  }
  /** area in square units */
  readonly notUsed: { readonly percent: number; readonly area: number; readonly keepPercent: number }
  readonly placed: readonly Placed[]
  readonly divisions: readonly Division[]
  readonly trims: readonly Box[]
  readonly remnants: readonly Remnant[]
  readonly waste: readonly Box[]
  /** repeat of the print along the cloth on the table; 0: none */
  readonly repeat: Length
}

export type PlacedEdge =
  | { readonly kind: 'cut' }
  | { readonly kind: 'selvedge' }
  | { readonly kind: 'kept-hem'; readonly depth: Length }

export interface Placed extends Box {
  /** as `PieceRow.piece` */
  readonly piece: string
  /** the number on the map: '1', '2' … through all cloths */
  readonly label: string
  /** 'Front, centre' and 'cover 1', both short */
  readonly words: string
  readonly whose: string
  /** its length lies across the cloth */
  readonly turned: boolean
  /** where the edge lies that is uppermost in use: the head, or the long side of a pillow */
  readonly top: 'start' | 'end' | 'left' | 'right'
  /** it lies across the other pieces of the same thing on this cloth: stripes would cross */
  readonly crosswise?: true
  /** position in the print's repeat of its start edge; null without a repeat */
  readonly phase: Length | null
  /** by the cloth's axes, as it lies */
  readonly edges: {
    readonly left: PlacedEdge
    readonly right: PlacedEdge
    readonly start: PlacedEdge
    readonly end: PlacedEdge
  }
  /** marks as they lie, from the piece's own left and start corner */
  readonly marks: readonly Mark[]
}

/** One division of the rectangle in hand, right across it, in the order done. */
export interface Division {
  readonly n: number
  /** T1, T2 … for tears and drawn threads, C1, C2 … for shears */
  readonly flag: string
  readonly how: 'tear' | 'shears' | 'thread' | 'shears-through-hem-then-tear'
  readonly runs: 'across' | 'along'
  readonly at: Length
  readonly from: Length
  readonly to: Length
  /** the rectangle being divided */
  readonly hand: Box
  /** measured from an edge that exists at that moment */
  readonly measure: { readonly distance: Length; readonly from: MeasuredFrom }
  /** what lies before (towards start or left) and after the division */
  readonly gives: readonly [Outcome, Outcome]
}

export type MeasuredFrom =
  | {
      readonly kind: 'cloth-edge'
      readonly edge:
        | 'cut-end'
        | 'bolt-end'
        | 'head-hem'
        | 'foot-hem'
        | 'head-end'
        | 'foot-end'
        | 'left-selvedge'
        | 'right-selvedge'
        | 'left-hem'
        | 'right-hem'
        | 'left-edge'
        | 'right-edge'
    }
  | { readonly kind: 'division'; readonly flag: string }

/** What a part is: a finished piece, a remnant to keep, waste, trim, or a part still to be divided. */
export type Outcome =
  | { readonly kind: 'piece'; readonly label: string; readonly box: Box }
  | { readonly kind: 'remnant'; readonly name: string; readonly box: Box }
  | { readonly kind: 'waste' | 'trim'; readonly box: Box }
  | {
      readonly kind: 'part'
      readonly labels: readonly string[]
      readonly remnants: readonly string[]
      readonly box: Box
    }

export interface Remnant extends Box {
  /** R1, R2 … through all cloths */
  readonly name: string
  readonly wouldMake: readonly string[]
}

export interface WidthRow {
  readonly cloth: string
  readonly width: Length
  readonly possible: boolean
  readonly buyLength: Length | null
  /** square units, width as sold */
  readonly area: number | null
  readonly cost: Money | null
  readonly notUsedPercent: number | null
  readonly keepPercent: number | null
  readonly seams: number | null
  readonly status: 'proved' | 'best-found' | 'stopped' | null
  readonly chosen: boolean
  /** why it cannot serve, and what would */
  readonly why: string | null
  readonly enoughFrom: Length | null
  /** the layout at this width, for drawing widths side by side; null when impossible */
  readonly layout: CutCloth | null
}

export interface Missing {
  readonly cloth: string
  readonly width: Length | null
  readonly short: Length | null
  readonly direction: 'across' | 'along'
  /** a sentence that says what would do */
  readonly words: string
}

export interface BuyLine {
  readonly what: 'cloth' | 'zip' | 'buttons' | 'snaps' | 'cord' | 'tape' | 'elastic' | 'thread'
  readonly name: string
  /** length units for unit mm, a count for unit piece */
  readonly quantity: number
  readonly unit: 'mm' | 'piece'
  readonly cost: Money | null
}

export interface PieceRow {
  readonly piece: string
  readonly item: string
  readonly label: string
  readonly words: string
  readonly cloth: string
  readonly cutWidth: Length
  readonly cutLength: Length
  readonly marks: readonly Mark[]
}

export interface SeamRow {
  /** 'duvet-cover-1/front/centre#left' */
  readonly a: string
  readonly b: string
  readonly length: Length
  readonly allowanceA: Length
  readonly allowanceB: Length
  readonly lap: Length
  readonly match: 'none' | 'straight' | 'half-drop'
}

export interface FinishedRow {
  readonly item: string
  readonly width: Length
  readonly length: Length
  readonly asked: { readonly width: Length; readonly length: Length }
  readonly form: Form | null
  /** the plan gives the size of the cut piece: what is sewn to it is not counted */
  readonly asCut: boolean
}

/** What the finished size leaves out: a flange on every side, how far a skirt hangs, the depth of a mattress, how thick a bolster is. */
export interface Form {
  readonly kind: 'flange' | 'drop' | 'depth' | 'diameter'
  readonly size: Length
}

export interface SewingStep {
  readonly step: number
  readonly item: string
  readonly text: string
  readonly seamLength: Length
}

/** Effort: quick answers at once, usual is the default, thorough keeps looking. */
export interface PlanOptions {
  readonly effort?: 'quick' | 'usual' | 'thorough'
  /** polled; true ends the run with the best so far and marks it timed */
  readonly stop?: () => boolean
  readonly onProgress?: (progress: Progress) => void
  /** a complete, checked result each time a better one is known */
  readonly onBetter?: (result: Result) => void
  /** the rows of widths are worked out too; default true */
  readonly compareWidths?: boolean
}

export interface Progress {
  readonly words: string
  /** cheapest cloth so far, as Money or area */
  readonly best: bigint | null
  readonly bound: bigint
}

export interface PlannerApi {
  /** throws a ProgramFault when its own checks refuse the answer */
  plan(order: Order, options?: PlanOptions): Result
  verify(result: Result): readonly { readonly code: string; readonly message: string }[]
}
