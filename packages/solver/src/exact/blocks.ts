import { END, LEFT, RIGHT, START } from '../model.ts'
import type { Problem, Spot } from '../problem.ts'

/** How a block came about: one piece, two blocks side by side, or one after the other. */
export const PIECE = 0
export const BESIDE = 1
export const AFTER = 2

export const UNTIED = -1

/**
 * Blocks made bottom-up, in typed arrays that grow: size, sides they must touch, and what they are made of.
 * Numbers of blocks are handed out in order.
 */
export class Blocks {
  count = 0
  /** the trials that the block may serve, as bits */
  serves = new Int32Array(1024)
  width = new Float64Array(1024)
  length = new Float64Array(1024)
  /** sides of the field that the block must touch */
  flush = new Uint8Array(1024)
  how = new Uint8Array(1024)
  /** a piece: kind and posture; a join: left and right, or earlier and later block */
  first = new Int32Array(1024)
  second = new Int32Array(1024)
  /** the tied pieces of the second block lie this much farther than they need; below 0: those of the first do */
  shift = new Float64Array(1024)
  /** how far the block's tied pieces may move along, all by the same, before it grows; UNTIED: none is tied to pieces elsewhere */
  slack = new Float64Array(1024)

  add(
    serves: number,
    how: number,
    width: number,
    length: number,
    flush: number,
    first: number,
    second: number,
    shift: number,
    slack: number,
  ): number {
    if (this.count === this.width.length) this.grow()
    const i = this.count++
    this.serves[i] = serves
    this.how[i] = how
    this.width[i] = width
    this.length[i] = length
    this.flush[i] = flush
    this.first[i] = first
    this.second[i] = second
    this.shift[i] = shift
    this.slack[i] = slack
    return i
  }

  private grow(): void {
    const size = this.count * 2
    const longer = <T extends Float64Array | Uint8Array | Int32Array>(from: T, to: T): T => {
      to.set(from as never)
      return to
    }
    this.serves = longer(this.serves, new Int32Array(size))
    this.width = longer(this.width, new Float64Array(size))
    this.length = longer(this.length, new Float64Array(size))
    this.flush = longer(this.flush, new Uint8Array(size))
    this.how = longer(this.how, new Uint8Array(size))
    this.first = longer(this.first, new Int32Array(size))
    this.second = longer(this.second, new Int32Array(size))
    this.shift = longer(this.shift, new Float64Array(size))
    this.slack = longer(this.slack, new Float64Array(size))
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
      readonly slack: number
    }
  | {
      readonly how: 'beside' | 'after'
      readonly first: Tree
      readonly second: Tree
      readonly shift: number
      readonly flush: number
      readonly width: number
      readonly length: number
      readonly slack: number
    }

export function treeOf(blocks: Blocks, block: number): Tree {
  const flush = blocks.flush[block]!
  const width = blocks.width[block]!
  const length = blocks.length[block]!
  const slack = blocks.slack[block]!
  const first = blocks.first[block]!
  const second = blocks.second[block]!
  if (blocks.how[block] === PIECE) return { how: 'piece', kind: first, posture: second, flush, width, length, slack }
  const how = blocks.how[block] === BESIDE ? 'beside' : 'after'
  return {
    how,
    first: treeOf(blocks, first),
    second: treeOf(blocks, second),
    shift: blocks.shift[block]!,
    flush,
    width,
    length,
    slack,
  }
}

/**
 * Where the pieces of a block lie when it starts at `start` on the left side, its tied pieces `moved` beyond where they would:
 * everything pushed toward left and start as far as that allows, but out of zones it may not enter; what must touch right or end
 * goes there.
 */
export function spotsOf(problem: Problem, tree: Tree, start: number, moved: number): Spot[] {
  const { zones } = problem
  const repeat = problem.kinds.find((k) => k.tie)?.tie?.repeat ?? 1
  const spots: Spot[] = []
  const put = (t: Tree, x: number, y: number, by: number): void => {
    const on = t.slack === UNTIED ? 0 : by % repeat
    if (t.how === 'piece') {
      spots.push({
        kind: t.kind,
        posture: t.posture,
        x: t.flush & LEFT ? 0 : t.flush & RIGHT ? problem.width - t.width : Math.max(x, zones.left),
        y: t.flush & START ? 0 : t.flush & END ? problem.length! - t.length : Math.max(y, zones.start) + on,
      })
      return
    }
    const { first: a, second: b, shift } = t
    const onA = on + Math.max(0, -shift)
    const onB = on + Math.max(0, shift)
    put(a, x, y, onA)
    if (t.how === 'beside') {
      const right = a.flush & LEFT ? Math.max(x + a.width, zones.left) : Math.max(x, zones.left) + a.width
      put(b, right, y, onB)
    } else {
      const end = a.flush & START ? Math.max(y + a.length, zones.start) : Math.max(y, zones.start) + a.length
      const pushed = a.slack === UNTIED ? 0 : Math.max(0, (onA % repeat) - a.slack)
      put(b, x, end + pushed, onB - pushed)
    }
  }
  put(tree, 0, start, moved)
  return spots
}
