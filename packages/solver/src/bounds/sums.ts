/** One way to take a piece: its size along the axis in question, and what it is worth. */
export interface Choice {
  readonly posture: number
  readonly size: number
  readonly price: number
}

export interface Piece {
  readonly kind: number
  readonly posture: number
}

/** Sums of pieces in a row that no other outdoes: none is as dear and no longer. Numbered by size, prices rising. */
export interface Sums {
  /** One or more copies of a kind may be taken, each in one of its ways. False when that makes too many sums. */
  add(kind: number, copies: number, choices: readonly Choice[]): boolean
  /** what it cost so far, in steps */
  readonly steps: number
  /** the last sum within a room, which is the dearest; sums before it are shorter and cheaper */
  within(room: number): number
  /** the sum before this one; below 0: none */
  before(sum: number): number
  /** the shortest sum that is worth at least so much; below 0: none */
  worth(price: number): number
  size(sum: number): number
  price(sum: number): number
  /** the highest price within a room */
  dearest(room: number): number
  piecesOf(sum: number): Piece[]
}

/** More sums than this are not listed, nor looked at on the way: half a second or so. */
const MOST_SUMS = 100_000
export const MOST_WORK = 2_000_000

/** Rooms up to this many units are tabled. */
const MOST_TABLED = 1 << 13

export function sumsUpTo(most: number): Sums {
  return most < MOST_TABLED ? new TabledSums(most) : new ListedSums(most)
}

/** The bounded knapsack by a table over all rooms (Bellman 1957): quick while units are few. */
class TabledSums implements Sums {
  steps = 0
  private readonly most: number
  /** per room up to `reached`, the dearest sum in it; all pieces so far need no longer room */
  private readonly table: Float64Array
  private reached = 0
  private readonly items: Item[] = []
  /** per item and room: which of the choices its dearest sum takes, counted from 1 */
  private taken: Uint8Array
  private tabled = 0

  constructor(most: number) {
    this.most = most
    this.table = new Float64Array(most + 1)
    this.taken = new Uint8Array(FIRST_ITEMS * (most + 1))
  }

  add(kind: number, copies: number, choices: readonly Choice[]): boolean {
    if (choices.length === 0) return true
    // one way only: 1, 2, 4 … copies and the rest together are as good as each by itself
    for (let left = copies, times = 1; left > 0; left -= times, times *= 2) {
      if (choices.length > 1) times = 1
      this.addItem(kind, Math.min(times, left), choices)
    }
    return true
  }

  within(room: number): number {
    return this.shortest(this.table[Math.min(room, this.reached)]!)
  }

  before(sum: number): number {
    return sum === 0 ? -1 : this.shortest(this.table[sum - 1]!)
  }

  worth(price: number): number {
    return this.table[this.reached]! >= price ? this.shortest(price) : -1
  }

  size(sum: number): number {
    return sum
  }

  price(sum: number): number {
    return this.table[sum]!
  }

  dearest(room: number): number {
    return this.table[Math.min(room, this.reached)]!
  }

  piecesOf(sum: number): Piece[] {
    const out: Piece[] = []
    let room = sum
    for (let i = this.items.length - 1; i >= 0; i--) {
      const { kind, times, choices, reached } = this.items[i]!
      // no sum of the items up to this one is longer
      room = Math.min(room, reached)
      const choice = choices[this.taken[i * (this.most + 1) + room]! - 1]
      if (!choice) continue
      for (let n = 0; n < times; n++) out.push({ kind, posture: choice.posture })
      room -= times * choice.size
    }
    return out
  }

  private addItem(kind: number, times: number, choices: readonly Choice[]): void {
    const { table, most, items } = this
    const from = items.length * (most + 1)
    if (from === this.taken.length) {
      const longer = new Uint8Array(2 * from)
      longer.set(this.taken)
      this.taken = longer
    }
    const longest = times * Math.max(...choices.map((choice) => choice.size))
    const reached = Math.min(most, this.reached + longest)
    table.fill(table[this.reached]!, this.reached + 1, reached + 1)
    this.reached = reached
    const taken = this.taken.subarray(from, from + reached + 1)
    const [only] = choices
    if (choices.length === 1) fillWithOne(table, taken, times * only!.size, times * only!.price)
    else fillWithOneOf(table, taken, times, choices)
    items.push({ kind, times, choices, reached })
    this.tabled += reached * choices.length
    this.steps = Math.ceil(this.tabled / TABLED_A_STEP)
  }

  private shortest(price: number): number {
    let low = 0
    let high = this.reached
    while (low < high) {
      const middle = (low + high) >> 1
      if (this.table[middle]! >= price) high = middle
      else low = middle + 1
    }
    return low
  }
}

