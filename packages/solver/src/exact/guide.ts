import { areaBound, sidesBound } from '../bounds/simple.ts'
import { LEFT, RIGHT } from '../model.ts'
import type { KindPosture, Problem } from '../problem.ts'
import { fronts } from './fronts.ts'
import type { Effort, Front, Kept } from './kept.ts'
import type { Multisets } from './multisets.ts'
import { multisets } from './multisets.ts'
import type { Trial } from './room.ts'
import { reachOf } from './room.ts'
import type { Strictness } from './strictness.ts'

/**
 * How large a block of some pieces may be so that all the others still find room around it, when ties and sides are set aside.
 *
 * The fronts of the relaxed problem tell, for every multiset, the smallest blocks. From them follow, from everything down to single pieces, the
 * largest: what a block of U may be, less what a block of T takes beside or after it, is what a block of U − T may be. This is the
 * inside-outside recursion of parsing (Baker 1979) with sizes in place of probabilities. A layout that keeps ties and sides is one of the
 * relaxed problem, cut by cut, so no block in it is larger than this says.
 */
export interface Guide {
  /** Has a layout room for a block of this size and multiset? */
  allows(multiset: number, width: number, length: number): boolean
}

/**
 * The problem without ties and, where no zones depend on them, without sides to touch; null when that is no change. Where the pieces
 * at one side nearly fill the length themselves, the sides leave fewer blocks than setting them aside would.
 */
function relaxed(problem: Problem): Problem | null {
  const { zones } = problem
  const binding = sidesBound(problem).bound > BINDING * areaBound(problem).bound
  const sides = zones.left === 0 && zones.right === 0 && !binding ? LEFT | RIGHT : 0
  const sided = problem.kinds.some((k) => k.postures.some((p) => p.flush & sides))
  if (!problem.tied && !sided) return null
  const kinds = problem.kinds.map((k) => ({ ...k, tie: null, postures: withoutSides(k.postures, sides) }))
  return { ...problem, kinds, tied: false }
}

function withoutSides(postures: readonly KindPosture[], sides: number): KindPosture[] {
  const out: KindPosture[] = []
  for (const p of postures) {
    const plain = { ...p, flush: p.flush & ~sides }
    if (!out.some((q) => q.width === plain.width && q.length === plain.length && q.flush === plain.flush))
      out.push(plain)
  }
  return out
}

/** What the relaxed problem has shown of a trial. */
export interface Relaxed {
  /** no layout is shorter; null: there is none within the trial's length */
  readonly least: number | null
  /** for a length of at most the trial's, and what it cost */
  readonly guideFor: (length: number) => { readonly guide: Guide; readonly steps: number }
}

/** Relaxed problems searched trial by trial; one that was searched as far serves again. */
export class Relaxation {
  steps = 0
  private readonly problem: Problem
  private readonly strictness: Strictness
  /** by width, the farthest length searched and what it has shown */
  private readonly known = new Map<number, { readonly length: number; readonly shown: Relaxed }>()

  /** Null for a problem that would not change, or has fewer multisets than this. */
  static of(problem: Problem, strictness: Strictness, from = FEW_MULTISETS): Relaxation | null {
    const easier = multisets(problem) < from ? null : relaxed(problem)
    return easier && new Relaxation(easier, strictness)
  }

  private constructor(problem: Problem, strictness: Strictness) {
    this.problem = problem
    this.strictness = strictness
  }

  /** How far layouts for this width have been searched, where there are any. */
  searched(width: number): number | null {
    const known = this.known.get(width)
    return known && known.shown.least !== null ? known.length : null
  }

  /** Null when effort or a stop ended it. */
  search(trial: Trial, { effort, stop }: Effort): Relaxed | null {
    const known = this.known.get(trial.width)
    if (known && known.length >= trial.length) {
      const { least } = known.shown
      return { ...known.shown, least: least !== null && least <= trial.length ? least : null }
    }
    const { problem, strictness } = this
    const found = fronts(problem, { trials: [trial], effort, stop, strictness })
    this.steps += found.steps
    if (!found.finished) return null
    const guideFor = (length: number) => {
      const outside = new Outside(problem, found.kept, found.done, { ...trial, length }, strictness)
      outside.run()
      return { guide: outside, steps: outside.steps }
    }
    const shown = { least: found.best[0]![0]?.length ?? null, guideFor }
    this.known.set(trial.width, { length: trial.length, shown })
    return shown
  }
}

const BINDING = 0.9

/** With fewer multisets than this the problem itself is searched as soon. */
const FEW_MULTISETS = 100

/** Sizes as a staircase: widths rising, lengths falling. */
interface Stair {
  readonly widths: number[]
  readonly lengths: number[]
}

/** One multiset with the smallest blocks of its pieces, and the largest that they may be. */
interface Step {
  readonly multiset: number
  readonly inside: Stair
  readonly outside: Stair
}

