/** Rectangles of the cut tree that can be taken out and filled again: one division, or some parts of one. */
import type { Random } from './random.ts'
import type { Part, Split } from './tree.ts'
import { pieceCount, rect, spareCount, splitOf } from './tree.ts'
import type { Trial } from './trial.ts'

/** From the root down to a leaf drawn at random; where wanted and possible, to a spare part. */
export function pathToSomeLeaf(root: Part, spare: boolean, random: Random): Part[] {
  const size = spare && spareCount(root) > 0 ? spareCount : leafCount
  const path: Part[] = [root]
  for (let last = root; last.kind === 'split'; ) {
    let at = random.below(size(last))
    const next = last.parts.find((part) => {
      at -= size(part)
      return at < 0
    })
    last = next!
    path.push(last)
  }
  return path
}

function leafCount(part: Part): number {
  return pieceCount(part) + spareCount(part)
}

export interface Region {
  readonly rect: Part['rect']
  readonly parts: readonly Part[]
  /** index into the path of the part that is replaced, or of the division some of whose parts are */
  readonly at: number
  /** null: the whole part */
  readonly within: { readonly split: Split; readonly chosen: ReadonlySet<Part> } | null
}

/** The part of the tree round the end of a path, with some of its neighbours, that holds at most so many pieces; null: it holds none. */
export function regionAround(trial: Trial, path: readonly Part[], most: number, random: Random): Region | null {
  let at = path.length - 1
  while (at > 0 && pieceCount(path[at - 1]!) <= most) at--
  const whole = path[at]!
  if (at === 0) return { rect: whole.rect, parts: [whole], at, within: null }
  // the part above holds too many: take this one and some of its neighbours
  const split = path[at - 1] as Split
  const chosen = new Set<Part>([whole])
  let pieces = pieceCount(whole)
  let [from, to] = [split.parts.indexOf(whole), split.parts.indexOf(whole)]
  for (let tries = 0; tries < 6; tries++) {
    let next: Part | undefined
    if (trial.plain) next = split.parts[random.below(split.parts.length)]!
    else next = random.below(2) === 0 ? split.parts[from - 1] : split.parts[to + 1]
    if (next === undefined || chosen.has(next)) continue
    const more = pieceCount(next)
    if (pieces + more > most) continue
    chosen.add(next)
    pieces += more
    const index = split.parts.indexOf(next)
    from = Math.min(from, index)
    to = Math.max(to, index)
  }
  if (chosen.size === 1 && pieces === 0) return null
  if (chosen.size === split.parts.length) return { rect: split.rect, parts: [split], at: at - 1, within: null }
  const parts = split.parts.filter((part) => chosen.has(part))
  const size = parts.reduce((sum, part) => sum + (split.rows ? part.rect.length : part.rect.width), 0)
  const { width, length } = split.rect
  const at0 = trial.plain ? { x: 0, y: 0 } : parts[0]!.rect
  const joined = split.rows ? rect(at0.x, at0.y, width, size) : rect(at0.x, at0.y, size, length)
  return { rect: joined, parts, at: at - 1, within: { split, chosen } }
}

/**
 * The tree with the region filled anew in the place of its first part. Where pieces may lie anywhere, other parts close ranks, and
 * the positions in the tree no longer hold: only sizes and order count until it is closed up.
 */
export function replaced(path: readonly Part[], region: Region, filling: Part): Part {
  let part = filling
  if (region.within !== null) {
    const { split, chosen } = region.within
    const [first] = region.parts
    const parts = split.parts.flatMap((each) => (each === first ? [filling] : chosen.has(each) ? [] : [each]))
    part = splitOf(split.rect, split.rows, parts)
  }
  for (let depth = region.at - 1; depth >= 0; depth--) {
    const above = path[depth] as Split
    const old = path[depth + 1]!
    part = splitOf(
      above.rect,
      above.rows,
      above.parts.map((each) => (each === old ? part : each)),
    )
  }
  return part
}
