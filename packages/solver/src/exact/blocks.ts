import { END, LEFT, RIGHT, START } from '../model.ts'
import type { Problem, Spot } from '../problem.ts'

/** How a block came about: one piece, two blocks side by side, or one after the other. */
export const PIECE = 0
export const BESIDE = 1
export const AFTER = 2

/**
 * Blocks made bottom-up, in typed arrays that grow: size, sides they must touch, and what they are made of.
 * Numbers of blocks are handed out in order.
 */
export class Blocks {
  count = 0
  width = new Float64Array(1024)
  length = new Float64Array(1024)
  /** sides of the field that the block must touch */
  flush = new Uint8Array(1024)
  how = new Uint8Array(1024)
  /** a piece: kind and posture; a join: left and right, or earlier and later block */
  first = new Int32Array(1024)
  second = new Int32Array(1024)
  /** along the strip: the second block lies this much farther than it need; below 0: the first does (beside only) */
  shift = new Float64Array(1024)

  add(how: number, width: number, length: number, flush: number, first: number, second: number, shift: number): number {
    if (this.count === this.width.length) this.grow()
    const i = this.count++
    this.how[i] = how
    this.width[i] = width
    this.length[i] = length
    this.flush[i] = flush
    this.first[i] = first
    this.second[i] = second
    this.shift[i] = shift
    return i
  }

  private grow(): void {
    const size = this.count * 2
    const longer = <T extends Float64Array | Uint8Array | Int32Array>(from: T, to: T): T => {
      to.set(from as never)
      return to
    }
    this.width = longer(this.width, new Float64Array(size))
    this.length = longer(this.length, new Float64Array(size))
    this.flush = longer(this.flush, new Uint8Array(size))
    this.how = longer(this.how, new Uint8Array(size))
    this.first = longer(this.first, new Int32Array(size))
    this.second = longer(this.second, new Int32Array(size))
    this.shift = longer(this.shift, new Float64Array(size))
  }
}

/** A block taken out of the arrays, to be put down later. */
export type Tree =
  | {
      readonly how: 'piece'
      readonly kind: number
      readonly posture: number
      readonly flush: number
      readonly width: number
      readonly length: number
    }
  | {
      readonly how: 'beside' | 'after'
      readonly first: Tree
      readonly second: Tree
      readonly shift: number
      readonly flush: number
      readonly width: number
      readonly length: number
    }

export function treeOf(blocks: Blocks, block: number): Tree {
  const flush = blocks.flush[block]!
  const width = blocks.width[block]!
  const length = blocks.length[block]!
  const first = blocks.first[block]!
  const second = blocks.second[block]!
  if (blocks.how[block] === PIECE) return { how: 'piece', kind: first, posture: second, flush, width, length }
  const how = blocks.how[block] === BESIDE ? 'beside' : 'after'
  return {
    how,
    first: treeOf(blocks, first),
    second: treeOf(blocks, second),
    shift: blocks.shift[block]!,
    flush,
    width,
    length,
  }
}

/**
 * Where the pieces of a block lie when it starts at `start` on the left side: everything pushed toward left and start as far
 * as its shifts allow, but out of zones it may not enter; what must touch right or end goes there.
 */
export function spotsOf(problem: Problem, tree: Tree, start: number): Spot[] {
  const { zones } = problem
  const spots: Spot[] = []
  const put = (t: Tree, x: number, y: number): void => {
    if (t.how === 'piece') {
      spots.push({
        kind: t.kind,
        posture: t.posture,
        x: t.flush & LEFT ? 0 : t.flush & RIGHT ? problem.width - t.width : Math.max(x, zones.left),
        y: t.flush & START ? 0 : t.flush & END ? problem.length! - t.length : Math.max(y, zones.start),
      })
      return
    }
    const { first: a, second: b, shift } = t
    put(a, x, y + Math.max(0, -shift))
    if (t.how === 'beside') {
      const right = a.flush & LEFT ? Math.max(x + a.width, zones.left) : Math.max(x, zones.left) + a.width
      put(b, right, y + Math.max(0, shift))
    } else {
      const end = a.flush & START ? Math.max(y + a.length, zones.start) : Math.max(y, zones.start) + a.length
      put(b, x, end + shift)
    }
  }
  put(tree, 0, start)
  return spots
}
