/**
 * Windows of up to a dozen pieces of a cut tree, solved again exactly with one of the pieces that found no room, or with such a piece instead of a smaller one.
 *
 * The exact method is that of `exact/fronts` (Viswanathan & Bagchi 1993; Dolatabadi, Lodi & Monaci 2012); as neighbourhoods of a large
 * neighbourhood search (P. Shaw, 1998) such windows tell for sure what the beam search of `regrow` only tries: whether a window's own
 * pieces and one more have room in it. Where none has, the window's pieces are laid anew so that what is left over is one strip, as
 * wide or long as can be, for a later window to use.
 *
 *     +--+-----+        +-----+--+
 *     |a |  b  |        |  b  |  |
 *     |  +--+--+   ->   +--+--+  |   the strip on the right takes what neither of the two gaps would
 *     |  |  | c|        |a | c|  |
 *     +--+--+--+        +--+--+--+
 *
 * Only for pieces that may lie anywhere. Nothing is proved of the whole.
 */
import type { Tree } from '../exact/blocks.ts'
import type { Finished } from '../exact/fronts.ts'
import { fronts } from '../exact/fronts.ts'
import type { Rect } from '../model.ts'
import type { Meter } from './fill.ts'
import type { Random } from './random.ts'
import type { Region } from './regions.ts'
import { pathToSomeLeaf, regionAround, replaced } from './regions.ts'
import type { Growth } from './regrow.ts'
import type { Part } from './tree.ts'
import { piecesIn, rect, splitOf } from './tree.ts'
import type { Trial } from './trial.ts'

/** Pieces of a window, the one brought in counted. */
const MOST_PIECES = 12

/** Candidate blocks one window may take. */
const MOST_STEPS = 40_000

/** Steps that choosing a window costs. */
const OVERHEAD = 100

/** Brings pieces in within so many steps. The growth that comes of it, never a worse one. */
export function resolved(trial: Trial, start: Growth, steps: number, meter: Meter, random: Random): Growth {
  let now = start
  const end = meter.steps - steps
  while (now.outArea > 0 && meter.steps > Math.max(0, end) && !meter.stop()) {
    meter.steps -= OVERHEAD
    const path = pathToSomeLeaf(now.part, true, random)
    const region = regionAround(trial, path, 5 + random.below(MOST_PIECES - 5), random)
    if (region === null) continue
    const held = region.parts.flatMap(piecesIn)
    const area = held.reduce((sum, piece) => sum + trial.areas[piece.of]!, 0)
    const spare = region.rect.width * region.rect.length - area
    const counts = trial.counts.map(() => 0)
    for (const { of } of held) counts[of]!++
    const change = changeOf(trial, now.out, counts, region.rect, spare, random)
    if (change !== null) {
      const wanted = counts.slice()
      wanted[change.comes]!++
      if (change.goes !== null) wanted[change.goes]!--
      const [block] = blocksOf(trial, wanted, region.rect, meter)
      if (block !== undefined) {
        const out = now.out.map((count, kind) => count + counts[kind]! - wanted[kind]!)
        now = { part: put(path, region, block), out, outArea: now.outArea - change.gain }
        continue
      }
    }
    const gathered = held.length < 2 ? null : widestGap(trial, counts, region, meter)
    if (gathered !== null) now = { ...now, part: put(path, region, gathered) }
  }
  return now
}

interface Change {
  readonly comes: number
  readonly goes: number | null
  /** area that is then no longer out */
  readonly gain: number
}

/** A piece without room that may come in, instead of a smaller one of the window or beside them all, by area; null: none. */
function changeOf(
  trial: Trial,
  out: readonly number[],
  held: readonly number[],
  room: Rect,
  spare: number,
  random: Random,
): Change | null {
  const fitting = trial.shapes.filter(
    ({ kind, width, length }) => out[kind]! > 0 && width <= room.width && length <= room.length,
  )
  if (fitting.length === 0) return null
  const comes = fitting[random.below(fitting.length)]!.kind
  const area = trial.areas[comes]!
  if (area <= spare) return { comes, goes: null, gain: area }
  const smaller = held.flatMap((count, kind) => {
    const gain = area - trial.areas[kind]!
    return count > 0 && gain > 0 && gain <= spare ? [{ comes, goes: kind, gain }] : []
  })
  return smaller.length === 0 ? null : smaller[random.below(smaller.length)]!
}

