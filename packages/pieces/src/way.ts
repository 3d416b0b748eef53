import type { Length } from '@lengthwise/units'
import type { Edge, EdgeNeed } from './order.ts'

/**
 * One way to make one copy of an item from given cloths at given widths: its pieces, the seams that join them
 * and what else goes in the basket. `waysToMake` lists them; the planner chooses.
 */
export interface Way {
  /** stable within the item and the widths, such as `centre-and-sides/along` */
  readonly id: string
  /** for the page and the map: 'front: centre and two equal sides' */
  readonly words: string
  readonly pieces: readonly Piece[]
  readonly seams: readonly SeamLine[]
  /** seams more than the simplest making needs, inside faces and between them: fewer are better among equal costs */
  readonly joins: number
  readonly notions: readonly Notion[]
  readonly sewing: readonly SewingLine[]
}

/**
 * A rectangle to be cut. Width across the bed, length from head to foot, whichever way it lies on the cloth; pillowcases,
 * cushions and bolsters lie across the bed: their width is the short side, as in the plan, and their right edge is uppermost.
 */
export interface Piece {
  /** path below the copy: '' for an item of one piece, '/front/centre', '/back/zip-strip' */
  readonly name: string
  /** 'Front, centre' */
  readonly words: string
  /** the one cloth this way takes it from */
  readonly cloth: string
  readonly cutWidth: Length
  readonly cutLength: Length
  /** identical pieces of one copy; names then end in -1, -2 … */
  readonly count: number
  /** may the length lie along the cloth, across it, or either; one-way prints have been taken into account */
  readonly lengthRuns: 'along' | 'across' | 'either'
  /** may it be turned end for end: false where the print has a top and for the roles of kept hems that fix the end */
  readonly mayTurnEndForEnd: boolean
  /** where the piece's head end must lie when it may not be turned: the cut end, the bolt end, or a side */
  readonly headToward: 'start' | 'end' | 'left' | 'right' | null
  /** the edge that is uppermost in use, the head unless given; null: it does not matter which way up the print is */
  readonly uppermost?: 'head' | 'right' | null
  readonly needs: Readonly<Record<Edge, EdgeNeed>>
  /** must span the whole usable width (or, turned, its length does): made by the cloth, not marked */
  readonly spansWidth: boolean
  /** print phase tied to the other panels of the same face */
  readonly tie: Tie | null
  readonly marks: readonly Mark[]
}

/**
 * Panels with the same `face` keep phase: position along the cloth of this piece's start edge, minus `offset`,
 * is the same for all of them modulo `repeat`. Position is measured at the edge given by the lower coordinate (y for along, x for across).
 */
export interface Tie {
  readonly face: string
  readonly axis: 'along' | 'across'
  readonly repeat: Length
  readonly offset: Length
  /** the phase itself is set by the cloth (motif centred and its first place known): position ≡ offset */
  readonly absolute: boolean
  /** the phase is one for all such pieces on a length of cloth, whatever their face: a motif is centred and its first place is not known */
  readonly oneForAll?: boolean
}

/** x from the piece's left edge, y from its head edge. A line mark runs right across the piece in the direction `runs`. */
export interface Mark {
  readonly kind: 'fold' | 'corner-square' | 'button' | 'zip-end' | 'tie' | 'seam'
  readonly x: Length
  readonly y: Length
  /** fold and seam: the direction of the line; corner-square: side of the square */
  readonly runs?: 'across' | 'along'
  readonly size?: Length
  /** of a seam: the finished edge lies on it, since what it is sewn to is no edge of a piece */
  readonly isEdge?: boolean
}

/** An edge of a piece, or the part of it between two places (from the left or from the head). */
export interface EdgeRef {
  /** as `Piece.name` */
  readonly piece: string
  readonly edge: Edge
  readonly from?: Length
  readonly to?: Length
}

/** Two edges that meet. Both are equally long at the machine. */
export interface SeamLine {
  readonly a: EdgeRef
  readonly b: EdgeRef
  readonly length: Length
  readonly allowanceA: Length
  readonly allowanceB: Length
  /** where two finished edges lie over each other (zip between kept hems); negative: set apart */
  readonly lap: Length
  readonly match: 'none' | 'straight' | 'half-drop'
  readonly kind: 'plain' | 'french' | 'flat-felled' | 'lapped' | 'zip'
  /** inside a face, between faces, or at an opening */
  readonly role: 'join' | 'side' | 'opening'
}

/** What else to buy for one copy. Lengths of zip are the lengths sold. */
export type Notion =
  | { readonly what: 'zip'; readonly length: Length; readonly count: number; readonly words: string }
  | { readonly what: 'buttons' | 'snaps'; readonly count: number; readonly words: string }
  | { readonly what: 'cord' | 'elastic' | 'tape'; readonly length: Length; readonly words: string }
  | { readonly what: 'thread'; readonly length: Length; readonly words: string }

/** One step of the sewing order; the planner fills numbers and copies in. */
export interface SewingLine {
  readonly text: string
  /** true length of seam sewn in this step; 0 for none */
  readonly seamLength: Length
}
