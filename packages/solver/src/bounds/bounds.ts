import type { Certificate } from '../model.ts'
import type { Problem } from '../problem.ts'
import { acrossOf, barBound, between } from './bars.ts'
import { simpleBound } from './index.ts'
import { roundUpLength } from './reachable.ts'
import type { Scales } from './scales.ts'
import { boundShownBy, Rescaling } from './scales.ts'
import type { Allowance, Axis } from './values.ts'
import type { Weights } from './weights.ts'
import { weightsOf } from './weights.ts'

/** With more kinds than this the bars are priced for their own bound only. */
const FEW_KINDS = 24

/** With more pieces than this, weights cost more than they spare. */
const MOST_WEIGHED = 200

/** Bounds by scales are sought to this part of the length. */
const FINEST = 4000

/** What can be shown of a problem without search, cheapest first; patterns found for one bound serve the next. Lengths in the problem's units. */
export class Bounds {
  private readonly problem: Problem
  private readonly allowance: Allowance
  private readonly scales: boolean
  private readonly across: Axis
  private readonly rescaling: Rescaling
  private bars: Certificate | null = null
  private leaning: readonly Certificate[] | null = null

  /** `scales`: whether scales are worth what they cost, several times all else. */
  constructor(problem: Problem, allowance: Allowance, scales = true) {
    this.problem = problem
    this.allowance = allowance
    this.scales = scales && problem.kinds.length <= FEW_KINDS
    this.across = acrossOf(problem)
    this.rescaling = new Rescaling(problem, allowance, this.across)
  }

  /** The best bound; beyond `enough` more does not help. */
  best(enough: number): Certificate {
    const { problem, allowance } = this
    const simple = this.roundedUp(simpleBound(problem))
    if (simple.bound >= enough || problem.kinds.length === 0) return simple
    // with few kinds the bars are worth having even where they bound no better
    this.bars = barBound(problem, this.few() ? 0 : simple.bound, enough, allowance, 0, this.across)
    const bars = this.bars && this.roundedUp(this.bars)
    const best = bars && bars.bound > simple.bound ? bars : simple
    return best.bound >= enough || !this.scales ? best : (this.byScales(best.bound, enough) ?? best)
  }

  /** Scales by which blocks are refused on a field that ends at `reach`; null: they refuse every layout there. */
  weightsFor(reach: number): readonly Weights[] | null {
    const { problem } = this
    // of so many pieces no search ends, whatever it may leave out
    if (problem.kinds.reduce((n, kind) => n + kind.count, 0) > MOST_WEIGHED) return []
    const scales: Scales[] = []
    if (this.scales) {
      const found = this.rescaling.scalesFor(reach)
      if (found.refused) return null
      scales.push(...found.scales)
    }
    for (const bars of this.severalBars()) {
      const own = bars.by === 'bars' ? this.rescaling.scalesOf(bars, reach) : null
      if (own) scales.push(own)
    }
    return scales.flatMap((s) => weightsOf(problem, s, reach) ?? [])
  }

  /** The best bound by scales from `from` on, when it is any better: lengths are tried farther and farther on, then between. */
  private byScales(from: number, enough: number): Certificate | null {
    let best: Certificate | null = null
    let least = from
    let possible = enough
    for (let step = 0; (possible - least) * FINEST > least && this.allowance.steps < this.allowance.most; ) {
      const reach = Math.min(possible - 1, least + step)
      const shown = this.refusedBy(reach)
      if (shown) {
        best = shown
        least = shown.bound
      } else possible = reach
      step = possible < enough ? (possible - least) >> 1 : 2 * step + 1
    }
    return best
  }

  /** A bound beyond `reach` that scales show; null when they show none. */
  private refusedBy(reach: number): Certificate | null {
    const refused = this.rescaling.refusing(reach)
    if (!refused) return null
    const longest = Math.max(...this.problem.kinds.flatMap((k) => k.possible.map((p) => p.length)))
    const bound = boundShownBy(this.problem, refused, reach + longest)
    return bound === null || bound <= reach ? null : this.roundedUp(certificateOf(this.problem, refused, bound))
  }

  /** Several duals of the bar relaxation: each refuses other blocks. */
  private severalBars(): readonly Certificate[] {
    const { problem, allowance, bars } = this
    if (!bars) return []
    if (!this.few()) return [bars]
    if (!this.leaning) {
      const leaning = [1e-4, -1e-4].map((lean) =>
        barBound(problem, 0, Number.POSITIVE_INFINITY, allowance, lean, this.across),
      )
      const [a, b] = leaning
      this.leaning = [bars, ...leaning, a && b ? between(problem, a, b) : null].flatMap((c) => c ?? [])
    }
    return this.leaning
  }

  private few(): boolean {
    return this.problem.kinds.length <= FEW_KINDS
  }

  private roundedUp(c: Certificate): Certificate {
    return { ...c, bound: roundUpLength(this.problem, c.bound) }
  }
}

/** Scales as anyone can check them: a width and a length for each posture of each demand. */
function certificateOf({ request, kinds }: Problem, { across, along }: Scales, bound: number): Certificate {
  const list = (sizes: Scales['across']): number[] => {
    const out = request.demands.map((d) => d.postures.map(() => 0))
    for (const [kind, k] of kinds.entries())
      for (const [posture, p] of k.possible.entries())
        for (const { demand } of k.demands) out[demand]![p.index] = sizes[kind]![posture]!
    return out.flat()
  }
  return { by: 'scales', bound, across: list(across), along: list(along) }
}
