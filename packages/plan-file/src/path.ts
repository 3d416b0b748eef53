/** Where something stands in a plan: keys and places in lists. */
export type Path = readonly (string | number)[]

/** `make[0].front.joined`, as problems write it; empty for the whole plan. */
export function pathText(path: Path): string {
  return path.reduce<string>(
    (text, key) => (typeof key === 'number' ? `${text}[${key}]` : text === '' ? key : `${text}.${key}`),
    '',
  )
}

/** The way back from `pathText`; keys of a plan hold neither dots nor brackets. */
export function pathOf(text: string): Path {
  return [...text.matchAll(/[^.[\]]+/g)].map(([key]) => (/^\d+$/.test(key) ? Number(key) : key))
}

/** The value at a path; undefined where the way there is no object or list. */
export function valueAt(data: unknown, path: Path): unknown {
  let here = data
  for (const key of path) {
    if (here === null || typeof here !== 'object' || !Object.hasOwn(here, key)) return undefined
    here = (here as Record<string | number, unknown>)[key]
  }
  return here
}

export function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return value !== null && typeof value === 'object' && !Array.isArray(value)
}
