import * as z from 'zod'
import { LIMITS } from '../limits.ts'
import { cloth, currency } from './cloth.ts'
import { item, seam } from './items.ts'
import type { Measure } from './leaves.ts'
import { keys, leaves, line, word } from './leaves.ts'

const MEASURES = ['cm', 'mm', 'in'] as const
const built = new Map<Measure, ReturnType<typeof build>>()

/** The plan's schema; bare numbers and usual figures are those of `measureIn`. */
export function planShape(measureIn: Measure) {
  const known = built.get(measureIn) ?? build(measureIn)
  built.set(measureIn, known)
  return known
}

export type PlanShape = z.output<ReturnType<typeof build>>
export type ItemShape = PlanShape['make'][number]
export type ClothShape = PlanShape['cloth'][number]

/** What `measure-in` says, before anything else can be read. */
export function measureInOf(data: unknown): Measure {
  const said = z.looseObject({ 'measure-in': z.enum(MEASURES) }).safeParse(data)
  return said.success ? said.data['measure-in'] : 'cm'
}

function build(measureIn: Measure) {
  const r = leaves(measureIn)
  return keys({
    plan: z
      .literal(1, { error: () => 'Write plan: 1' })
      .prefault(1)
      .describe('Version of this format'),
    title: line().prefault('').describe('Heading of everything that is printed'),
    date: date().optional().describe('Printed on the map, such as 2026-05-02; never taken from the clock'),
    'measure-in': word(MEASURES).prefault('cm').describe('Unit of bare numbers, and of what is printed'),
    currency: currency().optional(),
    wash: word(['before-cutting', 'after-sewing', 'none'])
      .prefault('before-cutting')
      .describe('before-cutting: the cloth shrinks; after-sewing: pieces are cut larger; none: nothing shrinks'),
    seam: seam(r)
      .prefault({ kind: 'plain', allowance: r.usual('1.5 cm', '1/2 in') })
      .describe('Seams of every item that says nothing else'),
    'mark-to': r
      .usually('0.5 cm', '1/8 in')
      .describe('Cut sizes round up to this; 0: to the exact unit. 1/8 in when measure-in is in'),
    'worth-keeping': r
      .size()
      .prefault(r.usual('20 x 50 cm', '8 x 20 in'))
      .describe('Smallest remnant that is listed, either way round. 8 x 20 in when measure-in is in'),
    make: z.array(item(r)).min(1).max(LIMITS.pieces).describe('What is sewn'),
    cloth: z.array(cloth(r)).min(1).max(LIMITS.cloths).describe('What it is sewn from'),
  })
}

const date = () =>
  z.string().regex(/^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$/, {
    error: () => 'Write year, month and day such as 2026-05-02',
  })
