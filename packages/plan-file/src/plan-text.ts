import type { Problem } from '@lengthwise/units'
import type { Alias, Document, Node, Pair, Scalar, YAMLMap } from 'yaml'
import { isAlias, isMap, isScalar, isSeq, LineCounter, parseDocument, visit } from 'yaml'
import { LIMITS } from './limits.ts'
import type { Path } from './path.ts'
import { PlainData, plainKey } from './plain-data.ts'

/** Line and column, one-based. */
export interface Place {
  readonly line: number
  readonly column: number
}

export interface PlanText {
  readonly data: unknown
  readonly problems: readonly Problem[]
  /** where the value at a path stands, or the nearest thing around it that is written */
  readonly place: (path: Path, what?: 'key' | 'value') => Place
}

/** YAML (JSON is YAML) to plain data, with the places of everything. Problems of its syntax end the reading. */
export function planText(text: string): PlanText {
  const tooLarge = refuseLarge(text)
  if (tooLarge) return { data: undefined, problems: [tooLarge], place: () => ({ line: 1, column: 1 }) }
  const lines = new LineCounter()
  const document = parsed(text, lines)
  if (document === undefined) return { data: undefined, problems: [TOO_DEEP], place: () => ({ line: 1, column: 1 }) }
  const place = (path: Path, what: 'key' | 'value' = 'value') => placeOf(document, lines, path, what)
  const broken = [...document.errors, ...document.warnings]
  if (broken.length > 0) {
    const problems = broken.map((error): Problem => {
      const { line, col } = lines.linePos(openedAt(document, error.pos[0]) ?? error.pos[0])
      return {
        code: 'yaml',
        path: '',
        message: sentence(error.message),
        hint: SYNTAX_HINTS[error.code] ?? ANY_SYNTAX,
        line,
        column: col,
      }
    })
    return { data: undefined, problems, place }
  }
  const gathered = new PlainData()
  const data = new Reading(document, gathered, text).value(document.contents, [])
  return { data: gathered.stopped ? undefined : data, problems: gathered.problems, place }
}

function refuseLarge(text: string): Problem | undefined {
  if (text.length <= LIMITS.bytes / 3) return undefined
  let bytes = 0
  for (const c of text) bytes += c <= '\u007f' ? 1 : c <= '\u07ff' ? 2 : c <= '\uffff' ? 3 : 4
  if (bytes <= LIMITS.bytes) return undefined
  return {
    code: 'too-large',
    path: '',
    message: `The plan is ${(bytes / 1_000_000).toFixed(1)} MB long, 1 MB is the most`,
    hint: 'Split the plan into several',
  }
}

function parsed(text: string, lines: LineCounter): Document | undefined {
  if (nestsTooDeep(text)) return undefined
  try {
    // the library's own search for repeated keys compares every pair of them; ours looks each up once
    return parseDocument(text, { lineCounter: lines, prettyErrors: false, uniqueKeys: false, merge: false })
  } catch (error) {
    if (error instanceof RangeError) return undefined
    throw error
  }
}

/**
 * The parser calls itself for each level; a run of openings, dashes or indents would take it past the end of its stack.
 * Counted roughly, brackets in quotes included: twice what a plan may nest is refused before it is parsed.
 */
