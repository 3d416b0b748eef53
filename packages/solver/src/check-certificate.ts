import type { Certificate, Demand, Posture, Request } from './model.ts'
import { END, LEFT, RIGHT, START } from './model.ts'

/* The checker's part that works out what certificates show. Like the rest of it, it shares no code with what it checks. */

/** The bound that the certificate shows, or why it shows none. */
export function certified(request: Request, certificate: Certificate): number | string {
  const demands = request.demands.filter((d) => d.count > 0)
  const { width, zones } = request.field
  const can = (d: Demand) => d.postures.filter((p) => possible(request, p))
  const earliestEnd = (p: Posture) =>
    p.flush & END ? request.field.length! : p.length + (p.flush & START ? 0 : zones.start)
  const least = (d: Demand, f: (p: Posture) => number) => Math.min(...can(d).map(f))
  switch (certificate.by) {
    case 'area':
      return ceilRatio(
        demands.reduce((sum, d) => sum + BigInt(d.count) * BigInt(least(d, (p) => p.width * p.length)), 0n),
        BigInt(width),
      )
    case 'longest':
      return Math.max(0, ...demands.map((d) => least(d, earliestEnd)))
    case 'wide':
      return demands
        .filter((d) => can(d).every((p) => 2 * p.width > width))
        .reduce((sum, d) => sum + d.count * least(d, (p) => p.length), 0)
    case 'sides': {
      const side = (mask: number) =>
        demands
          .filter((d) => can(d).every((p) => p.flush & mask))
          .reduce((sum, d) => sum + d.count * least(d, (p) => p.length), 0)
      const uses = (p: Posture) => ((p.flush & LEFT ? 1 : 0) + (p.flush & RIGHT ? 1 : 0)) * p.length
      const both = demands.reduce((sum, d) => sum + d.count * least(d, uses), 0)
      return Math.max(side(LEFT), side(RIGHT), Math.ceil(both / 2))
    }
    case 'bars':
      return pricedBars(request, certificate.prices, certificate.capacity)
    case 'scales':
      return rescaled(request, certificate.across, certificate.along, certificate.bound)
    case 'exhausted':
      return certificate.states > 0 ? Number.MAX_SAFE_INTEGER : 'an exhaustive search that visited nothing'
  }
}

/**
 * Every slice across a layout is a bar: rectangles side by side, no demand more often than its count, at most one that
 * must touch each side. If no bar is priced above the capacity, a layout is at least its total price over the capacity long.
 */
function pricedBars(request: Request, prices: readonly number[], capacity: number): number | string {
  const wrong = wrongList(request, prices)
  if (wrong !== null) return wrong
  if (capacity <= 0) return `capacity ${capacity}`
  const total = totalOf(request, (p, at) => BigInt(prices[at]!) * BigInt(p.length))
  const dearest = dearestBar(request, prices)
  if (dearest > capacity) return `a bar is worth ${dearest}, more than the capacity ${capacity}`
  return ceilRatio(total, BigInt(capacity))
}

/**
 * With other sizes for the rectangles, under which no bar is wider than W and no column within a length L longer than V, rectangles that fit
 * W × V as they are rescaled have together at most its area (Fekete & Schepers 2004). So a layout is at least as long as the shortest
 * column that comes to their area over W; looked for up to the length `claimed`.
 */
function rescaled(
  request: Request,
  across: readonly number[],
  along: readonly number[],
  claimed: number,
): number | string {
  const wrong = wrongList(request, across) ?? wrongList(request, along)
  if (wrong !== null) return wrong
  const total = totalOf(request, (_, at) => BigInt(across[at]!) * BigInt(along[at]!))
  const widest = BigInt(Math.max(0, dearestBar(request, across)))
  const columns = choicesOf(request, along).flatMap(({ count, choices }) =>
    Array.from({ length: count }, () => choices.map(({ p, price }) => ({ width: p.length, price }))),
  )
  for (const { width: length, price } of undominated(columns, claimed))
    if (BigInt(price) * widest >= total) return length
  return claimed
}

function wrongList(request: Request, prices: readonly number[]): string | null {
  const postures = request.demands.reduce((n, d) => n + d.postures.length, 0)
  if (prices.length !== postures) return `${prices.length} numbers for ${postures} postures`
  return prices.some((p) => p < 0) ? 'a number below 0' : null
}

/** Postures that are possible, each with its number from a list of one per posture. */
function choicesOf(request: Request, prices: readonly number[]) {
  let at = 0
  return request.demands.map((d, demand) => {
    const choices = d.postures.map((p, j) => ({ p, at: at + j, price: prices[at + j]! }))
    at += d.postures.length
    return { demand, count: d.count, choices: choices.filter(({ p }) => possible(request, p)) }
  })
}

/** The least of each demand's postures, times its count, in all. */
function totalOf(request: Request, worth: (p: Posture, at: number) => bigint): bigint {
  let total = 0n
  for (const { count, choices } of choicesOf(request, [])) {
    const [least] = choices.map(({ p, at }) => worth(p, at)).sort((a, b) => (a < b ? -1 : 1))
    if (count > 0) total += BigInt(count) * least!
  }
  return total
}

