/** One way to take a piece: its size along the axis in question, and what it is worth. */
export interface Choice {
  readonly posture: number
  readonly size: number
  readonly price: number
}

/** More sums than this are not listed, nor looked at on the way: half a second or so. */
const MOST_SUMS = 100_000
export const MOST_WORK = 2_000_000

/**
 * Undominated sums of pieces in a row: none at hand is as dear and no longer. A bounded knapsack over lists (Nemhauser & Ullmann 1969):
 * exact for whole prices, and its cost depends on how many different sums there are, not on the unit.
 *
 * Each sum is a node that points to the sum it came from; `list` holds the undominated ones by size, prices rising.
 */
export class Sums {
  list: number[] = [0]
  /** sums looked at so far */
  looked = 0
  readonly size: number[] = [0]
  readonly price: number[] = [0]
  private readonly from: number[] = [-1]
  private readonly kind: number[] = [-1]
  private readonly posture: number[] = [-1]

  /** One more copy of a kind may be taken, in one of its ways, up to a size of `most`. False when that makes too many sums. */
  add(kind: number, choices: readonly Choice[], most: number): boolean {
    const before = this.list
    for (const choice of choices) this.list = this.merged(this.list, this.with(before, kind, choice, most))
    return this.list.length <= MOST_SUMS && this.looked <= MOST_WORK
  }

  /** Position in `list` of the longest sum within a room. */
  lastWithin(room: number): number {
    const { list, size } = this
    let low = 0
    let high = list.length - 1
    while (low < high) {
      const middle = (low + high + 1) >> 1
      if (size[list[middle]!]! <= room) low = middle
      else high = middle - 1
    }
    return low
  }

  /** The dearest price within a room, as a function of it; by a table where rooms up to `most` are few. */
  dearestWithin(most: number): (room: number) => number {
    const { list, price, size } = this
    if (most > MOST_TABLED) return (room) => price[list[this.lastWithin(room)]!]!
    const table = new Float64Array(most + 1)
    for (let room = 0, i = 0; room <= most; room++) {
      while (i + 1 < list.length && size[list[i + 1]!]! <= room) i++
      table[room] = price[list[i]!]!
    }
    return (room) => table[Math.min(room, most)]!
  }

  /** The pieces of a sum, as often as they are in it. */
  piecesOf(node: number): { readonly kind: number; readonly posture: number }[] {
    const out: { kind: number; posture: number }[] = []
    for (let n = node; this.from[n]! >= 0; n = this.from[n]!)
      out.push({ kind: this.kind[n]!, posture: this.posture[n]! })
    return out
  }

  private with(before: readonly number[], kind: number, choice: Choice, most: number): number[] {
    const out: number[] = []
    for (const node of before) {
      const size = this.size[node]! + choice.size
      if (size > most) break
      out.push(this.size.length)
      this.size.push(size)
      this.price.push(this.price[node]! + choice.price)
      this.from.push(node)
      this.kind.push(kind)
      this.posture.push(choice.posture)
    }
    return out
  }

  private merged(a: readonly number[], b: readonly number[]): number[] {
    const { size, price } = this
    this.looked += a.length + b.length
    const out: number[] = []
    let top = Number.NEGATIVE_INFINITY
    for (let i = 0, j = 0; i < a.length || j < b.length; ) {
      const p = a[i]
      const q = b[j]
      const first =
        q === undefined ||
        (p !== undefined && (size[p]! < size[q]! || (size[p]! === size[q]! && price[p]! >= price[q]!)))
      const node = first ? p! : q
      if (first) i++
      else j++
      if (price[node]! > top) {
        out.push(node)
        top = price[node]!
      }
    }
    return out
  }
}

const MOST_TABLED = 1 << 14