function nestsTooDeep(text: string): boolean {
  const most = 2 * LIMITS.depth
  let open = 0
  for (const [bracket] of text.replace(/^\s*#.*$/gm, '').matchAll(/[[\]{}]/g)) {
    open = Math.max(0, open + (bracket === '[' || bracket === '{' ? 1 : -1))
    if (open > most) return true
  }
  return /(?:[-?:] ){60}/.test(text) || indents(text) > most
}

/** Levels of indentation that are open at once, at the most. */
function indents(text: string): number {
  const open: number[] = []
  let most = 0
  for (const [, blanks = ''] of text.matchAll(/^( *)[^\s#]/gm)) {
    while (open.length > 0 && open.at(-1)! >= blanks.length) open.pop()
    open.push(blanks.length)
    most = Math.max(most, open.length)
  }
  return most
}

const TOO_DEEP: Problem = {
  code: 'too-deep',
  path: '',
  message: `More than ${LIMITS.depth} levels inside each other`,
  hint: 'A plan needs no more than six levels',
}

class Reading {
  private aliases = 0
  private readonly document: Document
  private readonly gathered: PlainData
  private readonly text: string

  constructor(document: Document, gathered: PlainData, text: string) {
    this.document = document
    this.gathered = gathered
    this.text = text
  }

  value(node: unknown, path: Path): unknown {
    if (node === null || node === undefined) return undefined
    if (!this.gathered.takes(path)) return undefined
    if (isAlias(node)) return this.value(this.target(node, path), path)
    if (isScalar(node)) return this.scalar(node, path)
    if (isSeq(node)) {
      this.refuseSplitNumbers(node.items, path)
      return node.items.map((item, i) => this.value(item, [...path, i]))
    }
    return isMap(node) ? this.map(node, path) : undefined
  }

  private map(node: YAMLMap, path: Path): Record<string, unknown> {
    const data: Record<string, unknown> = {}
    for (const pair of node.items) {
      const key = this.gathered.key(keyText(pair), path, data)
      if (key === undefined) continue
      const value = this.value(pair.value, [...path, key])
      if (value !== undefined) data[key] = value
      else if (isEmpty(pair.value)) this.gathered.noValue([...path, key])
    }
    return data
  }

  private scalar(node: Scalar, path: Path): unknown {
    const { value, source } = node
    if (typeof value === 'string') return this.gathered.text(value, path)
    // 1.250 is a number to YAML and two numbers to people, 1e999 is none: the readers see what was typed
    if (typeof value === 'number') return source !== undefined && !PLAIN_NUMBER.test(source) ? source : value
    return typeof value === 'boolean' ? value : undefined
  }

  private target(alias: Alias, path: Path): Node | undefined {
    this.aliases += 1
    if (this.aliases === LIMITS.aliases + 1)
      this.gathered.refuse(
        'too-many-aliases',
        path,
        `More than ${LIMITS.aliases} aliases (*name)`,
        'Write the values out',
      )
    return this.aliases > LIMITS.aliases ? undefined : alias.resolve(this.document)
  }

  /** `[112,5 cm]` is a list of two to YAML: a comma between digits with no blank is not let through as one. */
  private refuseSplitNumbers(items: readonly unknown[], path: Path): void {
    items.forEach((item, i) => {
      const before = items[i - 1]
      if (!isScalar(item) || !isScalar(before) || item.type !== 'PLAIN' || before.type !== 'PLAIN') return
      if (typeof before.value !== 'number' || typeof item.value !== 'string') return
      const between = this.text.slice(before.range?.[1], item.range?.[0])
      if (between === ',' && /^\d/.test(item.value))
        this.gathered.refuse(
          'comma-in-list',
          [...path, i],
          `${before.source},${item.value} is read as a list of two`,
          `Write ${before.source}.${item.value}, or a blank after the comma when two are meant`,
        )
    })
  }
}

// at most twelve digits each side, never three places behind a short whole number
const PLAIN_NUMBER = /^(?!(?:[1-9]\d{0,2})\.\d{3}$)\d{1,12}(?:\.\d{1,12})?$/

function placeOf(document: Document, lines: LineCounter, path: Path, what: 'key' | 'value'): Place {
  let node: unknown = document.contents
  let offset = startOf(node)
  for (const [i, step] of path.entries()) {
    if (isAlias(node)) node = node.resolve(document)
    if (isMap(node)) {
      const pair = pairsOf(node).get(String(step))
      if (pair === undefined) break
      const keyOnly = pair.value === null || (what === 'key' && i === path.length - 1)
      offset = (keyOnly ? startOf(pair.key) : (startOf(pair.value) ?? startOf(pair.key))) ?? offset
      node = pair.value
    } else if (isSeq(node) && typeof step === 'number' && step < node.items.length) {
      node = node.items[step]
      offset = startOf(node) ?? offset
    } else break
  }
  const { line, col } = lines.linePos(offset ?? 0)
  return line > 0 ? { line, column: col } : { line: 1, column: 1 }
}

// the keys of each group, gathered once: a plan of a hundred thousand wrong keys asks for each of them
const gatheredPairs = new WeakMap<YAMLMap, ReadonlyMap<string, Pair>>()
function pairsOf(node: YAMLMap): ReadonlyMap<string, Pair> {
  const known = gatheredPairs.get(node) ?? new Map(node.items.map((pair) => [plainKey(keyText(pair)), pair]))
  gatheredPairs.set(node, known)
  return known
}

const isEmpty = (node: unknown): boolean => node === null || (isScalar(node) && node.value === null)

const startOf = (node: unknown): number | undefined => (node as Node | null)?.range?.[0]

function keyText(pair: Pair): string {
  const { key } = pair
  return isScalar(key) ? (key.source ?? String(key.value)) : '[…]'
}

/** A quote that is never closed is missed at the end of the text; what helps is where it was opened. */
function openedAt(document: Document, end: number): number | undefined {
  let start: number | undefined
  visit(document, {
    Scalar: (_, node) => {
      if (node.type?.startsWith('QUOTE') && node.range && node.range[0] < end && end <= node.range[1])
        start = node.range[0]
    },
  })
  return start
}

function sentence(message: string): string {
  const first = message.split('\n')[0]!.slice(0, 160)
  return first.charAt(0).toUpperCase() + first.slice(1)
}

const ANY_SYNTAX = 'Look at the indentation, quotes and brackets of this line and the one above'
const SYNTAX_HINTS: Readonly<Record<string, string | undefined>> = {
  TAB_AS_INDENT: 'Indent with blanks, not with tabs',
  BAD_INDENT: 'Indent the keys of one item by the same number of blanks',
  MULTILINE_IMPLICIT_KEY: 'Look for a missing colon on this line, or a missing closing quote above',
  MISSING_CHAR: 'Close the quote or bracket that was opened here',
  UNEXPECTED_TOKEN: 'Put the text in quotes if it begins with a sign such as { [ * & ! % @ or a quote',
  MULTIPLE_DOCS: 'Keep one plan in a file: delete the line --- and what follows',
  TAG_RESOLVE_FAILED: 'Delete the word that begins with !',
  BAD_ALIAS: 'Write the values out instead of using *',
}
