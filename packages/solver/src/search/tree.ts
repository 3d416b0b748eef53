import type { Rect } from '../model.ts'
import type { Spot } from '../problem.ts'

/**
 * A guillotine layout as an ordered tree whose splits may have any number of parts: the shape in which sections can be taken out,
 * joined and filled again. `rows`: the parts lie one after another along the strip; otherwise side by side across it.
 */
export type Part =
  | { readonly kind: 'piece'; readonly rect: Rect; readonly of: number; readonly posture: number }
  | { readonly kind: 'spare'; readonly rect: Rect }
  | Split

export interface Split {
  readonly kind: 'split'
  readonly rect: Rect
  readonly rows: boolean
  readonly parts: readonly Part[]
  /** how many pieces, and how many spare parts, hang below */
  readonly pieces: number
  readonly spares: number
}

export function pieceCount(part: Part): number {
  return part.kind === 'piece' ? 1 : part.kind === 'spare' ? 0 : part.pieces
}

export function spareCount(part: Part): number {
  return part.kind === 'piece' ? 0 : part.kind === 'spare' ? 1 : part.spares
}

export function rect(x: number, y: number, width: number, length: number): Rect {
  return { x, y, width, length }
}

/** A split without empty parts; parts split the same way are lifted into it, and a single part stands for itself. */
export function splitOf(whole: Rect, rows: boolean, parts: readonly Part[]): Part {
  const flat: Part[] = []
  for (const part of parts) {
    if (part.rect.width === 0 || part.rect.length === 0) continue
    if (part.kind === 'split' && part.rows === rows) flat.push(...part.parts)
    else flat.push(part)
  }
  if (flat.length === 0) return { kind: 'spare', rect: whole }
  if (flat.length === 1) return flat[0]!
  let pieces = 0
  let spares = 0
  for (const part of flat) {
    pieces += pieceCount(part)
    spares += spareCount(part)
  }
  return { kind: 'split', rect: whole, rows, parts: flat, pieces, spares }
}

export function piecesIn(part: Part): Extract<Part, { kind: 'piece' }>[] {
  const found: Extract<Part, { kind: 'piece' }>[] = []
  const walk = (each: Part): void => {
    if (each.kind === 'piece') found.push(each)
    else if (each.kind === 'split') each.parts.forEach(walk)
  }
  walk(part)
  return found
}

/** The least length the tree's pieces need when every spare part is closed up, the divisions staying as they are. */
export function tightLength(part: Part): number {
  if (part.kind === 'piece') return part.rect.length
  if (part.kind === 'spare') return 0
  const lengths = part.parts.map(tightLength)
  return part.rows ? lengths.reduce((sum, each) => sum + each, 0) : Math.max(...lengths)
}

/**
 * The tree laid from `at`, spare parts between rows closed up, so that everything lies as near the start as its divisions allow.
 * Reads sizes and the order of parts, not positions. Only for layouts whose pieces may lie anywhere.
 */
export function closedUp(part: Part, at: { x: number; y: number; length: number }): Part {
  const whole = rect(at.x, at.y, part.rect.width, at.length)
  if (part.kind === 'spare') return { kind: 'spare', rect: whole }
  if (part.kind === 'piece') {
    const own = { ...part, rect: rect(at.x, at.y, part.rect.width, part.rect.length) }
    const rest = at.length - part.rect.length
    const spare: Part = { kind: 'spare', rect: rect(at.x, at.y + part.rect.length, part.rect.width, rest) }
    return splitOf(whole, true, [own, spare])
  }
  if (!part.rows) {
    let x = at.x
    const columns = part.parts.map((each) => {
      const column = closedUp(each, { x, y: at.y, length: at.length })
      x += each.rect.width
      return column
    })
    return splitOf(whole, false, columns)
  }
  let y = at.y
  const rows = part.parts.map((each) => {
    const row = closedUp(each, { x: at.x, y, length: tightLength(each) })
    y += row.rect.length
    return row
  })
  const spare: Part = { kind: 'spare', rect: rect(at.x, y, part.rect.width, at.y + at.length - y) }
  return splitOf(whole, true, [...rows, spare])
}

export function spotsOf(part: Part): Spot[] {
  return piecesIn(part).map(({ of: kind, posture, rect: { x, y } }) => ({ kind, posture, x, y }))
}
