import type { Notion, Way } from '@lengthwise/pieces'
import { printLength } from '@lengthwise/units'
import type { BuyLine, CutCloth } from './result.ts'

/** Everything to buy: cloth first, then what the ways need, like things together. */
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
  const order = ['zip', 'buttons', 'snaps', 'cord', 'tape', 'elastic', 'thread']
  return [...lines, ...[...others.values()].sort((a, b) => order.indexOf(a.what) - order.indexOf(b.what))]
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
