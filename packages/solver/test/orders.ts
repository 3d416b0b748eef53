import type { Demand, Posture, Request } from '../src/index.ts'
import { END, LEFT, RIGHT, START } from '../src/index.ts'

/** A seeded generator of whole numbers below n: mulberry32 (Tommy Ettinger, public domain). */
export function seeded(seed: number): (n: number) => number {
  let a = seed | 0
  return (n) => {
    a = (a + 0x6d2b79f5) | 0
    let t = Math.imul(a ^ (a >>> 15), 1 | a)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return Math.floor((((t ^ (t >>> 14)) >>> 0) / 4294967296) * n)
  }
}

export interface Rules {
  readonly pieces: number
  readonly width: number
  readonly flush?: boolean
  readonly zones?: boolean
  readonly turning?: boolean
  readonly finite?: boolean
  readonly flaws?: boolean
  readonly ties?: boolean
}

/** A random order under some of the rules, small enough for a naive exact method. */
export function randomOrder(seed: number, rules: Rules): Request {
  const below = seeded(seed)
  const { width } = rules
  const zone = () => (rules.zones && below(2) ? below(3) : 0)
  const length = rules.finite ? 4 + below(9) : null
  const zones = { left: zone(), right: zone(), start: zone(), end: length === null ? 0 : zone() }
  const demands: Demand[] = []
  for (let left = rules.pieces; left > 0; ) {
    const count = Math.min(left, 1 + below(3))
    left -= count
    const w = 1 + below(Math.min(width - zones.left - zones.right, 6))
    const l = 1 + below(6)
    let flush = 0
    if (rules.flush && below(2)) {
      flush = [LEFT, RIGHT, LEFT | RIGHT, START, END, START | LEFT][below(length === null ? 3 : 6)]!
    }
    const postures: Posture[] = [{ width: (flush & 3) === 3 ? width : w, length: l, flush }]
    if (rules.turning && below(2)) postures.push({ width: Math.min(l, width), length: w, flush: 0 })
    if (rules.zones && below(2)) postures.push({ width: w, length: l, flush: LEFT })
    const repeat = 3 + below(3)
    const tie =
      rules.ties && below(3) > 0
        ? {
            group: 'ab'[below(2)]!,
            axis: 'along' as const,
            repeat: 4,
            offset: below(repeat) % 4,
            absolute: false,
          }
        : null
    demands.push({ id: `d${demands.length}`, count, postures, tie })
  }
  const flaws = rules.flaws ? [{ x: below(width), y: below(6), width: 1, length: 1 + below(2) }] : []
  for (const f of flaws) if (length !== null && f.y + f.length > length) f.y = 0
  return { field: { width, length, zones, flaws }, demands, cuts: 'guillotine' }
}

export const open = (width: number, demands: Demand[], length: number | null = null): Request => ({
  field: { width, length, zones: { left: 0, right: 0, start: 0, end: 0 }, flaws: [] },
  demands,
  cuts: 'guillotine',
})

export const piece = (id: string, count: number, width: number, length: number, flush = 0): Demand => ({
  id,
  count,
  postures: [{ width, length, flush }],
  tie: null,
})

/** A rectangle cut up at random: the pieces fill it, so its length is the shortest there is. */
export function sliced(seed: number, width: number, length: number, pieces: number): Request {
  const below = seeded(seed)
  const parts = [{ width, length }]
  while (parts.length < pieces) {
    const [part] = parts.splice(below(parts.length), 1)
    const { width: w, length: l } = part!
    const across = w === 1 || (l > 1 && below(2) === 0)
    const at = 1 + below((across ? l : w) - 1)
    if (w * l === 1) parts.push(part!)
    else if (across) parts.push({ width: w, length: at }, { width: w, length: l - at })
    else parts.push({ width: at, length: l }, { width: w - at, length: l })
  }
  return open(
    width,
    parts.map((p, i) => piece(`p${i}`, 1, p.width, p.length)),
  )
}

/** Panels as wide as the cloth, small pieces that keep phase with them or with each other, and strips that do not. */
export function tiedOrder(seed: number): Request {
  const below = seeded(seed)
  const width = 4 + below(3)
  const repeat = 3 + below(3)
  const tied = (id: string, w: number, group: string): Demand => ({
    ...piece(id, 1, w, 1 + below(5)),
    tie: { group, axis: 'along', repeat, offset: below(repeat), absolute: false },
  })
  return open(width, [
    tied('panel', width, 'a'),
    tied('small', 1 + below(width - 1), 'a'),
    tied('other panel', width, 'ab'[below(2)]!),
    tied('other small', 1 + below(width - 1), 'b'),
    piece('strip', 1, 1 + below(width - 1), 2 + below(5)),
  ])
}

/**
 * A small order of pieces that keep phase along the strip, in up to three groups, the first sometimes that of the cloth itself; sometimes
 * with zones, sides to touch, turning, or on cloth of set length.
 */
export function phasedOrder(seed: number): Request {
  const below = seeded(seed * 31 + 7)
  const width = 3 + below(4)
  const repeat = 2 + below(5)
  const groups = 1 + below(3)
  const [zoned, absolute, sided, finite, turning] = [4, 5, 4, 6, 4].map((oneIn) => below(oneIn) === 0)
  const kinds = 2 + below(4)
  const demands: Demand[] = []
  for (let left = 5; left > 0 && demands.length < kinds; ) {
    const count = Math.min(left, below(3) === 0 ? 2 + below(2) : 1)
    left -= count
    const w = below(4) === 0 ? width : 1 + below(width)
    const l = 1 + below(5)
    const group = below(groups + 1)
    const flush = sided && below(2) ? [LEFT, RIGHT][below(2)]! : 0
    const turned = turning && below(2) && l <= width ? [{ width: l, length: w, flush: 0 }] : []
    const tie: Demand['tie'] =
      group < groups
        ? { group: 'abc'[group]!, axis: 'along', repeat, offset: below(repeat), absolute: !!absolute && group === 0 }
        : null
    const postures = [{ width: w, length: l, flush }, ...turned]
    demands.push({ id: `d${demands.length}`, count, postures, tie })
  }
  const zone = () => (zoned && below(2) ? below(3) : 0)
  const zones = { left: Math.min(zone(), 1), right: 0, start: zone(), end: 0 }
  const length = finite ? 8 + below(8) : null
  return { field: { width, length, zones, flaws: [] }, demands, cuts: 'guillotine' }
}
