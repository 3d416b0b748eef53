import { LEFT, RIGHT } from '../model.ts'
import type { KindPosture, Problem, Spot } from '../problem.ts'
import { endOf } from '../problem.ts'
import { ORDERS, rows } from './rows.ts'

/**
 * Pieces wider than half the field one after another, the narrower of them as one stack, and columns of others beside them; what
 * is left over in rows. Where the wide pieces set the length, others need not end where a row does:
 *
 *     +-----------+----+
 *     |  widest   | c  |
 *     +--------+--+----+
 *     |  wide  |   b   |      b lies beside two of them
 *     +--------+       |
 *     |  wide  |---+---|
 *     +--------+ a | a |
 *
 * Tried with each width as the widest of the stack. Null where this does not apply: many pieces, no wide ones, ties, zones, flaws, ends to touch.
 */
export function besideWide(problem: Problem): Spot[] | null {
  const { zones, flaws, tied, kinds, width } = problem
  if (kinds.reduce((sum, k) => sum + k.count, 0) > MOST_PIECES) return null
  const plain = !tied && flaws.length === 0 && Object.values(zones).every((depth) => depth === 0)
  if (!plain || kinds.some((k) => k.postures.some((p) => p.flush & ~(LEFT | RIGHT)))) return null
  const wide = kinds.flatMap((k, kind) => (k.postures.every((p) => 2 * p.width > width) ? copiesOf(problem, kind) : []))
  let best: Spot[] | null = null
  for (const widest of new Set(wide.map(({ p }) => p.width))) {
    const spots = new Beside(problem, wide, widest).run()
    if (!spots || (problem.length !== null && endOf(problem, spots) > problem.length)) continue
    if (!best || endOf(problem, spots) < endOf(problem, best)) best = spots
  }
  return best
}

/** More pieces than this are the searches' own affair: they mix them in far more ways than one stack. */
const MOST_PIECES = 60

interface Copy {
  readonly kind: number
  readonly posture: number
  readonly p: KindPosture
}

/** The copies of a kind, each in its shortest posture that may lie at the left. */
function copiesOf({ kinds }: Problem, kind: number): Copy[] {
  const { postures, count } = kinds[kind]!
  const all = postures.map((p, posture) => ({ kind, posture, p })).filter(({ p }) => p.flush !== RIGHT)
  const shortest = all.sort((a, b) => a.p.length - b.p.length || a.p.width - b.p.width)[0]
  return shortest ? Array.from({ length: count }, () => shortest) : []
}

class Beside {
  private readonly problem: Problem
  private readonly wide: readonly Copy[]
  private readonly widest: number
  private readonly left: number[]
  private readonly spots: Spot[] = []
  private end = 0

  constructor(problem: Problem, wide: readonly Copy[], widest: number) {
    this.problem = problem
    this.wide = wide
    this.widest = widest
    this.left = problem.kinds.map((k) => k.count)
  }

  run(): Spot[] | null {
    const { problem, wide, widest } = this
    for (const { kind } of wide) this.left[kind] = 0
    this.stack(wide.filter(({ p }) => p.width <= widest))
    for (const copy of wide) if (copy.p.width > widest) this.stack([copy])
    const kinds = problem.kinds.map((k, kind) => ({ ...k, count: this.left[kind]! }))
    if (kinds.every((k) => k.count === 0)) return this.spots
    let rest: Spot[] | null = null
    for (const order of ORDERS) {
      const spots = rows({ ...problem, kinds, length: null }, order)
      if (spots && (!rest || endOf(problem, spots) < endOf(problem, rest))) rest = spots
    }
    return rest && [...this.spots, ...rest.map((s) => ({ ...s, y: s.y + this.end }))]
  }

  /** Wide pieces one after another, and columns of narrow ones beside them, the widest that go in first. */
  private stack(copies: readonly Copy[]): void {
    const start = this.end
    for (const { kind, posture, p } of copies) {
      this.spots.push({ kind, posture, x: 0, y: this.end })
      this.end += p.length
    }
    let x = Math.max(0, ...copies.map(({ p }) => p.width))
    for (;;) {
      const column = this.column(x, start)
      if (column === 0) break
      x += column
    }
  }

  /** A column from x on, as wide as its first piece; its width, 0 when nothing goes in. */
  private column(x: number, start: number): number {
    let column = 0
    for (let y = start; ; ) {
      const next = this.longest(column || this.problem.width - x, this.end - y)
      if (!next) return column
      this.spots.push({ kind: next.kind, posture: next.posture, x, y })
      this.left[next.kind]!--
      column ||= next.p.width
      y += next.p.length
    }
  }

  /** The longest piece that needs no side and goes into so much room. */
  private longest(width: number, length: number): Copy | null {
    let best: Copy | null = null
    for (const [kind, k] of this.problem.kinds.entries())
      for (const [posture, p] of k.postures.entries()) {
        if (this.left[kind] === 0 || p.flush !== 0 || p.width > width || p.length > length) continue
        if (!best || p.length > best.p.length || (p.length === best.p.length && p.width > best.p.width))
          best = { kind, posture, p }
      }
    return best
  }
}
