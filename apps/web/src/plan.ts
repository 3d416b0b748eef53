/**
 * The plan as the page holds it: the plain object of the plan file's own keys, never changed in place.
 * Whatever was opened may hold anything, so every reader here copes with every shape.
 */
export type Plan = Readonly<Record<string, unknown>>
export type Path = readonly (string | number)[]

/** The value at a path; undefined where the way there is not an object or list. */
export function at(value: unknown, path: Path): unknown {
  let here = value
  for (const key of path) {
    if (here === null || typeof here !== 'object' || !Object.hasOwn(here, key)) return undefined
    here = (here as Record<string | number, unknown>)[key]
  }
  return here
}

/** A copy with the value at a path replaced, objects made on the way; `undefined` takes the key out. The rest is shared. */
export function put<T>(value: T, path: Path, next: unknown): T {
  const [key, ...rest] = path
  if (key === undefined) return next as T
  if (typeof key === 'number') {
    const list = listOf(value).slice()
    if (rest.length === 0 && next === undefined) list.splice(key, 1)
    else list[key] = put(list[key], rest, next)
    return list as T
  }
  const copy: Record<string, unknown> = isRecord(value) ? { ...value } : {}
  const below = put(copy[key], rest, next)
  if (below === undefined || (rest.length > 0 && next === undefined && isRecord(below) && isEmpty(below)))
    delete copy[key]
  else copy[key] = below
  return copy as T
}

/** Text of a scalar, for a box to write in; empty for everything else. */
export function textOf(value: unknown): string {
  return typeof value === 'string' ? value : typeof value === 'number' ? String(value) : ''
}

export const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : [])

/** One name or a list of names. */
export const namesOf = (value: unknown): readonly string[] =>
  typeof value === 'string' ? [value] : listOf(value).filter((name): name is string => typeof name === 'string')

export function isRecord(value: unknown): value is Record<string, unknown> {
  return value !== null && typeof value === 'object' && !Array.isArray(value)
}

/** `make[0].front.joined`, as problems write it. */
export function pathText(path: Path): string {
  return path.reduce<string>(
    (text, key) => (typeof key === 'number' ? `${text}[${key}]` : text === '' ? key : `${text}.${key}`),
    '',
  )
}

/** `200 x 200 cm` as the texts of its boxes. A unit that serves all stands in each, unless it is the plan's own. */
export function splitSize(text: string, boxes: number, measureIn: string): readonly string[] {
  const parts = text.split(/\s*(?:[x×*]|\bby\b)\s*/i).map((part) => part.trim())
  const unit = unitOf(parts.at(-1) ?? '')
  const shared = unit !== '' && unit !== measureIn
  return Array.from({ length: boxes }, (_, n) => {
    const part = parts[n] ?? ''
    return withoutUnit(shared && endsInFigure(part) ? `${part} ${unit}` : part, measureIn)
  })
}

/** The boxes as one text of the plan, each with its own unit when one has one; undefined when all are empty. */
export function joinSize(boxes: readonly string[], measureIn: string): string | undefined {
  const parts = boxes.map((box) => box.trim())
  if (parts.every((part) => part === '')) return undefined
  if (parts.every((part) => unitOf(part) === '')) return parts.join(' x ')
  return parts.map((part) => (endsInFigure(part) ? `${part} ${measureIn}` : part)).join(' x ')
}

/** Every bare number of the plan gets the unit it was read in, so that measuring in another one changes no size. */
export function nameUnits<T>(value: T, unit: string, key = ''): T {
  if (Array.isArray(value)) return value.map((one) => nameUnits(one, unit, key)) as T
  if (isRecord(value))
    return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, nameUnits(one, unit, name)])) as T
  if (!LENGTH_KEYS.has(key)) return value
  const text = textOf(value).trim()
  return (endsInFigure(text) && unitOf(text) === '' ? `${text} ${unit}` : value) as T
}

/** Short forms of an opened plan written out, where the form edits what is inside: `opening: zip` becomes `{ kind: zip }`. */
export function writeOut(plan: Plan): Plan {
  const make = listOf(plan.make).map((item) => {
    if (!isRecord(item)) return item
    const duvet = item.item === 'duvet-cover'
    let out: Record<string, unknown> = item.count === undefined ? { ...item, count: 1 } : item
    if (duvet || item.item === 'bed-skirt') {
      for (const face of duvet ? ['front', 'back'] : ['deck'])
        if (out[face] !== undefined && !isRecord(out[face])) out = { ...out, [face]: { cloth: out[face] } }
    }
    if (duvet && out.cloth !== undefined) {
      const { cloth, ...others } = out
      const withCloth = (face: unknown) => (isRecord(face) ? { cloth, ...face } : { cloth })
      out = { ...others, front: withCloth(out.front), back: withCloth(out.back) }
    }
    if (item.item === 'flat-sheet' || item.item === 'rectangle') out = put(out, ['hems'], hemsOf(out.hems))
    for (const [key, inner] of SHORT_FORMS) {
      const said = at(out, key.split('.'))
      if (typeof said === 'string' || typeof said === 'number') out = put(out, [...key.split('.'), inner], said)
    }
    return out
  })
  const cloth = listOf(plan.cloth).map((one) => {
    if (!isRecord(one)) return one
    const way = typeof one.print === 'string' ? { print: { way: one.print } } : {}
    const widths = one.widths !== undefined && !Array.isArray(one.widths) ? { widths: [one.widths] } : {}
    return { ...one, from: one.from ?? 'bolt', ...way, ...widths }
  })
  const seam = typeof plan.seam === 'string' ? { seam: { kind: plan.seam } } : {}
  return { ...plan, ...seam, ...(make.length > 0 ? { make } : {}), ...(cloth.length > 0 ? { cloth } : {}) }
}

/** A depth for every edge, or for each; words such as selvedge stay as they are. */
function hemsOf(said: unknown): unknown {
  const isDepth = (value: unknown): boolean => typeof value === 'number' || /^\s*[\d.¼-¾⅐-⅞]/.test(textOf(value))
  const one = (value: unknown): unknown => (isDepth(value) ? { depth: value } : value)
  if (isDepth(said)) return Object.fromEntries(['head', 'foot', 'left', 'right'].map((edge) => [edge, one(said)]))
  if (!isRecord(said) || said.depth !== undefined) return said
  return Object.fromEntries(Object.entries(said).map(([edge, value]) => [edge, one(value)]))
}

const SHORT_FORMS = [
  ['opening', 'kind'],
  ['seam', 'kind'],
  ['hem', 'depth'],
  ['elastic', 'where'],
] as const

// the keys whose values are lengths or sizes
const LENGTH_KEYS = new Set(
  `mark-to worth-keeping allowance finished insert ease cut size mattress tuck casing quilt overhang base drop pleat
   diameter length tie-end tie-length tie-width smallest-panel centre finger lap stitching flap flange depth turned-in
   spacing from-corner overlap width run widths x y head foot left right sold-by smallest-sale have unused-selvedge
   spare-each-end repeat across-repeat match-line first lost-per-tear kept-hem zips hem`.split(/\s+/),
)

const unitOf = (text: string): string => /[a-z"'″′”]+\.?$/i.exec(text.trim())?.[0] ?? ''
const endsInFigure = (text: string): boolean => /[\d¼-¾⅐-⅞]$/.test(text.trim())

/** `140 cm` as `140` in a plan that is measured in centimetres. */
export function withoutUnit(text: string, unit: string): string {
  return unitOf(text) === unit ? text.slice(0, -unit.length).trimEnd() : text
}

const isEmpty = (value: Record<string, unknown>): boolean => Object.keys(value).length === 0
