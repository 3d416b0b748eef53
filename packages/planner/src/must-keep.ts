import type { ClothEdge, Order, Side } from '@lengthwise/pieces'
import type { Rect } from '@lengthwise/solver'
import type { Ground } from './field.ts'
import { lostPerEdge } from './field.ts'
import type { ClothSide } from './turn.ts'

/**
 * Hems that must be kept: none of their run may end on waste. A hem that pieces need ends on them and on remnants beside
 * them; one that every piece can do without stays on a strip along the whole of it, deep enough to be a remnant worth keeping,
 * or, where that leaves no room, ends on pieces that could lie at it and on remnants beside them.
 */
const LIES: Readonly<Record<Side, ClothSide>> = { head: 'start', foot: 'end', left: 'left', right: 'right' }

/** Sides of a ground whose hem must be kept. */
export function mustKeep(ground: Ground): readonly ClothSide[] {
  const { cloth } = ground.table
  return cloth.mustKeep.map((side) => LIES[side]).filter((side) => ground.sides[side].kind === 'hem')
}

/** The ground without a strip along each of these sides; where no strip would be worth keeping, all of it goes. */
export function reserving(order: Order, ground: Ground, sides: readonly ClothSide[]): Ground {
  if (sides.length === 0) return ground
  const { width, length: long } = order.worthKeeping
  const [short, tall] = width < long ? [width, long] : [long, width]
  const { field } = ground
  const whole = field.length ?? Number.POSITIVE_INFINITY
  const depth = (side: ClothSide) => {
    if (!sides.includes(side)) return 0
    const { usableWidth } = ground.table
    const run = side === 'start' || side === 'end' ? usableWidth : whole
    const edge = ground.sides[side]
    return Math.max(edge.kind === 'hem' ? edge.depth : 0, run >= tall ? short : run >= short ? tall : whole)
  }
  const lost = lostPerEdge(ground.table.cloth)
  // a torn side is no longer the cloth's own
  const off = (side: ClothSide) => (sides.includes(side) ? depth(side) + lost : 0)
  const raw: ClothEdge = { kind: 'raw' }
  const left = off('left')
  const start = off('start')
  const narrower = field.width - left - off('right')
  const shorter = whole - start - off('end')
  const zone = (side: ClothSide) => (sides.includes(side) ? 0 : field.zones[side])
  return {
    ...ground,
    beyond: { x: ground.beyond.x - left, y: ground.beyond.y - start },
    field: {
      width: Math.max(1, narrower),
      length: Math.max(0, shorter),
      zones: { left: zone('left'), right: zone('right'), start: zone('start'), end: zone('end') },
      flaws: field.flaws.flatMap((flaw) => {
        const x = Math.max(0, flaw.x - left)
        const y = Math.max(0, flaw.y - start)
        const right = Math.min(narrower, flaw.x + flaw.width - left)
        const end = Math.min(shorter, flaw.y + flaw.length - start)
        return x < right && y < end ? [{ x, y, width: right - x, length: end - y }] : []
      }),
    },
    sides: {
      left: sides.includes('left') ? raw : ground.sides.left,
      right: sides.includes('right') ? raw : ground.sides.right,
      start: sides.includes('start') ? raw : ground.sides.start,
      end: sides.includes('end') ? raw : ground.sides.end,
    },
  }
}

/** Do these boxes, pieces and remnants, take in all of `usable`'s run along one side? What they have beyond it, from a trim, counts nothing. */
export function runsAlong(side: ClothSide, usable: Rect, kept: readonly Rect[]): boolean {
  const right = usable.x + usable.width
  const end = usable.y + usable.length
  const across = (box: Rect) => Math.min(box.x + box.width, right) - Math.max(box.x, usable.x)
  const along = (box: Rect) => Math.min(box.y + box.length, end) - Math.max(box.y, usable.y)
  let run = 0
  for (const box of kept) {
    if (side === 'start' && box.y === usable.y) run += across(box)
    if (side === 'end' && box.y + box.length === end) run += across(box)
    if (side === 'left' && box.x === usable.x) run += along(box)
    if (side === 'right' && box.x + box.width === right) run += along(box)
  }
  return run === (side === 'start' || side === 'end' ? usable.width : usable.length)
}
