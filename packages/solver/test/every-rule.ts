import type { Demand, Field, Posture, Request, Tie } from '../src/index.ts'
import { END, LEFT, RIGHT, START } from '../src/index.ts'
import { groupsOf } from './naive.ts'
import { seeded } from './orders.ts'

/** Orders with more lists of counts than this, times the phases of their groups, or on wider cloth, are too much for the naive method. */
const FEW = 120
const NARROW = 8

/**
 * A random order under any of the rules: sides to touch, zones, turning, cloth of set length, ties along, across and to the cloth
 * itself, flaws; to be cut edge to edge, or freely. Two of three are small enough for a naive method.
 */
export function anyOrder(seed: number): Request {
  const below = seeded(seed * 7919 + 13)
  const sometimes = (oneIn: number) => below(oneIn) === 0
  const small = below(3) > 0
  const width = small ? 3 + below(5) : 6 + below(10)
  const length = sometimes(3) ? 4 + below(small ? 9 : 16) : null
  const zoned = sometimes(3)
  const zone = () => (zoned && sometimes(2) ? 1 + below(2) : 0)
  const zones = { left: zone(), right: zone(), start: zone(), end: length === null ? 0 : zone() }
  const field: Field = { width, length, zones, flaws: [] }
  const rules = {
    sides: sometimes(3),
    ends: sometimes(4),
    turning: sometimes(3),
    ties: sometimes(3) ? tiesFor(below) : null,
  }
  const demands: Demand[] = []
  let left = small ? 2 + below(3) : 4 + below(6)
  while (left > 0) {
    const count = Math.min(left, 1 + below(3))
    left -= count
    const tie = rules.ties && below(3) > 0 ? rules.ties[below(rules.ties.length)]! : null
    demands.push({
      id: `d${demands.length}`,
      count,
      // what must touch the start of open cloth has one row only to lie in
      postures: posturesFor(below, field, { ...rules, ends: rules.ends && (length !== null || demands.length === 0) }),
      tie: tie && { ...tie, offset: below(2 * tie.repeat) - (tie.repeat >> 1) },
    })
  }
  const cuts = below(10) < 7 ? 'guillotine' : 'free'
  return { field: { ...field, flaws: sometimes(4) ? flawsFor(below, field) : [] }, demands, cuts }
}

/** How many different lists of counts there are below an order's own. */
const multisetsOf = ({ demands }: Request): number => demands.reduce((n, d) => n * (d.count + 1), 1)

/** Is an order small enough for the naive method? */
export const isFew = (request: Request): boolean =>
  request.field.width <= NARROW && groupsOf(request).reduce((n, group) => n * group.phases, multisetsOf(request)) <= FEW

type Below = (n: number) => number

function posturesFor(
  below: Below,
  { width, length, zones }: Field,
  rules: { readonly sides: boolean; readonly ends: boolean; readonly turning: boolean },
): Posture[] {
  const w = 1 + below(Math.max(1, Math.min(width - zones.left - zones.right, 7)))
  const l = 1 + below(6)
  let flush = 0
  if (rules.sides && below(2)) flush |= [LEFT, RIGHT, LEFT | RIGHT][below(3)]!
  if (rules.ends && below(3) === 0) flush |= length !== null && below(2) ? END : START
  const own = { width: (flush & LEFT && flush & RIGHT) || below(9) === 0 ? width : w, length: l, flush }
  const postures: Posture[] = [own]
  if (rules.turning && below(2) && l <= width)
    postures.push({ width: l, length: own.width, flush: below(2) ? flush & ~(LEFT | RIGHT) : 0 })
  // what may be turned end for end finds its selvedge at either side
  if (flush === LEFT || flush === RIGHT) if (below(2)) postures.push({ ...own, flush: (LEFT | RIGHT) ^ flush })
  return postures
}

function tiesFor(below: Below): Omit<Tie, 'offset'>[] {
  const repeat = 2 + below(4)
  const first: Omit<Tie, 'offset'> = {
    group: 'a',
    axis: below(3) === 0 ? 'across' : 'along',
    repeat,
    absolute: below(4) === 0,
  }
  const second: Omit<Tie, 'offset'> = {
    group: below(3) === 0 ? 'a' : 'b',
    axis: below(3) === 0 ? 'across' : first.axis,
    repeat: below(3) === 0 ? 2 + below(4) : repeat,
    absolute: below(4) === 0,
  }
  if (second.group === first.group && second.axis === first.axis) return [first]
  return below(2) ? [first] : [first, second]
}

function flawsFor(below: Below, { width, length }: Field): Field['flaws'] {
  return Array.from({ length: 1 + below(2) }, () => {
    const x = below(width)
    const y = below(length ?? 8)
    return {
      x,
      y,
      width: Math.min(1 + below(2), width - x),
      length: Math.min(1 + below(2), (length ?? Number.POSITIVE_INFINITY) - y),
    }
  })
}
