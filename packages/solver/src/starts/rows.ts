import { END, LEFT, RIGHT, START } from '../model.ts'
import type { KindPosture, Problem, Spot } from '../problem.ts'

/**
 * Rows across the field, one after another; each as long as the piece that opens it, the rest of its width filled with
 * stacks (levels of Coffman, Garey, Johnson & Tarjan 1980 with a third stage). Pieces bound to a side open the row's left or
 * right end; rows that must touch the start or the end of the field come first and last. Null when this fails.
 *
 * A start, never the answer: levels alone are some 15 % longer than the best on average.
 */
export function rows(problem: Problem, order: Order): Spot[] | null {
  return new Rows(problem, order).run()
}

export interface Order {
  /** larger opens rows first */
  readonly opens: (p: KindPosture) => number
  /** larger goes into a row's stacks first */
  readonly fills: (p: KindPosture) => number
}

export const ORDERS: readonly Order[] = [
  { opens: (p) => p.length * 1e9 + p.width, fills: (p) => p.length * 1e9 + p.width },
  { opens: (p) => p.length * 1e9 + p.width, fills: (p) => p.width * p.length },
  { opens: (p) => p.width * 1e9 + p.length, fills: (p) => p.width * p.length },
  { opens: (p) => p.width * p.length, fills: (p) => p.width * 1e9 + p.length },
  { opens: (p) => p.width * p.length, fills: (p) => p.width * p.length },
]

interface Choice {
  readonly kind: number
  readonly posture: number
  readonly p: KindPosture
}

class Rows {
  private readonly left: number[]
  private readonly spots: Spot[] = []
  private readonly phases = new Map<string, number>()
  private readonly problem: Problem
  private openers: Choice[]
  private fillers: Choice[]

  constructor(problem: Problem, order: Order) {
    this.problem = problem
    this.left = problem.kinds.map((k) => k.count)
    const all = problem.kinds.flatMap((k, kind) => k.postures.map((p, posture) => ({ kind, posture, p })))
    const by = (key: (p: KindPosture) => number) =>
      [...all].sort((a, b) => key(b.p) - key(a.p) || a.kind - b.kind || a.posture - b.posture)
    this.openers = by(order.opens)
    this.fillers = by(order.fills)
  }

  run(): Spot[] | null {
    const { length, zones } = this.problem
    let y = 0
    // what must touch the start: one row of it
    if (this.openers.some((c) => this.left[c.kind] && this.mustTouch(c.kind, START))) {
      const used = this.row(0, START)
      if (used === null || this.openers.some((c) => this.left[c.kind] && this.mustTouch(c.kind, START))) return null
      y = used
    }
    y = Math.max(y, zones.start)
    // what must touch the end: one row of it, its stretch kept free below
    let last = length === null ? Number.POSITIVE_INFINITY : length - zones.end
    const ending = this.openers.filter((c) => this.left[c.kind] && this.mustTouch(c.kind, END))
    if (ending.length > 0) {
      const deep = Math.max(...ending.map((c) => c.p.length))
      const used = this.row(length! - deep, END)
      if (used === null || ending.some((c) => this.left[c.kind])) return null
      last = Math.min(last, length! - deep)
    }
    while (this.left.some((n) => n > 0)) {
      this.forget()
      const used = this.row(y, 0)
      if (used === null || used > last) return null
      y = used
    }
    return this.spots
  }

  /** Choices of kinds that are all laid are not looked at again. */
  private forget(): void {
    const wanted = (c: Choice) => this.left[c.kind]! > 0
    this.openers = this.openers.filter(wanted)
    this.fillers = this.fillers.filter(wanted)
  }

  private mustTouch(kind: number, side: number): boolean {
    return this.problem.kinds[kind]!.postures.every((p) => p.flush & side)
  }

