import type { ClothOnTable, Item, Order, RefusedWay, Way } from '@lengthwise/pieces'
import { waysToMake } from '@lengthwise/pieces'
import type { Counts } from './demand.ts'
import { countsKey, liesOf, whyNotOn } from './demand.ts'
import type { Setting } from './setting.ts'
import { takes } from './setting.ts'

/** One way to make one copy of an item, and what it takes from each cloth. */
export interface Option {
  readonly way: Way
  readonly joins: number
  /** by index into the settings; empty where it takes nothing */
  readonly takes: readonly Counts[]
}

/** The ways of one item of the plan from the cloths at these widths. */
export interface Choice {
  readonly item: Item
  readonly itemIndex: number
  readonly count: number
  /** every copy comes from one cloth */
  readonly together: boolean
  readonly options: readonly Option[]
  readonly refused: readonly RefusedWay[]
  readonly capped: boolean
}

/** Do two options take from the same cloths? */
export const fromSameCloths = (a: Option, b: Option): boolean =>
  a.takes.every((taken, s) => taken.size > 0 === b.takes[s]!.size > 0)

/**
 * The choices for some items of a plan, by index. Ways that ask the same of every cloth are one: the one with fewer seams, or the
 * earlier, stays.
 */
export function choicesOf(
  order: Order,
  settings: readonly Setting[],
  items: readonly number[] = [...order.items.keys()],
): readonly Choice[] {
  const tables = new Map<string, ClothOnTable>(settings.map((s) => [s.cloth.name, s.table]))
  return items.map((itemIndex) => {
    const item = order.items[itemIndex]!
    const { ways, refused, capped } = waysToMake(order, item, tables)
    const options = new Map<string, Option>()
    const impossible: RefusedWay[] = []
    for (const way of ways) {
      const taken = settings.map((setting) => takes(setting, way))
      if (taken.some((t) => t === null) || way.pieces.some((p) => !tables.has(p.cloth))) {
        impossible.push(refusal(way, settings[taken.indexOf(null)]))
        continue
      }
      const option = { way, joins: way.joins, takes: taken.map((t) => t!) }
      const key = option.takes.map(countsKey).join(' | ')
      const known = options.get(key)
      if (!known || option.joins < known.joins) options.set(key, option)
    }
    return {
      item,
      itemIndex,
      count: item.count,
      together: item.item === 'rectangle' && item.sameCloth === 'all',
      options: [...options.values()],
      refused: [...refused, ...impossible],
      capped,
    }
  })
}

function refusal(way: Way, setting: Setting | undefined): RefusedWay {
  const stuck = way.pieces.find((p) => p.cloth === setting?.cloth.name && liesOf(p, setting.ground).length === 0)
  return {
    words: way.words,
    why: setting && stuck ? whyNotOn(stuck, setting.ground) : 'a cloth it needs is not at hand',
    cloth: setting?.cloth.name ?? way.pieces[0]?.cloth ?? '',
    direction: 'across',
    short: null,
    widthThatWouldDo: null,
  }
}
