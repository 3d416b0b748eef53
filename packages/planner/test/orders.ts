import type { Cloth, EdgeNeed, Order, Rectangle } from '@lengthwise/pieces'
import { cm, length, NO_SHARE } from '@lengthwise/units'

const NONE: EdgeNeed = { kind: 'none' }
export const ZERO = length(0)

/** A rectangle cut `width` × `length` cm. */
export function rectangle(name: string, width: number, long: number, more: Partial<Rectangle> = {}): Rectangle {
  return {
    item: 'rectangle',
    name,
    count: 1,
    for: '',
    sizeName: null,
    cot: false,
    seam: { kind: 'plain', allowance: cm(1.5) },
    path: 'make[0]',
    size: { cut: { width: cm(width), length: cm(long) } },
    cloth: ['cloth'],
    sameCloth: 'none',
    lengthRuns: 'along',
    needs: { head: NONE, foot: NONE, left: NONE, right: NONE },
    ...more,
  }
}

/** A bolt sold by 10 cm at 10.00 per m in these widths, without spare. */
export function bolt(name: string, widths: readonly number[], more: Partial<Cloth> = {}): Cloth {
  return {
    name,
    from: 'bolt',
    widths: widths.map((w) => ({ width: cm(w), price: { coins: 1000, per: 'm' } })),
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
    spareEachEnd: ZERO,
    flaws: [],
    print: {
      way: 'plain',
      top: 'cut-end',
      repeat: ZERO,
      acrossRepeat: ZERO,
      match: 'none',
      repeatMeasured: 'on-the-table',
      matchLine: ZERO,
      motif: null,
    },
    divideBy: 'tearing',
    lostPerTear: ZERO,
    ...more,
  }
}

/** A remnant W × L cm with raw edges. */
export const remnant = (name: string, width: number, long: number, more: Partial<Cloth> = {}): Cloth => ({
  ...bolt(name, []),
  from: 'remnant',
  sold: false,
  size: { width: cm(width), length: cm(long) },
  edges: { head: { kind: 'raw' }, foot: { kind: 'raw' }, left: { kind: 'raw' }, right: { kind: 'raw' } },
  ...more,
})

export const orderOf = (items: Order['items'], cloths: readonly Cloth[], more: Partial<Order> = {}): Order => ({
  title: 'Test',
  date: null,
  measureIn: 'cm',
  currency: 'EUR',
  wash: 'none',
  seam: { kind: 'plain', allowance: cm(1.5) },
  markTo: cm(0.5),
  worthKeeping: { width: cm(20), length: cm(50) },
  items,
  cloths,
  ...more,
})
