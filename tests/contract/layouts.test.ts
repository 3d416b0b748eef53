import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { readPlan, writeLayout } from '@lengthwise/plan-file'
import { plan } from '@lengthwise/planner'
import { describe, expect, test } from 'vitest'
import type { LayoutFile } from './layout-checker.ts'
import { checkLayout } from './layout-checker.ts'
import { planFacts } from './plan-facts.ts'
import { notMade } from './would-make.ts'

type Writable<T> = { -readonly [K in keyof T]: Writable<T[K]> }

const fixtures = join(import.meta.dirname, '../../fixtures')

/** What remnants are said to make still. */
let named = 0

/** The layout file of every plan among the fixtures, held against its plan by a reader that shares no code with the project. */
describe.each(readdirSync(fixtures).filter((name) => name.endsWith('.yaml')))('%s', (name) => {
  test('its layout is sound by the published meaning of both files', () => {
    const text = readFileSync(join(fixtures, name), 'utf8')
    const order = readPlan(text)
    expect(order.ok ? [] : order.problems).toEqual([])
    if (!order.ok) return
    const result = plan(order.value)
    const file = JSON.parse(writeLayout(result)) as LayoutFile
    expect(file.cloths.length).toBeGreaterThan(0)
    expect(checkLayout(file, planFacts(text))).toEqual([])
    expect(notMade(result)).toEqual([])
    named += result.cloths.flatMap((cloth) => cloth.remnants.flatMap((r) => r.wouldMake)).length
  })
})

test('some remnants would make something still', () => expect(named).toBeGreaterThan(5))

describe('the checker itself refuses a layout with one thing wrong', () => {
  const text = readFileSync(join(fixtures, 'guest-house.yaml'), 'utf8')
  const order = readPlan(text)
  if (!order.ok) throw new Error('the demo plan must read')
  const sound = writeLayout(plan(order.value))
  const facts = planFacts(text)
  // the parts of a layout file that are spoilt below, open to writing
  type Loose = Writable<Pick<LayoutFile, 'cloths' | 'finished' | 'widths'>>
  const wrongs: Readonly<Record<string, (file: Loose) => void>> = {
    'a piece moved by a millimetre': (f) => (f.cloths[0]!.placed[0]!.x += 1),
    'a piece left out': (f) => f.cloths[0]!.placed.pop(),
    'a piece twice': (f) => f.cloths[0]!.placed.push(f.cloths[0]!.placed[0]!),
    'a piece a unit wider': (f) => (f.cloths[0]!.placed[0]!.width += 1 / 320),
    'a selvedge where there is none': (f) => (f.cloths[0]!.placed[0]!.edges.start = { kind: 'selvedge' }),
    'a division left out': (f) => f.cloths[0]!.divisions.pop(),
    'a division that stops short': (f) => (f.cloths[0]!.divisions[0]!.to -= 10),
    'a remnant that is not there': (f) => f.cloths[0]!.remnants.push({ x: 0, y: 0, width: 300, length: 600 }),
    'a remnant not listed': (f) => {
      for (const c of f.cloths) c.remnants = []
    },
    'one step of the shop too much': (f) => (f.cloths.find((c) => c.buy)!.buy!.length += 100),
    'waste made prettier': (f) => (f.cloths[0]!.notUsed.percent -= 1),
    'a bound above the length': (f) => (f.cloths[0]!.proof.bound = f.cloths[0]!.proof.length + 1),
    'a cover that finishes short': (f) => (f.finished[0]!.width = f.finished[0]!.asked.width - 1),
    'an impossible width without a reason': (f) =>
      Object.assign(f.widths[0]!, { possible: false, buyLength: null, why: null }),
  }
  test('while the sound one passes', () => expect(checkLayout(JSON.parse(sound) as LayoutFile, facts)).toEqual([]))
  test.each(Object.entries(wrongs))('%s', (_, spoil) => {
    const file = JSON.parse(sound)
    spoil(file)
    expect(checkLayout(file as LayoutFile, facts).length).toBeGreaterThan(0)
  })
})
