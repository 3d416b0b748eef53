import type { Certificate } from '../model.ts'
import type { Problem } from '../problem.ts'
import { acrossOf, pricesOf } from './bars.ts'
import type { Pattern, Prices } from './patterns.ts'
import { columnSums, dearestBars, dearestColumns } from './patterns.ts'
import type { Sums } from './sums.ts'
import { MOST_WORK } from './sums.ts'
import type { Allowance, Axis } from './values.ts'
import { keyOf, singles, valuesAlong } from './values.ts'

/**
 * Other sizes for the pieces, in whole numbers, under which all that could lie side by side still fits `width`, and all that could lie one
 * after another `length`: conservative scales. A layout of the pieces is one of the rescaled pieces too, so the areas these
 * have together bound it (Fekete & Schepers 2004, theorem 5). With true lengths and the prices of the bar relaxation as widths this
 * is the bar bound; but on a field no longer than a few pieces, lengths leave gaps just as widths do.
 */
export interface Scales {
  /** of each kind's possible postures */
  readonly across: readonly (readonly number[])[]
  readonly along: readonly (readonly number[])[]
  readonly width: number
  readonly length: number
  /** columns on the field, by their rescaled lengths */
  readonly columns: Sums
}

/**
 * Scales for a field that ends at `reach`, better from one to the next. The best widths for given lengths are the answer of a linear programme
 * like that of the bar relaxation, and so are the best lengths for given widths: each is solved in turn while that gains anything, begun from
 * either side (as Belov, Kartak, Rohling & Scheithauer 2009 combine the two).
 */
export class Rescaling {
  private readonly problem: Problem
  private readonly allowance: Allowance
  private readonly across: Axis
  /** columns met so far, with their lengths: they fit any field no shorter */
  private readonly columns = new Map<string, { readonly pattern: Pattern; readonly length: number }>()
  private last: Scales | null = null
  /** those found from scratch last */
  private several: { readonly reach: number; readonly scales: readonly Scales[] } | null = null
  /** columns for one reach, by the sizes they are of */
  private sums: { readonly reach: number; readonly of: Map<Scales['along'], Sums | null> } | null = null
  private readonly lengths: Scales['along']

  constructor(problem: Problem, allowance: Allowance, across: Axis = acrossOf(problem)) {
    this.problem = problem
    this.allowance = allowance
    this.across = across
    this.lengths = problem.kinds.map((k) => k.possible.map((p) => p.length))
  }

  /**
   * Several scales, each of which may refuse other blocks. Ends as soon as some, the last, show that nothing so short exists. For a field
   * not much longer than the last the same are fitted to it, and the fullest bettered.
   */
  scalesFor(reach: number): { readonly scales: readonly Scales[]; readonly refused: boolean } {
    const along = this.alongOf(reach)
    const scales: Scales[] = []
    const refusedBy = (found: Scales) => {
      scales.push(found)
      return fullness(this.problem, found) > 1
    }
    const near = this.several && reach >= this.several.reach && reach < this.several.reach * NEAR
    const known = near ? this.several!.scales.flatMap((s) => this.fitted(s, along) ?? []) : []
    for (const found of known) if (refusedBy(found)) return { scales, refused: true }
    if (known.length > 0) {
      const fullest = known.reduce((a, b) => (fullness(this.problem, b) > fullness(this.problem, a) ? b : a))
      for (const found of this.improving(fullest, 'along', along, 2))
        if (refusedBy(found)) return { scales, refused: true }
      return { scales, refused: false }
    }
    for (const first of AXES)
      for (const found of this.improving(this.unscaled(along), first, along, MOST_TURNS))
        if (refusedBy(found)) return { scales, refused: true }
    this.several = { reach, scales }
    return { scales, refused: false }
  }

  /** Scales that show that nothing ends by `reach`; null when none were found. Goes on from those found for another reach. */
  refusing(reach: number): Scales | null {
    const along = this.alongOf(reach)
    const from = this.last && this.fitted(this.last, along)
    const starts: [Scales | null, Side][] = from ? [[from, 'across']] : AXES.map((axis) => [this.unscaled(along), axis])
    let fullest: Scales | null = null
    for (const [start, axis] of starts) {
      let before = 0
      for (const found of this.improving(start, axis, along, MOST_TURNS)) {
        const full = fullness(this.problem, found)
        if (!fullest || full > fullness(this.problem, fullest)) fullest = found
        if (full > 1 || full + HOPE * (full - before) < 1) break
        before = full
      }
      if (fullest && fullness(this.problem, fullest) > 1) break
    }
    this.last = fullest
    return fullest && fullness(this.problem, fullest) > 1 ? fullest : null
  }

  private *improving(start: Scales | null, first: Side, along: Along, turns: number): Generator<Scales> {
    let now = start
    let axis = first
    let before = 0
    for (let turn = 0; now && turn < turns; turn++) {
      now = this.better(now, axis, along)
      if (!now) break
      yield now
      const full = fullness(this.problem, now)
      if (turn > 1 && full < before + LEAST_GAIN) break
      before = full
      axis = axis === 'across' ? 'along' : 'across'
    }
  }

  /** The same sizes on a field of another length. */
  private fitted(scales: Scales, { reach }: Along): Scales | null {
    const columns = this.columnsOf(scales.along, reach)
    return columns && { ...scales, columns, length: columns.dearest(reach) }
  }

  /** Sizes as they are; lengths that pieces one after another can reach. */
  private unscaled({ reach }: Along): Scales | null {
    const { kinds } = this.problem
    const across = kinds.map((k) => k.possible.map((p) => p.width))
    const columns = this.columnsOf(this.lengths, reach)
    const width = dearestBars(this.problem, (kind, posture) => across[kind]![posture]!, 1)
    return (
      columns &&
      width && { along: this.lengths, columns, length: columns.dearest(reach), across, width: priceOf(width) }
    )
  }

