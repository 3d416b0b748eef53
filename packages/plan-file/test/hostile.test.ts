import { describe, expect, test } from 'vitest'
import { parsePlan, readPlan, readPlanObject } from '../src/index.ts'
import { planOf, problemsOf } from './helpers.ts'

/** Refused with this code, after half a minute of processor time at most. */
function checkRefused(text: string, code: string) {
  const before = process.cpuUsage()
  const codes = problemsOf(text).map((p) => p.code)
  expect(codes).toContain(code)
  const { user, system } = process.cpuUsage(before)
  expect(user + system).toBeLessThan(30_000_000)
}

describe('plans made to do harm', () => {
  test('more than 1 MB', () => checkRefused(`plan: 1\n# ${'x'.repeat(1_000_000)}\n`, 'too-large'))
  test('more than 1 MB in bytes though fewer characters', () =>
    checkRefused(`# ${'漢'.repeat(340_000)}\n`, 'too-large'))
  test('brackets without end', () => checkRefused(`plan: ${'['.repeat(400_000)}`, 'too-deep'))
  test('braces without end', () => checkRefused(`{a: ${'{a: '.repeat(200_000)}`, 'too-deep'))
  test('dashes without end', () => checkRefused('- '.repeat(400_000), 'too-deep'))
  test('indentation without end', () => {
    const steps = Array.from({ length: 1300 }, (_, i) => `${' '.repeat(i)}a:`).join('\n')
    checkRefused(steps, 'too-deep')
  })
  test('thirty thousand keys', () => {
    checkRefused(Array.from({ length: 30_000 }, (_, i) => `k${i}: 1`).join('\n'), 'unknown-key')
  })
  test('thirty thousand repeated keys', () => checkRefused('plan: 1\n'.repeat(30_000), 'duplicate-key'))
  test('thirty thousand aliases', () =>
    checkRefused(`title: &a x\nmake:\n${'  - *a\n'.repeat(30_000)}`, 'too-many-aliases'))
  test('more than a hundred cloths', () => {
    const cloths = Array.from({ length: 101 }, (_, i) => `  - { name: c${i}, widths: [150] }`).join('\n')
    checkRefused(`make:\n  - { item: rectangle, cut: 4 x 6, cloth: c1 }\ncloth:\n${cloths}\n`, 'too-large')
  })
  test('more than five thousand items', () => {
    checkRefused(
      `make:\n${'  - { item: rectangle, cut: 4 x 6 }\n'.repeat(5001)}cloth: [{ name: a, widths: [150] }]\n`,
      'too-large',
    )
  })
  test('no more problems than anyone reads', () => {
    const problems = problemsOf(`make:\n${'  - { item: x }\n'.repeat(4000)}cloth: [{ name: a, widths: [150] }]\n`)
    expect(problems).toHaveLength(201)
    expect(problems.at(-1)?.code).toBe('more-problems')
  })

  test('prototype keys change nothing', () => {
    for (const text of [
      '{"__proto__": {"polluted": true}, "constructor": {"prototype": {"polluted": true}}}',
      '__proto__: { polluted: true }',
      'make:\n  - { item: rectangle, cut: 4 x 6, __proto__: { polluted: true } }',
    ]) {
      expect(readPlan(text).ok).toBe(false)
      expect(readPlanObject(JSON.parse('{"__proto__": {"polluted": true}}')).ok).toBe(false)
      expect('polluted' in {}).toBe(false)
    }
  })
  test('an object that holds itself', () => {
    const plan: Record<string, unknown> = { plan: 1 }
    plan.make = [plan]
    expect(readPlanObject(plan).ok).toBe(false)
  })
  test.each([[undefined], [null], [42], ['plan'], [[]], [() => 1], [Symbol('plan')], [Number.NaN]])(
    '%s is no plan',
    (value) => {
      const read = readPlanObject(value)
      expect(read.ok ? [] : read.problems.map((p) => p.code)).toEqual(['not-a-plan'])
    },
  )

  test.each([
    ['a bidirectional override', 'name: "a\\u202Eb"'],
    ['an isolate', 'name: "a\\u2066b"'],
    ['a zero-width space', 'name: "a\\u200Bb"'],
    ['a control character', 'name: "a\\u0007b"'],
    ['the end of a text', 'name: "a\\0b"'],
    ['an escape', 'name: "a\\eb"'],
  ])('%s in a name', (_, key) => checkRefused(planOf(`item: rectangle, cut: 4 x 6, ${key}`), 'hidden-characters'))
  test('right-to-left script and joiners are names like any other', () => {
    expect(readPlan(planOf('item: rectangle, cut: 4 x 6, name: "ملاءة"')).ok).toBe(true)
    expect(readPlan(planOf('item: rectangle, cut: 4 x 6, name: "می\\u200Cروم"')).ok).toBe(true)
    expect(readPlan(planOf('item: rectangle, cut: 4 x 6, name: "<script>alert(1)</script>"')).ok).toBe(false)
  })
  test.each(['..', '../a', 'a/b', 'a\\b', '__proto__', 'constructor', ' ', 'x'.repeat(81)])('%s is no name', (name) => {
    expect(readPlan(planOf(`item: rectangle, cut: 4 x 6, name: '${name}'`)).ok).toBe(false)
  })
  test.each(['1e999', '-1', '.inf', '-.inf', '.nan', '0x7fffffff', '99999999999999999999', '1_000', '0o17'])(
    'the figure %s',
    (figure) => {
      expect(readPlan(planOf(`item: rectangle, cut: 4 x 6, count: ${figure}`)).ok).toBe(false)
      expect(readPlan(planOf('item: rectangle, cut: 4 x 6', `widths: [${figure}]`)).ok).toBe(false)
    },
  )
  test('no text makes the reader throw', () => {
    const words = [
      'plan: 1',
      'make:',
      '  - item: rectangle',
      '    cut: 4 x 6',
      'cloth:',
      '  - name: a',
      '- ',
      '  ',
      '{',
      '}',
      '[',
      ']',
      ':',
      '*a',
      '&a ',
      '"',
      "'",
      '|',
      '>',
      '!',
      '%',
      '@',
      '?',
      '\t',
      '---',
      '...',
      '<<: *a',
      'null',
      '~',
    ]
    let seed = 1
    const next = (n: number) => {
      seed = (seed * 48_271) % 2_147_483_647
      return seed % n
    }
    for (let i = 0; i < 1500; i++) {
      const text = Array.from({ length: 1 + next(12) }, () => words[next(words.length)]! + (next(2) ? '\n' : '')).join(
        '',
      )
      const read = readPlan(text)
      if (!read.ok) expect(read.problems.every((p) => p.hint !== '' && p.line !== undefined)).toBe(true)
      parsePlan(text)
    }
  })
})
