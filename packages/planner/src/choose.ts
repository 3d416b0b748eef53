import { Heap } from './heap.ts'
import type { LayoutBook } from './layout-book.ts'
import type { Node } from './nodes.ts'
import { Nodes } from './nodes.ts'
import type { Choice, Option } from './options.ts'
import type { Setting } from './setting.ts'
import type { Share } from './share.ts'
import { longestFor, valueToBuy, within } from './share.ts'
import { shareOut } from './sharing.ts'
import type { Wish } from './wishes.ts'
import { compareWishes, greater, lesser } from './wishes.ts'

/**
 * Ways chosen together with the layout, for given widths: best-first branch and bound (Land and Doig, 'An automatic method of
 * solving discrete programming problems', Econometrica 28 (1960), with the best bound first).
 *
 * A node has ways for the first copies; like copies of one item take ways in the order they are listed, so that a set of
 * ways is met once. Its bound is that of measures that add up (additive-bound.ts), the least over the ways still open.
 * A whole choice is bounded again by the solver, then laid out. Nodes come in the order of wishes: what is bought, owned
 * cloth opened, seams, laid length; so the first whole choice whose layout is no worse than the next bound is the best.
 */
export interface Chosen {
  /** the option of each copy, items in the order of the plan */
  readonly options: readonly (readonly Option[])[]
  /** by index into the settings; null where nothing is taken */
  readonly shares: readonly (Share | null)[]
  readonly wish: Wish
}

export interface ChoiceAnswer {
  readonly best: Chosen | null
  /** no choice of ways and no sharing buys less; Infinity is null: nothing can be made at all */
  readonly bound: bigint | null
  /** proved: the search ended by itself, and nothing it left aside can buy less */
  readonly status: 'proved' | 'best-found' | 'stopped'
  readonly by: 'area' | 'bars' | 'exhausted'
}

/** A search that has found nothing goes on this many times longer. */
const GIVE_UP = 10
/** One that is ended before it has found anything looks at so many nodes more. */
const LAST_LOOKS = 4

/** Of the steps for a choice, this share goes at most to bettering the first one, item by item. */
const FOR_IMPROVING = 0.3
/** Of the steps for a choice, this share is kept for the layouts that turn out to matter. */
const KEPT_FOR_DEEP = 0.4

/**
 * `known`: an answer to beat, found elsewhere; `best` is null when there is none better, and the bound speaks of it as well.
 * `steps`: what may be spent; `cutOff`: what buys more than this is of no interest (a better width is known).
 */
