import { certified, possible, roundedUp } from './check-certificate.ts'
import type { Answer, CutNode, Fault, Rect, Request } from './model.ts'
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
  if (answer.certificate.by === 'scales') numbers.push(...answer.certificate.across, ...answer.certificate.along)
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
