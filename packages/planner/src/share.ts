import type { Cloth, Order } from '@lengthwise/pieces'
import type { Answer, Certificate } from '@lengthwise/solver'
import { bound, check, lay, layKnowing, whatFits } from '@lengthwise/solver'
import type { Length } from '@lengthwise/units'
import { length } from '@lengthwise/units'
import type { Objective } from './buying.ts'
import { buyLength, worth } from './buying.ts'
import { comesApart, keepsOf } from './comes-apart.ts'
import type { Asked, Counts } from './demand.ts'
import { ask, countsKey } from './demand.ts'
import type { Effort } from './effort.ts'
import type { Ground } from './field.ts'
import { mustKeep, runsAlong } from './must-keep.ts'
import { leaves } from './parts.ts'
import type { Setting } from './setting.ts'
import type { Wish } from './wishes.ts'
import { bestOfAsCheap } from './wishes.ts'

/** One length, sheet or remnant that is used. */
export interface Spread {
  readonly ground: Ground
  /** which one of several like sheets or remnants; null: bought */
  readonly nth: number | null
  readonly counts: Counts
  readonly asked: Asked
  readonly answer: Answer
}

/** How the pieces asked of one cloth are shared among what is owned of it and what is bought. */
export interface Share {
  readonly spreads: readonly Spread[]
  /** in the objective: what must be bought, and what no sharing goes below */
  readonly value: bigint
  readonly bound: bigint
  /** laid length of what is bought */
  readonly laid: number
  /** owned lengths, sheets and remnants opened */
  readonly opened: number
  /** what shows the bound */
  readonly by: Certificate['by']
  readonly stopped: boolean
}

export interface Sharing {
  /** null: no sharing was found */
  readonly share: Share | null
  /** false: with a share, its bound is nothing; without one, there may be a sharing all the same */
  readonly certain: boolean
}

interface Laid {
  readonly asked: Asked
  readonly answer: Answer
}

/**
 * How hard a layout is looked for: bounds and quick starts only; as far as choosing among ways deserves; as far as a layout
 * deserves that may be shown; the same and then tidied.
 */
export type How = 'quick' | 'look' | 'deep' | 'tidy'

const QUICK = 1
/** What a bound costs, about, in steps, and what a bound, weights and the quick starts do. */
const BOUND_STEPS = 2_500
const START_STEPS = 5_000

/** Layouts worked out so far, so that no request is laid twice. */
export class LayoutBook {
  readonly order: Order
  readonly objective: Objective
  readonly effort: Effort
  /** steps of search taken */
  steps = 0
  /** steps taken by books that answer questions aside */
  aside = 0
  readonly #answers = new Map<string, Laid>()
  readonly #bounds = new Map<string, Certificate>()
  readonly #shares = new Map<string, Sharing>()

  /** layouts known already; what this book works out is not added there */
  readonly #before: LayoutBook | null

  constructor(order: Order, objective: Objective, effort: Effort, before: LayoutBook | null = null) {
    this.order = order
    this.objective = objective
    this.effort = effort
    this.#before = before
  }

  lay(setting: Setting, ground: Ground, counts: Counts, how: How): Laid {
    const key = `${setting.id}|${groundKey(ground)}|${how}|${countsKey(counts)}`
    const known = this.#answers.get(key) ?? (this.#before ? this.#before.#answers.get(key) : undefined)
    if (known) return known
    const asked = ask(this.order, ground, counts, setting.bundles)
    const { stop, lookSteps, deepSteps } = this.effort
    const effort = how === 'quick' ? QUICK : how === 'look' ? lookSteps : deepSteps
    const control = { effort, tidy: how === 'tidy', ...(stop ? { stop } : {}) }
    let answer = lay(asked.request, control)
    this.steps += answer.steps + START_STEPS
    if (answer.length === null && answer.status === 'best-found' && how !== 'quick')
      answer = this.#asOnBolt(setting, ground, counts, how, asked) ?? answer
    const found = { asked, answer: this.#keepsHems(asked.ground, answer) }
    // a run cut short by a clock says nothing about the next one
    if (answer.status !== 'stopped') this.#answers.set(key, found)
    return found
  }

  /** What was missed on an owned length may be known from the bolt: the same layout, where it is none too long and passes there. */
  #asOnBolt(setting: Setting, ground: Ground, counts: Counts, how: How, { request }: Asked): Answer | null {
    const { open, owned } = setting
    if (!open || !owned.some((o) => o.ground === ground)) return null
    const long = request.field.length!
    let found = this.lay(setting, open, counts, how).answer
    // an owned length costs nothing: it is worth looking as far as for what is shown
    if (how === 'look' && found.bound <= long && (found.length ?? long + 1) > long)
      found = this.lay(setting, open, counts, 'deep').answer
    const { length: laid, placements } = found
    if (laid === null || laid > long) return null
    const answer = layKnowing(request, { effort: QUICK, tidy: false }, { wider: null, placements })
    return check(request, answer).length === 0 ? answer : null
  }

