import { expect, test } from 'vitest'
import type { Answer, Request } from '../src/index.ts'
import { bound, check, LEFT, lay, RIGHT } from '../src/index.ts'
import { anyOrder } from './every-rule.ts'

/* What shows a bound is recomputed by the checker; spoilt by as little as can be, it is refused. */

const ORDERS = Array.from({ length: 400 }, (_, i) => anyOrder(200_000 + i))

const refused = (request: Request, answer: Answer): boolean =>
  check(request, answer).some(({ code }) => code === 'certificate')

test('one dual raised by one is refused wherever a naive count finds a bar dearer than said', () => {
  const count = { certificates: 0, refused: 0, stillTrue: 0 }
  for (const request of ORDERS) {
    const answer = lay(request, { effort: 0 })
    const { certificate } = answer
    if (certificate.by !== 'bars') continue
    count.certificates++
    expect(dearestByTrying(request, certificate.prices)).toBeLessThanOrEqual(certificate.capacity)
    for (const i of certificate.prices.keys()) {
      const prices = certificate.prices.map((price, at) => (at === i ? price + 1 : price))
      const tooDear = dearestByTrying(request, prices) > certificate.capacity
      if (tooDear) {
        count.refused++
        expect(refused(request, { ...answer, certificate: { ...certificate, prices } })).toBe(true)
      } else count.stillTrue++
    }
  }
  expect(count.certificates).toBeGreaterThan(30)
  expect(count.refused).toBeGreaterThan(count.stillTrue)
})

test('a bound one more than what shows it is refused', () => {
  const by = new Set<string>()
  for (const request of ORDERS) {
    const found = lay(request, { effort: 0 })
    if (found.missing.length > 0) continue
    const certificate = bound(request)
    const answer: Answer = { ...found, status: 'best-found', bound: certificate.bound, certificate }
    by.add(certificate.by)
    expect(refused(request, answer)).toBe(false)
    const more = { ...certificate, bound: certificate.bound + 1 }
    expect(refused(request, { ...answer, bound: more.bound, certificate: more })).toBe(true)
  }
  expect([...by].sort()).toEqual(['area', 'bars', 'longest', 'scales', 'sides', 'wide'])
})

test('a bound asked for by itself is shown as that of an answer is', () => {
  for (const request of ORDERS) {
    const answer = lay(request, { effort: 0 })
    if (answer.missing.length > 0) continue
    const certificate = bound(request)
    expect(check(request, { ...answer, status: 'best-found', bound: certificate.bound, certificate })).toEqual([])
  }
})

/** The dearest bar: at each place from the left on a piece, or nothing. */
function dearestByTrying({ field, demands }: Request, prices: readonly number[]): number {
  const { width, zones } = field
  const left = demands.map((d) => d.count)
  const known = new Map<string, number>()
  const from = (x: number): number => {
    if (x >= width) return 0
    const key = `${x} ${left}`
    const before = known.get(key)
    if (before !== undefined) return before
    let best = from(x + 1)
    let at = 0
    for (const [i, d] of demands.entries())
      for (const p of d.postures) {
        const price = prices[at++]!
        const end = x + p.width
        if (left[i] === 0 || end > width || (p.flush & LEFT ? x !== 0 : x < zones.left)) continue
        if (p.flush & RIGHT ? end !== width : end > width - zones.right) continue
        left[i]!--
        best = Math.max(best, price + from(end))
        left[i]!++
      }
    known.set(key, best)
    return best
  }
  return from(0)
}
