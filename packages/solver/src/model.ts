/**
 * Oriented two-dimensional strip packing and its finite cousin, as the solver takes and answers it.
 * All lengths are whole numbers of any unit; x across the strip, y along it, both from 0.
 */

/** Sides of the field or of a placed rectangle: left x = 0, right x = width, start y = 0, end y = length. */
export const LEFT = 1
export const RIGHT = 2
export const START = 4
export const END = 8
/** a set of sides, as bits */
export type Sides = number

export interface Rect {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly length: number
}

/** A strip of open length, or a rectangle. */
export interface Field {
  readonly width: number
  /** null: open */
  readonly length: number | null
  /** depth of a zone at each side that only rectangles flush with that side may enter (a kept hem); 0: none */
  readonly zones: { readonly left: number; readonly right: number; readonly start: number; readonly end: number }
  /** rectangles no placement may overlap */
  readonly flaws: readonly Rect[]
}

/**
 * One way to put a demanded rectangle down. A demand lists all that are allowed (turned by 90°, end for end …).
 * `flush`: sides of the field this posture must touch; only the zones of these sides may it enter. A posture that must touch
 * nothing may lie anywhere outside the zones. END has no meaning in a field of open length: such a posture cannot be placed.
 */
export interface Posture {
  readonly width: number
  readonly length: number
  readonly flush: Sides
}

/**
 * Placements of demands with one `group` keep phase: for axis 'along', y − offset ≡ the same value (mod repeat) for all of the group;
 * with `absolute`, y ≡ offset (mod repeat). For 'across' the same holds of x.
 */
export interface Tie {
  readonly group: string
  readonly axis: 'along' | 'across'
  readonly repeat: number
  readonly offset: number
  readonly absolute: boolean
}

export interface Demand {
  /** the caller's name; unique within a request */
  readonly id: string
  readonly count: number
  /** at least one; the first is preferred among equals */
  readonly postures: readonly Posture[]
  readonly tie: Tie | null
}

export interface Request {
  readonly field: Field
  readonly demands: readonly Demand[]
  /** guillotine: every division runs edge to edge of the rectangle in hand, any number of stages; free: no such rule */
  readonly cuts: 'guillotine' | 'free'
}

/** Effort is counted in steps, so that a run depends on request and effort alone; `stop` is polled and ends it early. */
export interface Control {
  /** 'steps' of search; the solver documents what one is */
  readonly effort: number
  /** polled every few milliseconds; true ends the run with the best so far (the answer says stopped) */
  readonly stop?: () => boolean
  readonly onProgress?: (best: number | null, bound: number) => void
  /** second pass for the largest remnant, fewest cuts, fewest changes of direction; default true */
  readonly tidy?: boolean
  /** left-overs that do not hold this rectangle, either way round, are no remnants; default: all are */
  readonly worthKeeping?: { readonly width: number; readonly length: number }
}

/** New statuses are appended, never renumbered. */
export type Status = 'proved' | 'best-found' | 'stopped' | 'infeasible'

export interface Placement extends Rect {
  readonly demand: number
  /** index into the demand's postures */
  readonly posture: number
}

/** A cut tree: what one rectangle is divided into. Cuts run right across `rect`. */
export type CutNode =
  | { readonly kind: 'piece'; readonly rect: Rect; readonly placement: number }
  | { readonly kind: 'left-over'; readonly rect: Rect }
  /** runs across: the cut is at y = at and `first` lies before it; runs along: at x = at and `first` lies left of it */
  | {
      readonly kind: 'cut'
      readonly rect: Rect
      readonly runs: 'across' | 'along'
      readonly at: number
      readonly first: CutNode
      readonly second: CutNode
    }

/**
 * A proof that no layout is shorter, in numbers anyone can recompute. Each bound may be rounded up to the next length that
 * layouts can have: a multiple of the common divisor of all lengths, and, where no repeat, flaw, zone or end interferes, a sum of
 * lengths of pieces.
 */
export type Certificate =
  | { readonly by: 'area' | 'longest' | 'wide' | 'sides'; readonly bound: number }
  /**
   * Integer duals of the bar relaxation: `prices` one per posture of each demand, in their order; `capacity` the largest total
   * price of any bar; bound = Σ over demands of count · (least price·length of its postures) ÷ capacity, rounded up.
   */
  | { readonly by: 'bars'; readonly bound: number; readonly prices: readonly number[]; readonly capacity: number }
  /**
   * Other sizes, in whole numbers, one across and one along per posture of each demand, in their order. With W the largest total of any
   * bar and P Σ over demands of count · (least product of the sizes of its postures), the bound is the shortest stretch in which
   * pieces one after another come to at least P ÷ W in all.
   */
  | {
      readonly by: 'scales'
      readonly bound: number
      readonly across: readonly number[]
      readonly along: readonly number[]
    }
  /** an exhaustive search finished; `states` is how many it visited */
  | { readonly by: 'exhausted'; readonly bound: number; readonly states: number }

export interface Answer {
  readonly status: Status
  /** farthest placement end; null when nothing was found */
  readonly length: number | null
  /** no layout is shorter */
  readonly bound: number
  readonly certificate: Certificate
  readonly placements: readonly Placement[]
  /** for guillotine cuts: the tree over the field's width × length; null for free cuts */
  readonly tree: CutNode | null
  /** steps used */
  readonly steps: number
  /**
   * infeasible only: demands that cannot be placed at all, and how much width or length is short (null: not a matter of size).
   * Empty when each would go in by itself but all together do not.
   */
  readonly missing: readonly {
    readonly demand: number
    readonly direction: 'across' | 'along'
    readonly short: number | null
  }[]
}

/** The layouts of one request at several widths; one run answers them all where it can. */
export type WidthsAnswer = readonly { readonly width: number; readonly answer: Answer }[]

/**
 * Which part of the demands a finite field can take. `maximal` lists counts per demand that fit and to which nothing can be added;
 * `complete` says that every multiset that fits lies below one of them.
 */
export interface FitsAnswer {
  readonly maximal: readonly { readonly counts: readonly number[]; readonly answer: Answer }[]
  readonly complete: boolean
  readonly steps: number
}

/** What a checker found wrong. */
export interface Fault {
  readonly code:
    | 'outside'
    | 'overlap'
    | 'size'
    | 'count'
    | 'not-flush'
    | 'in-zone'
    | 'on-flaw'
    | 'phase'
    | 'tree'
    | 'length'
    | 'bound'
    | 'certificate'
    | 'status'
    | 'not-whole'
  readonly message: string
}

export interface SolverApi {
  lay(request: Request, control: Control): Answer
  layForWidths(request: Request, widths: readonly number[], control: Control): WidthsAnswer
  /** the narrowest width, on the grid `step` down from the field's, that still does with `length`, one step less being proved too narrow; else null */
  narrowestFor(request: Request, length: number, step: number, control: Control): number | null
  whatFits(request: Request, control: Control): FitsAnswer
  /** a bound on the length with its certificate, cheaply */
  bound(request: Request): Certificate
  /** independent of everything else in the package but this model */
  check(request: Request, answer: Answer): readonly Fault[]
}
