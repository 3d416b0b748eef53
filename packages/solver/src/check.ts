import type { Answer, Certificate, CutNode, Demand, Fault, Posture, Rect, Request } from './model.ts'
import { END, LEFT, RIGHT, START } from './model.ts'

/**
 * Every way in which `answer` is not an answer to `request`; empty when it is one.
 *
 * Shares no code with what it checks. Every claim is worked out again from the request: sizes, sides, zones, flaws, phases,
 * the cut tree, and the bound from its certificate, bar prices by an exact knapsack. One claim must be taken on trust: that an
 * exhaustive search was exhaustive.
 */
export function check(request: Request, answer: Answer): readonly Fault[] {
  const faults: Fault[] = []
  const say = (code: Fault['code'], message: string) => faults.push({ code, message })
  checkWhole(answer, say)
  if (faults.length > 0) return faults
  checkStatus(request, answer, say)
  checkBound(request, answer, say)
  if (answer.length === null) return faults
  checkPlacements(request, answer, say)
  checkPhases(request, answer, say)
  checkTree(request, answer, say)
  return faults
}

type Say = (code: Fault['code'], message: string) => void

const right = (r: Rect) => r.x + r.width
const end = (r: Rect) => r.y + r.length
const show = (r: Rect) => `${r.width} x ${r.length} at ${r.x}, ${r.y}`

function checkWhole(answer: Answer, say: Say): void {
  const numbers = [answer.bound, answer.steps, answer.certificate.bound]
  if (answer.length !== null) numbers.push(answer.length)
  if (answer.certificate.by === 'bars') numbers.push(...answer.certificate.prices, answer.certificate.capacity)
  for (const p of answer.placements) numbers.push(p.x, p.y, p.width, p.length, p.demand, p.posture)
  for (const n of numbers) if (!Number.isSafeInteger(n)) say('not-whole', `${n} is no whole number`)
}

function checkStatus(request: Request, answer: Answer, say: Say): void {
  const { status, length, bound } = answer
  if (!['proved', 'best-found', 'stopped', 'infeasible'].includes(status)) say('status', `unknown status ${status}`)
  if (length === null && answer.placements.length > 0) say('length', 'placements without a length')
  if (length === null && answer.tree !== null) say('tree', 'a cut tree without a layout')
  if (status === 'proved' && length !== bound) say('status', `proved, but length ${length} is not the bound ${bound}`)
  if (status === 'infeasible') {
    if (length !== null) say('status', 'infeasible, but a layout is given')
    const lacking = request.demands.some((d) => d.count > 0 && !d.postures.some((p) => possible(request, p)))
    const longest = request.field.length
    if (!lacking && !(longest !== null && (bound > longest || answer.certificate.by === 'exhausted')))
      say('status', `infeasible, but nothing shows it: every demand fits by itself and the bound is ${bound}`)
  }
  for (const m of answer.missing) {
    const d = request.demands[m.demand]
    if (!d || d.count === 0 || d.postures.some((p) => possible(request, p)))
      say('status', `demand ${m.demand} is said to be missing but can be placed`)
  }
}

function checkPlacements(request: Request, answer: Answer, say: Say): void {
  const { field } = request
  const { placements, length } = answer
  const far = placements.reduce((most, p) => Math.max(most, end(p)), 0)
  if (far !== length) say('length', `length is ${length}, but the farthest end is ${far}`)
  const counts = request.demands.map(() => 0)
  for (const p of placements) {
    const posture = request.demands[p.demand]?.postures[p.posture]
    if (!posture) {
      say('size', `${show(p)} names no demanded rectangle`)
      continue
    }
    counts[p.demand]!++
    if (p.width !== posture.width || p.length !== posture.length)
      say('size', `${show(p)} should be ${posture.width} x ${posture.length}`)
    const last = field.length ?? Number.POSITIVE_INFINITY
    if (p.x < 0 || p.y < 0 || right(p) > field.width || end(p) > last) say('outside', `${show(p)} lies outside`)
    const { flush } = posture
    if (
      (flush & LEFT && p.x !== 0) ||
      (flush & RIGHT && right(p) !== field.width) ||
      (flush & START && p.y !== 0) ||
      (flush & END && end(p) !== last)
    )
      say('not-flush', `${show(p)} does not touch the sides it must touch`)
    const { zones } = field
    if (
      (!(flush & LEFT) && p.x < zones.left) ||
      (!(flush & RIGHT) && right(p) > field.width - zones.right) ||
      (!(flush & START) && p.y < zones.start) ||
      (!(flush & END) && end(p) > last - zones.end)
    )
      say('in-zone', `${show(p)} lies in the zone of a side it is not flush with`)
    for (const f of field.flaws) if (overlap(p, f)) say('on-flaw', `${show(p)} covers the flaw ${show(f)}`)
  }
  for (const [i, d] of request.demands.entries())
    if (counts[i] !== d.count) say('count', `${d.id} is placed ${counts[i]} times instead of ${d.count}`)
  const byStart = [...placements].sort((a, b) => a.y - b.y)
  for (const [i, a] of byStart.entries())
    for (let j = i + 1; j < byStart.length && byStart[j]!.y < end(a); j++)
      if (overlap(a, byStart[j]!)) say('overlap', `${show(a)} overlaps ${show(byStart[j]!)}`)
}

function overlap(a: Rect, b: Rect): boolean {
  return a.x < right(b) && b.x < right(a) && a.y < end(b) && b.y < end(a)
}

