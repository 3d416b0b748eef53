import type { Posture } from '@lengthwise/solver'
import { LEFT, RIGHT } from '@lengthwise/solver'

/**
 * Lower bounds on length that add up piece by piece, so that a choice of ways half made has one too.
 *
 * A measure gives every width w a weight g(w) so that the weights of pieces side by side never exceed its capacity C. Each line
 * across the cloth then meets pieces of at most C together, so no layout is shorter than Σ g(w)·l ÷ C. Besides the area
 * (g(w) = w) these are dual feasible functions of Fekete and Schepers, 'New classes of fast lower bounds for bin packing
 * problems', Mathematical Programming 91 (2001): u(k), which lets a piece wider than half the cloth count as all of it, and
 * U(ε), which gives pieces with little room beside them the whole width and drops what is narrower than ε. The last measure
 * counts selvedges: a line meets two.
 */
export interface Measure {
  readonly capacity: number
  weight(posture: Posture): number
}

const MOST_THRESHOLDS = 10

/** `widths`: every width a piece may take on this cloth; `across`: the cloth's own. Each of them in whole units. */
export function measuresFor(across: number, widths: readonly number[]): readonly Measure[] {
  const measures: Measure[] = [{ capacity: across, weight: (p) => p.width }]
  for (let k = 1; k <= 4; k++) measures.push(multiples(across, k))
  const narrow = [...new Set(widths)].filter((w) => 2 * w <= across).sort((a, b) => b - a)
  for (const least of narrow.slice(0, MOST_THRESHOLDS)) measures.push(threshold(across, least))
  measures.push({ capacity: 2, weight: (p) => (p.flush & LEFT ? 1 : 0) + (p.flush & RIGHT ? 1 : 0) })
  return measures
}

/** What one piece adds to a measure: the least of its postures. */
export const weigh = (measure: Measure, postures: readonly Posture[]): number =>
  Math.min(...postures.map((p) => measure.weight(p) * p.length))

/** u(k): (k + 1)·w ÷ W is kept where it is whole and rounded down, over k, where it is not. Scaled to whole numbers. */
function multiples(across: number, k: number): Measure {
  return {
    capacity: k * (k + 1),
    weight: ({ width }) => {
      const whole = Math.floor(((k + 1) * width) / across)
      return (k + 1) * width === whole * across ? whole * k : whole * (k + 1)
    },
  }
}

/** U(ε), ε at most half the width. */
function threshold(across: number, least: number): Measure {
  return {
    capacity: across,
    weight: ({ width }) => (width > across - least ? across : width < least ? 0 : width),
  }
}
