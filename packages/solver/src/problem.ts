import type { Demand, Field, Placement, Posture, Request, Sides, Tie } from './model.ts'
import { END, LEFT, RIGHT, START } from './model.ts'

/**
 * A request made ready for search: lengths along and across divided by their common divisors, equal demands merged into
 * kinds, postures that cannot be placed left out.
 */
export interface Problem {
  readonly width: number
  readonly length: number | null
  readonly zones: Field['zones']
  readonly flaws: Field['flaws']
  readonly kinds: readonly Kind[]
  readonly cuts: Request['cuts']
  /** some placement is tied to another's phase, or to the field's */
  readonly tied: boolean
  /** one unit here is this many of the request's, across and along */
  readonly unitAcross: number
  readonly unitAlong: number
  readonly request: Request
}

/** Identical rectangles, whichever demand asked for them. */
export interface Kind {
  readonly count: number
  readonly postures: readonly KindPosture[]
  /** also those left out of `postures` because another covers them */
  readonly possible: readonly KindPosture[]
  readonly tie: Tie | null
  /** demands of the request merged here, with their counts */
  readonly demands: readonly { readonly demand: number; readonly count: number }[]
  /** the smallest area of any posture */
  readonly area: number
}

export interface KindPosture extends Posture {
  /** index into the postures of each of the kind's demands */
  readonly index: number
}

/** A rectangle of a kind put down, in the problem's units. */
export interface Spot {
  readonly kind: number
  /** index into the kind's postures */
  readonly posture: number
  readonly x: number
  readonly y: number
}

/** Does a posture fit the field by itself? */
export function fits(field: Pick<Field, 'width' | 'length' | 'zones'>, p: Posture): boolean {
  return shortAcross(field, p) <= 0 && shortAlong(field, p) <= 0 && touches(field, p)
}

/** Width missing for this posture; 0 or less: none. */
export function shortAcross(field: Pick<Field, 'width' | 'zones'>, p: Posture): number {
  const { left, right } = field.zones
  return p.width + (p.flush & LEFT ? 0 : left) + (p.flush & RIGHT ? 0 : right) - field.width
}

/** Length missing for this posture; 0 or less: none. */
export function shortAlong(field: Pick<Field, 'length' | 'zones'>, p: Posture): number {
  if (field.length === null) return 0
  const { start, end } = field.zones
  return p.length + (p.flush & START ? 0 : start) + (p.flush & END ? 0 : end) - field.length
}

function touches(field: Pick<Field, 'width' | 'length'>, p: Posture): boolean {
  if (p.flush & END && field.length === null) return false
  if ((p.flush & (LEFT | RIGHT)) === (LEFT | RIGHT) && p.width !== field.width) return false
  return (p.flush & (START | END)) !== (START | END) || p.length === field.length
}

