import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { readPlan, writeLayout } from '@lengthwise/plan-file'
import { plan, verify } from '@lengthwise/planner'
import { describe, expect, test } from 'vitest'
import type { LayoutFile } from './contract/layout-checker.ts'
import { checkLayout } from './contract/layout-checker.ts'
import { planFacts } from './contract/plan-facts.ts'
import { planText, randomPlan } from './random-plans/generator.ts'

/* A plan stopped after so many questions is a whole answer: verified, sound by its file, its bound not above its value. */

const QUESTIONS = [0, 1, 10, 100, 300, 1_000]

const TEXTS: Readonly<Record<string, string>> = {
  ...Object.fromEntries(
    ['guest-house', 'half-drop', 'old-sheets', 'every-key'].map((name) => [
      name,
      readFileSync(join(import.meta.dirname, `../fixtures/${name}.yaml`), 'utf8'),
    ]),
  ),
  ...Object.fromEntries(
    Array.from({ length: 9 }, (_, i) => [`random ${i}`, planText(randomPlan(60_001 + i), i)] as const),
  ),
  // it cannot be cut, and was stopped while what is missing was sought
  'random 70227': planText(randomPlan(70_227), 70_227),
}

/** Random plans may be refused: only those that are not are planned. */
const PLANS = Object.entries(TEXTS).flatMap(([name, text]) => {
  const read = readPlan(text)
  return read.ok ? [{ name, text, order: read.value }] : []
})

test('most of them can be read', () => expect(PLANS.length).toBeGreaterThan(8))

describe.each(PLANS)('$name', ({ text, order }) => {
  test.each(QUESTIONS)('stopped after %d questions', (questions) => {
    let asked = 0
    const result = plan(order, { stop: () => ++asked > questions })
    expect(verify(result)).toEqual([])
    expect(checkLayout(JSON.parse(writeLayout(result)) as LayoutFile, planFacts(text))).toEqual([])
    const { status, value, bound } = result.proof
    expect(bound <= value).toBe(true)
    if (asked > questions) expect(result.timed || status === 'proved').toBe(true)
    else expect(result.timed).toBe(false)
  })
})