  /** A layout that leaves a hem on waste which must be kept is none, though there may be another. */
  #keepsHems(ground: Ground, answer: Answer): Answer {
    const sides = mustKeep(ground)
    const { table, origin } = ground
    if (sides.length === 0 || answer.length === null || table.length === null) return answer
    const usable = { ...origin, width: table.usableWidth, length: table.length - 2 * origin.y }
    const keeps = keepsOf(this.order)
    const kept = leaves(comesApart(this.order, ground, answer, table as { width: number; length: number }))
      .filter((leaf) => leaf.kind === 'piece' || (leaf.kind === 'left-over' && keeps(leaf.box)))
      .map((leaf) => leaf.box)
    if (sides.every((side) => runsAlong(side, usable, kept))) return answer
    return { ...answer, status: 'best-found', length: null, placements: [], tree: null }
  }

  /** A bound on the laid length of a bolt, cheaply. */
  bound(setting: Setting, ground: Ground, counts: Counts): Certificate {
    const key = `${setting.id}|${countsKey(counts)}`
    const known = this.#bounds.get(key) ?? (this.#before ? this.#before.#bounds.get(key) : undefined)
    if (known) return known
    const { stop } = this.effort
    const paid = { steps: 0, ...(stop ? { stop } : {}) }
    const certificate = bound(ask(this.order, ground, counts, setting.bundles).request, paid)
    this.steps += BOUND_STEPS + paid.steps
    this.#bounds.set(key, certificate)
    return certificate
  }

  /**
   * Can these pieces be laid on `long` of a bolt? Cheaper to answer than how short they can be laid, above all where the answer
   * is no. The share is the shortest found; a bound stands for 'perhaps'.
   */
  within(setting: Setting, counts: Counts, long: number, how: How): { share: Share } | { bound: number } | 'never' {
    const open = setting.open!
    if (long <= 0) return 'never'
    const { answer: first } = this.lay(setting, open, counts, 'quick')
    if (first.bound > long) return 'never'
    if (first.length === null || first.length > long) {
      const { answer } = this.lay(setting, shortened(open, long), counts, how)
      if (answer.status === 'infeasible') return 'never'
      if (answer.length === null) return { bound: answer.bound }
      return { share: buyAll(this, { ...setting, open: shortened(open, long) }, counts, how)! }
    }
    return { share: buyAll(this, setting, counts, how)! }
  }

  /** Do these pieces go on `long` of a bolt, as far as effort tells? */
  fits(setting: Setting, counts: Counts, long: number): boolean {
    const { answer: first } = this.lay(setting, setting.open!, counts, 'quick')
    if (first.length !== null && first.length <= long) return true
    if (first.bound > long || long <= 0) return false
    return this.lay(setting, shortened(setting.open!, long), counts, 'look').answer.length !== null
  }

  /** The cheapest sharing of these pieces. */
  share(setting: Setting, counts: Counts, how: How): Sharing {
    const key = `${setting.id}|${how}|${countsKey(counts)}`
    const known = this.#shares.get(key) ?? (this.#before ? this.#before.#shares.get(key) : undefined)
    if (known !== undefined) return known
    const sharing =
      setting.open && setting.owned.length === 0
        ? { share: buyAll(this, setting, counts, how), certain: true }
        : mixed(this, setting, counts, how)
    if (!sharing.share && !sharing.certain && how === 'look') return this.share(setting, counts, 'deep')
    if (!sharing.share?.stopped) this.#shares.set(key, sharing)
    return sharing
  }
}

const groundKey = (ground: Ground): string => `${ground.field.length}${JSON.stringify(ground.field.flaws)}`

/** The value of a bolt length on which `laid` of the field lies. */
export const valueToBuy = (book: LayoutBook, setting: Setting, laid: number): bigint =>
  laid === 0 ? 0n : worth(book.objective, setting.cloth, setting.widthIndex, buyLength(book.order, setting.cloth, laid))

/** What a sharing buys; 0: nothing. */
export function boughtIn(order: Order, cloth: Cloth, share: Share): Length {
  const laid = share.spreads.find((spread) => spread.nth === null)?.answer.length ?? 0
  return laid === 0 ? length(0) : buyLength(order, cloth, laid)
}

/** The longest laid length whose purchase is worth at most `most`; 0: none. */
export function longestFor(book: LayoutBook, setting: Setting, most: bigint): number {
  if (most < 0n || valueToBuy(book, setting, 1) > most) return 0
  let low = 1
  let high = 2
  while (valueToBuy(book, setting, high) <= most && high < LONGEST) high *= 2
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if (valueToBuy(book, setting, middle) <= most) low = middle
    else high = middle
  }
  return low
}
const LONGEST = 2 ** 40

