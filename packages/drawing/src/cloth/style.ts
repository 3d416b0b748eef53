/** Capital heights and line weights of a drawing, millimetres. */
export interface Style {
  /** all text, flags, ruler */
  readonly small: number
  /** piece names and sizes */
  readonly usual: number
  /** numbers of small pieces, heads of pages */
  readonly little: number
  /** numbers of pieces */
  readonly number: number
  /** factor on line weights, dashes and hatches: 1 on paper */
  readonly by: number
}

/** On paper; large lettering is one step of the standard heights up. */
export const paperStyle = (large: boolean): Style =>
  large ? { small: 5, usual: 7, little: 10, number: 20, by: 1 } : { small: 3.5, usual: 5, little: 7, number: 14, by: 1 }

/** On screen the whole drawing is set from the smallest capital that can be read there. */
export function screenStyle(smallest: number): Style {
  const by = smallest / 3.5
  return { small: smallest, usual: 5 * by, little: 7 * by, number: 14 * by, by }
}

/** Line weights by what an edge is. */
export const WEIGHTS = { selvedge: 0.7, tear: 0.7, shears: 0.5, raw: 0.35, thin: 0.25 } as const
/** Dashes: on, off … */
export const DASHES = { tear: [4, 1.5], stitching: [1.6, 1.1], fold: [6, 1.2, 0.6, 1.2], repeat: [0.3, 1.5] } as const
/** a selvedge's second line, and how far a tear runs past its ends */
export const SELVEDGE_INSET = 1.2
export const OVERRUN = 4
/** Distance between lines of text of one block, in capital heights. */
export const PITCH = 1.55
