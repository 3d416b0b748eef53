import type { Box, CutCloth, Division } from './result.ts'

/**
 * The order of divisions carried out on a model: it starts from the whole cloth as one rectangle and reads nothing but the
 * divisions, one after the other. What lies on the table at the end must be the pieces, remnants, waste and trims.
 *
 * Torn and thread-drawn cloth: every division runs right across exactly one rectangle in hand. Cut cloth: a division may
 * end inside; the parts are then what no cut separates (found on the grid of all cut lines).
 */
export interface Rehearsal {
  /** the parts that are rectangles, in no order */
  readonly parts: readonly Box[]
  /** what went wrong, in words; empty: every division could be made */
  readonly faults: readonly string[]
}

export function rehearse(
  cloth: { readonly width: number; readonly length: number; readonly divideBy: 'tearing' | 'thread' | 'shears' },
  divisions: readonly Division[],
): Rehearsal {
  const faults: string[] = []
  const whole = { x: 0, y: 0, width: cloth.width, length: cloth.length }
  const hands = new Map<string, Plain>([[nameOf(whole), whole]])
  // cuts that end inside a rectangle, kept until all are made
  const inside = new Map<string, Division[]>()
  for (const division of divisions) {
    const { hand } = division
    const name = nameOf(hand)
    if (!hands.has(name)) {
      faults.push(`${division.flag}: the rectangle to divide is not in hand`)
      continue
    }
    const [from, to, low, high] =
      division.runs === 'across'
        ? [hand.x, hand.x + hand.width, hand.y, hand.y + hand.length]
        : [hand.y, hand.y + hand.length, hand.x, hand.x + hand.width]
    if (division.at <= low || division.at >= high) {
      faults.push(`${division.flag}: does not go through the rectangle in hand`)
      continue
    }
    if (division.from !== from || division.to !== to) {
      if (cloth.divideBy !== 'shears' || division.from < from || division.to > to || division.from >= division.to)
        faults.push(`${division.flag}: does not run from edge to edge`)
      else inside.set(name, [...(inside.get(name) ?? []), division])
      continue
    }
    const before = inside.get(name)
    if (before) {
      before.push(division)
      continue
    }
    hands.delete(name)
    for (const half of halves(hand, division)) hands.set(nameOf(half), half)
  }
  // rectangles with cuts that end inside come apart on the grid of those cuts
  const parts = [...hands].flatMap(([name, hand]) => {
    const cuts = inside.get(name)
    return cuts ? regions(hand, cuts) : [hand]
  })
  return { parts: parts.map((part) => part as Box), faults }
}

/** What is wrong with a cloth's order of divisions: every listed thing must lie free at the end, and nothing else. */
export function rehearsalFaults(cloth: CutCloth): readonly string[] {
  const { divideBy } = cloth.cloth
  const { parts, faults } = rehearse({ width: cloth.width, length: cloth.length, divideBy }, cloth.divisions)
  const found = [...faults]
  const listed: { box: Plain; name: string }[] = [
    ...cloth.placed.map((p) => ({ box: p, name: `piece ${p.label}` })),
    ...cloth.remnants.map((r) => ({ box: r, name: `remnant ${r.name}` })),
    ...cloth.waste.map((w) => ({ box: w, name: 'waste' })),
    ...cloth.trims.map((t) => ({ box: t, name: 'trim' })),
  ]
  const free = new Set(parts.map(nameOf))
  // waste of a maze need not come off in one piece
  for (const { box, name } of listed)
    if (!free.delete(nameOf(box)) && !(name === 'waste' && divideBy === 'shears'))
      found.push(`${name} does not come free`)
  if (divideBy !== 'shears' && free.size > 0) found.push(`${free.size} parts are left that nothing names`)
  return found
}

interface Plain {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly length: number
}

/** No two rectangles on one cloth are alike. */
const nameOf = (r: Plain): string => `${r.x} ${r.y} ${r.width} ${r.length}`

function halves(hand: Plain, division: Division): [Plain, Plain] {
  const { at } = division
  return division.runs === 'across'
    ? [
        { ...hand, length: at - hand.y },
        { ...hand, y: at, length: hand.y + hand.length - at },
      ]
    : [
        { ...hand, width: at - hand.x },
        { ...hand, x: at, width: hand.x + hand.width - at },
      ]
}

// the rectangles among the parts that the cuts separate
function regions(hand: Plain, cuts: readonly Division[]): Plain[] {
  const lines = (runs: 'across' | 'along', low: number, high: number) =>
    [...new Set([low, high, ...cuts.flatMap((c) => (c.runs === runs ? [c.at] : [c.from, c.to]))])]
      .filter((v) => v >= low && v <= high)
      .sort((a, b) => a - b)
  const xs = lines('along', hand.x, hand.x + hand.width)
  const ys = lines('across', hand.y, hand.y + hand.length)
  const columns = xs.length - 1
  const rows = ys.length - 1
  const cutBetween = (runs: 'across' | 'along', at: number, from: number, to: number) =>
    cuts.some((c) => c.runs === runs && c.at === at && c.from <= from && c.to >= to)
  const owner = new Int32Array(columns * rows).fill(-1)
  const found: Plain[] = []
  for (let cell = 0; cell < owner.length; cell++) {
    if (owner[cell] !== -1) continue
    const cells: number[] = [cell]
    owner[cell] = found.length
    for (let k = 0; k < cells.length; k++) {
      const i = cells[k]! % columns
      const j = Math.floor(cells[k]! / columns)
      const visit = (next: number, blocked: boolean) => {
        if (blocked || owner[next] !== -1) return
        owner[next] = owner[cell]!
        cells.push(next)
      }
      if (i + 1 < columns) visit(cells[k]! + 1, cutBetween('along', xs[i + 1]!, ys[j]!, ys[j + 1]!))
      if (i > 0) visit(cells[k]! - 1, cutBetween('along', xs[i]!, ys[j]!, ys[j + 1]!))
      if (j + 1 < rows) visit(cells[k]! + columns, cutBetween('across', ys[j + 1]!, xs[i]!, xs[i + 1]!))
      if (j > 0) visit(cells[k]! - columns, cutBetween('across', ys[j]!, xs[i]!, xs[i + 1]!))
    }
    const is = cells.map((c) => c % columns)
    const js = cells.map((c) => Math.floor(c / columns))
    const [i0, i1, j0, j1] = [Math.min(...is), Math.max(...is), Math.min(...js), Math.max(...js)]
    const x = xs[i0]!
    const y = ys[j0]!
    // a part that is no rectangle is nobody's piece; its box would be a lie
    const whole = cells.length === (i1 - i0 + 1) * (j1 - j0 + 1)
    found.push(whole ? { x, y, width: xs[i1 + 1]! - x, length: ys[j1 + 1]! - y } : { x, y, width: 0, length: 0 })
  }
  return found
}
