import { planSchema, readPlanObject } from '@lengthwise/plan-file'
import { plan } from '@lengthwise/planner'
import { describe, expect, test } from 'vitest'
import { CLOTH_FIELDS, MORE_CLOTH_FIELDS } from '../apps/web/src/cloth-fields.ts'
import { EXAMPLES } from '../apps/web/src/examples.ts'
import type { FieldSpec } from '../apps/web/src/field-spec.ts'
import { ITEM_FORMS } from '../apps/web/src/item-fields.ts'
import { measuredIn } from '../apps/web/src/measured-in.ts'
import { at, joinSize, nameUnits, put, splitSize, writeOut } from '../apps/web/src/plan.ts'
import { PLAN_FIELDS } from '../apps/web/src/plan-fields.ts'
import { begin, change, redo, undo } from '../apps/web/src/store.ts'

/** The form against the plan file: every box edits a key that is read, with values that are read. */

const CLOTH = { name: 'linen', from: 'bolt', widths: ['300 cm'], print: { way: 'one-way', repeat: '20 cm' } }
const SHEET = {
  name: 'old sheet',
  from: 'sheet',
  size: '240 x 280 cm',
  hems: { head: '10 cm', foot: '2.5 cm', left: 'selvedge', right: 'selvedge' },
}
const REMNANT = { name: 'left over', from: 'remnant', size: '150 x 200 cm' }

const freshItem = (kind: string): unknown => {
  const form = ITEM_FORMS[kind]!
  return form.clothKeys.reduce<unknown>((item, key) => put(item, key.split('.'), 'linen'), form.fresh)
}
const withItem = (item: unknown): object => ({ plan: 1, make: [item], cloth: [CLOTH, SHEET, REMNANT] })
const keyPath = (key: string): string[] => key.split('.')

/** The object with the field filled in, in a state in which the form would ask for it. */
function filled(base: unknown, specs: readonly FieldSpec[], spec: FieldSpec): unknown {
  const asked = (value: unknown): boolean => spec.when === undefined || spec.when((key) => at(value, keyPath(key)))
  const named = ['finished', 'mattress', 'base', 'quilt'].reduce(
    (item, key) => put(item, [key], undefined),
    put(base, ['size'], 'uk-double'),
  )
  const states = [
    base,
    named,
    ...statesOf(base, specs),
    ...statesOf(base, specs).flatMap((one) => statesOf(one, specs)),
  ]
  const state = states.find(asked)
  if (state === undefined) throw new Error(`nothing leads to the field ${spec.key}`)
  return put(state, keyPath(spec.key), valueFor(spec))
}

function statesOf(base: unknown, specs: readonly FieldSpec[]): unknown[] {
  return specs.flatMap((spec) =>
    spec.kind === 'choice'
      ? spec.options.map((option) =>
          'keeps' in spec
            ? put(base, keyPath(spec.key).slice(0, 1), { kind: option.value })
            : put(base, keyPath(spec.key), option.value),
        )
      : spec.kind === 'length'
        ? [put(base, keyPath(spec.key), '6 cm')]
        : spec.kind === 'cloths'
          ? [put(base, keyPath(spec.key), 'old sheet')]
          : [],
  )
}

function valueFor(spec: FieldSpec): unknown {
  switch (spec.kind) {
    case 'length':
      return '6 cm'
    case 'lengths':
      return ['140 cm', '7 in']
    case 'size':
      return '50 x 60 cm'
    case 'count':
      return 1
    case 'percent':
      return '4 %'
    case 'cloths':
      return ['linen', 'old sheet']
    case 'choice':
      return spec.options.find((option) => option.value !== undefined)?.value
    case 'words':
      return spec.key === 'date'
        ? '2026-05-02'
        : spec.key === 'currency'
          ? 'EUR'
          : /ratio|fullness/.test(spec.key)
            ? '1'
            : 'attic'
  }
}

// what the keys themselves are refused for, whatever their value
const KEY_FAULTS = /unknown|elsewhere|twice|form/
const keyFaults = (read: ReturnType<typeof readPlanObject>): string[] =>
  read.ok ? [] : read.problems.filter((one) => KEY_FAULTS.test(one.code)).map((one) => `${one.path}: ${one.message}`)

describe('every thing to sew', () => {
  test.each(Object.keys(ITEM_FORMS))('a new %s can be cut at once', (kind) => {
    const read = readPlanObject(withItem(freshItem(kind)))
    expect(read.ok ? [] : read.problems).toEqual([])
    if (read.ok) expect(plan(read.value, { effort: 'quick', compareWidths: false }).status).toBe('laid')
  })

  test.each(
    Object.entries(ITEM_FORMS).flatMap(([kind, form]) =>
      [...form.first, ...form.more].map((spec) => [kind, spec.key, spec, [...form.first, ...form.more]] as const),
    ),
  )('%s: the plan file reads %s', (kind, _, spec, specs) => {
    expect(keyFaults(readPlanObject(withItem(filled(freshItem(kind), specs, spec))))).toEqual([])
  })
})

