import { readPlan, writeLayout } from '@lengthwise/plan-file'
import type { Result } from '@lengthwise/planner'
import { plan } from '@lengthwise/planner'
import { describe, expect, test } from 'vitest'
import type { LayoutFile } from '../contract/layout-checker.ts'
import { checkLayout } from '../contract/layout-checker.ts'
import { planFacts } from '../contract/plan-facts.ts'
import { notMade } from '../contract/would-make.ts'
import type { Keys, PlanKeys } from './generator.ts'
import { Dice, planText, randomPlan } from './generator.ts'

/** How many plans; the first is of seed 1, and a seed always gives the same plan. */
const PLANS = Number(process.env.LENGTHWISE_RANDOM_PLANS ?? 60)
/** No plan asks more often than this whether to stop: there is a bound to the steps of a run at quick effort. */
const MOST_QUESTIONS = 50_000

/** Read, laid out, written and held against its plan; the result, or null when the plan is refused. */
function throughEverything(text: string): Result | null {
  const read = readPlan(text)
  if (!read.ok) {
    for (const problem of read.problems) {
      expect(problem.message, problem.path).not.toBe('')
      expect(problem.hint, problem.message).not.toBe('')
      expect(problem.line, problem.message).toBeGreaterThan(0)
    }
    return null
  }
  let questions = 0
  const result = plan(read.value, {
    effort: 'quick',
    stop: () => {
      questions += 1
      return questions > MOST_QUESTIONS
    },
  })
  expect(questions).toBeLessThanOrEqual(MOST_QUESTIONS)
  if (result.status === 'cannot-be-cut') {
    expect(result.missing.length).toBeGreaterThan(0)
    for (const { words } of result.missing) expect(words).not.toBe('')
  }
  expect(checkLayout(JSON.parse(writeLayout(result)) as LayoutFile, planFacts(text))).toEqual([])
  expect(notMade(result)).toEqual([])
  return result
}

describe('random plans', () => {
  const seen = { laid: 0, short: 0, refused: 0 }
  test.each(Array.from({ length: PLANS }, (_, i) => i + 1))('%d', (seed) => {
    const result = throughEverything(planText(randomPlan(seed), seed))
    seen[result === null ? 'refused' : result.status === 'laid' ? 'laid' : 'short'] += 1
  })
  test('some of them can be cut, some cannot, and some make no sense', () => {
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(PLANS / 20)
  })
})

/*
 * What may be changed in a plan without raising, or without changing, what it costs. A search that ended unproved may have missed
 * the best of one of the two plans, so that only its bound is held against the other.
 */
describe('random plans, changed', () => {
  const seeds = Array.from({ length: Math.ceil(PLANS / 12) }, (_, i) => 10_001 + i)

  test.each(seeds)('%d: the order of items, cloths and names means nothing', (seed) => {
    const given = randomPlan(seed)
    const [one, other] = [planned(given), planned(mirrored(given))]
    expect(other?.status).toBe(one?.status)
    if (one === null || other === null) return
    expect(one.proof.bound).toBeLessThanOrEqual(other.proof.value)
    expect(other.proof.bound).toBeLessThanOrEqual(one.proof.value)
  })

  test.each(seeds)('%d: a remnant more to choose from never raises the cost', (seed) => {
    const given = randomPlan(seed)
    const [one, other] = [planned(given), planned(withRemnant(given))]
    if (one?.status !== 'laid' || other === null) return
    expect(other.status).toBe('laid')
    expect(other.proof.bound).toBeLessThanOrEqual(one.proof.value)
  })

  test.each(seeds)('%d: in millimetres the same layout as in centimetres', (seed) => {
    const [one, other] = [planned(randomPlan(seed, 'cm')), planned(randomPlan(seed, 'mm'))]
    expect(other?.proof).toEqual(one?.proof)
    expect(whereLaid(other)).toEqual(whereLaid(one))
  })

  test.each(seeds)(
    '%d: rectangles take no more of a wider cloth, and nothing is bought where that much is owned',
    (seed) => {
      const dice = new Dice(seed)
      const width = dice.whole(700, 1400)
      const make = dice.times(1, 4, (i) => ({
        item: 'rectangle',
        name: `cloth ${i}`,
        cut: `${dice.whole(50, 600)} x ${dice.whole(50, 800)} mm`,
        count: dice.whole(1, 5),
        'length-runs': dice.one('along', 'across', 'either'),
        edges: { [dice.one('left', 'right')]: dice.one('none', 'none', 'selvedge') },
      }))
      const bolt = (keys: Keys): PlanKeys => ({
        make,
        cloth: [{ name: 'bolt', widths: [`${width} mm`], price: '10.00 per m', 'sold-by': 0, ...keys }],
      })
      const narrow = planned(bolt({}))
      const wide = planned(bolt({ widths: [`${width + dice.whole(1, 300)} mm`] }))
      if (narrow?.status !== 'laid' || wide === null) return
      expect(wide.status).toBe('laid')
      expect(wide.proof.bound).toBeLessThanOrEqual(narrow.proof.value)

      const bought = narrow.buy.find(({ what }) => what === 'cloth')?.quantity ?? 0
      const owned = planned(bolt({ have: `${(bought / 320).toFixed(6)} mm` }))
      expect(owned?.proof.bound).toBe(0n)
      if (narrow.proof.status === 'proved') expect(owned?.proof.value).toBe(0n)
    },
  )
})

function planned(keys: PlanKeys): Result | null {
  const read = readPlan(planText(keys, 1))
  return read.ok ? plan(read.value, { effort: 'quick', compareWidths: false }) : null
}

const whereLaid = (result: Result | null) =>
  result?.cloths.map(({ placed }) => placed.map(({ piece, x, y, width, length }) => [piece, x, y, width, length]))

/** Lists from their end, wherever their order says nothing. */
function mirrored(keys: PlanKeys): PlanKeys {
  const names = (value: unknown): unknown => {
    if (Array.isArray(value))
      return value.every((one) => typeof one === 'string') ? value.toReversed() : value.map(names)
    if (typeof value !== 'object' || value === null) return value
    return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, names(one)]))
  }
  const turned = names(keys) as PlanKeys
  return { ...turned, make: turned.make.toReversed(), cloth: turned.cloth.toReversed() }
}

/** A remnant that every item may be cut from, where it lists the cloths it may be cut from. */
function withRemnant(keys: PlanKeys): PlanKeys {
  return {
    ...keys,
    make: keys.make.map((item) => ({ ...item, cloth: [...[item.cloth].flat(), 'one more'] })),
    cloth: [...keys.cloth, { name: 'one more', from: 'remnant', size: '90 x 130 cm' }],
  }
}
