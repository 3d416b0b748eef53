import type { Problem } from '@lengthwise/units'
import { showText } from '@lengthwise/units'
import type * as z from 'zod'
import { LIMITS } from './limits.ts'
import { nearest } from './nearest.ts'
import type { Path } from './path.ts'
import { pathText, valueAt } from './path.ts'
import { COMMA_HINT } from './plain-data.ts'

type Issue = z.core.$ZodIssue

/** A problem whose path may be one of a key that should not be there: its place is the key, not the value. */
export interface Found extends Problem {
  readonly at: Path
  readonly aboutKey: boolean
}

/** The issues of the schema in words, each with the next step. */
export function foundIn(issues: readonly Issue[], data: unknown, above: Path = []): Found[] {
  return issues.flatMap((issue) => {
    const path = [...above, ...(issue.path as Path)]
    if (issue.code === 'unrecognized_keys')
      return issue.keys.slice(0, LIMITS.problems).map((key) => unknownKey(key, issue.message, path))
    if (issue.code === 'invalid_union') return unionIssue(issue, data, path)
    return [found(path, ...worded(issue, valueAt(data, path), path))]
  })
}

function found(at: Path, code: string, message: string, hint: string, aboutKey = false): Found {
  return { code, path: pathText(at), message, hint, at, aboutKey }
}

function unknownKey(key: string, known: string, path: Path): Found {
  const keys = known.split(' ')
  const near = nearest(key, keys)
  const hint = /^\d/.test(key) ? COMMA_HINT : near ? `Did you mean ${near}?` : `Known here: ${keys.join(', ')}`
  const where = path.length === 0 ? 'the plan' : pathText(path)
  return found([...path, key], 'unknown-key', `${showText(key)} is no key of ${where}`, hint, true)
}

function unionIssue(issue: z.core.$ZodIssueInvalidUnion, data: unknown, path: Path): Found[] {
  const value = valueAt(data, path)
  if ('discriminator' in issue && issue.discriminator !== undefined) {
    // the types of this library leave the options out where nothing matches
    const { options: known } = issue as { readonly options?: readonly unknown[] }
    const options = (known ?? []).map(String)
    if (value === undefined) return [missing(path, `Write one of ${options.join(', ')}`)]
    return [found(path, 'unknown-word', `${shown(value)} is not known here`, oneOf(value, options))]
  }
  if (value === undefined) return [missing(path, issue.message)]
  // of the forms a value may have, the one it comes nearest to speaks for it
  const ranked = issue.errors
    .map((branch) => ({ branch, rank: Math.max(0, ...branch.map(misfit)) }))
    .sort((a, b) => a.rank - b.rank)
  const best = ranked[0]
  if (best === undefined || best.rank === WRONG_TYPE)
    return [found(path, 'wrong-form', `${shown(value)} cannot be read here`, issue.message)]
  return foundIn(best.branch, data, path)
}

const WRONG_TYPE = 2
const WRONG_WORD = 1
function misfit(issue: Issue): number {
  if (issue.path.length > 0) return 0
  if (issue.code === 'invalid_type') return WRONG_TYPE
  if (issue.code === 'invalid_union')
    return issue.errors.length === 0
      ? WRONG_TYPE
      : Math.min(...issue.errors.map((branch) => Math.max(0, ...branch.map(misfit))))
  return issue.code === 'invalid_value' ? WRONG_WORD : 0
}

function worded(
  issue: Exclude<Issue, z.core.$ZodIssueInvalidUnion>,
  value: unknown,
  path: Path,
): [string, string, string] {
  if (issue.code === 'custom') {
    const { code, hint } = issue.params as { code: string; hint: string }
    return [code, issue.message, hint]
  }
  const own = /^Write /.test(issue.message) ? issue.message : undefined
  if (value === undefined) {
    const { code, message, hint } = missing(path, own)
    return [code, message, hint]
  }
  switch (issue.code) {
    case 'invalid_value': {
      const options = issue.values.map(String)
      return ['unknown-word', `${shown(value)} is not known here`, own ?? oneOf(value, options)]
    }
    case 'too_small':
      if (Array.isArray(value)) return ['empty-list', 'The list is empty', 'Write at least one entry']
      return ['too-small', `${shown(value)} is below ${issue.minimum}`, `Write ${issue.minimum} or more`]
    case 'too_big':
      if (Array.isArray(value))
        return ['too-large', `More than ${issue.maximum} entries`, 'Split the plan into several']
      return ['too-large', `${shown(value)} is more than ${issue.maximum}`, `Write ${issue.maximum} at most`]
    case 'invalid_type':
      return [
        'wrong-form',
        `${shown(value)} cannot be read here`,
        own ?? FORMS[issue.expected] ?? 'Look at this key in the sample plan',
      ]
    default:
      return ['wrong-form', `${shown(value)} cannot be read here`, own ?? 'Look at this key in the sample plan']
  }
}

function missing(path: Path, hint?: string): Found {
  const key = String(path.findLast((step) => typeof step === 'string') ?? 'plan')
  if (typeof path.at(-1) === 'number')
    return found(path, 'missing', `An entry of ${key} is empty`, 'Write it after the dash, or delete the dash')
  const example = EXAMPLES[key]
  return found(
    path,
    'missing',
    `${key} is missing`,
    example ? `Add a line such as ${key}: ${example}` : (hint ?? `Add ${key}`),
  )
}

function oneOf(value: unknown, options: readonly string[]): string {
  const near = nearest(String(value), options)
  return near ? `Did you mean ${near}?` : `Write one of ${options.join(', ')}`
}

function shown(value: unknown): string {
  if (Array.isArray(value)) return value.length === 0 ? 'An empty list' : 'A list'
  return value !== null && typeof value === 'object' ? 'A group of keys' : showText(String(value))
}

const FORMS: Readonly<Record<string, string | undefined>> = {
  object: 'Write keys with values, one on each line, such as count: 2',
  array: 'Write a list: each entry on its own line after a dash',
  string: 'Write it as text',
  record: 'Write keys with values',
}

const EXAMPLES: Readonly<Record<string, string | undefined>> = Object.assign(Object.create(null), {
  make: '[{ item: pillowcase, finished: 50 x 75 cm }]',
  item: 'duvet-cover',
  name: 'stripe',
  depth: '10 cm',
  diameter: '20 cm',
  length: '90 cm',
  width: '6 cm',
  run: '720 cm',
  'kept-hem': '2.5 cm',
  x: '20 cm',
  y: '110 cm',
})
