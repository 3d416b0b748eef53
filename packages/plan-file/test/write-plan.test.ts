import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parsePlan, readPlan, readPlanObject, SAMPLE_PLAN, writePlan } from '../src/index.ts'
import { fixture } from './helpers.ts'

/** Written and read again: the same keys, the same order. */
function checkRoundTrip(text: string) {
  const plan = parsePlan(text)
  if (!plan.ok) throw new Error('did not parse')
  const written = writePlan(plan.value)
  expect(parsePlan(written)).toEqual(plan)
  expect(readPlan(written)).toEqual(readPlan(text))
}

describe('a plan is written as it can be read', () => {
  test.each(['guest-house.yaml', 'every-key.yaml'])('%s', (file) => checkRoundTrip(fixture(file)))
  test('the sample plan', () => checkRoundTrip(SAMPLE_PLAN))

  test('items and cloths on several lines, what stands inside them on one', () => {
    const text = writePlan({
      plan: 1,
      seam: { kind: 'plain', allowance: '1.5 cm' },
      make: [{ item: 'duvet-cover', front: { cloth: 'sprig', joined: 'any' } }],
      cloth: [{ name: 'sprig', widths: ['112 cm', { width: '240 cm', price: '9,80 per m' }] }],
    })
    expect(text).toBe(`plan: 1
seam: { kind: plain, allowance: 1.5 cm }
make:
  - item: duvet-cover
    front: { cloth: sprig, joined: any }
cloth:
  - name: sprig
    widths: [ 112 cm, { width: 240 cm, price: "9,80 per m" } ]
`)
  })

  test('texts that look like something else are quoted', () => {
    const rectangle = { item: 'rectangle', cut: '40 x 60 cm' }
    for (const text of [
      'yes',
      'null',
      '1e3',
      '# no comment',
      '- dash',
      '{',
      '&a',
      '*a',
      '!tag',
      '%',
      '"',
      "it's",
      ' blank ',
      ': ',
      'a: b',
    ]) {
      const plan = {
        plan: 1,
        title: text,
        make: [{ ...rectangle, for: text }],
        cloth: [{ name: 'a', widths: ['1 m'] }],
      }
      const read = readPlan(writePlan(plan))
      expect(read.ok && [read.value.title, read.value.items[0]!.for]).toEqual([text, text])
    }
  })

  test('bare numbers keep their value, also with three decimals', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 90_000 }), fc.integer({ min: 0, max: 3 }), (digits, places) => {
        const plan = {
          plan: 1,
          make: [{ item: 'rectangle', cut: '4 x 6' }],
          cloth: [{ name: 'a', widths: [digits / 10 ** places] }],
        }
        const read = readPlanObject(plan)
        expect(read.ok).toBe(true)
        expect(readPlan(writePlan(plan))).toEqual(read)
      }),
    )
  })

  test('nothing that could be handed in makes it throw', () => {
    fc.assert(fc.property(fc.anything(), (value) => typeof writePlan(value) === 'string'))
  })
})
