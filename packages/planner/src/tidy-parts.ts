import type { Rect } from '@lengthwise/solver'
import type { Part, Runs } from './parts.ts'
import { cutsIn, inLine, largestLeft, leaves } from './parts.ts'

/**
 * The same pieces in the same places, taken apart so that the largest remnant is larger or, with an equal one, in fewer
 * divisions. A strip of left-over that runs beside several lengths may be shared out to them, and what is left beside
 * neighbouring lengths may come off as one strip:
 *
 *     ┌──────┬─┐      ┌──────┬─┐
 *     │  1   │ │      │  1   │ │
 *     ├──────┤ │ <──> ├──────┴─┤
 *     │ left │ │      │  left  │
 *     ├──────┤ │      ├──────┬─┤
 *     │  2   │ │      │  2   │ │
 *     └──────┴─┘      └──────┴─┘
 *
 * Each step is taken for the whole cloth at once and must better it, so that there is an end.
 */
export function tidyParts(root: Part, keeps: (box: Rect) => boolean): Part {
  if (leaves(root).length > MOST_LEAVES) return root
  let best = root
  let merit = meritOf(best, keeps)
  for (let better = true; better; ) {
    better = false
    for (const other of variants(best)) {
      const its = meritOf(other, keeps)
      if (its.largest < merit.largest || (its.largest === merit.largest && its.cuts >= merit.cuts)) continue
      best = other
      merit = its
      better = true
    }
  }
  return best
}

const MOST_LEAVES = 120

const meritOf = (part: Part, keeps: (box: Rect) => boolean) => ({
  largest: largestLeft(part, keeps),
  cuts: cutsIn(part),
})

/** Every part that differs in one place. */
function* variants(part: Part): Generator<Part> {
  if (part.kind !== 'cuts') return
  yield* shared(part)
  yield* joined(part)
  for (const [i, inner] of part.parts.entries())
    for (const other of variants(inner)) yield inLine(part.runs, part.parts.toSpliced(i, 1, other))
}

type Cuts = Extract<Part, { kind: 'cuts' }>

/** A left-over next to a part that is cut the other way: each of that part's parts takes its share of it. */
function* shared(part: Cuts): Generator<Part> {
  const { runs, parts } = part
  for (const [i, strip] of parts.entries()) {
    if (strip.kind !== 'left-over') continue
    for (const j of [i - 1, i + 1]) {
      const beside = parts[j]
      if (beside?.kind !== 'cuts' || beside.runs === runs) continue
      const wider = inLine(
        beside.runs,
        beside.parts.map((p) => {
          const share: Part = { kind: 'left-over', box: across(runs, strip.box, p.box) }
          return inLine(runs, j < i ? [p, share] : [share, p])
        }),
      )
      yield inLine(runs, parts.toSpliced(Math.min(i, j), 2, wider))
    }
  }
}

/** Neighbours that each end in left-over on the same side: as much of it as all have comes off first, in one strip. */
function* joined(part: Cuts): Generator<Part> {
  const { runs, parts } = part
  for (let from = 0; from < parts.length; from++)
    for (let to = from + 1; to < parts.length; to++)
      for (const side of ['low', 'high'] as const) {
        const run = parts.slice(from, to + 1)
        const depth = Math.min(...run.map((p) => leftAt(p, runs, side)))
        if (depth <= 0 || run.every((p) => p.kind === 'left-over')) continue
        const rest = inLine(
          runs,
          run.map((p) => without(p, runs, side, depth)),
        )
        const whole = run.map((p) => p.box).reduce(hull)
        const strip: Part = { kind: 'left-over', box: edge(whole, runs, side, depth) }
        const other = inLine(turned(runs), side === 'low' ? [strip, rest] : [rest, strip])
        yield inLine(runs, parts.toSpliced(from, run.length, other))
      }
}

const turned = (runs: Runs): Runs => (runs === 'across' ? 'along' : 'across')

/** How deep the left-over is at one side of a part in a row that runs `runs`. */
function leftAt(part: Part, runs: Runs, side: 'low' | 'high'): number {
  const extent = (box: Rect) => (runs === 'across' ? box.width : box.length)
  if (part.kind === 'left-over') return extent(part.box)
  if (part.kind !== 'cuts' || part.runs === runs) return 0
  const last = side === 'low' ? part.parts[0]! : part.parts.at(-1)!
  return last.kind === 'left-over' ? extent(last.box) : 0
}

/** The part less a strip of left-over at one side. */
function without(part: Part, runs: Runs, side: 'low' | 'high', depth: number): Part {
  if (part.kind === 'left-over') return { kind: 'left-over', box: less(part.box, runs, side, depth) }
  if (part.kind !== 'cuts') return part
  const index = side === 'low' ? 0 : part.parts.length - 1
  const last = part.parts[index]!
  return inLine(
    part.runs,
    part.parts.toSpliced(index, 1, { kind: 'left-over', box: less(last.box, runs, side, depth) }),
  )
}

function less(box: Rect, runs: Runs, side: 'low' | 'high', depth: number): Rect {
  if (runs === 'across') return { ...box, x: side === 'low' ? box.x + depth : box.x, width: box.width - depth }
  return { ...box, y: side === 'low' ? box.y + depth : box.y, length: box.length - depth }
}

/** The strip of a box at one side. */
function edge(box: Rect, runs: Runs, side: 'low' | 'high', depth: number): Rect {
  if (runs === 'across') return { ...box, x: side === 'low' ? box.x : box.x + box.width - depth, width: depth }
  return { ...box, y: side === 'low' ? box.y : box.y + box.length - depth, length: depth }
}

/** The part of a strip beside a box, in a row that runs `runs`. */
const across = (runs: Runs, strip: Rect, beside: Rect): Rect =>
  runs === 'along'
    ? { x: strip.x, width: strip.width, y: beside.y, length: beside.length }
    : { y: strip.y, length: strip.length, x: beside.x, width: beside.width }

function hull(a: Rect, b: Rect): Rect {
  const x = Math.min(a.x, b.x)
  const y = Math.min(a.y, b.y)
  const right = Math.max(a.x + a.width, b.x + b.width)
  const end = Math.max(a.y + a.length, b.y + b.length)
  return { x, y, width: right - x, length: end - y }
}
