import type { ClothEdge, Order, Side } from '@lengthwise/pieces'
import type { Rect } from '@lengthwise/solver'
import type { Ground } from './field.ts'
import { lostPerEdge } from './field.ts'
import type { ClothSide } from './turn.ts'

/**
 * Hems that must be kept: none of their run may end on waste. A hem that pieces need ends on them and on remnants beside
 * them; one that no piece needs stays on a strip along the whole of it, deep enough to be a remnant worth keeping.
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

/** Do these boxes, pieces and remnants, take in all of `usable`'s run along one side? */
export function runsAlong(side: ClothSide, usable: Rect, kept: readonly Rect[]): boolean {
  let run = 0
  for (const box of kept) {
    if (side === 'start' && box.y === usable.y) run += box.width
    if (side === 'end' && box.y + box.length === usable.y + usable.length) run += box.width
    if (side === 'left' && box.x === usable.x) run += box.length
    if (side === 'right' && box.x + box.width === usable.x + usable.width) run += box.length
  }
  return run === (side === 'start' || side === 'end' ? usable.width : usable.length)
}
