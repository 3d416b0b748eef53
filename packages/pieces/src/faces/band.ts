import type { Length } from '@lengthwise/units'
import { beforeShrinking, length } from '@lengthwise/units'
import { makeSeam } from '../build.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { FaceSpec, Order } from '../order.ts'
import type { SeamLine } from '../way.ts'
import type { FaceAsk, FaceWay, FaceWays } from './face.ts'
import { plainEdge } from './face.ts'
import { lossesInCommon, lossesOf, mostShrinks, sameShrinks } from './shrinking.ts'
import type { Stretch } from './stretches.ts'
import { meet, moved } from './stretches.ts'

/** How the face and its band are each made. */
type MakeFace = (order: Order, ask: FaceAsk, tables: ReadonlyMap<string, ClothOnTable>) => FaceWays

/** With a band of another cloth, both are cut for the larger loss. */
export function waysWithBands(
  order: Order,
  ask: FaceAsk,
  tables: ReadonlyMap<string, ClothOnTable>,
  makeFace: MakeFace,
): FaceWays {
  if (ask.shrinks !== undefined) return waysWithBand(order, ask, tables, makeFace)
  const found = lossesInCommon(lossesOf(order, ask.spec)).map((shrinks) => {
    const some = waysWithBand(order, { ...ask, shrinks }, tables, makeFace)
    return { ...some, ways: some.ways.filter((way) => sameShrinks(way.shrinks, shrinks)) }
  })
  return {
    ways: found.flatMap((some) => some.ways),
    refused: found.flatMap((some) => some.refused),
    capped: found.some((some) => some.capped),
  }
}

/** The face with a band: two faces, one below the other, joined by a seam across. */
function waysWithBand(
  order: Order,
  ask: FaceAsk,
  tables: ReadonlyMap<string, ClothOnTable>,
  makeFace: MakeFace,
): FaceWays {
  const band = ask.spec.band as NonNullable<FaceSpec['band']>
  const atHead = band.at === 'head'
  const inner = plainEdge(ask.seam.allowance)
  const bare = { ...ask.spec, band: null }
  const strip = makeFace(
    order,
    {
      ...ask,
      name: `${ask.name}/band`,
      words: `${ask.words}, band`,
      finished: { width: ask.finished.width, length: band.depth },
      edges: { ...ask.edges, [atHead ? 'foot' : 'head']: inner },
      // a band is too shallow to be joined from parts
      spec: {
        ...bare,
        cloth: band.cloth.length > 0 ? band.cloth : ask.spec.cloth,
        crossJoins: 0,
        zipEdge: null,
      },
    },
    tables,
  )
  // the rest of the face comes to what the band, on its marking step, leaves of it
  const rests = new Map<Length, FaceWays>()
  const restOf = (rest: Length): FaceWays => {
    const known = rests.get(rest)
    if (known !== undefined) return known
    const found = makeFace(
      order,
      {
        ...ask,
        name: `${ask.name}/main`,
        edges: { ...ask.edges, [atHead ? 'head' : 'foot']: inner },
        spec: bare,
        lengthBeforeWash: rest,
      },
      tables,
    )
    rests.set(rest, found)
    return found
  }
  const outerEnd = ask.edges[band.at].beyond
  const ways = strip.ways.flatMap((s) => {
    const whole = beforeShrinking(ask.finished.length, (ask.shrinks ?? s.shrinks).length)
    const rest = whole - (s.length - outerEnd - ask.seam.allowance)
    return rest <= 0 ? [] : restOf(length(rest)).ways.map((m) => (atHead ? stacked(s, m) : stacked(m, s)))
  })
  const main = [...rests.values()]
  return {
    ways,
    refused: [...main.flatMap((rest) => rest.refused), ...strip.refused],
    capped: strip.capped || main.some((rest) => rest.capped),
  }

  function stacked(upper: FaceWay, lower: FaceWay): FaceWay {
    const { allowance } = ask.seam
    const shift = upper.length - 2 * allowance
    const joining = meet(upper.unhemmed.foot, lower.unhemmed.head)
    const side = (edge: 'left' | 'right'): readonly Stretch[] => [
      ...trimmed(upper.outer[edge], 0, upper.length - allowance),
      ...moved(trimmed(lower.outer[edge], allowance, Number.POSITIVE_INFINITY), shift),
    ]
    const [m, s] = atHead ? [lower, upper] : [upper, lower]
    return {
      id: `${m.id}/band/${s.id}`,
      words: `${m.words}; band: ${s.words}`,
      cloths: [...m.cloths, ...s.cloths],
      run: m.run,
      shrinks: mostShrinks(m.shrinks, s.shrinks),
      joins: m.joins + s.joins + 1,
      pieces: [...upper.pieces, ...lower.pieces],
      seams: [
        ...upper.seams,
        ...lower.seams,
        ...joining.map((pair): SeamLine => makeSeam(ask.seam, pair.a, pair.b, pair.length, 'join')),
      ],
      outer: { head: upper.outer.head, foot: lower.outer.foot, left: side('left'), right: side('right') },
      unhemmed: { head: upper.unhemmed.head, foot: lower.unhemmed.foot },
      width: length(Math.min(upper.width, lower.width)),
      length: length(shift + lower.length),
    }
  }
}

/** What of the stretches lies between two places of the whole edge. */
function trimmed(stretches: readonly Stretch[], low: number, high: number): readonly Stretch[] {
  return stretches.flatMap((s) => {
    const start = Math.max(s.at, low)
    const end = Math.min(s.at + s.to - s.from, high)
    if (end <= start) return []
    const from = s.from + (start - s.at)
    return [{ ...s, at: length(start), from: length(from), to: length(from + end - start) }]
  })
}
