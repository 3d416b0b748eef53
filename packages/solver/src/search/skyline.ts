/**
 * Free layouts of many pieces: a best-fit skyline, its order improved by a seeded local search.
 *
 * After L. Wei, Q. Hu, S. C. H. Leung, N. Zhang, "An improved skyline based heuristic for the 2D strip packing problem and its
 * efficient implementation" (2017), and E. K. Burke, G. Kendall, G. Whitwell, "A new placement heuristic for the orthogonal
 * stock-cutting problem" (2004): the lowest gap is filled first, by the piece whose sides match most of the gap's sides; the order
 * decides between equals. Ours sets the piece beside the higher wall and swaps two places in the order at a time.
 * Cost of one layout: pieces × kinds. Nothing is proved.
 */
import type { Spot } from '../problem.ts'
import type { Meter } from './fill.ts'
import type { Random } from './random.ts'
import type { Trial } from './trial.ts'

export interface SkylineLayout {
  readonly spots: readonly Spot[]
  readonly length: number
}

/** The best layout by order search until the meter is used up or `bound` is met. Only for pieces that may lie anywhere. */
export function skylineSearch(
  trial: Trial,
  bound: number,
  meter: Meter,
  random: Random,
  onBetter: (length: number) => void,
): SkylineLayout | null {
  let best: SkylineLayout | null = null
  const starts = startOrders(trial)
  const alike = trial.counts.filter((count) => count > 0).length <= 1
  let share = Math.max(20_000, Math.ceil(meter.steps / 40))
  for (let round = 0; meter.steps > 0 && !meter.stop(); round++) {
    const order = starts[round % starts.length]!.slice()
    if (round >= starts.length)
      for (let i = 0; i < 3; i++) swap(order, random.below(order.length), random.below(order.length))
    let now = laid(trial, order, Number.POSITIVE_INFINITY, meter)
    if (now === null) break
    const end = meter.steps - share
    for (;;) {
      if (best === null || now.length < best.length) {
        best = now
        onBetter(best.length)
      }
      // pieces of one kind have one order
      if (best.length <= bound || alike) return best
      if (meter.steps <= Math.max(0, end) || meter.stop()) break
      const i = random.below(order.length)
      const j = random.below(order.length)
      meter.steps--
      if (order[i] === order[j]) continue
      swap(order, i, j)
      const next = laid(trial, order, now.length, meter)
      if (next === null) swap(order, i, j)
      else now = next
    }
    if (round % starts.length === starts.length - 1) share *= 2
  }
  return best
}

/** Kinds in the order they are preferred, one entry for each piece: by area, length, width, half the girth, all falling. */
function startOrders(trial: Trial): number[][] {
  const { kinds } = trial.problem
  const sizes = kinds.map(({ postures }) => postures[0]!)
  const keys = [
    sizes.map(({ width, length }) => width * length),
    sizes.map(({ length }) => length),
    sizes.map(({ width }) => width),
    sizes.map(({ width, length }) => width + length),
  ]
  const all = kinds.flatMap(({ count }, kind) => new Array<number>(count).fill(kind))
  return keys.map((key) => all.slice().sort((a, b) => key[b]! - key[a]! || a - b))
}

function swap(order: number[], i: number, j: number): void {
  const held = order[i]!
  order[i] = order[j]!
  order[j] = held
}

/** The layout of one order; null when it is longer than `most`, or the meter is used up. */
function laid(trial: Trial, order: readonly number[], most: number, meter: Meter): SkylineLayout | null {
  const { kinds } = trial.problem
  const left = trial.counts.slice()
  // kinds by their first place in the order
  const ranked = [...new Set(order)]
  const spots: Spot[] = []
  // the skyline: segments from `at[i]` to `at[i + 1]` at height `top[i]`
  const at = [0, trial.width]
  const top = [0]
  let length = 0
  while (spots.length < order.length) {
    let low = 0
    for (let i = 1; i < top.length; i++) if (top[i]! < top[low]!) low = i
    const x = at[low]!
    const y = top[low]!
    const gap = at[low + 1]! - x
    const leftWall = low === 0 ? Number.POSITIVE_INFINITY : top[low - 1]! - y
    const rightWall = low === top.length - 1 ? Number.POSITIVE_INFINITY : top[low + 1]! - y
    let bestFit = -1
    let bestKind = -1
    let bestPosture = 0
    for (const kind of ranked) {
      if (left[kind] === 0) continue
      const { postures } = kinds[kind]!
      for (let p = 0; p < postures.length; p++) {
        const posture = postures[p]!
        if (posture.width > gap || y + posture.length > most) continue
        meter.steps--
        const fit =
          (posture.width === gap ? 2 : 0) +
          (posture.length === leftWall ? 1 : 0) +
          (posture.length === rightWall ? 1 : 0)
        if (fit <= bestFit) continue
        bestFit = fit
        bestKind = kind
        bestPosture = p
      }
    }
    if (bestKind < 0) {
      const rise = Math.min(leftWall, rightWall)
      if (rise === Number.POSITIVE_INFINITY || y + rise >= most) return null
      raise(at, top, low, x, gap, y + rise)
      continue
    }
    const posture = kinds[bestKind]!.postures[bestPosture]!
    const beside = leftWall >= rightWall ? x : x + gap - posture.width
    left[bestKind]!--
    spots.push({ kind: bestKind, posture: bestPosture, x: beside, y })
    length = Math.max(length, y + posture.length)
    raise(at, top, low, beside, posture.width, y + posture.length)
  }
  return { spots, length }
}

/** Lifts the part of segment `index` from x on to a new height, and joins segments of equal height. */
function raise(at: number[], top: number[], index: number, x: number, width: number, height: number): void {
  const from = at[index]!
  const to = at[index + 1]!
  const old = top[index]!
  const ends: number[] = []
  const tops: number[] = []
  if (x > from) {
    ends.push(x)
    tops.push(old)
  }
  ends.push(x + width)
  tops.push(height)
  if (x + width < to) {
    ends.push(to)
    tops.push(old)
  }
  top.splice(index, 1, ...tops)
  at.splice(index + 1, 1, ...ends)
  for (let i = Math.min(top.length - 1, index + tops.length); i > Math.max(0, index - 1); i--) {
    if (top[i] !== top[i - 1]) continue
    top.splice(i, 1)
    at.splice(i, 1)
  }
}
