import type { Demand, Posture, Request } from '../src/index.ts'
import { END, LEFT, RIGHT, START } from '../src/index.ts'

/**
 * The shortest layout by trying everything at explicit positions: every length from nothing up, every phase of every tied group, and
 * for guillotine cuts every cut of every rectangle at every whole place with every share of the pieces between its halves; for free
 * cuts every piece, or none, at every square of the cloth. Shares no idea with the solver's methods. Null when nothing up to `most`
 * works.
 */
export function naiveLength(request: Request, most: number): number | null {
  const { field, cuts } = request
  const groups = groupsOf(request)
  if (!request.demands.every((d) => d.count === 0 || liesSomewhere(request, d))) return null
  for (let limit = 0; limit <= Math.min(most, field.length ?? most); limit++) {
    const phases = new Map<string, number>()
    const tryPhases = (g: number): boolean => {
      const group = groups[g]
      if (!group) return cuts === 'free' ? liesFreely(request, limit, phases) : comesApart(request, limit, phases)
      for (let phase = 0; phase < group.phases; phase++) {
        phases.set(group.name, phase)
        if (tryPhases(g + 1)) return true
      }
      return false
    }
    if (tryPhases(0)) return limit
  }
  return null
}

type Phases = ReadonlyMap<string, number>

const nameOf = ({ axis, group }: NonNullable<Demand['tie']>): string => `${axis} ${group}`

/** Tied groups, each with how many phases it may have. */
export function groupsOf({ demands }: Request): { name: string; phases: number }[] {
  const groups = new Map<string, number>()
  for (const { count, tie } of demands) if (count > 0 && tie) groups.set(nameOf(tie), tie.absolute ? 1 : tie.repeat)
  return [...groups].map(([name, phases]) => ({ name, phases }))
}

/** Is there any place at all for a piece, alone and wherever its repeat begins? */
function liesSomewhere(request: Request, d: Demand): boolean {
  const { width, length, zones } = request.field
  const alone = { ...d, tie: null }
  const room = length ?? zones.start + Math.max(...d.postures.map((p) => p.length)) + 20
  for (const p of d.postures)
    for (let x = 0; x + p.width <= width; x++)
      for (let y = 0; y + p.length <= room; y++) if (mayLie(request, alone, p, x, y, room, new Map())) return true
  return false
}

/** May a piece lie here, by its own rules alone? */
function mayLie(
  { field }: Request,
  { tie }: Demand,
  p: Posture,
  x: number,
  y: number,
  limit: number,
  phases: Phases,
): boolean {
  const last = field.length ?? Number.POSITIVE_INFINITY
  const { zones } = field
  const right = x + p.width
  const end = y + p.length
  if (p.flush & LEFT ? x !== 0 : x < zones.left) return false
  if (p.flush & RIGHT ? right !== field.width : right > field.width - zones.right) return false
  if (p.flush & START ? y !== 0 : y < zones.start) return false
  if (p.flush & END ? end !== last : end > last - zones.end) return false
  if (end > limit) return false
  for (const f of field.flaws) if (x < f.x + f.width && f.x < right && y < f.y + f.length && f.y < end) return false
  if (!tie) return true
  return ((tie.axis === 'along' ? y : x) - tie.offset - phases.get(nameOf(tie))!) % tie.repeat === 0
}

/** Is there a layout no longer than `limit` that cuts right across free? Multisets of pieces are numbers, a digit for each demand. */
function comesApart(request: Request, limit: number, phases: Phases): boolean {
  const { field } = request
  const demands = request.demands.filter((d) => d.count > 0)
  const values: number[] = []
  let all = 1
  for (const d of demands) {
    values.push(all)
    all *= d.count + 1
  }
  const countsOf = (set: number) => demands.map((d, i) => Math.floor(set / values[i]!) % (d.count + 1))
  const counts = Array.from({ length: all }, (_, set) => countsOf(set))
  const parts = counts.map((whole, set) =>
    counts.flatMap((part, p) => (p > 0 && p < set && part.every((n, i) => n <= whole[i]!) ? [p] : [])),
  )
  const areas = counts.map((whole) => whole.reduce((sum, n, i) => sum + n * leastArea(demands[i]!), 0))
  const known = new Map<number, boolean>()
  const works = (x: number, y: number, w: number, l: number, set: number): boolean => {
    if (set === 0) return true
    const key = (((x * 256 + y) * 256 + w) * 256 + l) * all + set
    const before = known.get(key)
    if (before !== undefined) return before
    const answer = search(x, y, w, l, set)
    known.set(key, answer)
    return answer
  }
  const search = (x: number, y: number, w: number, l: number, set: number): boolean => {
    if (areas[set]! > w * l) return false
    const only = values.indexOf(set)
    if (only >= 0) {
      const d = demands[only]!
      for (const p of d.postures)
        for (let px = x; px + p.width <= x + w; px++)
          for (let py = y; py + p.length <= y + l; py++) if (mayLie(request, d, p, px, py, limit, phases)) return true
      return false
    }
    for (const part of parts[set]!) {
      for (let at = 1; at < w; at++)
        if (works(x, y, at, l, part) && works(x + at, y, w - at, l, set - part)) return true
      for (let at = 1; at < l; at++)
        if (works(x, y, w, at, part) && works(x, y + at, w, l - at, set - part)) return true
    }
    return false
  }
  return works(0, 0, field.width, limit, all - 1)
}

const leastArea = (d: Demand): number => Math.min(...d.postures.map((p) => p.width * p.length))

/**
 * Is there any layout no longer than `limit`? Square after square, row after row: each is covered already, or some piece has its left
 * and start corner there, or it stays empty. What is covered beyond a square is told by how far each column is.
 */
function liesFreely(request: Request, limit: number, phases: Phases): boolean {
  const { field, demands } = request
  const { width } = field
  const left = demands.map((d) => d.count)
  const far = new Array<number>(width).fill(0)
  const hopeless = new Set<string>()
  const from = (at: number): boolean => {
    if (left.every((n) => n === 0)) return true
    const x = at % width
    const y = (at - x) / width
    if (y >= limit) return false
    if (far[x]! > y) return from(at + 1)
    const key = `${at}|${far.map((f) => Math.max(0, f - y)).join()}|${left.join()}`
    if (hopeless.has(key)) return false
    for (const [i, d] of demands.entries()) {
      if (left[i] === 0) continue
      for (const p of d.postures) {
        const columns = far.slice(x, x + p.width)
        if (columns.length < p.width || columns.some((f) => f > y)) continue
        if (!mayLie(request, d, p, x, y, limit, phases)) continue
        left[i]!--
        far.fill(y + p.length, x, x + p.width)
        if (from(at + 1)) return true
        left[i]!++
        for (const [c, f] of columns.entries()) far[x + c] = f
      }
    }
    if (from(at + 1)) return true
    hopeless.add(key)
    return false
  }
  const room = Math.max(0, limit) * width
  const area = demands.reduce((sum, d) => sum + d.count * leastArea(d), 0)
  return area <= room && from(0)
}
