import { expect, test } from 'vitest'
import { check, lay } from '../src/index.ts'
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
]

test('every answer passes the checker, whatever the rules', () => {
  for (const [i, rules] of RULES.entries())
    for (let seed = 0; seed < 60; seed++) {
      const request = randomOrder(1000 * i + seed, { pieces: 3 + (seed % 5), width: 5 + (seed % 7), ...rules })
      const answer = lay(request, { effort: 20_000 })
      expect(check(request, answer), `rules ${JSON.stringify(rules)} seed ${1000 * i + seed}`).toEqual([])
    }
})
