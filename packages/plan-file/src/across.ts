import { LIMITS } from './limits.ts'
import { nearest } from './nearest.ts'
import type { Path } from './path.ts'
import { isRecord, pathText } from './path.ts'
import type { Found } from './problems.ts'
import { ITEM_NAMES } from './schema/items.ts'

/**
 * What no key can tell alone: sizes that are missing or said twice, names of cloths, and the limits of a plan.
 * Reads the plan as written, so that these problems are told together with those of the schema.
 */
export function foundAcross(plan: Readonly<Record<string, unknown>>): Found[] {
  const cloths = listOf(plan.cloth)
  const items = listOf(plan.make)
  const names = cloths.flatMap((cloth) => (isRecord(cloth) ? [nameOf(cloth.name)] : []))
  return [
    ...cloths.flatMap((cloth, i) => (isRecord(cloth) ? clothFound(cloth, ['cloth', i], names, i) : [])),
    ...items.flatMap((item, i) => (isRecord(item) ? itemFound(item, ['make', i], names) : [])),
    ...tooMany(items),
    ...currencies(plan, cloths),
  ]
}

function clothFound(
  cloth: Readonly<Record<string, unknown>>,
  path: Path,
  names: readonly string[],
  i: number,
): Found[] {
  const found: Found[] = []
  const from = cloth.from ?? 'bolt'
  if (names[i] !== '' && names.indexOf(names[i]!) < i)
    found.push(
      at(
        [...path, 'name'],
        'duplicate-name',
        `Another cloth is called ${names[i]} too`,
        'Give each cloth a name of its own',
      ),
    )
  if (from === 'bolt') {
    if (cloth.widths === undefined) found.push(missing(path, 'widths', '[150 cm]'))
    found.push(
      ...misplaced(
        cloth,
        path,
        cloth.count === 1 ? ['size'] : ['size', 'count'],
        'a bolt',
        'Write widths: for a bolt, or from: sheet or remnant',
      ),
    )
  } else if (from === 'sheet' || from === 'remnant') {
    if (cloth.size === undefined) found.push(missing(path, 'size', from === 'sheet' ? '230 x 260 cm' : '110 x 140 cm'))
    found.push(
      ...misplaced(
        cloth,
        path,
        ['widths', 'price', 'sold-by', 'smallest-sale', 'have'],
        `a ${from}`,
        'Delete this line, or write from: bolt',
      ),
    )
  }
  return found
}

function misplaced(
  cloth: Readonly<Record<string, unknown>>,
  path: Path,
  keys: readonly string[],
  whose: string,
  hint: string,
): Found[] {
  return keys
    .filter((key) => cloth[key] !== undefined)
    .map((key) => at([...path, key], 'key-elsewhere', `${key} does not belong to ${whose}`, hint, true))
}

/** What says the size of each kind of item, and an example. */
const SIZED: Readonly<Record<string, { readonly by: readonly string[]; readonly example: string } | undefined>> = {
  'duvet-cover': { by: ['finished', 'size', 'insert'], example: 'finished: 200 x 200 cm' },
  pillowcase: { by: ['finished', 'size', 'insert'], example: 'finished: 50 x 75 cm' },
  'flat-sheet': { by: ['finished', 'size', 'insert'], example: 'finished: 240 x 280 cm' },
  cushion: { by: ['finished', 'size', 'insert'], example: 'finished: 45 x 45 cm' },
  sham: { by: ['finished', 'size', 'insert'], example: 'finished: 50 x 75 cm' },
  throw: { by: ['finished', 'size', 'insert'], example: 'finished: 140 x 200 cm' },
  'fitted-sheet': { by: ['mattress', 'size'], example: 'mattress: 150 x 200 x 32 cm' },
  'bed-skirt': { by: ['base', 'size'], example: 'base: 150 x 200 cm' },
  'quilt-back': { by: ['quilt', 'size'], example: 'quilt: 225 x 245 cm' },
  rectangle: { by: ['cut', 'finished'], example: 'cut: 40 x 60 cm' },
}

function itemFound(item: Readonly<Record<string, unknown>>, path: Path, names: readonly string[]): Found[] {
  const kind = typeof item.item === 'string' ? item.item : ''
  if (!(ITEM_NAMES as readonly string[]).includes(kind)) return []
  return [...sizeFound(kind, item, path), ...clothMissing(kind, item, path, names), ...unknownCloths(item, path, names)]
}

