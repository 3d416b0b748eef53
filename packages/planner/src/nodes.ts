import type { Counts } from './demand.ts'
import type { LayoutBook } from './layout-book.ts'
import type { Choice, Option } from './options.ts'
import { fromSameCloths } from './options.ts'
import type { Setting } from './setting.ts'
import { valueToBuy } from './share.ts'
import type { Scale, WeighedItem } from './weighed.ts'
import { scaleOf, weighItem } from './weighed.ts'
import type { Wish } from './wishes.ts'
import { compareWishes } from './wishes.ts'

/** Ways for the first copies of a plan, and what all of it must cost at least. */
export interface Node {
  readonly item: number
  /** copies of this item that have a way */
  readonly placed: number
  /** the last way taken: like copies go on from there */
  readonly option: number
  readonly picks: Pick | null
  /** by setting: what is chosen, and the least of what is not */
  readonly rows: readonly Row[]
  readonly depth: number
  readonly wish: Wish
  /** it has been shown to be no cheaper than the best then known */
  readonly notCheaper?: boolean
  /** the solver's bound has been asked */
  readonly bounded: boolean
  readonly born: number
}

export interface Pick {
  readonly item: number
  /** of the option, among the item's */
  readonly index: number
  readonly option: Option
  readonly before: Pick | null
}

/** What one cloth must give: its weight by each measure, and what that costs. */
interface Row {
  readonly sums: readonly number[]
  readonly value: bigint
  readonly opened: number
  readonly laid: number
}

/** What it costs in steps, about, to weigh a cloth once more. */
const STEPS_PER_ROW = 4

/** All nodes of one choice of ways, bounded by measures that add up (additive-bound.ts), the least over the ways still open. */
export class Nodes {
  readonly items: readonly WeighedItem[]
  /** copies in all */
  readonly total: number
  readonly root: Node | null
  readonly #book: LayoutBook
  readonly #settings: readonly Setting[]
  readonly #scales: readonly Scale[]
  #born = 0

