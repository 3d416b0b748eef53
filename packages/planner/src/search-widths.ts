import type { Cloth } from '@lengthwise/pieces'
import type { AtWidths, Widths } from './at-widths.ts'
import { solveAt } from './at-widths.ts'
import { isBolt } from './buying.ts'
import { chooseWays } from './choose.ts'
import type { Group } from './groups.ts'
import type { LayoutBook } from './layout-book.ts'
import type { PlanOptions } from './result.ts'
import { compareWishes, lesser } from './wishes.ts'

/** With more combinations of widths than this, one bolt after the other is varied, and nothing is proved over all of them. */
const MOST_COMBINATIONS = 36

/** All combinations together may cost this many times the steps for a choice. */
const MOST_OVER = 4

/** What is known of one group of items and cloths at the widths that were tried. */
export interface Searched {
  readonly group: Group
  /** null: no width can serve */
  readonly best: AtWidths | null
  readonly tried: readonly AtWidths[]
  /** every choice of widths, whatever `best` is, buys at least this much */
  readonly bound: bigint
  /** the best ways at other widths; null when the run was ended before they were tried */
  at(widths: Widths): AtWidths | null
}

/** One group with the best that was found for it. */
export interface GroupAnswer extends Pick<Searched, 'group' | 'bound' | 'at'> {
  readonly best: AtWidths
}

/**
 * The best widths of one group's bolts, with the best ways for them: every combination, or one bolt after the other where there
 * are too many. `steps`: what the choices of ways may cost in all.
 */
export function searchWidths(
  book: LayoutBook,
  group: Group,
  steps: number,
  options: Pick<PlanOptions, 'compareWidths'>,
  onBetter: (better: AtWidths, bound: bigint) => void,
): Searched {
  const { cloths } = group
  const { stop } = book.effort
  const bolts = cloths.filter(isBolt)
  const known = new Map<string, AtWidths>()
  const before = book.steps
  let best = null as AtWidths | null

  const { combinations, all } = combinationsOf(bolts)
  const stepsEach = Math.ceil(steps / combinations.length)
  // the rows of a single bolt need the best of every width; otherwise a width is left when it cannot be the best
  const oneByOne = options.compareWidths !== false && bolts.length <= 1
  for (const widths of combinations) consider(at(widths, oneByOne ? null : (best?.answer.best?.wish.value ?? null)))
  if (!all) for (let better = true; better && !spent(); ) better = improveOneBolt()
  if (all) for (const found of [...known.values()]) if (best) beat(best, found)

  return { group, best, tried: [...known.values()], bound: boundOfAll(), at }

  function at(widths: Widths, cutOff: bigint | null = null): AtWidths | null {
    const key = keyOf(widths)
    const already = known.get(key)
    if (already && !already.cutOff) return already
    if (ended()) return already?.answer.best ? already : null
    const found = solveAt(
      book,
      group,
      widths,
      known.size > 0 && spent() ? 1 : stepsEach,
      cutOff,
      (half, better, bound) => {
        if (best?.answer.best && compareWishes(better.wish, best.answer.best.wish) >= 0) return
        const answer = { best: better, bound, status: 'best-found', by: 'area' } as const
        onBetter({ ...half, answer, cutOff: false }, bound)
      },
    )
    known.set(key, found)
    return found
  }

  /** What is not known to be no cheaper at other widths, or at these, is searched once more for no more than that. */
  function beat(than: AtWidths, at: AtWidths): void {
    const { wish } = than.answer.best!
    const { bound } = at.answer
    if (bound === null || bound >= wish.value || stop?.()) return
    const answer = chooseWays(book, at.settings, at.choices, stepsEach, null, undefined, wish)
    const raised = answer.bound !== null && answer.bound > bound ? answer.bound : bound
    const proved = at.answer.best && raised >= at.answer.best.wish.value
    const status = proved ? 'proved' : at.answer.status
    const now: AtWidths = answer.best
      ? { ...at, answer, cutOff: false }
      : { ...at, answer: { ...at.answer, bound: raised, status } }
    known.set(keyOf(at.widths), now)
    if (answer.best) consider(now)
    else if (at === best) best = now
  }

  function consider(found: AtWidths | null): boolean {
    if (!found?.answer.best) return false
    if (best?.answer.best && compareWishes(found.answer.best.wish, best.answer.best.wish) >= 0) return false
    best = found
    return true
  }

  /** With many bolts or rows each further combination of widths gets a first layout only. */
  function spent(): boolean {
    return book.steps - before > MOST_OVER * steps || ended()
  }

  /** Told to stop, with something to show. */
  function ended(): boolean {
    return best !== null && (stop?.() ?? false)
  }

  function improveOneBolt(): boolean {
    const from = best?.widths ?? combinations[0]!
    return bolts.some((cloth) =>
      cloth.widths.some(
        (_, index) =>
          !spent() && consider(at(new Map([...from, [cloth.name, index]]), best?.answer.best?.wish.value ?? null)),
      ),
    )
  }

  function boundOfAll(): bigint {
    if (!all || !best || known.size < combinations.length) return 0n
    const bounds = [...known.values()].map(({ answer }) => answer.bound).filter((bound) => bound !== null)
    return bounds.reduce(lesser)
  }
}

const keyOf = (widths: Widths): string => [...widths.values()].join()

function combinationsOf(bolts: readonly Cloth[]): { readonly combinations: readonly Widths[]; readonly all: boolean } {
  let combinations: Widths[] = [new Map()]
  const all = bolts.reduce((n, cloth) => n * cloth.widths.length, 1) <= MOST_COMBINATIONS
  for (const cloth of bolts) {
    const widths = all ? cloth.widths : cloth.widths.slice(0, 1)
    combinations = combinations.flatMap((c) => widths.map((_, i) => new Map([...c, [cloth.name, i]])))
  }
  return { combinations, all }
}
