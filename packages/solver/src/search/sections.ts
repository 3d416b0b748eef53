/**
 * Batches: many pieces of few kinds, laid in sections right across the strip. A section is a row of columns, a column a stack of
 * pieces: three stages of divisions.
 *
 *     +-----+-------+----+
 *     |  b  |       | c  |
 *     +-----+   a   +----+
 *     |  b  |       | c  |
 *     +-----+-------+----+
 *
 * Column generation after P. C. Gilmore and R. E. Gomory, "Multistage cutting stock problems of two and more dimensions" (1965):
 * a linear programme says what each kind is worth when no known section is worth more than its length; for every candidate length
 * the dearest section under these values is found (stacks first, then columns side by side) and added, until none is worth more.
 * The programme's value is no bound on the length, as only such sections are looked at. Whole numbers of sections are cut off the
 * solution; what is left over is laid by the tree search of the caller.
 */
import type { Model } from 'javascript-lp-solver'
import solver from 'javascript-lp-solver'
import type { Meter } from './fill.ts'
import type { Part } from './tree.ts'
import { rect, splitOf } from './tree.ts'
import type { Shape, Trial } from './trial.ts'

/** A column: its width, and the pieces stacked in it. */
interface Column {
  readonly width: number
  readonly stack: readonly Shape[]
  readonly worth: number
}

export interface Section {
  readonly length: number
  readonly columns: readonly Column[]
  /** pieces of each kind in it */
  readonly counts: readonly number[]
}

/** Sections and how often each is used in the programme's solution, fractions included. */
export function sectionPlan(trial: Trial, meter: Meter): { section: Section; times: number }[] {
  const lengths = candidateLengths(trial)
  const sections = new Map<string, Section>()
  const add = (section: Section): boolean => {
    const name = `${section.length} ${section.counts.join(' ')}`
    if (sections.has(name)) return false
    sections.set(name, section)
    return true
  }
  for (const shape of trial.shapes) {
    const across = Math.min(trial.counts[shape.kind]!, Math.floor(trial.width / shape.width))
    const column: Column = { width: shape.width, stack: [shape], worth: 0 }
    add(sectionOf(trial, shape.length, new Array<Column>(across).fill(column)))
  }
  for (let round = 0; round < MOST_ROUNDS && meter.steps > 0 && !meter.stop(); round++) {
    const values = valuesUnder(trial, [...sections.values()])
    if (values === null) break
    const found: { section: Section; gain: number }[] = []
    for (const length of lengths) {
      if (meter.steps <= 0 || meter.stop()) break
      const { section, worth } = dearestSection(trial, length, values, meter)
      if (worth > length * (1 + 1e-6)) found.push({ section, gain: worth / length })
    }
    found.sort((a, b) => b.gain - a.gain)
    let added = 0
    for (const { section } of found.slice(0, 12)) if (add(section)) added++
    if (added === 0) break
  }
  return timesOf(trial, [...sections.values()])
}

const MOST_ROUNDS = 80
const MOST_LENGTHS = 500

/** Lengths of one piece, of two behind one another, and of three while there are not too many. */
function candidateLengths(trial: Trial): number[] {
  const one = [...new Set(trial.shapes.map(({ length }) => length))]
  const all = new Set(one)
  for (const a of one) for (const b of one) all.add(a + b)
  const two = [...all]
  if (two.length * one.length <= 3 * MOST_LENGTHS) for (const a of two) for (const b of one) all.add(a + b)
  return [...all].sort((a, b) => a - b).slice(0, MOST_LENGTHS)
}

function sectionOf(trial: Trial, length: number, columns: readonly Column[]): Section {
  const counts = trial.counts.map(() => 0)
  for (const { stack } of columns) for (const { kind } of stack) counts[kind]!++
  return { length, columns, counts }
}

/** Values of the kinds, per piece in lengths of strip: as much as possible in all, no known section worth more than its length. */
function valuesUnder(trial: Trial, sections: readonly Section[]): number[] | null {
  const variables: Record<string, Record<string, number>> = {}
  const constraints: Record<string, { max: number }> = {}
  for (const [kind, count] of trial.counts.entries()) variables[`v${kind}`] = { worth: count }
  for (const [index, { length, counts }] of sections.entries()) {
    constraints[`s${index}`] = { max: 1 }
    for (const [kind, count] of counts.entries()) if (count > 0) variables[`v${kind}`]![`s${index}`] = count / length
  }
  const model: Model = { optimize: 'worth', opType: 'max', constraints, variables }
  const result = solver.Solve(model) as { feasible?: boolean; bounded?: boolean } & Record<string, unknown>
  if (!result.feasible || result.bounded === false) return null
  return trial.counts.map((_, kind) => Math.max(0, Number(result[`v${kind}`] ?? 0)))
}

