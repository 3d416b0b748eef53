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
import type { Part, Split } from './tree.ts'
import { pieceCount, piecesIn, rect, spareCount, splitOf } from './tree.ts'
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

/** From the root down to a leaf drawn at random; where wanted and possible, to a spare part. */
function pathToSomeLeaf(root: Part, spare: boolean, random: FillOptions['random']): Part[] {
  const size = spare && spareCount(root) > 0 ? spareCount : leafCount
  const path: Part[] = [root]
  for (let last = root; last.kind === 'split'; ) {
    let at = random.below(size(last))
    const next = last.parts.find((part) => {
      at -= size(part)
      return at < 0
    })
    last = next!
    path.push(last)
  }
  return path
}

function leafCount(part: Part): number {
  return pieceCount(part) + spareCount(part)
}

interface Region {
  readonly rect: Part['rect']
  readonly parts: readonly Part[]
  /** index into the path of the part that is replaced, or of the division some of whose parts are */
  readonly at: number
  /** null: the whole part */
  readonly within: { readonly split: Split; readonly chosen: ReadonlySet<Part> } | null
}

function regionAround(trial: Trial, path: readonly Part[], most: number, random: FillOptions['random']): Region | null {
  let at = path.length - 1
  while (at > 0 && pieceCount(path[at - 1]!) <= most) at--
  const whole = path[at]!
  if (at === 0) return { rect: whole.rect, parts: [whole], at, within: null }
  // the part above holds too many: take this one and some of its neighbours
  const split = path[at - 1] as Split
  const chosen = new Set<Part>([whole])
  let pieces = pieceCount(whole)
  let [from, to] = [split.parts.indexOf(whole), split.parts.indexOf(whole)]
  for (let tries = 0; tries < 6; tries++) {
    let next: Part | undefined
    if (trial.plain) next = split.parts[random.below(split.parts.length)]!
    else next = random.below(2) === 0 ? split.parts[from - 1] : split.parts[to + 1]
    if (next === undefined || chosen.has(next)) continue
    const more = pieceCount(next)
    if (pieces + more > most) continue
    chosen.add(next)
    pieces += more
    const index = split.parts.indexOf(next)
    from = Math.min(from, index)
    to = Math.max(to, index)
  }
  if (chosen.size === 1 && pieces === 0) return null
  if (chosen.size === split.parts.length) return { rect: split.rect, parts: [split], at: at - 1, within: null }
  const parts = split.parts.filter((part) => chosen.has(part))
  const size = parts.reduce((sum, part) => sum + (split.rows ? part.rect.length : part.rect.width), 0)
  const { width, length } = split.rect
  const at0 = trial.plain ? { x: 0, y: 0 } : parts[0]!.rect
  const joined = split.rows ? rect(at0.x, at0.y, width, size) : rect(at0.x, at0.y, size, length)
  return { rect: joined, parts, at: at - 1, within: { split, chosen } }
}

/**
 * The tree with the region filled anew in the place of its first part. Where pieces may lie anywhere, other parts close ranks, and
 * the positions in the tree no longer hold: only sizes and order count until it is closed up.
 */
function replaced(path: readonly Part[], region: Region, filling: Part): Part {
  let part = filling
  if (region.within !== null) {
    const { split, chosen } = region.within
    const [first] = region.parts
    const parts = split.parts.flatMap((each) => (each === first ? [filling] : chosen.has(each) ? [] : [each]))
    part = splitOf(split.rect, split.rows, parts)
  }
  for (let depth = region.at - 1; depth >= 0; depth--) {
    const above = path[depth] as Split
    const old = path[depth + 1]!
    part = splitOf(
      above.rect,
      above.rows,
      above.parts.map((each) => (each === old ? part : each)),
    )
  }
  return part
}