/** Null when some demand cannot be placed at all. Demands of count 0 are left out. The unit across divides `widths` too. */
export function normalise(request: Request, widths: readonly number[] = []): Problem | null {
  const { field } = request
  const across = [field.width, ...widths, field.zones.left, field.zones.right]
  const along = [field.length ?? 0, field.zones.start, field.zones.end]
  for (const f of field.flaws) {
    across.push(f.x, f.width)
    along.push(f.y, f.length)
  }
  const ties = tiesThatBind(request)
  for (const d of request.demands) {
    if (d.count === 0) continue
    for (const p of d.postures) {
      across.push(p.width)
      along.push(p.length)
    }
    const tie = ties.get(d)
    if (tie) (tie.axis === 'along' ? along : across).push(tie.repeat, tie.offset)
  }
  const gx = Math.max(1, gcdOf(across))
  const gy = Math.max(1, gcdOf(along))

  const kinds: {
    count: number
    postures: KindPosture[]
    possible: KindPosture[]
    tie: Tie | null
    demands: { demand: number; count: number }[]
    area: number
  }[] = []
  const known = new Map<string, number>()
  for (const [i, d] of request.demands.entries()) {
    if (d.count === 0) continue
    const postures: KindPosture[] = []
    const possible: KindPosture[] = []
    for (const [index, p] of d.postures.entries()) {
      if (!fits(field, p)) continue
      const scaled = { width: p.width / gx, length: p.length / gy, flush: p.flush, index }
      possible.push(scaled)
      if (!postures.some((q) => covers(q, scaled, field.zones))) postures.push(scaled)
    }
    if (postures.length === 0) return null
    const bound = ties.get(d) ?? null
    const unit = bound?.axis === 'across' ? gx : gy
    const tie = bound && { ...bound, repeat: bound.repeat / unit, offset: bound.offset / unit }
    const key = JSON.stringify([possible, tie])
    const at = known.get(key)
    if (at === undefined) {
      known.set(key, kinds.length)
      const area = Math.min(...postures.map((p) => p.width * p.length))
      kinds.push({ count: d.count, postures, possible, tie, demands: [{ demand: i, count: d.count }], area })
    } else {
      kinds[at]!.count += d.count
      kinds[at]!.demands.push({ demand: i, count: d.count })
    }
  }
  return {
    width: field.width / gx,
    length: field.length === null ? null : field.length / gy,
    zones: {
      left: field.zones.left / gx,
      right: field.zones.right / gx,
      start: field.zones.start / gy,
      end: field.zones.end / gy,
    },
    flaws: field.flaws.map((f) => ({ x: f.x / gx, y: f.y / gy, width: f.width / gx, length: f.length / gy })),
    kinds,
    cuts: request.cuts,
    tied: kinds.some((k) => k.tie !== null),
    unitAcross: gx,
    unitAlong: gy,
    request,
  }
}

/** Spots as placements of the request: copies of a kind go to its demands in reading order. */
export function placementsOf(problem: Problem, spots: readonly Spot[]): Placement[] {
  const order = spots.map((_, i) => i).sort((a, b) => spots[a]!.y - spots[b]!.y || spots[a]!.x - spots[b]!.x || a - b)
  const given = problem.kinds.map(() => ({ at: 0, used: 0 }))
  const out: Placement[] = new Array(spots.length)
  for (const i of order) {
    const s = spots[i]!
    const kind = problem.kinds[s.kind]!
    const p = kind.postures[s.posture]!
    const g = given[s.kind]!
    if (g.used === kind.demands[g.at]!.count) {
      g.at++
      g.used = 0
    }
    g.used++
    out[i] = {
      demand: kind.demands[g.at]!.demand,
      posture: p.index,
      x: s.x * problem.unitAcross,
      y: s.y * problem.unitAlong,
      width: p.width * problem.unitAcross,
      length: p.length * problem.unitAlong,
    }
  }
  return out
}

/** Farthest end of the spots; 0 for none. */
export function endOf(problem: Problem, spots: readonly Spot[]): number {
  let end = 0
  for (const s of spots) end = Math.max(end, s.y + problem.kinds[s.kind]!.postures[s.posture]!.length)
  return end
}

/** A tie binds when its group has a second piece, or the field sets the phase. Groups of one piece are free. */
function tiesThatBind(request: Request): Map<Demand, Tie> {
  const size = new Map<string, number>()
  const key = (t: Tie) => `${t.axis} ${t.group}`
  for (const d of request.demands) if (d.tie) size.set(key(d.tie), (size.get(key(d.tie)) ?? 0) + d.count)
  const out = new Map<Demand, Tie>()
  for (const d of request.demands)
    if (d.tie && d.tie.repeat > 0 && (d.tie.absolute || size.get(key(d.tie))! > 1)) {
      const { repeat, offset } = d.tie
      out.set(d, { ...d.tie, offset: ((offset % repeat) + repeat) % repeat })
    }
  return out
}

/** q can lie wherever p can: same size, fewer needs, and no zone that only p may enter. */
function covers(q: Posture, p: Posture, zones: Field['zones']): boolean {
  if (q.width !== p.width || q.length !== p.length || (q.flush & ~p.flush) !== 0) return false
  const extra: Sides = p.flush & ~q.flush
  return !(
    (extra & LEFT && zones.left) ||
    (extra & RIGHT && zones.right) ||
    (extra & START && zones.start) ||
    (extra & END && zones.end)
  )
}

function gcdOf(values: readonly number[]): number {
  let g = 0
  for (let v of values) while (v !== 0) [g, v] = [v, g % v]
  return g
}
