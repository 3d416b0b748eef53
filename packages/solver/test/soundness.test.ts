import { expect, test } from 'vitest'
import { Bounds } from '../src/bounds/bounds.ts'
import { shortest } from '../src/exact/shortest.ts'
import type { Strictness } from '../src/exact/strictness.ts'
import { SOUND } from '../src/exact/strictness.ts'
import type { Demand, Request } from '../src/index.ts'
import { LEFT, RIGHT } from '../src/index.ts'
import { normalise } from '../src/problem.ts'
import { naiveLength } from './naive.ts'
import type { Rules } from './orders.ts'
import { open, phasedOrder, piece, randomOrder, tiedOrder } from './orders.ts'

/**
 * Each rule that throws blocks away, made one unit too strict, must lose the shortest layout of some small order: so no rule could be
 * any stronger, and one that became so would be seen here. What is the shortest a naive method says.
 */
const SPOILT: readonly (readonly [
  rule: keyof Strictness,
  orders: Omit<Rules, 'pieces' | 'width'> | typeof tiedOrder,
])[] = [
  ['budget', {}],
  ['budget', { flush: true, turning: true }],
  ['widths', {}],
  ['widths', { flush: true, turning: true }],
  ['widths', { ties: true }],
  ['gaps', {}],
  ['gaps', { finite: true }],
  ['weights', {}],
  ['weights', { flush: true }],
  ['guides', { flush: true }],
  ['guides', tiedOrder],
  ['dominance', {}],
  ['dominance', { ties: true }],
  ['movedDominance', tiedOrder],
  ['covers', tiedOrder],
  ['slack', tiedOrder],
  ['places', tiedOrder],
  ['walk', { turning: true }],
  ['chains', {}],
  ['chains', tiedOrder],
  ['zones', { zones: true, flush: true }],
  ['zones', { zones: true, flush: true, finite: true }],
  ['lengths', {}],
]

for (const [rule, orders] of SPOILT) {
  const which = typeof orders === 'function' ? 'ties' : Object.keys(orders).join(', ') || 'no rules'
  test(`${rule} one unit too strict loses layouts of orders with ${which}`, () => {
    const aids = { weighed: rule === 'weights', guided: rule === 'guides' }
    const caught = firstWrong({ ...SOUND, [rule]: 1 }, aids, (seed) =>
      typeof orders === 'function'
        ? orders(seed)
        : randomOrder(seed, { pieces: 3 + (seed % 3), width: 5 + (seed % 3), ...orders }),
    )
    expect(caught).not.toBeNull()
    const truth = naiveLength(caught!.request, 40)
    expect(exact(caught!.request, SOUND, aids)).toBe(truth)
    expect(caught!.length).not.toBe(truth)
  })
}

/** Orders that few others are like: each loses its shortest layout when an earlier block may move on less, or a slack reach less far. */
const TELLING = [201, 283, 300]
/**
 * The same when a sum of lengths or a place is left out, a join may fill a little less, pieces meet the cloth's own phase too soon, a piece
 * is raised as if it were alone of its kind, a block outdoes one that reaches farther, or one speaks for all of its cell.
 */
const TELLING_PHASED = [28, 31, 54, 60, 276, 314, 315, 410, 590, 819, 1458, 1782, 3460, 3462]

test('orders with ties are as short as the naive method says', () => {
  const orders = [
    ...[...Array(25).keys(), ...TELLING].map((seed) => ({ seed, request: tiedOrder(seed) })),
    ...TELLING_PHASED.map((seed) => ({ seed, request: phasedOrder(seed) })),
  ]
  for (const { seed, request } of orders) {
    const truth = naiveLength(request, 40)
    expect(exact(request, SOUND, { weighed: true, guided: true }), `seed ${seed}`).toBe(truth)
    expect(exact(request, SOUND, { weighed: false, guided: false }), `seed ${seed}, unaided`).toBe(truth)
  }
})

test('several widths in one run have the lengths that a naive method says, and a trial dropped too soon is seen', () => {
  let caught = false
  for (const order of ordersForWidths()) {
    const truth = WIDTHS.map((width) => naiveLength(at(order, width), 60))
    for (const atOnce of [false, true]) {
      expect(exactAt(order, SOUND, atOnce), `${JSON.stringify(order)}, at once: ${atOnce}`).toEqual(truth)
      caught ||= exactAt(order, { ...SOUND, trials: 1 }, atOnce).join() !== truth.join()
    }
  }
  expect(caught).toBe(true)
})

