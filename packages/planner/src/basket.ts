import type { Notion, Way } from '@lengthwise/pieces'
import type { Length } from '@lengthwise/units'
import { inches, length, mm, printLength, roundUpTo } from '@lengthwise/units'
import type { BuyLine, CutCloth } from './result.ts'

/** Everything to buy: cloth first, then what the ways need, like things together, lengths rounded up as shops sell them. */
export function basketOf(
  cloths: readonly CutCloth[],
  ways: readonly Way[],
  unit: 'cm' | 'mm' | 'in',
): readonly BuyLine[] {
  const lines: BuyLine[] = cloths.flatMap((cloth) =>
    cloth.buy
      ? [
          {
            what: 'cloth' as const,
            name: cloth.name,
            quantity: cloth.buy.length,
            unit: 'mm' as const,
            cost: cloth.buy.cost,
          },
        ]
      : [],
  )
  const others = new Map<string, BuyLine>()
  for (const notion of ways.flatMap((way) => way.notions)) {
    const line = lineFor(notion, unit)
    const key = `${line.what} ${line.name}`
    others.set(key, { ...line, quantity: (others.get(key)?.quantity ?? 0) + line.quantity })
  }
  for (const [key, line] of others)
    if (line.unit === 'mm')
      others.set(key, { ...line, quantity: roundUpTo(length(line.quantity), stepOf(line.what, unit)) })
  const order = ['zip', 'buttons', 'snaps', 'cord', 'tape', 'elastic', 'thread']
  return [...lines, ...[...others.values()].sort((a, b) => order.indexOf(a.what) - order.indexOf(b.what))]
}

/** Shops sell thread by the reel, cord, tape and elastic by the decimetre or the eighth of a yard. */
function stepOf(what: BuyLine['what'], unit: 'cm' | 'mm' | 'in'): Length {
  if (what === 'thread') return unit === 'in' ? inches(360) : mm(10_000)
  return unit === 'in' ? inches(4.5) : mm(100)
}

function lineFor(notion: Notion, unit: 'cm' | 'mm' | 'in'): BuyLine {
  const { what } = notion
  // a zip is bought by its length
  const name =
    what === 'zip' ? notion.words.replace(/^zip/, `zip of ${printLength(notion.length, unit)}`) : notion.words
  return 'count' in notion
    ? { what, name, quantity: notion.count, unit: 'piece', cost: null }
    : { what, name, quantity: notion.length, unit: 'mm', cost: null }
}
