import type { AtWidths } from './at-widths.ts'
import type { LayoutBook } from './layout-book.ts'
import type { Share } from './share.ts'
import { valueToBuy } from './share.ts'

/** The chosen layouts once more, for the largest remnant, the fewest divisions and the fewest changes of direction. */
export function tidyLayouts(book: LayoutBook, chosen: AtWidths): AtWidths {
  const best = chosen.answer.best!
  let { value, laid } = best.wish
  const shares = best.shares.map((share, s): Share | null => {
    const setting = chosen.settings[s]!
    return (
      share && {
        ...share,
        spreads: share.spreads.map((spread) => {
          const ground = spread.nth === null ? setting.open! : spread.ground
          const laidAgain = book.tidied(setting, ground, spread.counts, spread)
          if (!laidAgain) return spread
          const { asked, answer } = laidAgain
          const before = spread.answer.length!
          if (spread.nth === null) {
            value += valueToBuy(book, setting, answer.length!) - valueToBuy(book, setting, before)
            laid += answer.length! - before
          }
          return { ...spread, asked, answer }
        }),
      }
    )
  })
  const wish = { ...best.wish, value, laid }
  return { ...chosen, answer: { ...chosen.answer, best: { ...best, shares, wish } } }
}
