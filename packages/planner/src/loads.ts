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
  const fits = whatFits(asked.request, last ? { effort: LAST_STEPS } : { effort, ...(stop ? { stop } : {}) })
  book.steps += fits.steps
  let whole = fits.complete
  const found = new Map<string, Counts>()
  for (const { counts: placed } of fits.maximal) {
    const load = new Map<string, number>()
    for (const [demand, { key }] of asked.origins.entries()) if (placed[demand]) load.set(key, placed[demand])
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
/** What the loads of one owned length may still take after the end of a run. */
const LAST_STEPS = 8_000

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
