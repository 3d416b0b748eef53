import { cm, length, NO_SHARE, ZERO } from '@lengthwise/units'
import type { Cloth, ClothOnTable, DuvetCover, FaceSpec, Item, Order, Print } from '../src/index.ts'
import { onTable } from '../src/index.ts'

/** Orders for tests: everything has a value, each test says what differs. */

export const PLAIN_PRINT: Print = {
  way: 'plain',
  top: 'cut-end',
  repeat: ZERO,
  acrossRepeat: ZERO,
  match: 'none',
  repeatMeasured: 'on-the-table',
  matchLine: ZERO,
  motif: null,
}

export function bolt(name: string, widths: readonly number[], other: Partial<Cloth> = {}): Cloth {
  return {
    name,
    from: 'bolt',
    widths: widths.map((width) => ({ width: length(width), price: null })),
    price: null,
    soldBy: cm(10),
    smallestSale: ZERO,
    have: ZERO,
    sold: true,
    size: null,
    count: 1,
    edges: { head: { kind: 'raw' }, foot: { kind: 'raw' }, left: { kind: 'selvedge' }, right: { kind: 'selvedge' } },
    mustKeep: [],
    shrinks: { along: NO_SHARE, across: NO_SHARE },
    unusedSelvedge: ZERO,
    spareEachEnd: cm(5),
    flaws: [],
    print: PLAIN_PRINT,
    divideBy: 'tearing',
    lostPerTear: ZERO,
    ...other,
  }
}

/** A flat sheet, W × L, hems at head and foot. */
export function sheet(
  name: string,
  width: number,
  long: number,
  head: number,
  foot: number,
  other: Partial<Cloth> = {},
): Cloth {
  return bolt(name, [], {
    from: 'sheet',
    widths: [],
    size: { width: length(width), length: length(long) },
    spareEachEnd: ZERO,
    edges: {
      head: { kind: 'hem', depth: length(head) },
      foot: { kind: 'hem', depth: length(foot) },
      left: { kind: 'selvedge' },
      right: { kind: 'selvedge' },
    },
    ...other,
  })
}

export function face(cloth: string | readonly string[], other: Partial<FaceSpec> = {}): FaceSpec {
  return {
    cloth: typeof cloth === 'string' ? [cloth] : cloth,
    joined: 'any',
    smallestPanel: cm(15),
    centre: 'full',
    crossJoins: 0,
    selvedgeToSelvedge: false,
    lengthRuns: 'either',
    mostSeams: null,
    band: null,
    zipEdge: null,
    ...other,
  }
}

export const PLAIN_SEAM = { kind: 'plain', allowance: cm(1.5) } as const

export const COMMON = { count: 1, for: '', sizeName: null, cot: false, seam: PLAIN_SEAM, path: 'make[0]' } as const

export function cover(width: number, long: number, other: Partial<DuvetCover> = {}): DuvetCover {
  return {
    ...COMMON,
    item: 'duvet-cover',
    finished: { width: length(width), length: length(long) },
    front: face('cotton'),
    back: face('cotton'),
    opening: { kind: 'zip', at: 'foot', zips: null },
    cornerTies: { count: 0, length: cm(20), width: cm(1), bought: false },
    tiesDespiteCaution: null,
    ...other,
  }
}

export function orderOf(cloths: readonly Cloth[], items: readonly Item[], other: Partial<Order> = {}): Order {
  return {
    title: 'Test',
    date: null,
    measureIn: 'cm',
    currency: null,
    wash: 'none',
    seam: PLAIN_SEAM,
    markTo: cm(0.5),
    worthKeeping: { width: cm(20), length: cm(50) },
    items,
    cloths,
    ...other,
  }
}

/** Every cloth at its first width. */
export function tablesOf(order: Order): ReadonlyMap<string, ClothOnTable> {
  return new Map(order.cloths.map((cloth) => [cloth.name, onTable(order, cloth, 0)]))
}