// both go from the longest room down, so that shorter ones still hold what there was before this item

function fillWithOne(table: Float64Array, taken: Uint8Array, size: number, price: number): void {
  for (let room = taken.length - 1; room >= size; room--) {
    const sum = table[room - size]! + price
    if (sum > table[room]!) {
      table[room] = sum
      taken[room] = 1
    }
  }
}

function fillWithOneOf(table: Float64Array, taken: Uint8Array, times: number, choices: readonly Choice[]): void {
  const sizes = choices.map((choice) => times * choice.size)
  const prices = choices.map((choice) => times * choice.price)
  const least = Math.min(...sizes)
  for (let room = taken.length - 1; room >= least; room--) {
    let best = table[room]!
    let which = 0
    for (let c = 0; c < sizes.length; c++) {
      const rest = room - sizes[c]!
      if (rest < 0) continue
      const price = table[rest]! + prices[c]!
      if (price > best) {
        best = price
        which = c + 1
      }
    }
    if (which > 0) {
      table[room] = best
      taken[room] = which
    }
  }
}

/** Room is made for so many items, then for twice as many, and so on. */
const FIRST_ITEMS = 8

interface Item {
  readonly kind: number
  readonly times: number
  readonly choices: readonly Choice[]
  /** the longest room that this item and those before it can fill */
  readonly reached: number
}

/** So many rooms of a table are filled in the time of one step. */
const TABLED_A_STEP = 32

/** The same by lists of sums (Nemhauser & Ullmann 1969): their cost depends on how many different sums there are, not on the unit. */
class ListedSums implements Sums {
  steps = 0
  private readonly most: number
  /** sums as nodes that point to the sum they came from; the undominated ones by size, prices rising */
  private list: number[] = [0]
  private readonly sizes: number[] = [0]
  private readonly prices: number[] = [0]
  private readonly from: number[] = [-1]
  private readonly pieces: (Piece | null)[] = [null]

  constructor(most: number) {
    this.most = most
  }

  add(kind: number, copies: number, choices: readonly Choice[]): boolean {
    for (let n = 0; n < copies; n++) {
      const before = this.list
      for (const choice of choices) this.list = this.merged(this.list, this.with(before, kind, choice))
      if (this.list.length > MOST_SUMS || this.steps > MOST_WORK) return false
    }
    return true
  }

  within(room: number): number {
    return this.first((node) => this.sizes[node]! > room) - 1
  }

  before(sum: number): number {
    return sum - 1
  }

  worth(price: number): number {
    const at = this.first((node) => this.prices[node]! >= price)
    return at < this.list.length ? at : -1
  }

  size(sum: number): number {
    return this.sizes[this.list[sum]!]!
  }

  price(sum: number): number {
    return this.prices[this.list[sum]!]!
  }

  dearest(room: number): number {
    return this.price(this.within(room))
  }

  piecesOf(sum: number): Piece[] {
    const out: Piece[] = []
    for (let n = this.list[sum]!; this.from[n]! >= 0; n = this.from[n]!) out.push(this.pieces[n]!)
    return out
  }

  /** Position in the list from which on this holds. */
  private first(holds: (node: number) => boolean): number {
    let low = 0
    let high = this.list.length
    while (low < high) {
      const middle = (low + high) >> 1
      if (holds(this.list[middle]!)) high = middle
      else low = middle + 1
    }
    return low
  }

  private with(before: readonly number[], kind: number, choice: Choice): number[] {
    const out: number[] = []
    const piece = { kind, posture: choice.posture }
    for (const node of before) {
      const size = this.sizes[node]! + choice.size
      if (size > this.most) break
      out.push(this.sizes.length)
      this.sizes.push(size)
      this.prices.push(this.prices[node]! + choice.price)
      this.from.push(node)
      this.pieces.push(piece)
    }
    return out
  }

  private merged(a: readonly number[], b: readonly number[]): number[] {
    const { sizes, prices } = this
    this.steps += a.length + b.length
    const out: number[] = []
    let top = Number.NEGATIVE_INFINITY
    for (let i = 0, j = 0; i < a.length || j < b.length; ) {
      const p = a[i]
      const q = b[j]
      const first =
        q === undefined ||
        (p !== undefined && (sizes[p]! < sizes[q]! || (sizes[p]! === sizes[q]! && prices[p]! >= prices[q]!)))
      const node = first ? p! : q
      if (first) i++
      else j++
      if (prices[node]! > top) {
        out.push(node)
        top = prices[node]!
      }
    }
    return out
  }
}
