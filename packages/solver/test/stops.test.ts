import { expect, test } from 'vitest'
import type { Request } from '../src/index.ts'
import { check, lay, layForWidths, whatFits } from '../src/index.ts'
import { anyOrder } from './every-rule.ts'
import { randomOrder, sliced } from './orders.ts'

/* However early a run ends, what it says is true. */

const EARLY = [0, 1, 10, 100, 1_000]

/** Orders whose shortest layout, cut freely, is shorter than any that comes apart edge to edge: no proof for those holds for it. */
const FREER = [155, 428, 569, 737, 1058, 1177].map(
  (seed): Request => ({ ...randomOrder(seed, { pieces: 5 + (seed % 3), width: 6 + (seed % 4) }), cuts: 'free' }),
)

const ORDERS: readonly Request[] = [
  ...FREER,
  ...Array.from({ length: 40 }, (_, i) => anyOrder(300_000 + i)),
  ...[1, 2, 3].map((seed) => sliced(seed, 200, 300, 30)),
  ...[4, 5, 6].map((seed) => randomOrder(seed, { pieces: 40, width: 30, turning: true, flush: true })),
  { ...sliced(7, 100, 120, 25), cuts: 'free' },
]

test('after so many steps: verified, and its bound not above its length', () => {
  let open = 0
  for (const request of ORDERS) {
    const shortest = lay(request, { effort: 20_000 })
    for (const effort of EARLY) {
      const answer = lay(request, { effort })
      expect(check(request, answer)).toEqual([])
      expect(answer.status).not.toBe('stopped')
      if (answer.status === 'best-found') open++
      // nothing that was shown with few steps is refuted with more, and the other way round
      expect(answer.bound).toBeLessThanOrEqual(shortest.length ?? Number.POSITIVE_INFINITY)
      expect(shortest.bound).toBeLessThanOrEqual(answer.length ?? Number.POSITIVE_INFINITY)
    }
  }
  expect(open).toBeGreaterThan(EARLY.length * 5)
})

test('stopped at a question: verified, and called stopped unless it is proved', () => {
  let stopped = 0
  for (const request of ORDERS)
    for (const questions of EARLY) {
      let asked = 0
      let said = false
      const stop = () => {
        said ||= ++asked > questions
        return said
      }
      const answer = lay(request, { effort: 50_000, stop })
      expect(check(request, answer)).toEqual([])
      if (answer.status === 'stopped') stopped++
      if (said) expect(['proved', 'stopped', 'infeasible']).toContain(answer.status)
      else expect(answer.status).not.toBe('stopped')
    }
  expect(stopped).toBeGreaterThan(EARLY.length * 2)
})

test('widths side by side and what fits, stopped at a question, say nothing untrue', () => {
  for (let seed = 1; seed <= 6; seed++) {
    const request = randomOrder(seed, { pieces: 9, width: 12, turning: true })
    const { field } = request
    for (const questions of EARLY) {
      let asked = 0
      const stop = () => ++asked > questions
      for (const { width, answer } of layForWidths(request, [6, 9, 12], { effort: 20_000, stop }))
        expect(check({ ...request, field: { ...field, width } }, answer)).toEqual([])
      const sheet = { ...request, field: { ...field, length: 9 } }
      for (const { counts, answer } of whatFits(sheet, { effort: 20_000, stop }).maximal) {
        const demands = request.demands.map((d, i) => ({ ...d, count: counts[i]! }))
        expect(check({ ...sheet, demands }, answer)).toEqual([])
        expect(answer.length).not.toBeNull()
      }
    }
  }
})