/** The programme itself: the least length of sections, in fractions, that holds every piece. */
function timesOf(trial: Trial, sections: readonly Section[]): { section: Section; times: number }[] {
  const variables: Record<string, Record<string, number>> = {}
  const constraints: Record<string, { min: number }> = {}
  const scale = Math.max(...sections.map(({ length }) => length))
  for (const [kind, count] of trial.counts.entries()) if (count > 0) constraints[`k${kind}`] = { min: count }
  for (const [index, { length, counts }] of sections.entries()) {
    const row: Record<string, number> = { cost: length / scale }
    for (const [kind, count] of counts.entries()) if (count > 0) row[`k${kind}`] = count
    variables[`s${index}`] = row
  }
  const model: Model = { optimize: 'cost', opType: 'min', constraints, variables }
  const result = solver.Solve(model) as { feasible?: boolean } & Record<string, unknown>
  if (!result.feasible) return []
  return sections
    .map((section, index) => ({ section, times: Number(result[`s${index}`] ?? 0) }))
    .filter(({ times }) => times > 1e-9)
}

/** The dearest row of columns in `length`: the dearest stack for each width, then the dearest columns side by side. */
function dearestSection(
  trial: Trial,
  length: number,
  values: readonly number[],
  meter: Meter,
): { section: Section; worth: number } {
  const widths = [...new Set(trial.shapes.map(({ width }) => width))].sort((a, b) => a - b)
  const columns: Column[] = []
  for (const width of widths) {
    const goods = trial.shapes
      .filter((shape) => shape.width <= width && shape.length <= length && values[shape.kind]! > 0)
      .map((shape) => ({ size: shape.length, worth: values[shape.kind]!, most: trial.counts[shape.kind]!, of: shape }))
    const { chosen, worth } = dearestLoad(goods, length, meter)
    if (worth > (columns.at(-1)?.worth ?? 0)) columns.push({ width, stack: chosen, worth })
  }
  const goods = columns.map((column) => ({
    size: column.width,
    worth: column.worth,
    most: Number.MAX_SAFE_INTEGER,
    of: column,
  }))
  const { chosen } = dearestLoad(goods, trial.width, meter)
  const section = sectionOf(trial, length, chosen)
  // pieces beyond the demand are worth nothing
  const worth = section.counts.reduce(
    (sum, count, kind) => sum + Math.min(count, trial.counts[kind]!) * values[kind]!,
    0,
  )
  return { section, worth }
}

interface Good<T> {
  readonly size: number
  readonly worth: number
  readonly most: number
  readonly of: T
}

/** The bounded knapsack by branch and bound, dearest per size first, within a number of tries. */
function dearestLoad<T>(goods: readonly Good<T>[], room: number, meter: Meter): { chosen: T[]; worth: number } {
  const sorted = goods.slice().sort((a, b) => b.worth * a.size - a.worth * b.size)
  const taken = sorted.map(() => 0)
  let best: number[] = []
  let bestWorth = 0
  let tries = 20_000
  const choose = (index: number, left: number, worth: number): void => {
    meter.steps--
    tries--
    if (worth > bestWorth) {
      bestWorth = worth
      best = taken.slice()
    }
    const good = sorted[index]
    if (good === undefined || tries <= 0) return
    // the rest at the dearest rate cannot bring more than the best
    if (worth + (good.worth * left) / good.size <= bestWorth * (1 + 1e-9)) return
    for (let times = Math.min(good.most, Math.floor(left / good.size)); times >= 0; times--) {
      taken[index] = times
      choose(index + 1, left - times * good.size, worth + times * good.worth)
    }
    taken[index] = 0
  }
  choose(0, room, 0)
  const chosen = best.flatMap((times, index) => new Array<T>(times).fill(sorted[index]!.of))
  return { chosen, worth: bestWorth }
}

/** The section laid at `y`, pieces that `left` no longer asks for left out; `left` is counted down. */
export function laidSection(trial: Trial, section: Section, y: number, left: number[]): Part {
  const parts: Part[] = []
  let x = 0
  for (const { width, stack } of section.columns) {
    const rows: Part[] = []
    let at = y
    for (const { kind, posture, width: across, length } of stack) {
      if (left[kind]! <= 0) continue
      left[kind]!--
      rows.push(
        splitOf(rect(x, at, width, length), false, [
          { kind: 'piece', rect: rect(x, at, across, length), of: kind, posture },
          { kind: 'spare', rect: rect(x + across, at, width - across, length) },
        ]),
      )
      at += length
    }
    rows.push({ kind: 'spare', rect: rect(x, at, width, y + section.length - at) })
    parts.push(splitOf(rect(x, y, width, section.length), true, rows))
    x += width
  }
  parts.push({ kind: 'spare', rect: rect(x, y, trial.width - x, section.length) })
  return splitOf(rect(0, y, trial.width, section.length), false, parts)
}