describe('every cloth and the whole plan', () => {
  const specs = [...CLOTH_FIELDS, ...MORE_CLOTH_FIELDS]
  test.each(specs.map((spec) => [spec.key, spec] as const))('the plan file reads %s of a cloth', (_, spec) => {
    const base =
      [CLOTH, SHEET, REMNANT].find((one) => spec.when === undefined || spec.when((key) => at(one, keyPath(key)))) ??
      CLOTH
    const cloth = filled(base, specs, spec)
    const others = [CLOTH, SHEET, REMNANT].filter((one) => one !== base)
    const read = readPlanObject({ ...withItem(freshItem('pillowcase')), cloth: [cloth, ...others] })
    expect(keyFaults(read)).toEqual([])
  })

  test.each(PLAN_FIELDS.map((spec) => [spec.key, spec] as const))('the plan file reads %s', (_, spec) => {
    const read = readPlanObject(put(withItem(freshItem('throw')), keyPath(spec.key), valueFor(spec)))
    expect(read.ok ? [] : read.problems).toEqual([])
  })
})

test('what a box says of itself when empty is what the plan file takes', () => {
  // the schema states its usual values in centimetres
  const schema = JSON.stringify(planSchema())
  const stated = [
    ...Object.values(ITEM_FORMS).flatMap((form) => [...form.first, ...form.more]),
    ...CLOTH_FIELDS,
    ...MORE_CLOTH_FIELDS,
    ...PLAN_FIELDS,
  ]
  for (const spec of stated) {
    if (spec.kind !== 'length' || spec.usual === undefined) continue
    const key = keyPath(spec.key).at(-1)!
    const at = [...schema.matchAll(new RegExp(`"${key}":\\{[^{}]*?(?:\\{[^{}]*\\}[^{}]*?)*?\\}`, 'g'))].map(
      ([text]) => text,
    )
    expect(`${spec.key}: ${at.some((text) => text.includes(spec.usual![0])) ? spec.usual[0] : at.join(' ')}`).toBe(
      `${spec.key}: ${spec.usual[0]}`,
    )
  }
})

describe('the plan in the form', () => {
  test('a size is taken apart and put together without change of meaning', () => {
    expect(splitSize('20 1/8 x 30 5/8 in', 2, 'cm')).toEqual(['20 1/8 in', '30 5/8 in'])
    expect(splitSize('200 × 220 cm', 2, 'cm')).toEqual(['200', '220'])
    expect(splitSize('150 by 200 by 32', 3, 'cm')).toEqual(['150', '200', '32'])
    expect(joinSize(['20 in', '75'], 'cm')).toBe('20 in x 75 cm')
    expect(joinSize(['', ''], 'cm')).toBeUndefined()
  })

  test('measuring in another unit changes no size', () => {
    const before = {
      make: [{ finished: '200 x 220', count: 2, size: 'uk-double' }],
      cloth: [{ widths: [112, '60 in'], price: '9 per m' }],
    }
    expect(nameUnits(before, 'cm')).toEqual({
      make: [{ finished: '200 x 220 cm', count: 2, size: 'uk-double' }],
      cloth: [{ widths: ['112 cm', '60 in'], price: '9 per m' }],
    })
  })

  test.each([
    {
      item: 'duvet-cover',
      finished: '200 x 200 cm',
      front: 'linen',
      back: 'old sheet',
      opening: 'ties',
      seam: 'french',
    },
    { item: 'duvet-cover', finished: '200 x 200 cm', cloth: 'linen' },
    { item: 'rectangle', name: 'tray cloth', finished: '40 x 60 cm', hems: '2 cm', cloth: 'linen' },
    { item: 'flat-sheet', finished: '200 x 240 cm', hems: { head: '8 cm', left: 'selvedge' }, cloth: 'linen' },
    { item: 'fitted-sheet', mattress: '150 x 200 x 25 cm', elastic: 'ends', cloth: 'linen' },
  ])('short forms of a file are written out for the form and mean the same: $item', (item) => {
    const short = withItem(item)
    const read = readPlanObject(short)
    expect(read.ok).toBe(true)
    expect(readPlanObject(writeOut(short as never))).toEqual(read)
  })

  test('an example in inches has round figures; a plan someone changed keeps its sizes to the last digit', () => {
    const example = EXAMPLES[0].plan
    const there = measuredIn(begin(example), 'in')
    // 200 / 2.54 = 78.7, 50 and 75 are 19.7 and 29.5, shops sell by the eighth of a yard
    expect(at(there.plan, ['make', 0, 'finished'])).toBe('79 x 79 in')
    expect(at(there.plan, ['make', 1, 'finished'])).toBe('20 x 30 in')
    expect(at(there.plan, ['cloth', 0, 'sold-by'])).toBe('1/8 yd')
    expect(readPlanObject(there.plan).ok).toBe(true)
    expect(measuredIn(there, 'cm').plan).toEqual(example)
    const own = measuredIn(change(begin(example), ['make', 0, 'finished'], '201 x 200'), 'in')
    expect(at(own.plan, ['make', 0, 'finished'])).toBe('201 x 200 cm')
    expect(at(own.plan, ['cloth', 0, 'sold-by'])).toBe('1/8 yd')
  })

  test('undo goes back box by box, and forward again', () => {
    let now = begin({ title: 'a' })
    for (const text of ['b', 'bc', 'bcd']) now = change(now, ['title'], text, 'title')
    now = change(now, ['make', 0, 'count'], 2, 'count')
    expect(undo(now).plan).toEqual({ title: 'bcd' })
    expect(undo(undo(now)).plan).toEqual({ title: 'a' })
    expect(undo(undo(undo(now))).plan).toEqual({ title: 'a' })
    expect(redo(undo(now)).plan).toEqual(now.plan)
  })
})
