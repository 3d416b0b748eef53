import { expect, test } from 'vitest'
import { check, lay } from '../src/index.ts'
import { naiveLength } from './naive.ts'
import { randomOrder } from './orders.ts'

const RULES = [
  {},
  { flush: true },
  { zones: true },
  { turning: true },
  { finite: true },
  { flaws: true },
  { ties: true },
  { flush: true, zones: true, turning: true, finite: true, flaws: true },
  { flush: true, turning: true, ties: true },
  { flush: true, zones: true, finite: true },
  { flush: true, ties: true },
  { zones: true, ties: true },
]

test('every answer passes the checker, whatever the rules', () => {
  for (const [i, rules] of RULES.entries())
    for (let seed = 0; seed < 60; seed++) {
      const request = randomOrder(1000 * i + seed, { pieces: 3 + (seed % 5), width: 5 + (seed % 7), ...rules })
      const answer = lay(request, { effort: 20_000 })
      expect(check(request, answer), `rules ${JSON.stringify(rules)} seed ${1000 * i + seed}`).toEqual([])
    }
})

test('a naive exact method agrees on every small order', () => {
  let proved = 0
  for (const [i, rules] of RULES.entries())
    for (let seed = 0; seed < 30; seed++) {
      const request = randomOrder(5000 + 100 * i + seed, { pieces: 2 + (seed % 3), width: 4 + (seed % 4), ...rules })
      const answer = lay(request, { effort: 200_000 })
      const truth = naiveLength(request, 30)
      const which = `rules ${JSON.stringify(rules)} seed ${5000 + 100 * i + seed}`
      if (answer.status === 'proved' || answer.status === 'infeasible') {
        proved++
        expect(answer.length, which).toBe(truth)
      } else if (truth !== null) {
        expect(answer.bound, which).toBeLessThanOrEqual(truth)
        if (answer.length !== null) expect(answer.length, which).toBeGreaterThanOrEqual(truth)
      }
    }
  expect(proved).toBeGreaterThanOrEqual(300)
})
