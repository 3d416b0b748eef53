import type { Counts } from './demand.ts'
import { countsKey, isEmpty, least, less } from './demand.ts'
import type { Ground } from './field.ts'
import type { How, LayoutBook } from './layout-book.ts'
import { largestLoads } from './loads.ts'
import type { Setting } from './setting.ts'
import type { Share, Sharing, Spread } from './share.ts'
import { buyAll, valueToBuy } from './share.ts'
import type { Wish } from './wishes.ts'
import { bestOfAsCheap } from './wishes.ts'

/** The cheapest sharing of these pieces. */
export function shareOut(book: LayoutBook, setting: Setting, counts: Counts, how: How): Sharing {
  const at = setting.owned.map(({ nths }) => nths.length)
  const key = `${setting.id}|${at}|${how}|${countsKey(counts)}`
  const known = book.sharings.get(key) ?? book.before?.sharings.get(key)
  if (known) return known
  const sharing =
    setting.open && setting.owned.length === 0
      ? { share: buyAll(book, setting, counts, how), certain: true }
      : mixed(book, setting, counts, how)
  if (!sharing.share && !sharing.certain && how === 'look' && !book.effort.stop?.())
    return shareOut(book, setting, counts, 'deep')
  if (!sharing.share?.stopped) book.sharings.set(key, sharing)
  return sharing
}

/** The sharings of one cloth may cost as much as this many layouts. */
const SHARING_LOOKS = 4
/** A run that is ended before it has found any sharing tries so many more, beside one for each owned length. */
const LAST_TRIES = 10
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
    const most = book.effort.stop?.() ? (cheapest.length > 0 ? 0 : LAST_TRIES + slots.length) : book.effort.sharings
    if (tries > 0 && (tries > most || book.steps > until)) {
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
        // part of a load goes where the load goes, unless effort ends or a hem to be kept asks for more room: then not all is tried
        complete = false
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
