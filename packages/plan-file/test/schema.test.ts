import { NAMED_SIZES } from '@lengthwise/pieces'
import { describe, expect, test } from 'vitest'
import { layoutSchema, parsePlan, planSchema, readPlanObject } from '../src/index.ts'
import { fixture, orderOf } from './helpers.ts'

interface Schema {
  readonly type?: string | readonly string[]
  readonly properties?: Readonly<Record<string, Schema>>
  readonly required?: readonly string[]
  readonly items?: Schema
  readonly anyOf?: readonly Schema[]
  readonly oneOf?: readonly Schema[]
  readonly const?: unknown
  readonly enum?: readonly unknown[]
  readonly default?: unknown
  readonly description?: string
  readonly additionalProperties?: boolean
}

const schema = planSchema() as Schema
const itemSchemas = schema.properties!.make!.items!.oneOf!
const clothSchema = schema.properties!.cloth!.items!
const itemSchema = (kind: unknown) => itemSchemas.find((s) => s.properties!.item!.const === kind)!

/** The least that each kind of item needs. */
const LEAST: readonly Readonly<Record<string, unknown>>[] = [
  { item: 'duvet-cover', finished: '200 x 200 cm' },
  { item: 'pillowcase', finished: '50 x 75 cm' },
  { item: 'flat-sheet', finished: '240 x 280 cm' },
  { item: 'fitted-sheet', mattress: '150 x 200 x 32 cm' },
  { item: 'bed-skirt', base: '150 x 200 cm' },
  { item: 'bolster', diameter: '20 cm', length: '90 cm' },
  { item: 'cushion', finished: '45 x 45 cm' },
  { item: 'sham', finished: '50 x 75 cm' },
  { item: 'throw', finished: '140 x 200 cm' },
  { item: 'quilt-back', quilt: '225 x 245 cm' },
  { item: 'strips', width: '6 cm', run: '720 cm' },
  { item: 'rectangle', finished: '40 x 60 cm' },
]

/** What a schema says is meant where nothing is written. */
function defaultsOf(part: Schema): Record<string, unknown> {
  const entries = Object.entries(part.properties ?? {}).filter(([, one]) => one.default !== undefined)
  return Object.fromEntries(entries.map(([key, one]) => [key, one.default]))
}

describe('the schema of the plan', () => {
  test('every default written out means the same as nothing written', () => {
    for (const item of LEAST) {
      const cloth = { name: 'sprig', widths: ['150 cm'] }
      const short = readPlanObject({ make: [item], cloth: [cloth] })
      const long = readPlanObject({
        ...defaultsOf(schema),
        make: [{ ...defaultsOf(itemSchema(item.item)), ...item }],
        cloth: [{ ...defaultsOf(clothSchema), ...cloth }],
      })
      expect(short.ok).toBe(true)
      expect(long).toEqual(short)
    }
  })

  test('every kind of item has a row here', () =>
    expect(itemSchemas.map((s) => s.properties!.item!.const)).toEqual(LEAST.map((item) => item.item)))

  test('every key of the example is in it, and says what it means', () => {
    const plan = parsePlan(fixture('every-key.yaml'))
    if (!plan.ok) throw new Error('did not parse')
    const { make, cloth, ...head } = plan.value as Record<string, never> & {
      make: Record<string, unknown>[]
      cloth: Record<string, unknown>[]
    }
    const described = (part: Schema, keys: Iterable<string>) => {
      for (const key of keys)
        if (key !== 'item')
          expect([key, part.properties?.[key]?.description]).toEqual([key, expect.stringMatching(/\w/)])
    }
    described(schema, Object.keys(head))
    for (const item of make) described(itemSchema(item.item), Object.keys(item))
    for (const one of cloth) described(clothSchema, Object.keys(one))
  })

  test('every key of every item and cloth says what it means', () => {
    for (const part of [schema, clothSchema, ...itemSchemas])
      for (const [key, one] of Object.entries(part.properties!))
        if (key !== 'item') expect([key, one.description]).toEqual([key, expect.stringMatching(/\w/)])
  })

  test('no group of keys is open', () => {
    const groups: Schema[] = []
    const walk = (part: Schema) => {
      if (part.properties) groups.push(part)
      for (const one of [...Object.values(part.properties ?? {}), ...(part.anyOf ?? []), ...(part.oneOf ?? [])])
        walk(one)
      if (part.items) walk(part.items)
    }
    walk(schema)
    expect(groups.length).toBeGreaterThan(30)
    expect(groups.filter((group) => group.additionalProperties !== false)).toEqual([])
  })

  test('named sizes are listed', () => {
    const text = JSON.stringify(schema)
    for (const size of NAMED_SIZES) expect(text).toContain(`${size.name} (${size.kind}`)
  })

  test('both schemas are plain data of the 2020-12 draft', () => {
    for (const one of [schema, layoutSchema() as Schema]) {
      expect(JSON.parse(JSON.stringify(one))).toEqual(one)
      expect(one).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema', type: 'object' })
    }
  })
})

describe('named sizes', () => {
  const sizes = (kind: string) =>
    NAMED_SIZES.filter((size) => size.kind === kind).map((size) => [size.name, size.size] as const)
  const sewn = (item: string, name: string) =>
    orderOf(`make: [{ item: ${item}, size: ${name} }]\ncloth: [{ name: a, widths: [300] }]`).items[0]

  test.each(sizes('duvet'))('%s duvet', (name, size) =>
    expect(sewn('duvet-cover', name)).toMatchObject({ sizeName: name, finished: size }),
  )
  test.each(sizes('pillow'))('%s pillow, short side first', (name, size) =>
    expect(sewn('cushion', name)).toMatchObject({ sizeName: name, finished: size }),
  )
  test.each(sizes('flat-sheet'))('%s flat sheet', (name, size) =>
    expect(sewn('flat-sheet', name)).toMatchObject({ sizeName: name, finished: size }),
  )
  test.each(sizes('mattress'))('%s mattress', (name, size) =>
    expect(sewn('fitted-sheet', name)).toMatchObject({ sizeName: name, mattress: size }),
  )
})
