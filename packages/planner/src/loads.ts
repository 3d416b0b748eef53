import { whatFits } from '@lengthwise/solver'
import type { Counts } from './demand.ts'
import { ask, countsKey } from './demand.ts'
import type { Ground } from './field.ts'
import type { How, LayoutBook } from './layout-book.ts'
import { mustKeep } from './must-keep.ts'
import type { Setting } from './setting.ts'

/** The largest loads one owned length can take, by bundles. */
export function largestLoads(
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
  // nor is there anything to show without one, even when the run is ended
  const last = !setting.open && stop?.()
  // a hem to be kept may ask for more room when fewer pieces need it
  const mayFail = mustKeep(ground).length > 0
  // what can be laid with hems on strips can be laid where they may end on pieces: the last request has all loads
  const requests =
    asked.hems === 'on-strips' ? [asked, ask(book.order, ground, counts, setting.bundles, 'on-pieces')] : [asked]
  let whole = true
  const found = new Map<string, Counts>()
  for (const { request, origins } of requests) {
    const fits = whatFits(request, last ? { effort: LAST_STEPS } : { effort, ...(stop ? { stop } : {}) })
    book.steps += fits.steps
    whole = fits.complete
    for (const { counts: placed } of fits.maximal) {
      const load = new Map<string, number>()
      for (const [demand, { key }] of origins.entries()) if (placed[demand]) load.set(key, placed[demand])
      if (load.size === 0) continue
      if (mayFail && book.lay(setting, ground, load, how).answer.length === null) whole = false
      else found.set(countsKey(load), load)
    }
  }
  // where effort ended before anything was sure to fit, or every load would spoil a hem, one load is better than none
  if (found.size === 0 && !whole) return { counts: [greedyLoad(book, setting, ground, counts)], complete: false }
  const area = (load: Counts) => [...load].reduce((sum, [key, n]) => sum + n * areaOf(setting, key), 0)
  return { counts: [...found.values()].sort((a, b) => area(b) - area(a)), complete: whole }
}

const MOST_DEMANDS = 10
/** What the loads of one owned length may still take after the end of a run. */
const LAST_STEPS = 8_000

/** One load: bundle after bundle, the largest first, as many of each as still go on. */
function greedyLoad(book: LayoutBook, setting: Setting, ground: Ground, counts: Counts): Counts {
  const area = (key: string) => areaOf(setting, key)
  let load: Counts = new Map()
  for (const key of [...counts.keys()].sort((a, b) => area(b) - area(a) || (a < b ? -1 : 1))) {
    let low = 0
    let high = Math.min(counts.get(key)!, Math.floor((ground.field.width * ground.field.length!) / area(key)))
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

const areaOf = (setting: Setting, key: string): number =>
  setting.bundles.get(key)!.members.reduce((sum, m) => sum + m.count * m.area, 0)