const shortened = (ground: Ground, long: number): Ground => ({ ...ground, field: { ...ground.field, length: long } })

function buyAll(book: LayoutBook, setting: Setting, counts: Counts, how: How): Share | null {
  const { asked, answer } = book.lay(setting, setting.open!, counts, how)
  if (answer.length === null) return null
  return {
    spreads: [{ ground: setting.open!, nth: null, counts, asked, answer }],
    value: valueToBuy(book, setting, answer.length),
    bound: valueToBuy(book, setting, answer.bound),
    laid: answer.length,
    opened: 0,
    by: answer.certificate.by,
    stopped: answer.status === 'stopped',
  }
}

/** The sharings of one cloth may cost as much as this many layouts. */
const SHARING_LOOKS = 4
/** Of sharings that buy the same, this many are compared. */
const MOST_AS_CHEAP = 200

/**
 * Owned lengths beside cloth still to be bought. What goes on one owned length is one of the largest loads it can take; since
 * a piece less on the bolt never makes the bolt longer, no smaller load buys less. Loads are tried one owned length after
 * the other; which of the cheapest sharings is taken, the wishes say.
 */
function mixed(book: LayoutBook, setting: Setting, counts: Counts, how: How): Sharing {
  const slots = setting.owned.flatMap(({ ground, nths }) => nths.map((nth) => ({ ground, nth })))
  const loads = new Map<Ground, { counts: Counts[]; complete: boolean }>()
  let complete = true
  let stopped = false
  // the sharings that buy least, so far
  let cheapest: { share: Share; wish: Wish; opens: ReadonlySet<string> }[] = []
  let tries = 0
  const until = book.steps + SHARING_LOOKS * book.effort.lookSteps

  tryFrom(0, counts, [])
  const best = bestOfAsCheap(cheapest)?.share ?? null
  return {
    share: best && { ...best, bound: complete ? best.value : beyondOwned(book, setting, counts), stopped },
    certain: complete,
  }

  function tryFrom(slot: number, rest: Counts, used: readonly Spread[]): void {
    // all bought is always tried; the rest as far as effort goes
    if (tries > 0 && (tries > book.effort.sharings || book.steps > until || book.effort.stop?.())) {
      complete = false
      return
    }
    tries++
    finish(rest, used)
    if (isEmpty(rest) || slot === slots.length) return
    const { ground, nth } = slots[slot]!
    for (const load of loadsOf(ground).counts) {
      const taken = least(load, rest)
      if (isEmpty(taken)) continue
      const { asked, answer } = book.lay(setting, ground, taken, how)
      if (answer.status === 'stopped') stopped = true
      if (answer.length === null) {
        complete &&= answer.status === 'infeasible'
        continue
      }
      tryFrom(slot + 1, less(rest, taken), [...used, { ground, nth, counts: taken, asked, answer }])
    }
    // leave this one whole; a like one after it would do no better
    const nextKind = slots.findIndex((s, i) => i > slot && s.ground !== ground)
    if (nextKind > 0) tryFrom(nextKind, rest, used)
  }

  function finish(rest: Counts, used: readonly Spread[]): void {
    const bought = isEmpty(rest) ? null : setting.open ? buyAll(book, setting, rest, how) : null
    if (!isEmpty(rest) && !bought) return
    if (bought && bought.bound < bought.value) complete = false
    const share: Share = {
      spreads: [...used, ...(bought?.spreads ?? [])],
      value: bought?.value ?? 0n,
      bound: 0n,
      laid: bought?.laid ?? 0,
      opened: used.length,
      by: 'exhausted',
      stopped: bought?.stopped ?? false,
    }
    stopped ||= share.stopped
    const least = cheapest[0]?.share.value
    if (least !== undefined && (share.value > least || (share.value === least && cheapest.length >= MOST_AS_CHEAP)))
      return
    const { value, opened, laid } = share
    const opens = new Set(used.map((spread) => `${slots.findIndex((s) => s.ground === spread.ground)}#${spread.nth}`))
    cheapest = [...(share.value === least ? cheapest : []), { share, wish: { value, opened, seams: 0, laid }, opens }]
  }

  function loadsOf(ground: Ground) {
    const known = loads.get(ground)
    if (known) return known
    const found = largestLoads(book, setting, ground, counts, how)
    complete &&= found.complete
    loads.set(ground, found)
    return found
  }
}

