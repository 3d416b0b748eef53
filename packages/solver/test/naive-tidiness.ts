import type { Request } from '../src/index.ts'
import { END, LEFT, RIGHT, START } from '../src/index.ts'
import type { Tidiness } from '../src/tidy.ts'
import { tidier } from '../src/tidy.ts'

interface Rated extends Tidiness {
  /** how the first cut runs; null: there is none */
  readonly runs: 'across' | 'along' | null
}

/**
 * The tidiest of all layouts of a plain order (no rules but turning and sides to touch) no longer than `length`: every cut of every rectangle at every whole
 * place with every share of the pieces, and of each rectangle all outcomes of which none is better in every wish.
 */
export function tidiestByTrying(
  { field, demands }: Request,
  length: number,
  worth = (width: number, long: number): number => width * long,
): Tidiness {
  const values: number[] = []
  let all = 1
  for (const d of demands) {
    values.push(all)
    all *= d.count + 1
  }
  const counts = Array.from({ length: all }, (_, set) =>
    demands.map((d, i) => Math.floor(set / values[i]!) % (d.count + 1)),
  )
  const parts = counts.map((whole) => counts.flatMap((part, p) => (part.every((n, i) => n <= whole[i]!) ? [p] : [])))
  const areas = counts.map((whole) =>
    whole.reduce((sum, n, i) => sum + n * demands[i]!.postures[0]!.width * demands[i]!.postures[0]!.length, 0),
  )
  const known = new Map<number, readonly Rated[]>()
  const last = field.length ?? length
  const outcomes = (x: number, y: number, w: number, l: number, set: number): readonly Rated[] => {
    if (set === 0) return [{ largest: worth(w, l), cuts: 0, changes: 0, runs: null }]
    if (areas[set]! > w * l) return []
    const key = (((x * 64 + y) * 64 + w) * 64 + l) * all + set
    const before = known.get(key)
    if (before) return before
    const found: Rated[] = []
    const { postures } = demands[values.indexOf(set)] ?? { postures: [] }
    const touches = (flush: number) =>
      !(flush & LEFT && x > 0) &&
      !(flush & RIGHT && x + w < field.width) &&
      !(flush & START && y > 0) &&
      !(flush & END && y + l < last)
    if (y + l <= length && postures.some((p) => p.width === w && p.length === l && touches(p.flush)))
      found.push({ largest: 0, cuts: 0, changes: 0, runs: null })
    for (const part of parts[set]!) {
      for (let at = 1; at < w; at++)
        join(found, 'along', outcomes(x, y, at, l, part), outcomes(x + at, y, w - at, l, set - part))
      for (let at = 1; at < l; at++)
        join(found, 'across', outcomes(x, y, w, at, part), outcomes(x, y + at, w, l - at, set - part))
    }
    known.set(key, found)
    return found
  }
  const { largest, cuts, changes } = outcomes(0, 0, field.width, last, all - 1).reduce((a, b) => (tidier(b, a) ? b : a))
  return { largest, cuts, changes }
}

function join(found: Rated[], runs: 'across' | 'along', first: readonly Rated[], second: readonly Rated[]): void {
  const turns = (n: Rated) => (n.runs !== null && n.runs !== runs ? 1 : 0)
  for (const a of first)
    for (const b of second) {
      const sum: Rated = {
        largest: Math.max(a.largest, b.largest),
        cuts: a.cuts + b.cuts + 1,
        changes: a.changes + b.changes + turns(a) + turns(b),
        runs,
      }
      if (found.some((other) => noWorse(other, sum))) continue
      for (let i = found.length - 1; i >= 0; i--) if (noWorse(sum, found[i]!)) found.splice(i, 1)
      found.push(sum)
    }
}

const noWorse = (a: Rated, b: Rated): boolean =>
  a.runs === b.runs && a.largest >= b.largest && a.cuts <= b.cuts && a.changes <= b.changes
