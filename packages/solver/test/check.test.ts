import { expect, test } from 'vitest'
import type { Answer, Fault, Request } from '../src/index.ts'
import { check, LEFT, lay } from '../src/index.ts'

// two sheets beside each other, one needs the left side, one keeps phase with the third piece
const request: Request = {
  field: {
    width: 10,
    length: 40,
    zones: { left: 0, right: 0, start: 2, end: 3 },
    flaws: [{ x: 8, y: 30, width: 2, length: 2 }],
  },
  demands: [
    { id: 'side', count: 1, postures: [{ width: 4, length: 6, flush: LEFT }], tie: null },
    {
      id: 'tied',
      count: 2,
      postures: [{ width: 5, length: 6, flush: 0 }],
      tie: { group: 'face', axis: 'along', repeat: 8, offset: 0, absolute: false },
    },
  ],
  cuts: 'guillotine',
}

// by hand: 'side' at 0,2; the tied ones at 4,2 and 4,10
const side = { demand: 0, posture: 0, x: 0, y: 2, width: 4, length: 6 }
const near = { demand: 1, posture: 0, x: 4, y: 2, width: 5, length: 6 }
const far = { demand: 1, posture: 0, x: 4, y: 10, width: 5, length: 6 }
const rect = (x: number, y: number, width: number, length: number) => ({ x, y, width, length })
const leftOver = (r: ReturnType<typeof rect>) => ({ kind: 'left-over' as const, rect: r })
const good: Answer = {
  status: 'best-found',
  length: 16,
  bound: 9,
  certificate: { by: 'area', bound: 9 },
  placements: [side, near, far],
  tree: {
    kind: 'cut',
    rect: rect(0, 0, 10, 40),
    runs: 'across',
    at: 16,
    first: {
      kind: 'cut',
      rect: rect(0, 0, 10, 16),
      runs: 'across',
      at: 2,
      first: leftOver(rect(0, 0, 10, 2)),
      second: {
        kind: 'cut',
        rect: rect(0, 2, 10, 14),
        runs: 'along',
        at: 4,
        first: {
          kind: 'cut',
          rect: rect(0, 2, 4, 14),
          runs: 'across',
          at: 8,
          first: { kind: 'piece', rect: rect(0, 2, 4, 6), placement: 0 },
          second: leftOver(rect(0, 8, 4, 8)),
        },
        second: {
          kind: 'cut',
          rect: rect(4, 2, 6, 14),
          runs: 'along',
          at: 9,
          first: {
            kind: 'cut',
            rect: rect(4, 2, 5, 14),
            runs: 'across',
            at: 8,
            first: { kind: 'piece', rect: rect(4, 2, 5, 6), placement: 1 },
            second: {
              kind: 'cut',
              rect: rect(4, 8, 5, 8),
              runs: 'across',
              at: 10,
              first: leftOver(rect(4, 8, 5, 2)),
              second: { kind: 'piece', rect: rect(4, 10, 5, 6), placement: 2 },
            },
          },
          second: leftOver(rect(9, 2, 1, 14)),
        },
      },
    },
    second: leftOver(rect(0, 16, 10, 24)),
  },
  steps: 0,
  missing: [],
}

const placed = (...placements: Answer['placements']): Answer => ({ ...good, placements })
const bars = (prices: number[], capacity: number, bound: number): Answer => ({
  ...good,
  bound,
  certificate: { by: 'bars', prices, capacity, bound },
})
const scales = (across: number[], along: number[], bound: number): Answer => ({
  ...good,
  bound,
  certificate: { by: 'scales', across, along, bound },
})
const root = good.tree as Extract<Answer['tree'], { kind: 'cut' }>

test('the hand-made answer is one', () => {
  expect(check(request, good)).toEqual([])
})

