import type { Problem } from '@lengthwise/units'
import { hasHiddenCharacters } from '@lengthwise/units'
import { LIMITS } from './limits.ts'
import type { Path } from './path.ts'
import { isRecord, pathText } from './path.ts'

/** Keys spelled the other way, read as the first spelling; the contract of the file has one name for each. */
const SPELLINGS: Readonly<Record<string, string | undefined>> = Object.assign(Object.create(null), {
  'unused-selvage': 'unused-selvedge',
  'selvage-to-selvage': 'selvedge-to-selvedge',
  selvages: 'selvedges',
  center: 'centre',
})

/** Within { } and [ ] a comma ends the entry, so that 9,80 becomes a 9 and a key 80. */
export const COMMA_HINT = 'Put a number with a comma in quotes, or write it with a point'

// words that reach into an object's machinery instead of naming a key of it
const MACHINERY = new Set(['__proto__', 'constructor', 'prototype'])

export const plainKey = (key: string): string => SPELLINGS[key] ?? key

/**
 * Gathers the values of a plan, from text or from an object, into data that holds nothing but plain objects, lists,
 * texts, numbers and yes or no; what must not be there becomes a problem and is left out.
 */
export class PlainData {
  readonly problems: Problem[] = []
  private values = 0

  /** Counts a value on its way in; false: the plan is too large or too deep, and nothing below is read. */
  takes(path: Path): boolean {
    this.values += 1
    if (path.length > LIMITS.depth) {
      this.refuse(
        'too-deep',
        path.slice(0, 3),
        `More than ${LIMITS.depth} levels inside each other`,
        'A plan needs no more than six levels',
      )
      return false
    }
    if (this.values === LIMITS.values + 1)
      this.refuse('too-large', [], `More than ${LIMITS.values} values`, 'Split the plan into several')
    return this.values <= LIMITS.values
  }

  /** The key as the plan knows it; undefined when it may not be used. */
  key(key: string, path: Path, taken: Record<string, unknown>): string | undefined {
    const plain = plainKey(key)
    if (MACHINERY.has(plain)) {
      this.refuse('unknown-key', [...path, plain], `${plain} is no key of a plan`, 'Delete this line')
      return undefined
    }
    if (hasHiddenCharacters(plain)) {
      this.refuse(
        'hidden-characters',
        path,
        'A key holds characters that cannot be seen',
        'Delete the key and type it again',
      )
      return undefined
    }
    if (Object.hasOwn(taken, plain)) {
      this.refuse('duplicate-key', [...path, plain], `${plain} stands here twice`, 'Keep one of the two lines')
      return undefined
    }
    return plain
  }

  /** A text without what cannot be seen. */
  text(text: string, path: Path): string {
    // joiners shape the letters of several scripts and cannot mislead
    if (!hasHiddenCharacters(text.replace(/[\u200c\u200d]/g, ''))) return text
    this.refuse(
      'hidden-characters',
      path,
      'This text holds control characters or characters that turn the reading direction',
      'Delete the text and type it again',
    )
    return [...text].filter((c) => !hasHiddenCharacters(c)).join('')
  }

  noValue(path: Path): void {
    const key = String(path.at(-1))
    const hint = /^\d/.test(key) ? COMMA_HINT : 'Write a value after the colon, or delete the line'
    this.refuse('no-value', path, `${key} has no value`, hint)
  }

  /** True when reading stopped at a limit: what was gathered is not the plan, and nothing more can be said of it. */
  get stopped(): boolean {
    return this.problems.some(({ code }) => code === 'too-deep' || code === 'too-large' || code === 'too-many-aliases')
  }

  refuse(code: string, path: Path, message: string, hint: string): void {
    this.problems.push({ code, path: pathText(path), message, hint })
  }
}

/** A plan given as an object, such as the page edits, as plain data. */
export function plainObject(plan: unknown): { readonly data: unknown; readonly problems: readonly Problem[] } {
  const gathered = new PlainData()
  const data = plainValue(plan, [], gathered, new Set())
  return { data: gathered.stopped ? undefined : data, problems: gathered.problems }
}

function plainValue(value: unknown, path: Path, gathered: PlainData, above: ReadonlySet<object>): unknown {
  if (!gathered.takes(path)) return undefined
  if (typeof value === 'string') return gathered.text(value, path)
  // infinite and not-a-number become text, which the readers refuse with their own words
  if (typeof value === 'number') return Number.isFinite(value) ? value : String(value)
  if (typeof value === 'boolean') return value
  if (typeof value !== 'object' || value === null) return undefined
  if (above.has(value)) {
    gathered.refuse('too-deep', path.slice(0, 3), 'This holds itself', 'Write the values out')
    return undefined
  }
  const within = new Set(above).add(value)
  if (Array.isArray(value)) return value.map((one, i) => plainValue(one, [...path, i], gathered, within))
  const data: Record<string, unknown> = {}
  for (const [key, one] of Object.entries(value)) {
    const plain = gathered.key(key, path, data)
    if (plain === undefined) continue
    const read = plainValue(one, [...path, plain], gathered, within)
    if (read !== undefined) data[plain] = read
    else if (one === null) gathered.noValue([...path, plain])
  }
  return data
}

/** A plan is an object of keys; anything else is refused here. */
export function notAPlan(data: unknown): Problem | undefined {
  if (isRecord(data)) return undefined
  return {
    code: 'not-a-plan',
    path: '',
    message: data === undefined ? 'The plan is empty' : 'This is no plan: it has no keys',
    hint: 'Begin with the sample plan: lengthwise new FILE',
  }
}
