import type { Order } from '@lengthwise/pieces'
import { waysToMake } from '@lengthwise/pieces'
import type { Answer } from '@lengthwise/solver'
import { lay } from '@lengthwise/solver'
import { buyLength, objectiveOf, worth } from '../src/buying.ts'
import type { Counts } from '../src/demand.ts'
import { ask, countsKey } from '../src/demand.ts'
import type { Ground } from '../src/field.ts'
import type { Setting } from '../src/setting.ts'
import { settingOf, takes } from '../src/setting.ts'

/** What the cheapest purchase is worth, and whether every layout that was asked is settled. Null: nothing can be made. */
export interface Cheapest {
  readonly value: bigint | null
  readonly certain: boolean
}

const EFFORT = { effort: 20_000_000, tidy: false }

/**
 * The cheapest purchase for a plan by trying everything: every width of every bolt, every way of every copy, every sharing of the
 * pieces among what is owned and what is bought; each layout by itself. Nothing is bounded, no way left out.
 */
export function cheapestByTrying(order: Order): Cheapest {
  let best: bigint | null = null
  let certain = true
  for (const settings of allWidths(order)) {
    const found = atWidths(order, settings)
    certain &&= found.certain
    if (found.value !== null && (best === null || found.value < best)) best = found.value
  }
  return { value: best, certain }
}

function allWidths(order: Order): Setting[][] {
  let all: Setting[][] = [[]]
  for (const cloth of order.cloths) {
    const indices = cloth.from === 'bolt' ? [...cloth.widths.keys()] : [-1]
    all = all.flatMap((before) =>
      indices.map((i) => {
        const setting = settingOf(order, cloth, i)
        return setting ? [...before, setting] : before
      }),
    )
  }
  return all
}

function atWidths(order: Order, settings: readonly Setting[]): Cheapest {
  const tables = new Map(settings.map((s) => [s.cloth.name, s.table]))
  const copies = order.items.flatMap((item) => {
    const ways = waysToMake(order, item, tables).ways.filter((way) => way.pieces.every((p) => tables.has(p.cloth)))
    const asked = ways.flatMap((way) => {
      const taken = settings.map((setting) => takes(setting, way))
      return taken.every((t) => t !== null) ? [taken] : []
    })
    const together = item.item === 'rectangle' && item.sameCloth === 'all'
    return Array.from({ length: item.count }, (_, nth) => ({ ways: asked, asBefore: together && nth > 0 }))
  })
  const laid = new Map<string, number | null>()
  const tried = new Map<string, bigint | null>()
  let certain = true
  let best: bigint | null = null
  const tryAll = (copy: number, counts: readonly Counts[], before: readonly Counts[]): void => {
    if (copy < copies.length) {
      const { ways, asBefore } = copies[copy]!
      for (const taken of ways) {
        if (asBefore && taken.some((from, s) => from.size > 0 !== before[s]!.size > 0)) continue
        const sum = counts.map((known, s) => plus(known, taken[s]!))
        tryAll(copy + 1, sum, taken)
      }
      return
    }
    let value = 0n
    for (const [s, setting] of settings.entries()) {
      const least = cheapestShare(setting, counts[s]!)
      if (least === null) return
      value += least
    }
    if (best === null || value < best) best = value
  }
  const nothing = settings.map(() => new Map<string, number>())
  tryAll(0, nothing, nothing)
  return { value: best, certain }

  function cheapestShare(setting: Setting, counts: Counts): bigint | null {
    const key = `${setting.id} ${countsKey(counts)}`
    const known = tried.get(key)
    if (known !== undefined) return known
    let least: bigint | null = null
    for (const { laid } of sharingsByTrying(setting, counts, (ground, part) => lengthOf(setting, ground, part))) {
      const { cloth, widthIndex } = setting
      const value = laid === 0 ? 0n : worth(objectiveOf(order), cloth, widthIndex, buyLength(order, cloth, laid))
      if (least === null || value < least) least = value
    }
    tried.set(key, least)
    return least
  }

  function lengthOf(setting: Setting, ground: Ground, counts: Counts): number | null {
    const key = `${setting.id} ${ground.field.length} ${JSON.stringify(ground.field.flaws)} ${countsKey(counts)}`
    const known = laid.get(key)
    if (known !== undefined) return known
    const answer = lay(ask(order, ground, counts, setting.bundles).request, EFFORT)
    // on owned cloth it is enough that they lie on it
    if (!isSure(ground, answer)) certain = false
    laid.set(key, answer.length)
    return answer.length
  }
}

/** One sharing: what is laid on cloth to be bought, and which of the owned lengths are opened. */
export interface Tried {
  readonly laid: number
  readonly opens: ReadonlySet<number>
}

/** Every sharing of these pieces among the owned lengths and what is bought; the length that pieces take on a ground is asked. */
export function sharingsByTrying(
  setting: Setting,
  counts: Counts,
  lengthOn: (ground: Ground, counts: Counts) => number | null,
): Tried[] {
  const slots = setting.owned.flatMap(({ ground, nths }) => nths.map(() => ground))
  const all: Tried[] = []
  const share = (slot: number, rest: Counts, opens: ReadonlySet<number>): void => {
    if (slot < slots.length) {
      for (const part of partsOf(rest))
        if (part.size === 0) share(slot + 1, rest, opens)
        else if (lengthOn(slots[slot]!, part) !== null) share(slot + 1, less(rest, part), new Set([...opens, slot]))
      return
    }
    const laid = rest.size === 0 ? 0 : setting.open ? lengthOn(setting.open, rest) : null
    if (laid !== null) all.push({ laid, opens })
  }
  share(0, counts, new Set())
  return all
}

/** Is a layout asked of it settled? On owned cloth it is enough that the pieces lie on it. */
export const isSure = (ground: Ground, { status, length }: Answer): boolean =>
  ground.field.length === null ? status === 'proved' : status === 'infeasible' || length !== null

const plus = (a: Counts, b: Counts): Counts => {
  const sum = new Map(a)
  for (const [key, n] of b) if (n > 0) sum.set(key, (sum.get(key) ?? 0) + n)
  return sum
}

const less = (a: Counts, b: Counts): Counts =>
  new Map([...a].map(([key, n]) => [key, n - (b.get(key) ?? 0)] as const).filter(([, n]) => n > 0))

/** Every multiset of bundles that is part of another, the empty one included. */
function partsOf(counts: Counts): Counts[] {
  let parts: Counts[] = [new Map()]
  for (const [key, n] of counts)
    parts = parts.flatMap((part) =>
      Array.from({ length: n + 1 }, (_, m) => (m > 0 ? plus(part, new Map([[key, m]])) : part)),
    )
  return parts
}