const BROKEN: [string, Fault['code'], Answer, Request?][] = [
  ['a piece beyond the right side', 'outside', placed(side, near, { ...far, x: 6 })],
  ['a piece before the start', 'outside', placed({ ...side, y: -1 }, near, far)],
  ['a piece beyond the end', 'outside', { ...placed(side, near, { ...far, y: 42 }), length: 48 }],
  ['two pieces over each other', 'overlap', placed(side, { ...near, x: 3 }, far)],
  ['the last two pieces of the list over each other', 'overlap', placed(side, near, { ...far, y: 2 })],
  ['a piece of another size', 'size', placed({ ...side, length: 5 }, near, far)],
  ['a posture nobody offered', 'size', placed({ ...side, posture: 1 }, near, far)],
  ['a piece missing', 'count', placed(side, near)],
  ['a piece too many', 'count', placed(side, near, far, { ...far, y: 18 })],
  ['a piece off the side it must touch', 'not-flush', placed({ ...side, x: 1 }, { ...near, x: 5 }, far)],
  ['a piece in the zone of the start', 'in-zone', placed({ ...side, y: 1 }, near, far)],
  ['a piece in the zone of the end', 'in-zone', { ...placed(side, near, { ...far, y: 34 }), length: 40 }],
  ['a piece on the flaw', 'on-flaw', placed(side, near, { ...far, y: 26, x: 5 })],
  ['a phase that is off', 'phase', placed(side, near, { ...far, y: 9 })],
  ['no tree', 'tree', { ...good, tree: null }],
  ['a tree over another rectangle', 'tree', { ...good, tree: { ...root, rect: rect(0, 0, 10, 39) } }],
  ['a cut that is none', 'tree', { ...good, tree: { ...root, at: 0 } }],
  ['halves that are not the halves', 'tree', { ...good, tree: { ...root, at: 17 } }],
  ['a tree that frees nothing', 'tree', { ...good, tree: leftOver(rect(0, 0, 10, 40)) }],
  ['a tree that frees one piece twice', 'tree', { ...good, placements: [side, near, near] }],
  ['a tree for shears', 'tree', good, { ...request, cuts: 'free' }],
  ['a length that is not the farthest end', 'length', { ...good, length: 17 }],
  ['a bound above the length', 'bound', { ...good, bound: 17, certificate: { by: 'exhausted', bound: 17, states: 1 } }],
  ['a bound that its certificate does not say', 'bound', { ...good, bound: 10 }],
  ['an area that is not there', 'certificate', { ...good, bound: 10, certificate: { by: 'area', bound: 10 } }],
  ['a longest piece that is not there', 'certificate', { ...good, bound: 9, certificate: { by: 'longest', bound: 9 } }],
  ['pieces that are not wide', 'certificate', { ...good, bound: 1, certificate: { by: 'wide', bound: 1 } }],
  ['more at the sides than there is', 'certificate', { ...good, bound: 7, certificate: { by: 'sides', bound: 7 } }],
  ['a bar dearer than said', 'certificate', bars([4, 5], 9, 10)],
  ['a price too few', 'certificate', bars([4], 10, 9)],
  ['a price below nothing', 'certificate', bars([-4, 5], 10, 9)],
  ['a rescaled length too few', 'certificate', scales([4, 5], [9], 9)],
  ['a rescaled width below nothing', 'certificate', scales([-4, 5], [9, 9], 9)],
  ['a rescaled width that is not whole', 'not-whole', scales([4.5, 5], [9, 9], 9)],
  ['a search that visited nothing', 'certificate', { ...good, certificate: { by: 'exhausted', bound: 9, states: 0 } }],
  ['proved with a gap', 'status', { ...good, status: 'proved' }],
  ['infeasible with a layout', 'status', { ...good, status: 'infeasible' }],
  ['missing what can be placed', 'status', { ...good, missing: [{ demand: 0, direction: 'along', short: 1 }] }],
  ['a length that is not whole', 'not-whole', { ...good, length: 16.5 }],
  ['a place that is no number', 'not-whole', placed(side, near, { ...far, x: Number.NaN })],
]

test.each(BROKEN)('%s is refused as %s', (_, code, answer, other) => {
  expect(check(other ?? request, answer).map((f) => f.code)).toContain(code)
})

test('bar prices are priced exactly: one dual raised by one is refused', () => {
  // three of width 4 and two of width 6 on width 10: pairs 4 + 6, then 4 + 4
  const order: Request = {
    field: { width: 10, length: null, zones: { left: 0, right: 0, start: 0, end: 0 }, flaws: [] },
    demands: [
      { id: 'a', count: 3, postures: [{ width: 4, length: 7, flush: 0 }], tie: null },
      { id: 'b', count: 2, postures: [{ width: 6, length: 9, flush: 0 }], tie: null },
    ],
    cuts: 'guillotine',
  }
  const answer = (prices: number[], capacity: number, bound: number): Answer => ({
    ...lay({ ...order }, { effort: 10_000 }),
    status: 'best-found',
    bound,
    certificate: { by: 'bars', prices, capacity, bound },
  })
  expect(check(order, answer([4, 6], 10, 20))).toEqual([])
  expect(check(order, answer([5, 6], 10, 20)).map((f) => f.code)).toEqual(['certificate'])
  expect(check(order, answer([4, 7], 10, 21)).map((f) => f.code)).toContain('certificate')
})

test('rescaled sizes are fitted exactly: a size that lets a bar or a column hold more shows less', () => {
  // two abreast on width 10; three of length 7 need two rows, however short the fourth
  const order: Request = {
    field: { width: 10, length: null, zones: { left: 0, right: 0, start: 0, end: 0 }, flaws: [] },
    demands: [
      { id: 'a', count: 3, postures: [{ width: 4, length: 7, flush: 0 }], tie: null },
      { id: 'b', count: 1, postures: [{ width: 4, length: 5, flush: 0 }], tie: null },
    ],
    cuts: 'guillotine',
  }
  const codes = (across: number[], along: number[], bound: number) =>
    check(order, {
      ...lay(order, { effort: 10_000 }),
      status: 'best-found',
      bound,
      certificate: { by: 'scales', across, along, bound },
    }).map((f) => f.code)
  expect(codes([1, 1], [1, 0], 14)).toEqual([])
  // 5 and 7 in one column are as much as all need
  expect(codes([1, 1], [1, 1], 14)).toEqual(['certificate'])
  // one of the wider fourth beside a third fills the width
  expect(codes([1, 2], [1, 0], 14)).toEqual(['certificate'])
  expect(codes([1, 1], [1, 0], 15)).toContain('certificate')
})