/** The undominated blocks of these pieces that fit the room; none too when that took too many steps. */
function blocksOf(trial: Trial, counts: readonly number[], room: Rect, meter: Meter): readonly Finished[] {
  const { width, length } = room
  const { problem } = trial
  const kinds = problem.kinds.flatMap((kind, index) => (counts[index]! > 0 ? [{ ...kind, count: counts[index]! }] : []))
  const effort = Math.min(MOST_STEPS, meter.steps)
  const found = fronts(
    { ...problem, kinds, width, length: null },
    { trials: [{ width, length }], effort, stop: meter.stop },
  )
  meter.steps -= found.steps
  const names = counts.flatMap((count, kind) => (count > 0 ? [kind] : []))
  return (found.best[0] ?? []).map((each) => ({ ...each, tree: renamed(each.tree, names) }))
}

function renamed(tree: Tree, names: readonly number[]): Tree {
  if (tree.how === 'piece') return { ...tree, kind: names[tree.kind]! }
  return { ...tree, first: renamed(tree.first, names), second: renamed(tree.second, names) }
}

/** The block that leaves the largest strip beside or behind it, if that is larger than any gap now there. */
function widestGap(trial: Trial, counts: readonly number[], region: Region, meter: Meter): Finished | null {
  const { width, length } = region.rect
  const gap = (block: Finished): number => Math.max((width - block.width) * length, (length - block.length) * width)
  let best: Finished | null = null
  let largest = largestSpare(region.parts)
  for (const block of blocksOf(trial, counts, region.rect, meter)) {
    if (gap(block) <= largest) continue
    largest = gap(block)
    best = block
  }
  return best
}

function largestSpare(parts: readonly Part[]): number {
  return parts.reduce((largest, part) => {
    const own = part.kind === 'spare' ? part.rect.width * part.rect.length : 0
    return Math.max(largest, own, part.kind === 'split' ? largestSpare(part.parts) : 0)
  }, 0)
}

function put(path: readonly Part[], region: Region, block: Finished): Part {
  return replaced(
    path,
    region,
    partOf(block.tree, region.rect, region.rect.width - block.width, region.rect.length - block.length),
  )
}

/** The block in the first corner of `room`; what it spares lies beside it where that is the larger strip, else behind it. */
function partOf(tree: Tree, room: Rect, beside: number, behind: number): Part {
  const { x, y, width, length } = room
  const block = laid(tree, x, y)
  const column = beside * length >= behind * width
  const inner = column
    ? splitOf(rect(x, y, tree.width, length), true, [
        block,
        spareAt(x, y + tree.length, tree.width, length - tree.length),
      ])
    : splitOf(rect(x, y, width, tree.length), false, [
        block,
        spareAt(x + tree.width, y, width - tree.width, tree.length),
      ])
  const strip = column
    ? spareAt(x + tree.width, y, width - tree.width, length)
    : spareAt(x, y + tree.length, width, length - tree.length)
  return splitOf(room, !column, [inner, strip])
}

function laid(tree: Tree, x: number, y: number): Part {
  const { width, length } = tree
  const whole = rect(x, y, width, length)
  if (tree.how === 'piece') return { kind: 'piece', rect: whole, of: tree.kind, posture: tree.posture }
  const { first, second } = tree
  const rows = tree.how === 'after'
  const one = rows ? rect(x, y, width, first.length) : rect(x, y, first.width, length)
  const two = rows
    ? rect(x, y + first.length, width, length - first.length)
    : rect(x + first.width, y, width - first.width, length)
  return splitOf(whole, rows, [
    partOf(first, one, one.width - first.width, one.length - first.length),
    partOf(second, two, two.width - second.width, two.length - second.length),
  ])
}

function spareAt(x: number, y: number, width: number, length: number): Part {
  return { kind: 'spare', rect: rect(x, y, width, length) }
}
