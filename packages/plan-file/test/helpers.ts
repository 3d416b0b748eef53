import { readFileSync } from 'node:fs'
import type { Order } from '@lengthwise/pieces'
import type { Problem } from '@lengthwise/units'
import { readPlan } from '../src/index.ts'

export const fixture = (name: string): string =>
  readFileSync(new URL(`../../../fixtures/${name}`, import.meta.url), 'utf8')

/** The order of a plan that must read. */
export function orderOf(text: string): Order {
  const read = readPlan(text)
  if (!read.ok) throw new Error(read.problems.map((p) => `${p.line}: ${p.path}: ${p.message} ${p.hint}`).join('\n'))
  return read.value
}

/** The problems of a plan that must not read. */
export function problemsOf(text: string): readonly Problem[] {
  const read = readPlan(text)
  if (read.ok) throw new Error('read without a problem')
  return read.problems
}

/** A plan of one item, keys given in flow style, from one bolt called sprig. */
export const planOf = (item: string, cloth = 'widths: [150 cm]', head = ''): string =>
  `plan: 1\n${head}\nmake:\n  - { ${item} }\ncloth:\n  - name: sprig\n    ${cloth.replaceAll('\n', '\n    ')}\n`
