/**
 * Improves a partly filled field: takes out a rectangle of the cut tree (one division, or some parts of one), fills it again from
 * its own pieces and those that found no room, and keeps the result unless it holds less.
 *
 * Large neighbourhood search (P. Shaw, 1998) on the cut tree; the neighbourhood is solved by the beam search of `fill`. Parts of
 * one division may change places without harm, so the rectangle may join parts that are not neighbours. Where positions matter
 * (sides, zones, phases, flaws) only neighbours are joined and nothing else moves. Ends when every piece has room or the meter is
 * used up.
 */
import type { FillOptions } from './fill.ts'
import { fill } from './fill.ts'
import { pathToSomeLeaf, regionAround, replaced } from './regions.ts'
import type { Part } from './tree.ts'
import { piecesIn } from './tree.ts'
import type { Trial } from './trial.ts'

export interface RegrowOptions extends Pick<FillOptions, 'meter' | 'random'> {
  /** steps without gain after which it gives up */
  readonly patience: number
}

export interface Growth {
  readonly part: Part
  /** pieces of each kind without room */
  readonly out: readonly number[]
  /** their area */
  readonly outArea: number
}

export function regrow(trial: Trial, start: Growth, options: RegrowOptions): Growth {
  const { meter, random, patience } = options
  let deadline = meter.steps - patience
  const pieces = trial.counts.reduce((sum, count) => sum + count, 0)
  const mean = trial.areas.reduce((sum, area, kind) => sum + area * trial.counts[kind]!, 0) / pieces
  let now = start
  let nowDue = start.out.reduce((sum, count, kind) => sum + count * trial.dues[kind]!, 0)
  let bestDue = nowDue
  let best = start
  while (best.outArea > 0 && meter.steps > Math.max(0, deadline) && !meter.stop()) {
    meter.steps -= OVERHEAD
    const path = pathToSomeLeaf(now.part, random.below(4) > 0, random)
    const region = regionAround(trial, path, 3 + random.below(12), random)
    if (region === null) continue
    const available = now.out.slice()
    let heldArea = 0
    let heldDue = 0
    for (const piece of region.parts.flatMap(piecesIn)) {
      available[piece.of] = available[piece.of]! + 1
      heldArea += trial.areas[piece.of]!
      heldDue += trial.dues[piece.of]!
    }
    // a new filling may hold less, most often a little, at times two pieces' worth: without that, large pieces never come in
    const share = random.below(1000) / 1000
    // but never so often that it strays far from the best
    const loss = Math.max(0, Math.min(2 * mean * share * share, bestDue + 4 * mean - nowDue))
    const filling = fill(trial, region.rect, available, {
      beam: 2 + random.below(random.below(8) === 0 ? 40 : 8),
      budget: region.rect.width * region.rect.length - heldArea + loss,
      greed: [0.05, 0.1, 0.2, 0.4][random.below(4)]!,
      noise: 30,
      meter,
      random,
    })
    if (filling.due < heldDue - loss) continue
    const out = available.map((count, kind) => count - filling.used[kind]!)
    if (trial.rare.some((rare, kind) => rare && out[kind]! > now.out[kind]!)) continue
    now = {
      part: replaced(path, region, filling.part),
      out,
      outArea: now.outArea + heldArea - filling.area,
    }
    nowDue += heldDue - filling.due
    if (nowDue < bestDue) deadline = meter.steps - patience
    if (nowDue <= bestDue) {
      best = now
      bestDue = nowDue
    }
  }
  return best
}

/** Steps that choosing a region costs, whatever its filling takes. */
const OVERHEAD = 100
