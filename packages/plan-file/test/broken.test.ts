import { readdirSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readPlanObject } from '../src/index.ts'
import { fixture, planOf, problemsOf } from './helpers.ts'

/** Every broken plan with all of its problems: line and code. */
const EXPECTED: Readonly<Record<string, readonly string[]>> = {
  'alias-bomb.yaml': ['4 too-many-aliases'],
  'cloth-names.yaml': [
    '5 cloth-unknown',
    '5 cloth-unknown',
    '6 cloth-unknown',
    '10 cloth-unknown',
    '11 cloth-unknown',
    '18 duplicate-name',
  ],
  'contrary.yaml': ['8 length-runs', '13 cot-joined', '15 size-order', '19 hem-too-deep'],
  'decimal-comma-in-list.yaml': ['8 comma-in-list', '8 price-unit', '8 no-value'],
  'empty.yaml': ['1 not-a-plan'],
  'hostile-names.yaml': [
    '2 text-long',
    '5 name-path',
    '7 hidden-characters',
    '7 cloth-unknown',
    '9 hidden-characters',
    '12 hidden-characters',
    '16 name-path',
    '18 name-empty',
  ],
  'lengths.yaml': [
    '3 no-value',
    '4 length-fraction',
    '5 size-count',
    '8 length-ambiguous',
    '9 length-negative',
    '10 length-unit',
    '10 length-number',
    '10 length-number',
    '12 length-unit',
    '13 length-empty',
    '16 size-count',
    '20 length-too-large',
    '20 length-number',
    '20 length-unit',
    '20 length-fraction',
    '21 price-unit',
    '22 percent-too-large',
    '22 percent-number',
  ],
  'list-only.yaml': ['1 not-a-plan'],
  'machinery-keys.yaml': ['2 unknown-key', '3 unknown-key', '8 unknown-key', '12 unknown-key'],
  'missing-keys.yaml': [
    '4 missing',
    '6 missing',
    '8 missing',
    '8 missing',
    '10 missing',
    '12 missing',
    '16 missing',
    '18 missing',
    '20 missing',
  ],
  'misspelt-keys.yaml': [
    '2 unknown-key',
    '7 unknown-key',
    '8 unknown-key',
    '8 unknown-key',
    '9 unknown-key',
    '11 missing',
    '12 unknown-key',
    '13 unknown-key',
    '14 unknown-key',
  ],
  'misspelt-words.yaml': [
    '3 unknown-word',
    '4 unknown-word',
    '7 size-unknown',
    '8 unknown-word',
    '8 unknown-word',
    '9 unknown-word',
    '10 unknown-word',
    '13 unknown-word',
    '15 cloth-unknown',
    '19 unknown-word',
    '19 unknown-word',
    '20 unknown-word',
    '22 unknown-word',
  ],
  'nothing-to-make.yaml': ['2 empty-list', '3 empty-list'],
  'open-quote.yaml': ['2 yaml'],
  'own-tail.yaml': ['6 too-deep'],
  'repeated-keys.yaml': ['6 duplicate-key', '11 duplicate-key', '12 duplicate-key'],
  'sizes-said-twice.yaml': [
    '6 size-twice',
    '10 ease-elsewhere',
    '14 size-twice',
    '19 key-elsewhere',
    '20 currency-twice',
    '24 key-elsewhere',
    '25 key-elsewhere',
  ],
  'tabs.yaml': ['4 yaml'],
  'tagged.yaml': ['2 yaml'],
  'too-many-pieces.yaml': ['7 too-large', '13 too-large'],
  'wrong-forms.yaml': [
    '1 unknown-word',
    '2 wrong-form',
    '3 wrong-form',
    '6 wrong-form',
    '7 wrong-form',
    '8 wrong-form',
    '9 wrong-form',
    '10 empty-list',
    '11 wrong-form',
    '14 ratio',
    '16 wrong-form',
    '20 missing',
    '21 unknown-word',
    '23 wrong-form',
  ],
}

const files = readdirSync(new URL('../../../fixtures/broken/', import.meta.url)).filter((file) =>
  file.endsWith('.yaml'),
)

describe('broken plans', () => {
  test.each(files)('%s: every problem at once, each with its line and the next step', (file) => {
    const problems = problemsOf(fixture(`broken/${file}`))
    expect(problems.map((p) => `${p.line} ${p.code}`)).toEqual(EXPECTED[file])
    for (const { message, hint, column } of problems) {
      expect(message).not.toBe('')
      expect(hint).not.toBe('')
      expect(column).toBeGreaterThan(0)
    }
  })
})

/** The first hint of a plan's only problem. */
function checkHint(text: string, path: string, hint: string) {
  expect(problemsOf(text).map((p) => [p.path, p.hint])).toEqual([[path, hint]])
}

describe('hints name what was meant', () => {
  test.each([
    ['fornt: sprig', 'make[0].fornt', 'Did you mean front?'],
    ['opening: { kind: butons }', 'make[0].opening.kind', 'Did you mean buttons?'],
    ['front: { cloth: spirg }', 'make[0].front.cloth', 'Did you mean sprig?'],
    ['front: { joined: centre }', 'make[0].front.joined', 'Did you mean centre-and-sides?'],
    ['corner-ties: 3', 'make[0].corner-ties', 'Write 0, 2 or 4'],
    ["front: { smallest-panel: '1,250' }", 'make[0].front.smallest-panel', 'Write 1250 or 1.25'],
    ['front: { smallest-panel: 1.250 }', 'make[0].front.smallest-panel', 'Write 1250 or 1.25'],
    ['ease: 2 cm', 'make[0].ease', 'Write insert: instead of finished:, or delete the ease'],
  ])('%s', (keys, path, hint) => checkHint(planOf(`item: duvet-cover, finished: 200 x 200, ${keys}`), path, hint))

  test('a size of the wrong kind', () => {
    const [problem] = problemsOf(planOf('item: duvet-cover, size: us-pillow-king'))
    expect(problem?.code).toBe('size-unknown')
  })
  test('a plan given as an object has paths and no lines', () => {
    const read = readPlanObject({
      plan: 1,
      make: [{ item: 'pillowcase', finished: '50', fla: 1 }],
      cloth: [{ name: 'a', widths: [150] }],
    })
    expect(read.ok ? [] : read.problems.map((p) => [p.path, p.line, p.hint])).toEqual([
      ['make[0].finished', undefined, 'Write it such as 50 x 75 cm'],
      ['make[0].fla', undefined, 'Did you mean flap?'],
    ])
  })
})
