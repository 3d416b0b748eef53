import type { Cloth, ClothEdge, ClothEdges, Print, Side } from '@lengthwise/pieces'
import type { Length } from '@lengthwise/units'
import { NO_SHARE, ZERO } from '@lengthwise/units'
import type { ClothShape } from '../schema/plan.ts'
import type { UsualFigures } from './usual-figures.ts'

const SIDES: readonly Side[] = ['head', 'foot', 'left', 'right']

/** A cloth of the plan as the trade package knows it. */
export function clothOf(keys: ClothShape, figures: UsualFigures): Cloth {
  const edges = edgesOf(keys)
  return {
    name: keys.name,
    from: keys.from,
    widths: (keys.widths ?? []).map(({ width, price }) => ({ width, price: price ?? keys.price ?? null })),
    price: keys.price ?? null,
    soldBy: keys['sold-by'],
    smallestSale: keys['smallest-sale'],
    have: keys.have,
    sold: keys.sold,
    size: keys.from === 'bolt' ? null : (keys.size ?? null),
    count: keys.count ?? 1,
    edges,
    mustKeep: SIDES.filter((side) => {
      const keep = typeof keys.keep === 'string' ? keys.keep : keys.keep[side]
      return keep === 'must' && edges[side].kind === 'hem'
    }),
    shrinks: keys.shrinks === 'none' ? { along: NO_SHARE, across: NO_SHARE } : keys.shrinks,
    unusedSelvedge: keys['unused-selvedge'],
    spareEachEnd: keys['spare-each-end'] ?? (keys.from === 'bolt' ? figures.spareEachEndOfBolt : ZERO),
    flaws: keys.flaws.map(({ on, ...flaw }) => ({ ...flaw, on: on ?? null })),
    print: printOf(keys.print),
    divideBy: keys['divide-by'],
    lostPerTear: keys['lost-per-tear'],
  }
}

function edgesOf(keys: ClothShape): ClothEdges {
  const selvedges = keys.selvedges ?? (keys.from === 'bolt' ? 'both' : 'none')
  const longSide = (side: 'left' | 'right'): ClothEdge =>
    selvedges === 'both' || selvedges === side ? { kind: 'selvedge' } : { kind: 'raw' }
  return {
    head: edgeOf(keys.hems.head) ?? { kind: 'raw' },
    foot: edgeOf(keys.hems.foot) ?? { kind: 'raw' },
    left: edgeOf(keys.hems.left) ?? longSide('left'),
    right: edgeOf(keys.hems.right) ?? longSide('right'),
  }
}

function edgeOf(said: 'selvedge' | 'none' | Length | undefined): ClothEdge | undefined {
  if (said === undefined) return undefined
  if (said === 'none' || said === 0) return { kind: 'raw' }
  return said === 'selvedge' ? { kind: 'selvedge' } : { kind: 'hem', depth: said }
}

function printOf(keys: ClothShape['print']): Print {
  const { motif } = keys
  const repeats = keys.repeat > 0 || keys['across-repeat'] > 0
  return {
    way: keys.way,
    top: keys.top,
    repeat: keys.repeat,
    acrossRepeat: keys['across-repeat'],
    match: keys.match ?? (repeats ? 'straight' : 'none'),
    repeatMeasured: keys['repeat-measured'],
    matchLine: keys['match-line'],
    motif: motif === undefined ? null : { first: typeof motif === 'string' ? null : (motif.first ?? null) },
  }
}