export function chooseWays(
  book: LayoutBook,
  settings: readonly Setting[],
  choices: readonly Choice[],
  steps: number,
  cutOff: bigint | null = null,
  onBetter: (chosen: Chosen, bound: bigint) => void = () => {},
  known: Wish | null = null,
): ChoiceAnswer {
  const { effort } = book
  if (choices.some((choice) => choice.options.length === 0))
    return { best: null, bound: null, status: 'proved', by: 'exhausted' }

  const nodes = new Nodes(book, settings, choices)
  const { items, root } = nodes
  const heap = new Heap<Node>((a, b) => compareWishes(a.wish, b.wish) || b.depth - a.depth || a.born - b.born)
  if (root) heap.push(root)
  const rootValue = root?.wish.value ?? null

  let best = null as Chosen | null
  let chosenNode = null as Node | null
  let certifiedBy: ChoiceAnswer['by'] = 'exhausted'
  // whole choices whose layout is not proved, with the least that each might still reach
  const unproved = new Map<Node, bigint>()
  let looked = 0
  let stopped = false
  let given = false
  const stepsBefore = book.steps
  const spent = (share: number) => looked > effort.choices || book.steps - stepsBefore > share * steps

  // a first whole choice, so that there is something to beat: by the wishes, or else with as little owned cloth as can be
  const toBeat = (): Wish | null => best?.wish ?? known
  if (root && !known) {
    dive(root, compareWishes)
    if (!best) dive(root, (a, b) => a.opened - b.opened || compareWishes(a, b))
    improve()
  }

  searchOn(1 - KEPT_FOR_DEEP)
  goDeeper()
  // what that left over goes on with the search
  if (given && !stopped) searchOn(1)

  const left = heap.peek()?.wish.value ?? null
  const waiting = [...unproved.values(), left].filter((v) => v !== null)
  const least = waiting.length === 0 ? null : waiting.reduce(lesser)
  const bestValue = toBeat()?.value ?? null
  // ways that were left out of a long list take no less cloth than those kept
  const capped = choices.some((choice) => choice.capped) ? nodes.byArea() : null
  const bounds = [bestValue, least, capped].filter((v) => v !== null)
  const bound = bounds.length === 0 ? null : bounds.reduce(lesser)
  const proved = bestValue === null ? !given && unproved.size === 0 : bound === bestValue
  return {
    best,
    bound,
    status: proved ? 'proved' : stopped ? 'stopped' : 'best-found',
    by: bestValue !== null && rootValue === bestValue ? 'area' : certifiedBy,
  }

  function searchOn(share: number): void {
    given = false
    for (let node = heap.pop(); node; node = heap.pop()) {
      const target = toBeat()
      if (target && compareWishes(node.wish, target) >= 0) break
      if (cutOff !== null && node.wish.value > cutOff) {
        heap.push(node)
        break
      }
      const halt = effort.stop?.() ?? false
      // without any layout yet the search goes on: there is nothing to show
      if (target ? halt || spent(share) : looked > (halt ? LAST_LOOKS : GIVE_UP * effort.choices)) {
        stopped = halt
        given = true
        heap.push(node)
        break
      }
      looked++
      if (node.depth < nodes.total) for (const child of nodes.children(node, target)) heap.push(child)
      else if (!node.bounded) pushBounded(node)
      else layOut(node, 'look')
    }
  }

  function dive(from: Node, compare: (a: Wish, b: Wish) => number): void {
    let node: Node | null = from
    while (node && node.depth < nodes.total)
      node = nodes
        .children(node, toBeat())
        .reduce<Node | null>((a, b) => (a && compare(a.wish, b.wish) <= 0 ? a : b), null)
    if (node) layOut(node, 'look')
  }

  /** What is not proved once more with more effort: the best so far, then what might still beat it, the most promising first. */
  function goDeeper(): void {
    const mine = chosenNode && unproved.has(chosenNode) ? [chosenNode] : []
    const others = [...unproved]
      .filter(([node]) => node !== chosenNode)
      .sort(([, a], [, b]) => (a < b ? -1 : a > b ? 1 : 0))
    for (const node of [...mine, ...others.map(([other]) => other)]) {
      if (spent(1) || effort.stop?.()) return
      const least = unproved.get(node)!
      const target = toBeat()
      if (target && least >= target.value && node !== chosenNode) continue
      unproved.delete(node)
      layOut(node, 'deep')
    }
  }

  /** The best so far with one item made another way, all its copies or one of them, as long as that is better. */
  function improve(): void {
    for (let from = null as Chosen | null; best && from !== best; ) {
      from = best
      const taken = items.map((): number[] => [])
      for (let pick = chosenNode?.picks ?? null; pick; pick = pick.before) taken[pick.item]!.push(pick.index)
      for (const [i, item] of items.entries())
        for (const o of item.options.keys()) {
          if (spent(FOR_IMPROVING) || effort.stop?.()) return
          const now = taken[i]!
          const allOf = now.map(() => o)
          const oneOf = [o, ...now.slice(1)]
          const others = now.length > 1 && !item.together
          for (const next of others ? [allOf, oneOf] : [allOf]) {
            if (next.every((n, k) => n === now[k])) continue
            if (!nodes.mayBeat(chosenNode!, i, now, next, best.wish)) continue
            const node = nodes.whole(taken.with(i, next), best.wish)
            if (node) layOut(node, 'look')
          }
        }
    }
  }

  function pushBounded(node: Node): void {
    const counts = nodes.countsOf(node)
    const target = toBeat()
    let { wish } = node
    for (const [s, setting] of settings.entries()) {
      if (counts[s]!.size === 0) continue
      // beside owned lengths a bolt has no bound of its own
      if (!setting.open || setting.owned.length > 0) break
      const before = node.rows[s]!
      const rest = { ...wish, value: wish.value - before.value, laid: wish.laid - before.laid }
      const enough = target ? longestBetter(setting, target, rest) + 1 : Number.POSITIVE_INFINITY
      const laid = Math.max(before.laid, book.bound(setting, setting.open, counts[s]!, enough).bound)
      wish = { ...rest, value: rest.value + valueToBuy(book, setting, laid), laid: rest.laid + laid }
      // it will not be looked at again
      if (target && compareWishes(wish, target) >= 0) break
    }
    heap.push({ ...node, wish, bounded: true })
  }

  function layOut(node: Node, how: 'look' | 'deep'): void {
    const counts = nodes.countsOf(node)
    const shares: (Share | null)[] = settings.map(() => null)
    let value = 0n
    let least = 0n
    let opened = 0
    let laid = 0
    // owned cloth first; the last bolt only as far as it can still be better
    const asked = settings.flatMap((setting, s) => (counts[s]!.size > 0 ? [{ setting, s }] : []))
    const bolts = asked.filter(({ setting }) => setting.open && setting.owned.length === 0)
    const target = toBeat()
    const last = target && node !== chosenNode && bolts.length === 1 ? bolts[0]! : null
    for (const { setting, s } of [...asked.filter((a) => a !== last), ...(last ? [last] : [])]) {
      let share: Share | null = null
      if (target && s === last?.s) {
        const rest = { value, opened, seams: node.wish.seams, laid }
        const long = longestBetter(setting, target, rest)
        // whether it is cheaper comes first; whether it is as cheap and shorter waits until nothing is cheaper
        const cheaper = longestFor(book, setting, target.value - value - 1n)
        const first = how === 'look' && !node.notCheaper ? Math.min(long, cheaper) : long
        const found = within(book, setting, counts[s]!, first, node.notCheaper && first > cheaper ? 'glance' : how)
        if (found === 'never') {
          if (first < long)
            heap.push({
              ...node,
              wish: { ...node.wish, value: target.value, laid: Math.max(node.wish.laid, laid + first + 1) },
              notCheaper: true,
            })
          return
        }
        if ('bound' in found) {
          const value = least + valueToBuy(book, setting, found.bound)
          // that it is not cheaper has been shown already
          unproved.set(node, greater(value, node.wish.value))
          return
        }
        share = found.share
      } else {
        const sharing = shareOut(book, setting, counts[s]!, how)
        share = sharing.share
        if (!share) {
          // perhaps it can be had after all: then nothing is proved
          if (!sharing.certain) unproved.set(node, node.wish.value)
          return
        }
      }
      shares[s] = share
      value += share.value
      least += share.bound
      opened += share.opened
      laid += share.laid
    }
    if (least < value) unproved.set(node, least)
    const wish = { value, opened, seams: node.wish.seams, laid }
    if (target && node !== chosenNode && compareWishes(wish, target) >= 0) return
    if (best && compareWishes(wish, best.wish) > 0) return
    const options: Option[][] = choices.map(() => [])
    for (let pick = node.picks; pick; pick = pick.before) options[pick.item]!.unshift(pick.option)
    best = { options, shares, wish }
    chosenNode = node
    const by = shares.flatMap((share) => (share ? [share.by] : []))
    certifiedBy = by.every((b) => b === 'bars') ? 'bars' : 'exhausted'
    onBetter(best, rootValue ?? 0n)
  }

  /** The longest that a bolt may be laid so that the whole choice, the rest of it given, is better than `than`. */
  function longestBetter(setting: Setting, than: Wish, rest: Wish): number {
    const before = rest.opened - than.opened || rest.seams - than.seams
    const long = longestFor(book, setting, than.value - rest.value - (before > 0 ? 1n : 0n))
    if (before !== 0) return long
    // as cheap is good enough only when shorter
    const cheaper = longestFor(book, setting, than.value - rest.value - 1n)
    return Math.max(cheaper, Math.min(long, than.laid - rest.laid - 1))
  }
}