function sizeFound(kind: string, item: Readonly<Record<string, unknown>>, path: Path): Found[] {
  const sized = SIZED[kind]
  if (sized === undefined) return []
  const said = sized.by.filter((key) => item[key] !== undefined)
  if (said.length === 0)
    return [at(path, 'missing', `The size of this ${kind} is missing`, `Add a line such as ${sized.example}`)]
  // a named size may stand beside what overrides it; two measured ones may not
  const measured = said.filter((key) => key !== 'size')
  if (measured.length > 1)
    return [
      at(
        [...path, measured[1]!],
        'size-twice',
        `${measured.join(' and ')} both say a size`,
        'Keep one of the two',
        true,
      ),
    ]
  const ease = item.ease
  if (item.finished !== undefined && ease !== undefined && !/^\s*0+(?:[.,]0*)?\s*[a-z"']*\s*$/i.test(String(ease)))
    return [
      at(
        [...path, 'ease'],
        'ease-elsewhere',
        'A finished size takes no ease',
        'Write insert: instead of finished:, or delete the ease',
      ),
    ]
  return []
}

function clothMissing(
  kind: string,
  item: Readonly<Record<string, unknown>>,
  path: Path,
  names: readonly string[],
): Found[] {
  const faces = kind === 'duvet-cover' ? [item.front, item.back] : kind === 'bed-skirt' ? [item.deck] : []
  const named = [
    item.cloth,
    kind === 'bed-skirt' ? item['skirt-cloth'] : undefined,
    ...faces.map((face) => (isRecord(face) ? face.cloth : face)),
  ]
  // a plan with one cloth needs no name of it
  if (names.length <= 1 || named.some((one) => one !== undefined)) return []
  return [missing(path, 'cloth', names[0] || 'stripe', kind)]
}

/** Every key called cloth or …-cloth names cloths of the plan, wherever it stands in an item. */
function unknownCloths(value: unknown, path: Path, names: readonly string[]): Found[] {
  if (!isRecord(value)) return []
  return Object.entries(value).flatMap(([key, one]) => {
    const here = [...path, key]
    const faceByName =
      (key === 'front' || key === 'back' || key === 'deck') &&
      value.item !== 'cushion' &&
      value.item !== 'sham' &&
      !isRecord(one)
    if (key !== 'cloth' && !key.endsWith('-cloth') && !faceByName) return unknownCloths(one, here, names)
    if (key === 'same-cloth') return []
    return Array.isArray(one)
      ? one.flatMap((name, i) => unknownCloth(name, [...here, i], names))
      : unknownCloth(one, here, names)
  })
}

function unknownCloth(value: unknown, path: Path, names: readonly string[]): Found[] {
  const name = nameOf(value)
  // without a list of cloths that is the problem to mend, and it is told elsewhere
  if (name === '' || names.length === 0 || names.includes(name)) return []
  const known = [...new Set(names)].filter((one) => one !== '')
  const near = nearest(name, known)
  const hint = near ? `Did you mean ${near}?` : `Cloths of this plan: ${known.slice(0, 8).join(', ')}`
  return [at(path, 'cloth-unknown', `No cloth of this plan is called ${name}`, hint)]
}

function tooMany(items: readonly unknown[]): Found[] {
  let pieces = 0
  for (const [i, item] of items.entries()) {
    const count = isRecord(item) && typeof item.count === 'number' ? item.count : 1
    pieces += Number.isInteger(count) && count > 0 ? count : 1
    if (pieces > LIMITS.pieces)
      return [at(['make', i], 'too-large', `More than ${LIMITS.pieces} pieces`, 'Split the plan into several')]
  }
  return []
}

function currencies(plan: Readonly<Record<string, unknown>>, cloths: readonly unknown[]): Found[] {
  let first = plan.currency
  return cloths.flatMap((cloth, i) => {
    const own = isRecord(cloth) ? cloth.currency : undefined
    first ??= own
    if (own === undefined || own === first) return []
    return [
      at(
        ['cloth', i, 'currency'],
        'currency-twice',
        `${String(own)} and ${String(first)} cannot be added up`,
        'Write all prices in one currency',
      ),
    ]
  })
}

function at(path: Path, code: string, message: string, hint: string, aboutKey = false): Found {
  return { code, path: pathText(path), message, hint, at: path, aboutKey }
}

function missing(path: Path, key: string, example: string, whose?: string): Found {
  const message = whose === undefined ? `${key} is missing` : `The ${key} of this ${whose} is missing`
  return at([...path, key], 'missing', message, `Add a line such as ${key}: ${example}`)
}

const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : [])
const nameOf = (value: unknown): string =>
  typeof value === 'string' || typeof value === 'number' ? String(value).trim() : ''