  /** Lays a row from `y`; `side` is START or END for the row that touches that side, else 0. Its end, or null. */
  private row(y: number, side: number): number | null {
    const ends = START | END
    const opener = this.openers.find((c) => this.left[c.kind]! > 0 && (c.p.flush & ends) === side)
    if (!opener) return null
    const { width, zones } = this.problem
    const endsAt = side === END ? this.problem.length! : null
    let from = y
    // past flaws: move the row until its opener lies clear
    for (let tries = 0; tries <= this.problem.flaws.length; tries++) {
      const at = this.place(opener, this.startOf(opener, 0), from, endsAt, null)
      if (at !== null) {
        let reach = at + opener.p.length
        let x0 = zones.left
        let x1 = width - zones.right
        const narrow = (c: Choice) => {
          if (c.p.flush & RIGHT) x1 = Math.min(x1, width - c.p.width)
          if (c.p.flush & LEFT || !(c.p.flush & RIGHT)) x0 = Math.max(x0, this.startOf(c, 0) + c.p.width)
        }
        narrow(opener)
        let leftTaken = (opener.p.flush & LEFT) !== 0 || (opener.p.flush & RIGHT) === 0
        let rightTaken = (opener.p.flush & RIGHT) !== 0
        // the other side of the row
        for (const c of this.openers) {
          if (this.left[c.kind] === 0 || (c.p.flush & ends) !== side || c.p.length > reach - from) continue
          const wantsLeft = (c.p.flush & LEFT) !== 0
          const wantsRight = (c.p.flush & RIGHT) !== 0
          if (wantsLeft === wantsRight || (wantsLeft ? leftTaken : rightTaken)) continue
          if (wantsLeft ? c.p.width > x1 : width - c.p.width < x0) continue
          const y0 = this.place(c, this.startOf(c, 0), from, endsAt, reach)
          if (y0 === null) continue
          narrow(c)
          if (wantsLeft) leftTaken = true
          else rightTaken = true
        }
        // stacks in between
        for (let again = true; again; ) {
          again = false
          for (const c of this.fillers) {
            if (this.left[c.kind] === 0 || c.p.flush & (LEFT | RIGHT) || (c.p.flush & ends) !== side) continue
            const x = this.startOf(c, x0)
            if (x + c.p.width > x1 || c.p.length > reach - from) continue
            const y0 = this.place(c, x, from, endsAt, side ? reach : null)
            if (y0 === null) continue
            const strict = y0 + c.p.length
            if (strict > reach) reach = strict
            if (!side) this.stack(x, x + c.p.width, strict, reach)
            x0 = x + c.p.width
            again = true
            break
          }
        }
        return reach
      }
      const moved = this.pastFlaw(opener, this.startOf(opener, 0), from)
      if (moved === null || side) return null
      from = moved
    }
    return null
  }

  /** Pieces one after another in a column, all as wide as it or narrower. */
  private stack(x0: number, x1: number, from: number, to: number): void {
    let y = from
    for (let again = true; again; ) {
      again = false
      for (const c of this.fillers) {
        if (this.left[c.kind] === 0 || c.p.flush !== 0 || c.p.width > x1 - x0 || c.p.length > to - y) continue
        const x = this.startOf(c, x0)
        const at = x + c.p.width > x1 ? null : this.place(c, x, y, null, to)
        if (at === null) continue
        y = at + c.p.length
        again = true
        break
      }
    }
  }

  /** Where a piece lies across: at its side, or from x0 on as its phase across allows. */
  private startOf(c: Choice, x0: number): number {
    if (c.p.flush & LEFT) return 0
    if (c.p.flush & RIGHT) return this.problem.width - c.p.width
    const x = Math.max(x0, this.problem.zones.left)
    const { tie } = this.problem.kinds[c.kind]!
    if (tie?.axis !== 'across') return x
    const known = tie.absolute ? 0 : this.phases.get(`across ${tie.group}`)
    return known === undefined ? x : x + modulo(known - x + tie.offset, tie.repeat)
  }

  /** Puts a piece down at x, at or after `from` where its phase allows (or ending at `endsAt`); its start, or null. */
  private place(c: Choice, x: number, from: number, endsAt: number | null, reach: number | null): number | null {
    const { tie } = this.problem.kinds[c.kind]!
    let y = endsAt === null ? from : endsAt - c.p.length
    let phase: number | null = null
    const key = tie ? `${tie.axis} ${tie.group}` : ''
    if (tie) {
      const known = tie.absolute ? 0 : this.phases.get(key)
      const at = tie.axis === 'along' ? y : x
      const here = modulo(at - tie.offset, tie.repeat)
      const ahead = known === undefined ? 0 : (known - here + tie.repeat) % tie.repeat
      if (ahead > 0) {
        if (tie.axis === 'across' || endsAt !== null || c.p.flush & START) return null
        y += ahead
      }
      phase = known ?? here
    }
    if (reach !== null && y + c.p.length > reach) return null
    const { width, length, zones } = this.problem
    if (x + c.p.width > width - (c.p.flush & RIGHT ? 0 : zones.right)) return null
    if (length !== null && y + c.p.length > length - (c.p.flush & END ? 0 : zones.end)) return null
    if (y < (c.p.flush & START ? 0 : zones.start)) return null
    for (const f of this.problem.flaws)
      if (x < f.x + f.width && f.x < x + c.p.width && y < f.y + f.length && f.y < y + c.p.length) return null
    if (tie && !tie.absolute) this.phases.set(key, phase!)
    this.left[c.kind]!--
    this.spots.push({ kind: c.kind, posture: c.posture, x, y })
    return y
  }

  /** Where to go on after a flaw that is in the way of this piece; null: none is. */
  private pastFlaw(c: Choice, x: number, from: number): number | null {
    let next: number | null = null
    for (const f of this.problem.flaws)
      if (x < f.x + f.width && f.x < x + c.p.width && f.y + f.length > from)
        next = next === null ? f.y + f.length : Math.min(next, f.y + f.length)
    return next
  }
}

function modulo(a: number, n: number): number {
  return ((a % n) + n) % n
}