/** Without panels as wide as the cloth, which fit no other width. */
function ordersForWidths(): Request[] {
  const rules = [{}, { turning: true }, { zones: true }, { finite: true, zones: true, flush: true, turning: true }]
  const orders = Array.from({ length: 48 }, (_, seed) =>
    seed % 5 === 4 ? tiedOrder(seed) : randomOrder(seed, { pieces: 3 + (seed % 3), width: 7, ...rules[seed % 4] }),
  )
  // a narrow width that what touches the end serves, but only on a limit farther on than that of the wide one
  orders.push(randomOrder(1898, { pieces: 4, width: 7, ...rules[3] }))
  return orders
    .map((order) => ({ ...order, demands: order.demands.filter((d) => d.postures.every((p) => (p.flush & 3) !== 3)) }))
    .filter((order) => order.demands.length > 0)
}

const WIDTHS = [9, 7, 6, 5]
const at = (request: Request, width: number): Request => ({ ...request, field: { ...request.field, width } })

/** The lengths that the exact search finds for all of the widths in one run. */
function exactAt(request: Request, strictness: Strictness, atOnce: boolean): (number | null)[] {
  const problems = WIDTHS.flatMap((width) => normalise(at(request, width), WIDTHS) ?? [])
  if (problems.length === 0) return WIDTHS.map(() => null)
  const targets = problems.map((problem) => {
    const bounds = new Bounds(problem, { most: 1_000_000, steps: 0 })
    bounds.best(Number.POSITIVE_INFINITY)
    return { width: problem.width, lower: 1, upper: null, weightsFor: (reach: number) => bounds.weightsFor(reach) }
  })
  const { found } = shortest(problems[0]!, { targets, effort: 1_000_000, atOnce }, strictness)
  return WIDTHS.map((_, i) => (found[i]?.best ? found[i].best.length * problems[i]!.unitAlong : null))
}

test('two narrow pieces flush with both sides lie side by side in zones that take up all the width', () => {
  const request = open(4, [piece('left', 1, 1, 3, LEFT), piece('right', 1, 1, 3, RIGHT)])
  const zones = { left: 2, right: 2, start: 0, end: 0 }
  expect(exact({ ...request, field: { ...request.field, zones } }, SOUND, { weighed: false, guided: false })).toBe(3)
})

/** A face's piece that keeps phase with others of its face, or with the cloth itself. */
const keeping = (group: 'face' | 'cloth', repeat: number, offset: number, of: Demand): Demand => ({
  ...of,
  tie: { group, axis: 'along', repeat, offset, absolute: group === 'cloth' },
})

test('a group moves along by as much as the zone at the start keeps off the phase of the cloth itself', () => {
  const request = open(5, [
    keeping('cloth', 10, 6, piece('whole', 1, 5, 4)),
    keeping('face', 10, 6, piece('wide', 1, 3, 2)),
    keeping('face', 10, 4, piece('narrow', 1, 2, 2)),
  ])
  const field = { ...request.field, zones: { left: 0, right: 0, start: 3, end: 0 } }
  const length = exact({ ...request, field }, SOUND, { weighed: false, guided: false })
  expect(length).toBe(naiveLength({ ...request, field }, 40))
})

test('a group moves along by the length of a piece that lies turned', () => {
  const either = piece('either', 1, 3, 4)
  const request = open(4, [
    keeping('cloth', 6, 0, { ...either, postures: [...either.postures, { width: 4, length: 3, flush: 0 }] }),
    keeping('cloth', 6, 0, piece('small', 1, 2, 2)),
    keeping('face', 6, 0, piece('narrow', 1, 2, 4)),
    keeping('face', 6, 0, piece('wide', 1, 4, 4)),
  ])
  const length = exact(request, SOUND, { weighed: false, guided: false })
  expect(length).toBe(naiveLength(request, 40))
})

/** What would hide what other rules lose, and so has orders of its own. */
interface Aids {
  readonly weighed: boolean
  readonly guided: boolean
}

function firstWrong(strictness: Strictness, aids: Aids, order: (seed: number) => Request) {
  for (let seed = 0; seed < 400; seed++) {
    const request = order(seed)
    const length = exact(request, strictness, aids)
    if (length !== exact(request, SOUND, aids)) return { request, length }
  }
  return null
}

/** The length that the exact search alone finds: no quick layout hides what it loses, no bound spares it a limit. */
function exact(request: Request, strictness: Strictness, { weighed, guided }: Aids): number | null {
  const problem = normalise(request)
  if (!problem) return null
  const bounds = new Bounds(problem, { most: 1_000_000, steps: 0 })
  if (weighed) bounds.best(Number.POSITIVE_INFINITY)
  const weightsFor = (reach: number) => (weighed && bounds.weightsFor(reach)) || []
  const relaxedFrom = guided ? 0 : Number.POSITIVE_INFINITY
  const target = { width: problem.width, lower: 1, upper: null, weightsFor }
  const found = shortest(problem, { targets: [target], effort: 1_000_000, relaxedFrom }, strictness).found[0]!
  expect(found.finished).toBe(true)
  return found.best && found.best.length * problem.unitAlong
}
