import type { Box, Segment } from '../box.ts'
import { box, boxOf, crosses, meet, outside } from '../box.ts'

/**
 * Boxes found by where they lie: a grid of square cells, each with the boxes that reach into it, so that what lies far
 * away is never looked at. Asking takes as long as there are boxes near, not as there are on the whole drawing.
 */
export class Places {
  readonly #cell: number
  readonly #cells = new Map<number, number[]>()
  readonly #boxes: Box[] = []
  /** the last question in which a box was found, since it may lie in several cells */
  readonly #found: number[] = []
  #question = 0

  /** `by`: 1 on paper; cells are 20 mm there. */
  constructor(by: number) {
    this.#cell = 20 * by
  }

  add(boxes: readonly Box[]): void {
    for (const each of boxes) {
      const index = this.#boxes.push(each) - 1
      this.#found.push(0)
      this.#over(each, (key) => {
        const cell = this.#cells.get(key)
        if (cell) cell.push(index)
        else this.#cells.set(key, [index])
        return false
      })
    }
  }

  /** All boxes that meet this one. */
  near(area: Box): readonly Box[] {
    const found: Box[] = []
    this.#question += 1
    this.#over(area, (key) => {
      for (const index of this.#cells.get(key) ?? []) {
        if (this.#found[index] === this.#question) continue
        this.#found[index] = this.#question
        if (meet(this.#boxes[index]!, area)) found.push(this.#boxes[index]!)
      }
      return false
    })
    return found
  }

  /** Whether any box meets this one. */
  meets(area: Box): boolean {
    return this.#over(area, (key) => (this.#cells.get(key) ?? []).some((index) => meet(this.#boxes[index]!, area)))
  }

  crossedBy(segment: Segment): boolean {
    return this.#over(boxOf(segment, 0.01), (key) =>
      (this.#cells.get(key) ?? []).some((index) => crosses(segment, this.#boxes[index]!)),
    )
  }

  /** What is left of a segment outside all boxes. */
  outside(segment: Segment, shortest?: number): readonly Segment[] {
    return outside(segment, this.near(boxOf(segment, 0.01)), shortest)
  }

  // visits the cells a box reaches into, until one says that it is enough
  #over(b: Box, visit: (key: number) => boolean): boolean {
    const cell = this.#cell
    const [left, right] = [Math.floor(b.x / cell), Math.floor((b.x + b.width) / cell)]
    const [top, bottom] = [Math.floor(b.y / cell), Math.floor((b.y + b.height) / cell)]
    for (let y = top; y <= bottom; y++) for (let x = left; x <= right; x++) if (visit(y * ROW + x)) return true
    return false
  }
}

// more cells than any drawing is wide
const ROW = 1 << 16

/** The smallest box that holds both. */
export function around(a: Box, b: Box): Box {
  const [x, y] = [Math.min(a.x, b.x), Math.min(a.y, b.y)]
  return box(x, y, Math.max(a.x + a.width, b.x + b.width) - x, Math.max(a.y + a.height, b.y + b.height) - y)
}