  /** Each choice must have an option. */
  constructor(book: LayoutBook, settings: readonly Setting[], choices: readonly Choice[]) {
    this.#book = book
    this.#settings = settings
    this.#scales = settings.map((setting, s) => scaleOf(setting, s, choices))
    this.items = choices.map((choice) => weighItem(choice, this.#scales, settings))
    this.total = choices.reduce((n, choice) => n + choice.count, 0)
    this.root = this.#rootNode()
  }

  /** The node with each way for the next copy, those no better than `target` left out. */
  children(node: Node, target: Wish | null): Node[] {
    let { item, placed, option } = node
    while (placed === this.items[item]!.count) {
      item++
      placed = 0
      option = 0
    }
    const { options, together } = this.items[item]!
    const made: Node[] = []
    for (let index = option; index < options.length; index++) {
      if (together && placed > 0 && !fromSameCloths(node.picks!.option, options[index]!.option)) continue
      const child = this.#with(node, item, index, placed + 1, target)
      if (child) made.push(child)
    }
    return made
  }

  /** Would a whole choice with one item's copies made by other ways be better than `target`, as far as the measures tell? */
  mayBeat(node: Node, item: number, before: readonly number[], after: readonly number[], target: Wish): boolean {
    const { options } = this.items[item]!
    const changed = new Map<number, number[]>()
    let { seams } = node.wish
    const add = (indices: readonly number[], sign: number) => {
      for (const index of indices) {
        const { option, more } = options[index]!
        seams += sign * option.joins
        this.#book.steps += more.length
        for (const { setting, by } of more) {
          const sums = changed.get(setting) ?? [...node.rows[setting]!.sums]
          for (const [m, weight] of by.entries()) sums[m]! += sign * weight
          changed.set(setting, sums)
        }
      }
    }
    add(before, -1)
    add(after, 1)
    let wish: Wish = { value: 0n, opened: 0, seams, laid: 0 }
    for (const [s, known] of node.rows.entries()) {
      const sums = changed.get(s)
      const row = sums ? this.#rowOf(s, sums) : known
      if (!row) return false
      wish = withRow(wish, null, row)
    }
    return compareWishes(wish, target) < 0
  }

  /** A whole choice, given by item and copy as indices of options; null when it is no better than `target`. */
  whole(taken: readonly (readonly number[])[], target: Wish): Node | null {
    let node = this.root
    for (const [item, indices] of taken.entries())
      for (const [copy, index] of [...indices].sort((a, b) => a - b).entries()) {
        if (!node) return null
        node = this.#with(node, item, index, copy + 1, target)
      }
    return node
  }

  /** What the least area alone must cost. */
  byArea(): bigint {
    let value = 0n
    for (const [s, setting] of this.#settings.entries()) {
      if (!setting.open) continue
      const { ownedArea } = this.#scales[s]!
      const area = this.items.reduce((sum, item) => sum + item.count * item.least[s]![0]!, 0) - ownedArea
      if (area > 0) value += valueToBuy(this.#book, setting, Math.ceil(area / setting.ground.field.width))
    }
    return value
  }

  /** What a node has chosen so far, by setting. */
  countsOf(node: Node): Counts[] {
    const counts = this.#settings.map(() => new Map<string, number>())
    for (let pick = node.picks; pick; pick = pick.before)
      pick.option.takes.forEach((taken, s) => {
        for (const [key, n] of taken) counts[s]!.set(key, (counts[s]!.get(key) ?? 0) + n)
      })
    return counts
  }

  #rootNode(): Node | null {
    const rows: Row[] = []
    let wish: Wish = { value: 0n, opened: 0, seams: 0, laid: 0 }
    for (const [s, scale] of this.#scales.entries()) {
      const row = this.#rowOf(
        s,
        scale.measures.map((_, m) => this.items.reduce((sum, item) => sum + item.count * item.least[s]![m]!, 0)),
      )
      if (!row) return null
      rows.push(row)
      wish = withRow(wish, null, row)
    }
    const seams = this.items.reduce((sum, item) => sum + item.count * item.fewestJoins, 0)
    const start = { item: 0, placed: 0, option: 0, picks: null, depth: 0, bounded: false, born: this.#born++ }
    return { ...start, rows, wish: { ...wish, seams } }
  }

  #with(node: Node, item: number, index: number, placed: number, target: Wish | null): Node | null {
    const { options, fewestJoins } = this.items[item]!
    const { option, more } = options[index]!
    let wish: Wish = { ...node.wish, seams: node.wish.seams + option.joins - fewestJoins }
    this.#book.steps += STEPS_PER_ROW * more.length
    const changed = new Map<number, Row>()
    for (const { setting, by } of more) {
      const before = node.rows[setting]!
      const row = this.#rowOf(
        setting,
        before.sums.map((sum, m) => sum + by[m]!),
      )
      if (!row) return null
      changed.set(setting, row)
      wish = withRow(wish, before, row)
    }
    if (target && compareWishes(wish, target) >= 0) return null
    return {
      item,
      placed,
      option: index,
      picks: { item, option, index, before: node.picks },
      rows: changed.size > 0 ? node.rows.map((row, s) => changed.get(s) ?? row) : node.rows,
      depth: node.depth + 1,
      wish,
      bounded: false,
      born: this.#born++,
    }
  }

  /** What one cloth must cost; null when it cannot give as much. */
  #rowOf(s: number, sums: readonly number[]): Row | null {
    const setting = this.#settings[s]!
    const { measures, ownedArea } = this.#scales[s]!
    if (setting.open && setting.owned.length === 0) {
      let laid = 0
      for (const [m, { capacity }] of measures.entries()) laid = Math.max(laid, Math.ceil(sums[m]! / capacity))
      return { sums, value: valueToBuy(this.#book, setting, laid), opened: 0, laid }
    }
    const beyond = sums[0]! - ownedArea
    if (!setting.open) return beyond > 0 ? null : { sums, value: 0n, opened: sums[0]! > 0 ? 1 : 0, laid: 0 }
    if (beyond <= 0) return { sums, value: 0n, opened: 0, laid: 0 }
    const laid = Math.ceil(beyond / setting.ground.field.width)
    return { sums, value: valueToBuy(this.#book, setting, laid), opened: 1, laid }
  }
}

const withRow = (wish: Wish, before: Row | null, row: Row): Wish => ({
  value: wish.value + row.value - (before?.value ?? 0n),
  opened: wish.opened + row.opened - (before?.opened ?? 0),
  seams: wish.seams,
  laid: wish.laid + row.laid - (before?.laid ?? 0),
})
