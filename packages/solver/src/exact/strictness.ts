/**
 * By how much each rule that throws something away is stricter than it may be: 0 loses nothing. Only tests of soundness set one
 * above 0, and then some order must have a wrong answer: that shows that the rule cannot be any stronger, and that tests would see it.
 */
export interface Strictness {
  /** added to the waste of a block and to the area of the rest, before the budget is asked */
  readonly budget: number
  /** added to the widths that pieces are raised to */
  readonly widths: number
  /** added to what must stay empty beside and before a block */
  readonly gaps: number
  /** added to what the rest weighs under each dual of the bar relaxation */
  readonly weights: number
  /** taken off the length that the relaxed problem leaves a block */
  readonly guides: number
  /** a block goes when another is no wider and, but for this, no longer */
  readonly dominance: number
  /** the same of blocks that become each other when moved along */
  readonly movedDominance: number
  /** a gap of so many units between the arcs of stand-ins is overlooked */
  readonly covers: number
  /** the walk along two staircases gives both steps up when their sizes differ by no more than this */
  readonly walk: number
  /** 0: no row is joined to a row, no column to a column; 1: a row or column is joined to nothing along itself */
  readonly chains: number
  /** added to the depth of the zone that a block without need of a side is kept out of */
  readonly zones: number
  /** taken off the room in which the tied pieces of a block may move without its growing */
  readonly slack: number
  /** of the places where one tied block may lie to another, so many of the last are left out */
  readonly places: number
  /** of several trials, one goes when another is no narrower and, but for this, no shorter */
  readonly trials: number
  /** a refused limit rules out lengths up to so much beyond it */
  readonly lengths: number
}

export const SOUND: Strictness = {
  budget: 0,
  widths: 0,
  gaps: 0,
  weights: 0,
  guides: 0,
  dominance: 0,
  movedDominance: 0,
  covers: 0,
  walk: 0,
  chains: 0,
  zones: 0,
  slack: 0,
  places: 0,
  trials: 0,
  lengths: 0,
}
