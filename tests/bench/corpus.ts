import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Demand, Request } from '@lengthwise/solver'
import type { Piece } from './models.ts'

/** The bench's own seeded generator: xorshift32 (G. Marsaglia, 2003), so that the corpus never changes with the solver's. */
export function seeded(seed: number): (bound: number) => number {
  let state = (seed * 2654435761) | 0 || 1
  return (bound) => {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    return (state >>> 0) % bound
  }
}

const OPEN = { length: null, zones: { left: 0, right: 0, start: 0, end: 0 }, flaws: [] }

export interface Case {
  readonly name: string
  readonly request: Request
  /** the best length known, and whether it is proved shortest for these cuts; null: none known */
  readonly known: { readonly length: number; readonly proved: boolean } | null
}

/** Equal pieces become one demand. */
export function requestOf(width: number, pieces: readonly Piece[], cuts: Request['cuts']): Request {
  const counts = new Map<string, { piece: Piece; count: number }>()
  for (const piece of pieces) {
    const key = `${piece.width} x ${piece.length}`
    const known = counts.get(key)
    if (known) known.count++
    else counts.set(key, { piece, count: 1 })
  }
  const demands = [...counts].map(([id, { piece, count }]): Demand => {
    return { id, count, tie: null, postures: [{ width: piece.width, length: piece.length, flush: 0 }] }
  })
  return { field: { width, ...OPEN }, demands, cuts }
}

/** A strip divided edge to edge, again and again, into `count` pieces: the whole strip is the shortest layout. */
export function sliced(width: number, length: number, count: number, seed: number): Case {
  const below = seeded(seed)
  const pieces: Piece[] = [{ width, length }]
  while (pieces.length < count) {
    pieces.sort((a, b) => a.width * a.length - b.width * b.length)
    const { width: w, length: l } = pieces.pop()!
    if (below(w + l) < w) {
      const at = Math.max(1, Math.min(w - 1, Math.floor(w / 5) + below(Math.ceil((3 * w) / 5))))
      pieces.push({ width: at, length: l }, { width: w - at, length: l })
    } else {
      const at = Math.max(1, Math.min(l - 1, Math.floor(l / 5) + below(Math.ceil((3 * l) / 5))))
      pieces.push({ width: w, length: at }, { width: w, length: l - at })
    }
  }
  return {
    name: `sliced ${count} of seed ${seed}`,
    request: requestOf(width, pieces, 'guillotine'),
    known: { length, proved: true },
  }
}

/** Sizes in mm as orders of bedding have them: covers, sides, pillows and flaps, with selvedges, turning and a print's repeat. */
export function bedding(seed: number): Case {
  const below = seeded(seed)
  const width = [1400, 1500, 1600, 2400, 2800][below(5)]!
  const kinds = 2 + below(7)
  const demands: Demand[] = []
  let pieces = 0
  const tied = below(3) === 0
  for (let kind = 0; kind < kinds && pieces < 20; kind++) {
    const across = Math.min(width, [430, 480, 530, 560, 830, 1040, 1400, 2030][below(8)]! + 5 * below(4))
    const along = [215, 535, 780, 830, 1040, 1740, 2080, 2295][below(8)]! + 5 * below(4)
    const count = Math.min(1 + below(4), 20 - pieces)
    pieces += count
    const lot = below(6)
    const upright = { width: across, length: along }
    let postures: Demand['postures'] = [{ ...upright, flush: 0 }]
    if (lot === 0 && across < width)
      postures = [
        { ...upright, flush: 1 },
        { ...upright, flush: 2 },
      ]
    if (lot === 1 && along <= width)
      postures = [
        { ...upright, flush: 0 },
        { width: along, length: across, flush: 0 },
      ]
    const tie =
      tied && kind < 2 && lot !== 1
        ? { group: 'face', axis: 'along' as const, repeat: 640, offset: 0, absolute: false }
        : null
    demands.push({ id: `kind ${kind}`, count, postures, tie })
  }
  const request: Request = { field: { width, ...OPEN }, demands, cuts: 'guillotine' }
  return { name: `bedding ${seed}`, request, known: null }
}

/** A hotel's order: 500 pieces of 12 kinds on cloth 2.8 m wide. */
export function batch(seed: number): Case {
  const below = seeded(seed)
  const sizes = [480, 530, 560, 780, 830, 910, 1040, 1330, 1530, 1740, 2080, 2295]
  const pieces: Piece[] = []
  const kinds = sizes.map((along, index) => ({
    width: sizes[(index * 5 + below(3)) % 9]! + 5 * below(6),
    length: along,
  }))
  for (let i = 0; i < 500; i++) pieces.push(kinds[i < 12 ? i : below(12)]!)
  return { name: `batch ${seed}`, request: requestOf(2800, pieces, 'guillotine'), known: null }
}

interface Instance {
  readonly name: string
  readonly width: number
  readonly items: readonly { readonly w: number; readonly h: number; readonly n: number }[]
  readonly best_known: Record<string, number | boolean>
  readonly published_unrestricted?: { readonly best?: Record<string, number> }
}

export function instancesFolder(): string {
  return process.env.LENGTHWISE_INSTANCES ?? join('..', 'shared', 'instances')
}

/** Published instances, or null when their folder is absent. */
export function published(
  cuts: Request['cuts'],
  wanted: (name: string, pieces: number, proved: boolean) => boolean,
): Case[] | null {
  const folder = instancesFolder()
  if (!existsSync(folder)) return null
  const cases: Case[] = []
  for (const file of readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()) {
    const instance = JSON.parse(readFileSync(join(folder, file), 'utf8')) as Instance
    const pieces = instance.items.flatMap(({ w, h, n }) => new Array<Piece>(n).fill({ width: w, length: h }))
    const known = instance.best_known
    const proved = known[cuts === 'free' ? 'proven' : 'guillotine_proven'] === true
    if (!wanted(instance.name, pieces.length, proved)) continue
    const named = known[cuts === 'free' ? 'unrestricted_oriented' : 'guillotine_oriented']
    const bests = cuts === 'free' ? Object.values(instance.published_unrestricted?.best ?? {}) : []
    const length = typeof named === 'number' ? named : bests.length > 0 ? Math.min(...bests) : null
    cases.push({
      name: instance.name,
      request: requestOf(instance.width, pieces, cuts),
      known: length === null ? null : { length, proved },
    })
  }
  return cases
}

/** How many cases and pieces, and a checksum of their requests: two runs of the bench compare only when these agree. */
export function shapeOf(cases: readonly Case[]): string {
  const pieces = cases.reduce((sum, { request }) => sum + request.demands.reduce((n, { count }) => n + count, 0), 0)
  const kinds = cases.reduce((sum, { request }) => sum + request.demands.length, 0)
  const hash = createHash('sha256')
    .update(JSON.stringify(cases.map(({ request }) => request)))
    .digest('hex')
  return `${cases.length} cases, ${pieces} pieces in ${kinds} kinds, checksum ${hash.slice(0, 12)}`
}
