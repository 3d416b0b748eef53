import type { Order } from '@lengthwise/pieces'
import type { Answer, Rect } from '@lengthwise/solver'
import type { Ground } from './field.ts'
import type { Part } from './parts.ts'
import { cutsIn, grown, inLine, largestLeft, partsOf, partsOfFree, placedOf } from './parts.ts'
import { tidyParts } from './tidy-parts.ts'

/**
 * The whole cloth taken apart: squared at both ends, unused selvedges off, then the layout. What is bought beyond the laid length
 * goes with the last trim unless it is worth keeping; a trim goes with the waste next to it.
 */
export function comesApart(
  order: Order,
  ground: Ground,
  answer: Answer,
  whole: { readonly width: number; readonly length: number },
): Part {
  const { x, y } = ground.origin
  const keeps = keepsOf(order)
  const usable: Rect = { x, y, width: ground.table.usableWidth, length: whole.length - 2 * y }
  const { beyond } = ground
  const field = fieldOn(ground, usable)
  const laid = answer.tree
    ? fullLength(partsOf(answer.tree, x - beyond.x, y - beyond.y, usable), field, keeps)
    : partsOfFree(placedOf(answer.placements, x - beyond.x, y - beyond.y), field, keeps)
  const inner = withStrips(tidyParts(laid, keeps), usable)
  const trim = (box: Rect): Part => ({ kind: 'trim', box })
  const across = (from: number, to: number): Rect => ({ x: 0, y: from, width: whole.width, length: to - from })

  const bolt = ground.table.cloth.from === 'bolt'
  const last = inner.kind === 'cuts' && inner.runs === 'across' ? inner.parts.at(-1)! : null
  const tail = (bolt || x > 0 || y > 0) && last?.kind === 'left-over' ? last : null
  const body = tail && inner.kind === 'cuts' ? inLine('across', inner.parts.slice(0, -1)) : inner
  const { box } = body
  const atLeft = trim({ ...box, x: 0, width: x })
  const left = fewer(inLine('along', [atLeft, body]), grown(body, 'left', x, keeps), keeps)
  const rest = whole.width - x - usable.width
  const atRight = trim({ ...box, x: x + usable.width, width: rest })
  const sides = fewer(inLine('along', [left, atRight]), grown(left, 'right', rest, keeps), keeps)
  const atEnd = trim(across(whole.length - y, whole.length))
  const start = trim(across(0, y))
  if (!tail)
    return inLine('across', [start, fewer(inLine('across', [sides, atEnd]), grown(sides, 'end', y, keeps), keeps)])
  const tailBox = across(tail.box.y, tail.box.y + tail.box.length)
  return inLine('across', [
    start,
    sides,
    keeps(tailBox) ? { kind: 'left-over' as const, box: tailBox } : trim(tailBox),
    atEnd,
  ])
}

/** Trimmed off by itself, or with the left-over next to it where that spares a division and no remnant suffers. */
function fewer(trimmed: Part, shared: Part, keeps: (box: Rect) => boolean): Part {
  const spares = cutsIn(shared) < cutsIn(trimmed) && largestLeft(shared, keeps) >= largestLeft(trimmed, keeps)
  return spares ? shared : trimmed
}

function fullLength(part: Part, usable: Rect, keeps: (box: Rect) => boolean): Part {
  const extra = usable.y + usable.length - part.box.y - part.box.length
  return grown(part, 'end', extra, keeps)
}

/** The field on the whole cloth; on a bolt it goes on to the end of what is bought. */
function fieldOn({ beyond, field, table }: Ground, usable: Rect): Rect {
  const x = usable.x - Math.min(0, beyond.x)
  const y = usable.y - Math.min(0, beyond.y)
  const right = Math.min(usable.x + usable.width, usable.x - beyond.x + field.width)
  const long = table.length === null || field.length === null ? Number.POSITIVE_INFINITY : field.length
  const end = Math.min(usable.y + usable.length, usable.y - beyond.y + long)
  return { x, y, width: right - x, length: end - y }
}

/** What was laid with the strips of kept hems beside it. */
function withStrips(part: Part, usable: Rect): Part {
  const { box } = part
  const end = box.y + box.length
  const right = box.x + box.width
  const strip = (x: number, y: number, width: number, length: number): Part => ({
    kind: 'left-over',
    box: { x, y, width, length },
  })
  const row = inLine('along', [
    strip(usable.x, box.y, box.x - usable.x, box.length),
    part,
    strip(right, box.y, usable.x + usable.width - right, box.length),
  ])
  return inLine('across', [
    strip(usable.x, usable.y, usable.width, box.y - usable.y),
    row,
    strip(usable.x, end, usable.width, usable.y + usable.length - end),
  ])
}

/** Is a left-over worth keeping? It may be turned. */
export function keepsOf(order: Order): (box: Rect) => boolean {
  const { width, length: long } = order.worthKeeping
  const [short, tall] = width < long ? [width, long] : [long, width]
  return (box) => Math.min(box.width, box.length) >= short && Math.max(box.width, box.length) >= tall
}