  private columnsOf(along: Scales['along'], reach: number): Sums | null {
    if (this.sums?.reach !== reach) this.sums = { reach, of: new Map() }
    let columns = this.sums.of.get(along)
    if (columns === undefined) {
      columns = columnSums(this.problem, reach, (kind, posture) => along[kind]![posture]!)
      this.allowance.steps += columns?.steps ?? MOST_WORK
      this.sums.of.set(along, columns)
    }
    return columns
  }

  /** A bar bound as scales: its prices are widths, lengths are as they are. Null when sums are too many to list. */
  scalesOf(bars: Extract<Certificate, { by: 'bars' }>, reach: number): Scales | null {
    const columns = this.columnsOf(this.lengths, reach)
    const at = pricesOf(this.problem)
    return (
      columns && {
        across: this.problem.kinds.map((k, kind) => k.possible.map((_, posture) => bars.prices[at(kind, posture)]!)),
        width: bars.capacity,
        along: this.lengths,
        length: columns.dearest(reach),
        columns,
      }
    )
  }

  /** The best sizes along one axis for those along the other; null when too much work. */
  private better(now: Scales, axis: Side, along: Along): Scales | null {
    const others = axis === 'across' ? now.along : now.across
    const other = axis === 'across' ? now.length : now.width
    const extent = (kind: number, posture: number) => others[kind]![posture]!
    const lies = axis === 'across' ? this.across : along
    const refuses = ({ worth, top }: { worth: number; top: number }) => top > 0 && worth / top > other * (1 + 1e-6)
    const found = valuesAlong(this.problem, lies, extent, this.allowance, refuses)
    if (!found) return null
    const hoped = found.worth / Math.max(1, found.top) / other
    let best: Scales | null = null
    for (const grain of GRAINS) {
      const next = this.grained(now, axis, along, (kind, p) =>
        extent(kind, p) > 0 ? Math.round((found.values[kind]! * grain) / extent(kind, p)) : 0,
      )
      if (next && (!best || fullness(this.problem, next) > fullness(this.problem, best))) best = next
      if (best && fullness(this.problem, best) > hoped - LEAST_GAIN) break
    }
    return best
  }

  /** The same scales with other whole sizes along one axis; null when they come to nothing. */
  private grained(now: Scales, axis: Side, { reach }: Along, sizeOf: Prices): Scales | null {
    const sizes = this.problem.kinds.map((k, kind) => k.possible.map((_, p) => sizeOf(kind, p)))
    if (axis === 'across') {
      const dearest = this.across.dearest((kind, posture) => sizes[kind]![posture]!, 1)
      const width = dearest ? priceOf(dearest) : 0
      return width > 0 ? { ...now, across: sizes, width } : null
    }
    const columns = this.columnsOf(sizes, reach)
    const length = columns?.dearest(reach) ?? 0
    return columns && length > 0 ? { ...now, along: sizes, columns, length } : null
  }

  private alongOf(reach: number): Along {
    const { problem, columns } = this
    const known = singles(problem, reach, 'length')
    for (const [key, { pattern, length }] of columns) if (length <= reach) known.set(key, pattern)
    return {
      reach,
      known,
      dearest: (price, most) => {
        const found = dearestColumns(problem, reach, price, most)
        for (const { pattern } of found?.patterns ?? []) {
          const length = pattern.reduce(
            (sum, { kind, posture, times }) => sum + times * problem.kinds[kind]!.possible[posture]!.length,
            0,
          )
          columns.set(keyOf(pattern), { pattern, length })
        }
        return found
      },
    }
  }
}

// whole sizes: a number with many divisors, since values are often simple fractions, and a fine one
const GRAINS = [27_720, 1_000_000]

/** Columns that end by a reach. */
interface Along extends Axis {
  readonly reach: number
}

type Side = 'across' | 'along'
const AXES: readonly Side[] = ['across', 'along']
const MOST_TURNS = 4
/** A field longer by this factor has scales of its own. */
const NEAR = 1.03
const LEAST_GAIN = 1e-5
/** So many more gains as large as the last may still be hoped for. */
const HOPE = 4

const priceOf = ({ patterns }: { readonly patterns: readonly { readonly price: number }[] }) => patterns[0]?.price ?? 0

/** The areas of all rescaled pieces, over that of the rescaled field. */
function fullness({ kinds }: Problem, scales: Scales): number {
  const total = kinds.reduce((sum, k, kind) => sum + k.count * leastOf(scales, kind), 0)
  return total / (scales.width * scales.length)
}

/**
 * No layout is shorter than the shortest stretch whose columns come to as much rescaled length as all the rescaled areas need on the
 * rescaled width. Null when there are too many sums to list up to `most`, or none is enough.
 */
export function boundShownBy(problem: Problem, scales: Scales, most: number): number | null {
  const columns = columnSums(problem, most, (kind, posture) => scales.along[kind]![posture]!)
  if (!columns || scales.width <= 0) return null
  const total = problem.kinds.reduce((sum, k, kind) => sum + k.count * leastOf(scales, kind), 0)
  const enough = columns.worth(Math.ceil(total / scales.width))
  return enough < 0 ? null : columns.size(enough)
}

/** The least area of a piece of a kind, rescaled. */
export function leastOf({ across, along }: Scales, kind: number): number {
  return Math.min(...across[kind]!.map((width, p) => width * along[kind]![p]!))
}