class Outside implements Guide {
  steps = 0
  private readonly strictness: Strictness
  private readonly full: number
  private readonly kept: Kept
  /** by slot of the multiset's front */
  private readonly bySlot: (Step | undefined)[] = []
  private readonly ascending: readonly Step[]
  private readonly multisets: Multisets
  private readonly whole: Stair

  constructor(problem: Problem, kept: Kept, done: readonly Front[], trial: Trial, strictness: Strictness) {
    this.strictness = strictness
    this.full = kept.multisets.full
    this.multisets = kept.multisets
    this.kept = kept
    this.ascending = done.map((front) => {
      const inside = insideOf(kept, front)
      const step = { multiset: front.multiset, inside, outside: { widths: [], lengths: [] } }
      this.bySlot[front.slot] = step
      return step
    })
    this.whole = { widths: [trial.width], lengths: [reachOf(problem, trial.length)] }
  }

  run(): void {
    this.divide(this.full, this.whole)
    for (let i = this.ascending.length - 1; i >= 0; i--) {
      const { multiset, outside } = this.ascending[i]!
      if (outside.widths.length > 0) this.divide(multiset, outside)
    }
  }

  allows(multiset: number, width: number, length: number): boolean {
    const { widths, lengths } = multiset === this.full ? this.whole : (this.stepOf(multiset)?.outside ?? NOTHING)
    const at = firstFrom(widths, width)
    return at < widths.length && lengths[at]! - this.strictness.guides >= length
  }

  private stepOf(multiset: number): Step | undefined {
    const front = this.kept.frontOf(multiset)
    return front && this.bySlot[front.slot]
  }

  /** What blocks of a multiset may be at most bounds what parts of it may be. */
  private divide(multiset: number, size: Stair): void {
    const parts = this.multisets.partsOf(this.multisets.countsOf(multiset), multiset / 2)
    for (let i = 0; i < parts.length; i++) {
      const a = this.stepOf(parts[i]!)
      const b = a && this.stepOf(multiset - a.multiset)
      if (!b) continue
      this.lessen(size, b.inside, a)
      if (a !== b) this.lessen(size, a.inside, b)
    }
    this.steps += Math.ceil(parts.length / PARTS_A_STEP)
  }

  private lessen({ widths, lengths }: Stair, taken: Stair, part: Step): void {
    for (let i = 0; i < widths.length; i++) {
      const width = widths[i]!
      const length = lengths[i]!
      const beside = firstWithin(taken.lengths, length)
      if (beside < taken.widths.length) this.extend(part, width - taken.widths[beside]!, length)
      const after = lastWithin(taken.widths, width)
      if (after >= 0) this.extend(part, width, length - taken.lengths[after]!)
    }
  }

  /** A block of these pieces may be so large, if any is as small as that. */
  private extend({ inside, outside }: Step, width: number, length: number): void {
    this.steps++
    const least = lastWithin(inside.widths, width)
    if (least < 0 || inside.lengths[least]! > length) return
    const { widths, lengths } = outside
    const at = firstFrom(widths, width)
    if (at < widths.length && lengths[at]! >= length) return
    let from = at
    while (from > 0 && lengths[from - 1]! <= length) from--
    const to = widths[at] === width ? at + 1 : at
    widths.splice(from, to - from, width)
    lengths.splice(from, to - from, length)
  }
}

/** So many parts are looked up in the time of one step. */
const PARTS_A_STEP = 8

const NOTHING: Stair = { widths: [], lengths: [] }

/** The smallest blocks of a front, whatever sides they must touch. */
function insideOf({ blocks }: Kept, { cells }: Front): Stair {
  const [only, another] = cells
  const all = only && !another ? only.blocks : cells.flatMap((c) => c.blocks)
  // a cell's own blocks are in order
  if (another) all.sort((a, b) => blocks.width[a]! - blocks.width[b]! || blocks.length[a]! - blocks.length[b]!)
  const stair: Stair = { widths: [], lengths: [] }
  let least = Number.POSITIVE_INFINITY
  for (const b of all) {
    if (blocks.length[b]! >= least) continue
    least = blocks.length[b]!
    stair.widths.push(blocks.width[b]!)
    stair.lengths.push(least)
  }
  return stair
}

/** The first of ascending values that is not below this. */
function firstFrom(values: readonly number[], value: number): number {
  let low = 0
  let high = values.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (values[middle]! < value) low = middle + 1
    else high = middle
  }
  return low
}

/** The last of ascending values that is not above this; −1: none. */
function lastWithin(values: readonly number[], value: number): number {
  let low = 0
  let high = values.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (values[middle]! <= value) low = middle + 1
    else high = middle
  }
  return low - 1
}

/** The first of falling values that is not above this. */
function firstWithin(values: readonly number[], value: number): number {
  let low = 0
  let high = values.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (values[middle]! > value) low = middle + 1
    else high = middle
  }
  return low
}
