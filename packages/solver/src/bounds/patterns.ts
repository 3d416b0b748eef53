import { LEFT, RIGHT } from '../model.ts'
import type { Problem } from '../problem.ts'
import type { Choice, Piece, Sums } from './sums.ts'
import { sumsUpTo } from './sums.ts'

/** Pieces side by side, or one after another: kinds in one of their possible postures, each some times. */
export type Pattern = readonly { readonly kind: number; readonly posture: number; readonly times: number }[]

export type Prices = (kind: number, posture: number) => number

/** The patterns of highest total price, dearest first, and what they cost. */
export interface Dearest {
  readonly patterns: readonly { readonly pattern: Pattern; readonly price: number }[]
  readonly steps: number
}

/**
 * The dearest bars across the field, at most `most`: kinds no more often than their count, at most one piece that must touch
 * the left side and one that must touch the right. Null when there are too many sums to list.
 */
export function dearestBars(problem: Problem, price: Prices, most: number): Dearest | null {
  const { kinds, width, zones } = problem
  const sums = sumsUpTo(width)
  const sided: Sided[] = []
  for (const [kind, k] of kinds.entries()) {
    const free: Choice[] = []
    for (const [posture, p] of k.possible.entries()) {
      const worth = price(kind, posture)
      if (p.flush & (LEFT | RIGHT))
        sided.push({ kind, posture, width: p.width, price: worth, flush: p.flush & (LEFT | RIGHT) })
      else if (worth > 0) free.push({ posture, size: p.width, price: worth })
    }
    if (!addCopies(sums, kind, k.count, free, width)) return null
  }
  const found: { pattern: Pattern; price: number }[] = []
  // with what touches the sides set, the rest fills the room between
  const fill = (room: number, ends: readonly Sided[]) => {
    if (room >= 0 || ends.length > 0) found.push(...longestOf(sums, Math.max(0, room), most, ends))
  }
  fill(width - zones.left - zones.right, [])
  for (const l of sided) {
    if (l.flush === (LEFT | RIGHT)) fill(-1, [l])
    else if (l.flush === LEFT) {
      fill(width - Math.max(l.width, zones.left) - zones.right, [l])
      for (const r of sided)
        if (r.flush === RIGHT && l.width + r.width <= width)
          fill(width - Math.max(l.width, zones.left) - Math.max(r.width, zones.right), [l, r])
    } else fill(width - Math.max(l.width, zones.right) - zones.left, [l])
  }
  found.sort((a, b) => b.price - a.price)
  return { patterns: found.slice(0, most), steps: sums.steps }
}

/** The dearest columns along a field that ends at `reach`. Null when there are too many sums to list. */
export function dearestColumns(problem: Problem, reach: number, price: Prices, most: number): Dearest | null {
  const sums = columnSums(problem, reach, price)
  return sums && { patterns: longestOf(sums, reach, most, []).sort((a, b) => b.price - a.price), steps: sums.steps }
}

/** Sums of pieces one after another up to `reach`. Null when there are too many to list. */
export function columnSums({ kinds }: Problem, reach: number, price: Prices): Sums | null {
  const sums = sumsUpTo(reach)
  for (const [kind, k] of kinds.entries()) {
    const choices: Choice[] = []
    for (const [posture, p] of k.possible.entries()) {
      const worth = price(kind, posture)
      if (worth > 0) choices.push({ posture, size: p.length, price: worth })
    }
    if (!addCopies(sums, kind, k.count, choices, reach)) return null
  }
  return sums
}

/** Sums of pieces side by side; of all that must touch a side, a sum holds one. Null when there are too many to list. */
export function barSums({ kinds, width }: Problem, price: Prices): Sums | null {
  const sums = sumsUpTo(width)
  const left: Choice[] = []
  const right: Choice[] = []
  for (const [kind, k] of kinds.entries()) {
    const inside: Choice[] = []
    for (const [posture, p] of k.possible.entries()) {
      const worth = price(kind, posture)
      const side = p.flush & LEFT ? left : p.flush & RIGHT ? right : inside
      if (worth > 0) side.push({ posture, size: p.width, price: worth })
    }
    if (!addCopies(sums, kind, k.count, inside, width)) return null
  }
  return sums.add(-1, 1, left) && sums.add(-1, 1, right) ? sums : null
}

function addCopies(sums: Sums, kind: number, count: number, choices: readonly Choice[], most: number): boolean {
  if (choices.length === 0) return true
  const copies = Math.min(count, Math.floor(most / Math.min(...choices.map((c) => c.size))))
  return sums.add(kind, copies, choices)
}

interface Sided {
  readonly kind: number
  readonly posture: number
  readonly width: number
  readonly price: number
  readonly flush: number
}

/** The longest sums within a room are the dearest; each with what touches the sides. */
function longestOf(sums: Sums, room: number, most: number, ends: readonly Sided[]) {
  const fixed = ends.reduce((sum, e) => sum + e.price, 0)
  const found: { pattern: Pattern; price: number }[] = []
  for (let sum = sums.within(room); sum >= 0 && found.length < most; sum = sums.before(sum))
    found.push({ pattern: patternOf([...ends, ...sums.piecesOf(sum)]), price: fixed + sums.price(sum) })
  return found
}

function patternOf(pieces: readonly Piece[]): Pattern {
  const times = new Map<string, { kind: number; posture: number; times: number }>()
  for (const { kind, posture } of pieces) {
    const key = `${kind} ${posture}`
    const known = times.get(key)
    if (known) known.times++
    else times.set(key, { kind, posture, times: 1 })
  }
  return [...times.values()]
}