/** What must be bought even if every bit of owned cloth were used. */
function beyondOwned(book: LayoutBook, setting: Setting, counts: Counts): bigint {
  if (!setting.open) return 0n
  let area = 0
  for (const [key, n] of counts)
    for (const member of setting.bundles.get(key)!.members) area += n * member.count * member.area
  for (const { ground, nths } of setting.owned) area -= nths.length * ground.field.width * (ground.field.length ?? 0)
  return area <= 0 ? 0n : valueToBuy(book, setting, Math.ceil(area / setting.ground.field.width))
}

/** The largest loads one owned length can take, by bundles. */
function largestLoads(
  book: LayoutBook,
  setting: Setting,
  ground: Ground,
  counts: Counts,
  how: How,
): { counts: Counts[]; complete: boolean } {
  // everything at once is the only largest load there is
  const all = book.lay(setting, ground, counts, how)
  if (all.answer.length !== null) return { counts: [counts], complete: true }
  const asked = ask(book.order, ground, counts, setting.bundles)
  // panels that keep phase are many demands of one piece each: too many to take apart
  const { demands } = asked.request
  if (demands.length > MOST_DEMANDS || demands.some((d) => d.tie))
    return { counts: [greedyLoad(book, setting, ground, counts)], complete: false }
  const { stop } = book.effort
  // where nothing can be bought any sharing will do, and the first loads found mostly give one
  const effort = setting.open ? book.effort.lookSteps : book.effort.lookSteps / (how === 'deep' ? 1 : 8)
  const fits = whatFits(asked.request, { effort, ...(stop ? { stop } : {}) })
  book.steps += fits.steps
  let whole = fits.complete
  const found = new Map<string, Counts>()
  for (const { counts: placed } of fits.maximal) {
    const load = new Map<string, number>()
    const tied = new Map<string, number>()
    asked.origins.forEach(({ key, nth }, demand) => {
      const count = placed[demand] ?? 0
      if (nth < 0) {
        if (count > 0) load.set(key, count)
        return
      }
      // panels that keep phase go together or not at all
      if (count === asked.request.demands[demand]!.count)
        tied.set(`${key}#${nth}`, (tied.get(`${key}#${nth}`) ?? 0) + 1)
      else if (count > 0) whole = false
    })
    for (const [name, members] of tied) {
      const key = name.slice(0, name.lastIndexOf('#'))
      if (members === setting.bundles.get(key)!.members.length) load.set(key, (load.get(key) ?? 0) + 1)
      else whole = false
    }
    if (load.size > 0) found.set(countsKey(load), load)
  }
  // where effort ended before anything was sure to fit, one load is better than none
  // (a hem to be kept may ask for more room when fewer pieces need it)
  const kept = mustKeep(ground).length === 0
  if (!kept)
    for (const [key, load] of found) if (book.lay(setting, ground, load, how).answer.length === null) found.delete(key)
  whole &&= kept || found.size === fits.maximal.length
  if (found.size === 0 && !whole) return { counts: [greedyLoad(book, setting, ground, counts)], complete: false }
  const area = (load: Counts) =>
    [...load].reduce((sum, [key, n]) => {
      const members = setting.bundles.get(key)!.members
      return sum + n * members.reduce((all, m) => all + m.count * m.area, 0)
    }, 0)
  return { counts: [...found.values()].sort((a, b) => area(b) - area(a)), complete: whole }
}

const MOST_DEMANDS = 10

/** One load: bundle after bundle, the largest first, as many of each as still go on. */
function greedyLoad(book: LayoutBook, setting: Setting, ground: Ground, counts: Counts): Counts {
  const areaOf = (key: string) => setting.bundles.get(key)!.members.reduce((sum, m) => sum + m.count * m.area, 0)
  let load: Counts = new Map()
  for (const key of [...counts.keys()].sort((a, b) => areaOf(b) - areaOf(a) || (a < b ? -1 : 1))) {
    let low = 0
    let high = Math.min(counts.get(key)!, Math.floor((ground.field.width * ground.field.length!) / areaOf(key)))
    while (low < high) {
      const middle = Math.ceil((low + high) / 2)
      const more = new Map([...load, [key, middle]])
      if (book.lay(setting, ground, more, 'quick').answer.length !== null) low = middle
      else high = middle - 1
    }
    if (low > 0) load = new Map([...load, [key, low]])
  }
  return load
}

const isEmpty = (counts: Counts): boolean => [...counts.values()].every((n) => n === 0)

const least = (a: Counts, b: Counts): Counts =>
  new Map([...b].map(([key, n]) => [key, Math.min(n, a.get(key) ?? 0)] as const).filter(([, n]) => n > 0))

const less = (a: Counts, b: Counts): Counts =>
  new Map([...a].map(([key, n]) => [key, n - (b.get(key) ?? 0)] as const).filter(([, n]) => n > 0))
