import { cm, length, ZERO } from '@lengthwise/units'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { QuiltBack } from '../src/index.ts'
import { waysToMake } from '../src/index.ts'
import { bolt, COMMON, face, orderOf, tablesOf } from './orders.ts'

/* The closed list of ways, counted a second time by trying every number of panels. Whole centimetres, no washing. */

/** Widths of the panels of every way, as sorted lists in words. */
function everyWay(need: number, cloth: number, seam: number, smallest: number): ReadonlySet<string> {
  const ways = new Set<string>()
  if (need <= cloth) return new Set([`${need}`])
  const good = (panel: number): boolean => panel >= smallest && panel <= cloth
  for (let panels = 2; panels <= 40; panels++) {
    const total = need + 2 * seam * (panels - 1)
    // full widths and one rest
    const rest = total - (panels - 1) * cloth
    if (rest > 0 && good(rest)) ways.add([...Array(panels - 1).fill(cloth), rest].sort((a, b) => a - b).join(' '))
    // full widths between two equal sides
    const both = total - (panels - 2) * cloth
    const side = Math.ceil(both / 2)
    if (panels > 2 && both > 0 && good(side))
      ways.add([...Array(panels - 2).fill(cloth), side, side].sort((a, b) => a - b).join(' '))
  }
  return ways
}

test('every way of the closed list is found, and no other', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 60, max: 400 }),
      fc.integer({ min: 40, max: 200 }),
      fc.integer({ min: 1, max: 3 }),
      fc.integer({ min: 7, max: 30 }),
      (need, cloth, seam, smallest) => {
        const item: QuiltBack = {
          ...COMMON,
          seam: { kind: 'plain', allowance: cm(seam) },
          item: 'quilt-back',
          quilt: { width: cm(need), length: cm(100) },
          overhang: ZERO,
          face: face('cotton', { lengthRuns: 'along', smallestPanel: cm(smallest) }),
        }
        const order = orderOf([bolt('cotton', [cm(cloth)])], [item], { markTo: cm(1) })
        const found = waysToMake(order, item, tablesOf(order)).ways.map((way) =>
          way.pieces
            .map((piece) => piece.cutWidth / length(cm(1)))
            .sort((a, b) => a - b)
            .join(' '),
        )
        expect(new Set(found)).toEqual(everyWay(need, cloth, seam, smallest))
        expect(found.length).toBe(new Set(found).size)
      },
    ),
    { seed: 3, numRuns: 300 },
  )
})
