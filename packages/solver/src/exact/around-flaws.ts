import { END, LEFT, RIGHT, START } from '../model.ts'
import type { Problem, Spot } from '../problem.ts'
import type { Tree } from './blocks.ts'
import { spotsOf } from './blocks.ts'
import type { Finished } from './fronts.ts'

const MOST_VARIANTS = 4096

/**
 * A block's pieces clear of all flaws, by exchanging the two halves of its joins and by moving the whole within what room the field
 * leaves; null when none of the variants tried is clear. The block keeps its size, so a layout found here is as short
 * as one on flawless cloth; finding none proves nothing.
 */
export function aroundFlaws(problem: Problem, block: Finished, longest: number): readonly Spot[] | null {
  const { tree, moved } = block
  const variants = Math.min(MOST_VARIANTS, variantsOf(tree, problem.tied))
  // what keeps the field's own phase moves along by whole repeats
  const step = problem.kinds.find((k) => k.tie?.absolute)?.tie?.repeat ?? 1
  const starts = [block.start]
  for (const f of problem.flaws) {
    const start = block.start + step * Math.ceil((f.y + f.length - block.start) / step)
    if (tree.flush === 0 && start + block.length - block.start <= longest) starts.push(start)
  }
  for (const start of starts)
    for (let variant = 0; variant < variants; variant++) {
      const spots = spotsOf(problem, exchanged(tree, variant, problem.tied), start, moved)
      for (const moved of [spots, flushRight(problem, tree, spots)]) if (moved && clear(problem, moved)) return moved
    }
  return null
}

// where phases are kept, what lies after what may not change
function mayExchange(t: Tree, tied: boolean): boolean {
  if (t.how === 'piece' || t.shift !== 0 || (tied && t.how === 'after')) return false
  const low = t.how === 'beside' ? LEFT : START
  const high = t.how === 'beside' ? RIGHT : END
  return ((t.first.flush | t.second.flush) & (low | high)) === 0
}

/** How many ways there are to exchange the halves of a block's joins. */
export function variantsOf(tree: Tree, tied: boolean): number {
  return 2 ** exchangeable(tree, tied)
}

function exchangeable(t: Tree, tied: boolean): number {
  if (t.how === 'piece') return 0
  return (mayExchange(t, tied) ? 1 : 0) + exchangeable(t.first, tied) + exchangeable(t.second, tied)
}

/** The tree with those joins exchanged whose bits are set, in the order they are met. */
export function exchanged(tree: Tree, variant: number, tied: boolean): Tree {
  let bit = 0
  const visit = (t: Tree): Tree => {
    if (t.how === 'piece') return t
    const turn = mayExchange(t, tied) && ((variant >> bit++) & 1) === 1
    const first = visit(t.first)
    const second = visit(t.second)
    return turn ? { ...t, first: second, second: first } : { ...t, first, second }
  }
  return visit(tree)
}

/** All of it moved to the right as far as it goes, when nothing must touch a side. */
function flushRight(problem: Problem, tree: Tree, spots: readonly Spot[]): Spot[] | null {
  const room = problem.width - problem.zones.left - problem.zones.right - tree.width
  if (tree.flush & (LEFT | RIGHT) || room <= 0) return null
  return spots.map((s) => ({ ...s, x: s.x + room }))
}

function clear(problem: Problem, spots: readonly Spot[]): boolean {
  return spots.every((s) => {
    const p = problem.kinds[s.kind]!.postures[s.posture]!
    return problem.flaws.every(
      (f) => s.x >= f.x + f.width || f.x >= s.x + p.width || s.y >= f.y + f.length || f.y >= s.y + p.length,
    )
  })
}
