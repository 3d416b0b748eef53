import { LEFT, RIGHT } from '../model.ts'
import type { Problem } from '../problem.ts'

/** Pieces side by side: kinds in one of their postures, each some times. */
export type Bar = readonly { readonly kind: number; readonly posture: number; readonly times: number }[]

/** More sums than this are not listed, nor looked at on the way: half a second or so. */
const MOST_SUMS = 100_000
export const MOST_WORK = 2_000_000

/**
 * The bars of highest total price, at most `most`, dearest first: kinds no more often than their count, at most one piece that must
 * touch the left side and one that must touch the right. Null when there are too many sums to list. `sums` is how many were looked at.
 *
 * A bounded knapsack over lists of undominated (width, price) sums (Nemhauser & Ullmann 1969): exact for whole prices, and its
 * cost does not depend on the unit of width but on how many different sums there are.
 */
export function dearestBars(
  problem: Problem,
  price: (kind: number, posture: number) => number,
  most: number,
): { readonly bars: readonly { readonly bar: Bar; readonly price: number }[]; readonly sums: number } | null {
  const { kinds, width, zones } = problem
  const sums = new Sums()
  const sided: Sided[] = []
  for (const [kind, k] of kinds.entries()) {
    const free: { posture: number; width: number; price: number }[] = []
    for (const [posture, p] of k.possible.entries()) {
      const worth = price(kind, posture)
      if (p.flush & (LEFT | RIGHT))
        sided.push({ kind, posture, width: p.width, price: worth, flush: p.flush & (LEFT | RIGHT) })
      else if (worth > 0) free.push({ posture, width: p.width, price: worth })
    }
    if (free.length === 0) continue
    const narrowest = Math.min(...free.map((f) => f.width))
    const copies = Math.min(k.count, Math.floor(width / narrowest))
    for (let n = 0; n < copies; n++) {
      if (!sums.add(kind, free, width)) return null
    }
  }
  const found: { bar: Bar; price: number }[] = []
  // with what touches the sides set, the rest fills the room between
  const fill = (room: number, ends: readonly Sided[]) => {
    if (room < 0 && ends.length === 0) return
    const fixed = ends.reduce((sum, e) => sum + e.price, 0)
    const last = sums.lastWithin(Math.max(0, room))
    for (let i = last; i >= 0 && i > last - most; i--) {
      const node = sums.list[i]!
      found.push({ bar: barOf(sums, node, ends), price: fixed + sums.price[node]! })
    }
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
  return { bars: found.slice(0, most), sums: sums.looked }
}

interface Sided {
  readonly kind: number
  readonly posture: number
  readonly width: number
  readonly price: number
  readonly flush: number
}

/** Undominated sums as nodes that point to the sum they came from; `list` holds them by width, prices rising. */
export class Sums {
  list: number[] = [0]
  /** sums looked at so far */
  looked = 0
  readonly width: number[] = [0]
  readonly price: number[] = [0]
  readonly from: number[] = [-1]
  readonly kind: number[] = [-1]
  readonly posture: number[] = [-1]

  /** One more copy of a kind may be taken, in one of its postures. False when that makes too many sums. */
  add(kind: number, choices: readonly { posture: number; width: number; price: number }[], most: number): boolean {
    const before = this.list
    const all = [...before]
    for (const c of choices)
      for (const node of before) {
        const width = this.width[node]! + c.width
        if (width > most) break
        all.push(this.width.length)
        this.width.push(width)
        this.price.push(this.price[node]! + c.price)
        this.from.push(node)
        this.kind.push(kind)
        this.posture.push(c.posture)
      }
    this.looked += all.length
    all.sort((a, b) => this.width[a]! - this.width[b]! || this.price[b]! - this.price[a]! || a - b)
    this.list = []
    let top = Number.NEGATIVE_INFINITY
    for (const node of all)
      if (this.price[node]! > top) {
        this.list.push(node)
        top = this.price[node]!
      }
    return this.list.length <= MOST_SUMS && this.looked <= MOST_WORK
  }

  /** Position in `list` of the widest sum within a room. */
  lastWithin(room: number): number {
    let low = 0
    let high = this.list.length - 1
    while (low < high) {
      const middle = (low + high + 1) >> 1
      if (this.width[this.list[middle]!]! <= room) low = middle
      else high = middle - 1
    }
    return low
  }
}

function barOf(sums: Sums, node: number, ends: readonly Sided[]): Bar {
  const times = new Map<string, { kind: number; posture: number; times: number }>()
  const count = (kind: number, posture: number) => {
    const key = `${kind} ${posture}`
    const known = times.get(key)
    if (known) known.times++
    else times.set(key, { kind, posture, times: 1 })
  }
  for (const e of ends) count(e.kind, e.posture)
  for (let n = node; sums.from[n]! >= 0; n = sums.from[n]!) count(sums.kind[n]!, sums.posture[n]!)
  return [...times.values()]
}