function checkPhases(request: Request, answer: Answer, say: Say): void {
  const phases = new Map<string, number>()
  for (const p of answer.placements) {
    const tie = request.demands[p.demand]?.tie
    if (!tie || tie.repeat <= 0) continue
    const at = tie.axis === 'along' ? p.y : p.x
    const phase = modulo(at - tie.offset, tie.repeat)
    if (tie.absolute && phase !== 0) say('phase', `${show(p)} is ${phase} off its place in the repeat`)
    const group = `${tie.axis} ${tie.group}`
    const known = phases.get(group)
    if (known === undefined) phases.set(group, phase)
    else if (known !== phase) say('phase', `${show(p)} is ${phase - known} off the others of ${tie.group}`)
  }
}

function modulo(a: number, n: number): number {
  return ((a % n) + n) % n
}

function checkTree(request: Request, answer: Answer, say: Say): void {
  if (request.cuts === 'free') {
    if (answer.tree !== null) say('tree', 'a cut tree although cuts are free')
    return
  }
  if (answer.tree === null) {
    say('tree', 'no cut tree')
    return
  }
  const whole = { x: 0, y: 0, width: request.field.width, length: request.field.length ?? answer.length! }
  if (!same(answer.tree.rect, whole)) say('tree', `the tree starts from ${show(answer.tree.rect)}, not ${show(whole)}`)
  const freed = answer.placements.map(() => 0)
  const open: CutNode[] = [answer.tree]
  for (let node = open.pop(); node; node = open.pop()) {
    if (node.kind === 'piece') {
      const p = answer.placements[node.placement]
      if (!p || !same(node.rect, p)) say('tree', `the cut piece ${show(node.rect)} is not the one placed`)
      else freed[node.placement]!++
    } else if (node.kind === 'cut') {
      const { rect, at } = node
      const across = node.runs === 'across'
      const from = across ? rect.y : rect.x
      const to = across ? end(rect) : right(rect)
      if (!(from < at && at < to)) say('tree', `the cut at ${at} does not divide ${show(rect)}`)
      const a = across ? { ...rect, length: at - from } : { ...rect, width: at - from }
      const b = across ? { ...rect, y: at, length: to - at } : { ...rect, x: at, width: to - at }
      if (!same(node.first.rect, a) || !same(node.second.rect, b))
        say('tree', `the halves of ${show(rect)} cut at ${at} are not its halves`)
      open.push(node.first, node.second)
    }
  }
  for (const [i, n] of freed.entries())
    if (n !== 1) say('tree', `${show(answer.placements[i]!)} comes out of the tree ${n} times`)
}

function same(a: Rect, b: Rect): boolean {
  return a.x === b.x && a.y === b.y && a.width === b.width && a.length === b.length
}

function checkBound(request: Request, answer: Answer, say: Say): void {
  const { certificate, bound, length } = answer
  if (bound < 0) say('bound', `the bound ${bound} is below 0`)
  if (bound !== certificate.bound) say('bound', `the bound is ${bound}, its certificate says ${certificate.bound}`)
  if (length !== null && bound > length) say('bound', `the bound ${bound} is above the length ${length}`)
  if (request.demands.some((d) => d.count > 0 && !d.postures.some((p) => possible(request, p)))) return
  const shown = certified(request, certificate)
  if (typeof shown === 'string') say('certificate', shown)
  else if (bound > shown) {
    const most = roundedUp(request, shown)
    if (bound > most) say('certificate', `the certificate shows ${most} at most, not ${bound}`)
  }
}

/** The bound that the certificate shows, or why it shows none. */
function certified(request: Request, certificate: Certificate): number | string {
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
    case 'exhausted':
      return certificate.states > 0 ? Number.MAX_SAFE_INTEGER : 'an exhaustive search that visited nothing'
  }
}

/**
 * Every slice across a layout is a bar: rectangles side by side, no demand more often than its count, at most one that
 * must touch each side. If no bar is priced above the capacity, a layout is at least its total price over the capacity long.
 */
function pricedBars(request: Request, prices: readonly number[], capacity: number): number | string {
  const postures = request.demands.reduce((n, d) => n + d.postures.length, 0)
  if (prices.length !== postures) return `${prices.length} prices for ${postures} postures`
  if (prices.some((p) => p < 0)) return 'a price below 0'
  if (capacity <= 0) return `capacity ${capacity}`
  let total = 0n
  let at = 0
  // widths that may lie anywhere, and those bound to a side, each with its price
  const inside: { width: number; price: number }[][] = []
  const bound: { width: number; price: number; flush: number; demand: number }[] = []
  for (const [i, d] of request.demands.entries()) {
    const all = d.postures.map((p, j) => ({ p, price: prices[at + j]! })).filter(({ p }) => possible(request, p))
    at += d.postures.length
    if (d.count === 0) continue
    const values = all.map(({ p, price }) => BigInt(price) * BigInt(p.length))
    total += BigInt(d.count) * values.sort((a, b) => (a < b ? -1 : 1))[0]!
    const free = all.filter(({ p }) => !(p.flush & (LEFT | RIGHT))).map(({ p, price }) => ({ width: p.width, price }))
    for (let n = 0; n < d.count && free.length > 0; n++) {
      if (n * Math.min(...free.map((f) => f.width)) > request.field.width) break
      inside.push(free)
    }
    for (const { p, price } of all)
      if (p.flush & (LEFT | RIGHT)) bound.push({ width: p.width, price, flush: p.flush, demand: i })
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
  if (dearest > capacity) return `a bar is worth ${dearest}, more than the capacity ${capacity}`
  return ceilRatio(total, BigInt(capacity))
}

/** Largest price of at most one choice from each item within a width, for every width, by a list of undominated sums. */
function knapsack(items: readonly { width: number; price: number }[][], width: number): (room: number) => number {
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

function ceilRatio(a: bigint, b: bigint): number {
  return Number((a + b - 1n) / b)
}

/** Could this posture be placed if it were alone? */
function possible(request: Request, p: Posture): boolean {
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
function roundedUp(request: Request, bound: number): number {
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
