/**
 * Exact free layouts of few pieces: every piece in turn at every corner of the envelope of those placed before.
 *
 * After S. Martello, D. Pisinger, D. Vigo, "The three-dimensional bin packing problem" (2000), section 4, in two dimensions. Any
 * layout can be pushed left and toward the start until nothing moves; its pieces can then be taken in an order in which none lies
 * left of or before (overlapping it so) an earlier one, and each then sits in a corner of the staircase round those before it. (In
 * three dimensions such an order need not exist; in two it does.) So the search misses no length.
 *
 *     |    +--+            x: corners
 *     |    |  |
 *     x----+  x--
 *     |   |   |
 *     +---+---+x------
 *
 * Cost: exponential; for eight pieces or so.
 */
import type { Spot } from '../problem.ts'
import type { Meter } from './fill.ts'
import type { Trial } from './trial.ts'

export interface CornersResult {
  /** the shortest layout of at most `longest`; null: none found */
  readonly spots: readonly Spot[] | null
  /** every order was tried or shown to be no shorter */
  readonly finished: boolean
}

/** Only for pieces that may lie anywhere. Ends at once when a layout of `bound` is found. */
export function corners(trial: Trial, bound: number, longest: number, meter: Meter): CornersResult {
  const { kinds } = trial.problem
  const left = trial.counts.slice()
  const total = left.reduce((sum, count) => sum + count, 0)
  const placed: Spot[] = []
  let most = longest
  let best: Spot[] | null = null
  let cut = false
  const restArea = (): number => left.reduce((sum, count, kind) => sum + count * trial.areas[kind]!, 0)

  /** `stairs`: outer corners of the envelope, x rising, y falling */
  const place = (stairs: readonly Stair[]): void => {
    if (placed.length === total) {
      best = placed.slice()
      most = Math.max(...best.map(({ kind, posture, y }) => y + kinds[kind]!.postures[posture]!.length)) - 1
      return
    }
    if (coveredBy(stairs) + restArea() > trial.width * most) return
    for (let i = 0; i <= stairs.length; i++) {
      const x = i === 0 ? 0 : stairs[i - 1]!.x
      const y = i === stairs.length ? 0 : stairs[i]!.y
      for (let kind = 0; kind < kinds.length; kind++) {
        if (left[kind] === 0) continue
        for (const [posture, { width, length }] of kinds[kind]!.postures.entries()) {
          if (x + width > trial.width || y + length > most) continue
          if (meter.steps <= 0 || meter.stop()) {
            cut = true
            return
          }
          meter.steps--
          left[kind]!--
          placed.push({ kind, posture, x, y })
          place(grown(stairs, { x: x + width, y: y + length }))
          placed.pop()
          left[kind]!++
          if (cut || most < bound) return
        }
      }
    }
  }
  if (most >= bound) place([])
  return { spots: best, finished: !cut }
}

interface Stair {
  readonly x: number
  readonly y: number
}

function grown(stairs: readonly Stair[], corner: Stair): Stair[] {
  const kept = stairs.filter(({ x, y }) => x > corner.x || y > corner.y)
  return [...kept, corner].sort((a, b) => a.x - b.x)
}

/** Area below the staircase: no later piece uses it. */
function coveredBy(stairs: readonly Stair[]): number {
  let area = 0
  let from = 0
  for (const { x, y } of stairs) {
    area += (x - from) * y
    from = x
  }
  return area
}
