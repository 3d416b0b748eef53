import type { Demand, Field, Request, Tie } from '../src/index.ts'
import { END, LEFT, RIGHT, START } from '../src/index.ts'

/** An order that is another one seen differently. */
export interface Same {
  readonly how: string
  readonly request: Request
  /** its shortest length is so many times the other's; null: only whether it can be laid at all is the same */
  readonly times: number | null
}

/** The same order mirrored, turned end for end, shuffled and in other units, as far as its rules let it. */
export function sameOrders(request: Request, units: number): Same[] {
  const out: Same[] = [
    { how: 'shuffled', request: shuffled(request), times: 1 },
    { how: 'scaled along', request: scaled(request, 1, units), times: units },
    { how: 'scaled across', request: scaled(request, units, 1), times: 1 },
  ]
  const mirror = mirrored(request)
  if (mirror) out.push({ how: 'mirrored', request: mirror, times: 1 })
  const turned = endForEnd(request)
  if (turned) out.push({ how: 'end for end', request: turned, times: request.field.length === null ? 1 : null })
  return out
}

/** Demands and postures from the last to the first; of a demand asked for several times, one copy is a demand of its own. */
export function shuffled(request: Request): Request {
  const demands = request.demands.flatMap((d): Demand[] => {
    const postures = d.postures.toReversed()
    if (d.count < 2) return [{ ...d, postures }]
    return [
      { ...d, postures, count: d.count - 1 },
      { ...d, postures, count: 1, id: `${d.id}, the last` },
    ]
  })
  return { ...request, demands: demands.toReversed() }
}

export function scaled(request: Request, across: number, along: number): Request {
  const { field } = request
  const { zones } = field
  return {
    ...request,
    field: {
      width: field.width * across,
      length: field.length === null ? null : field.length * along,
      zones: {
        left: zones.left * across,
        right: zones.right * across,
        start: zones.start * along,
        end: zones.end * along,
      },
      flaws: field.flaws.map((f) => ({
        x: f.x * across,
        y: f.y * along,
        width: f.width * across,
        length: f.length * along,
      })),
    },
    demands: request.demands.map((d) => {
      const times = d.tie?.axis === 'across' ? across : along
      return {
        ...d,
        postures: d.postures.map((p) => ({ ...p, width: p.width * across, length: p.length * along })),
        tie: d.tie && { ...d.tie, repeat: d.tie.repeat * times, offset: d.tie.offset * times },
      }
    }),
  }
}

/** Left is right. Null where a piece that keeps phase across has postures of several widths. */
export function mirrored(request: Request): Request | null {
  const { field } = request
  const { width, zones } = field
  const demands = reversed(request, 'across', 'width', width, LEFT, RIGHT)
  const seen: Field = {
    ...field,
    zones: { ...zones, left: zones.right, right: zones.left },
    flaws: field.flaws.map((f) => ({ ...f, x: width - f.x - f.width })),
  }
  return demands && { ...request, field: seen, demands }
}

/**
 * Start is end. On open cloth only where nothing is bound to the start, for what is farthest from it has no other end to be bound to; null
 * otherwise, and where a piece that keeps phase along has postures of several lengths.
 */
export function endForEnd(request: Request): Request | null {
  const { field } = request
  const { length, zones } = field
  const demands = reversed(request, 'along', 'length', length ?? 0, START, END)
  if (length === null) {
    const bound =
      zones.start > 0 ||
      field.flaws.length > 0 ||
      request.demands.some(
        (d) => (d.tie?.axis === 'along' && d.tie.absolute) || d.postures.some((p) => p.flush & (START | END)),
      )
    return bound ? null : demands && { ...request, demands }
  }
  const seen: Field = {
    ...field,
    zones: { ...zones, start: zones.end, end: zones.start },
    flaws: field.flaws.map((f) => ({ ...f, y: length - f.y - f.length })),
  }
  return demands && { ...request, field: seen, demands }
}

function reversed(
  { demands }: Request,
  axis: Tie['axis'],
  size: 'width' | 'length',
  whole: number,
  low: number,
  high: number,
): Demand[] | null {
  const swap = (flush: number) => (flush & ~(low | high)) | (flush & low ? high : 0) | (flush & high ? low : 0)
  const out: Demand[] = []
  for (const d of demands) {
    const postures = d.postures.map((p) => ({ ...p, flush: swap(p.flush) }))
    let { tie } = d
    if (tie?.axis === axis) {
      const [first] = postures
      if (postures.some((p) => p[size] !== first![size])) return null
      // what began `offset` past the repeat now ends so far before it
      tie = { ...tie, offset: (tie.absolute ? whole : 0) - first![size] - tie.offset }
    }
    out.push({ ...d, postures, tie })
  }
  return out
}