/** The highest price of any bar. */
function dearestBar(request: Request, prices: readonly number[]): number {
  // widths that may lie anywhere, and those bound to a side, each with its price
  const inside: { width: number; price: number }[][] = []
  const bound: { width: number; price: number; flush: number }[] = []
  for (const { count, choices } of choicesOf(request, prices)) {
    if (count === 0) continue
    const free = choices
      .filter(({ p }) => !(p.flush & (LEFT | RIGHT)))
      .map(({ p, price }) => ({ width: p.width, price }))
    for (let n = 0; n < count && free.length > 0; n++) {
      if (n * Math.min(...free.map((f) => f.width)) > request.field.width) break
      inside.push(free)
    }
    for (const { p, price } of choices)
      if (p.flush & (LEFT | RIGHT)) bound.push({ width: p.width, price, flush: p.flush })
  }
  const best = knapsack(inside, request.field.width)
  const most = (room: number) => (room < 0 ? Number.NEGATIVE_INFINITY : best(room))
  const { zones, width } = request.field
  let dearest = most(width - zones.left - zones.right)
  for (const l of bound) {
    if (l.flush & LEFT && l.flush & RIGHT) dearest = Math.max(dearest, l.price)
    else if (l.flush & LEFT) {
      dearest = Math.max(dearest, l.price + Math.max(0, most(width - Math.max(l.width, zones.left) - zones.right)))
      for (const r of bound)
        if (r.flush & RIGHT && !(r.flush & LEFT) && l.width + r.width <= width) {
          const between = width - Math.max(l.width, zones.left) - Math.max(r.width, zones.right)
          dearest = Math.max(dearest, l.price + r.price + Math.max(0, most(between)))
        }
    } else dearest = Math.max(dearest, l.price + Math.max(0, most(width - Math.max(l.width, zones.right) - zones.left)))
  }
  return dearest
}

/** Largest price of at most one choice from each item within a width, for every width. */
function knapsack(items: readonly { width: number; price: number }[][], width: number): (room: number) => number {
  const list = undominated(items, width)
  return (room) => {
    let low = 0
    let high = list.length - 1
    while (low < high) {
      const middle = (low + high + 1) >> 1
      if (list[middle]!.width <= room) low = middle
      else high = middle - 1
    }
    return list[low]!.price
  }
}

/** Sums of at most one choice from each item that no other outdoes, up to a width; prices rise with widths. */
function undominated(items: readonly { width: number; price: number }[][], width: number) {
  let list: { width: number; price: number }[] = [{ width: 0, price: 0 }]
  for (const choices of items) {
    const all = [...list]
    for (const c of choices)
      for (const s of list)
        if (c.price > 0 && s.width + c.width <= width) all.push({ width: s.width + c.width, price: s.price + c.price })
    all.sort((a, b) => a.width - b.width || b.price - a.price)
    list = []
    for (const s of all) if (list.length === 0 || s.price > list[list.length - 1]!.price) list.push(s)
  }
  return list
}

function ceilRatio(a: bigint, b: bigint): number {
  return Number((a + b - 1n) / b)
}

/** Could this posture be placed if it were alone? */
export function possible(request: Request, p: Posture): boolean {
  const { width, length, zones } = request.field
  const has = (side: number) => (p.flush & side) !== 0
  if (has(END) && length === null) return false
  if (has(LEFT) && has(RIGHT) && p.width !== width) return false
  if (has(START) && has(END) && p.length !== length) return false
  const across = p.width + (has(LEFT) ? 0 : zones.left) + (has(RIGHT) ? 0 : zones.right)
  const along = p.length + (has(START) ? 0 : zones.start) + (has(END) ? 0 : zones.end)
  return across <= width && (length === null || along <= length)
}

/** Does a repeat along the cloth bind this demand to others or to the field? A group of one piece is free. */
function tiedAlong(request: Request, { tie }: Demand): boolean {
  if (tie === null || tie.axis !== 'along' || tie.repeat <= 0) return false
  const group = request.demands.filter((d) => d.tie?.axis === 'along' && d.tie.group === tie.group)
  return tie.absolute || group.reduce((sum, d) => sum + d.count, 0) > 1
}

const MOST_SUMS = 20_000

/**
 * The next length that a layout can have: a multiple of the common divisor; where rectangles can all be pushed toward the
 * start until each lies on another, a sum of lengths, each demand used no more often than its count.
 */
export function roundedUp(request: Request, bound: number): number {
  const { field } = request
  const demands = request.demands.filter((d) => d.count > 0)
  const lengths = [field.zones.start, field.zones.end, field.length ?? 0]
  for (const f of field.flaws) lengths.push(f.y, f.length)
  for (const d of demands) {
    for (const p of d.postures) lengths.push(p.length)
    if (tiedAlong(request, d)) lengths.push(d.tie!.repeat, d.tie!.offset)
  }
  let divisor = 0
  for (const length of lengths) for (let v = Math.abs(length); v !== 0; ) [divisor, v] = [v, divisor % v]
  const whole = Math.ceil(bound / divisor) * divisor
  const settles =
    field.flaws.length === 0 &&
    field.zones.start === 0 &&
    demands.every((d) => !tiedAlong(request, d) && d.postures.every((p) => !(p.flush & END)))
  if (!settles) return whole
  // lengths of pieces in all, far enough beyond the bound to hold the next sum
  const can = demands.map((d) => ({ count: d.count, postures: d.postures.filter((p) => possible(request, p)) }))
  const longest = Math.max(...can.flatMap((d) => d.postures.map((p) => p.length)))
  const sums = new Set([0])
  for (const d of can)
    for (let n = 0; n < d.count; n++) {
      const before = sums.size
      for (const s of [...sums]) for (const p of d.postures) if (s + p.length <= whole + longest) sums.add(s + p.length)
      if (sums.size > MOST_SUMS) return whole
      if (sums.size === before) break
    }
  let next = Number.POSITIVE_INFINITY
  for (const s of sums) if (s >= whole && s < next) next = s
  return next === Number.POSITIVE_INFINITY ? whole : next
}
