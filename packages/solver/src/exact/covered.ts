import type { Blocks } from './blocks.ts'
import type { Cell } from './kept.ts'

/**
 * Drops blocks for which others of their family stand in together, whatever phase is asked of them.
 *
 * A block of length l keeps it while its tied pieces lie at phases from its base to its slack beyond, an arc of the repeat; from there on it grows
 * by a unit for each that they move on. So one that is no wider and shorter by d stands in on an arc longer by d. When such arcs
 * together cover the block's own, one of them serves wherever the block does: beyond the arc's end both grow alike.
 *
 *     block        |======|            a repeat, unrolled
 *     stand-ins  |===|  |=====|
 *                      |===|
 */
export function dropCovered(family: readonly Cell[], blocks: Blocks, repeat: number, overlooked: number): void {
  let left: Arc[] = family.flatMap(({ phases, blocks: ids }) => ids.map((block) => ({ block, base: phases!.base })))
  if (left.length < 3) return
  const { width, length } = blocks
  left.sort((a, b) => length[a.block]! - length[b.block]! || width[a.block]! - width[b.block]! || a.base - b.base)
  const before = left.length
  for (const arc of [...left]) {
    const others = left.filter(
      (o) => o !== arc && width[o.block]! <= width[arc.block]! && length[o.block]! <= length[arc.block]!,
    )
    if (isCovered(arc, others, blocks, repeat, overlooked)) left = left.filter((o) => o !== arc)
  }
  if (left.length === before) return
  const kept = new Set(left.map((arc) => arc.block))
  for (const cell of family) cell.blocks = cell.blocks.filter((b) => kept.has(b))
}

interface Arc {
  readonly block: number
  readonly base: number
}

function isCovered(
  { block, base }: Arc,
  others: readonly Arc[],
  { length, slack }: Blocks,
  repeat: number,
  overlooked: number,
): boolean {
  for (let from = 0; from <= slack[block]!; ) {
    let to = -1
    for (const o of others) {
      const ahead = (base + from - o.base + repeat) % repeat
      const reach = Math.min(slack[o.block]! + length[block]! - length[o.block]!, repeat - 1)
      if (ahead <= reach) to = Math.max(to, from + reach - ahead)
    }
    if (to < from) return false
    from = to + 1 + overlooked
  }
  return true
}
