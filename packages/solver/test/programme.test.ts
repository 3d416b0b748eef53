import type { Model } from 'javascript-lp-solver'
import solver from 'javascript-lp-solver'
import { expect, test } from 'vitest'
import { PackingProgramme } from '../src/bounds/programme.ts'
import { seeded } from './orders.ts'

/* The small programmes of the bounds against a general library: javascript-lp-solver. */

test('a packing programme whose rows come one by one is worth what the library says of all at once', () => {
  for (let seed = 0; seed < 150; seed++) {
    const below = seeded(seed)
    const size = 1 + below(9)
    const worth = Array.from({ length: size }, () => 1 + below(20))
    // first a row for each variable alone, so that none is without an end
    const rows = worth.map((_, i) => worth.map((_, j) => (i === j ? 1 + below(4) : 0)))
    for (let n = below(20); n > 0; n--) rows.push(worth.map(() => (below(2) ? below(7) / 3 : 0)))
    const programme = new PackingProgramme(worth)
    let values: number[] = []
    for (const [i, row] of rows.entries()) {
      programme.add(row)
      if (i >= size - 1) values = programme.solve()!.values
    }
    const sum = values.reduce((total, t, j) => total + t * worth[j]!, 0)
    expect(sum, `seed ${seed}`).toBeCloseTo(byLibrary(worth, rows), 6)
    for (const row of rows) expect(row.reduce((total, a, j) => total + a * values[j]!, 0)).toBeLessThanOrEqual(1 + 1e-6)
  }
})

test('a programme without an end has no values', () => {
  const programme = new PackingProgramme([1, 1])
  programme.add([1, 0])
  expect(programme.solve()).toBeNull()
})

function byLibrary(worth: readonly number[], rows: readonly (readonly number[])[]): number {
  const constraints = Object.fromEntries(rows.map((_, i) => [`row${i}`, { max: 1 }]))
  // shares of 0 are left out: given them, the library says of some programmes that they have no answer
  const sharesOf = (j: number) => rows.flatMap((row, i) => (row[j]! > 0 ? [[`row${i}`, row[j]!] as const] : []))
  const variables = Object.fromEntries(worth.map((w, j) => [`t${j}`, { worth: w, ...Object.fromEntries(sharesOf(j)) }]))
  const model: Model = { optimize: 'worth', opType: 'max', constraints, variables }
  return Number((solver.Solve(model) as { result: number }).result)
}
