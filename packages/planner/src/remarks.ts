import type { Remark } from '@lengthwise/pieces'
import { cm } from '@lengthwise/units'
import type { CutCloth } from './result.ts'

/** Narrower strips tear badly (quiltingboard 6120: under 2 in). */
const NARROW = cm(5)

/** What the layout itself brings up, each at most once. */
export function remarksOn(cloths: readonly CutCloth[]): readonly Remark[] {
  const remarks: Remark[] = []
  const narrow = cloths
    .filter((cloth) => cloth.cloth.divideBy === 'tearing')
    .flatMap((cloth) => cloth.placed)
    .filter((piece) => Math.min(piece.width, piece.length) < NARROW)
  if (narrow.length > 0)
    remarks.push({
      code: 'narrow-strips',
      text: `Strips under 5 cm (2 in) tear badly: draw a thread for ${narrow.map((p) => p.label).join(', ')} and cut along it.`,
    })
  if (cloths.some((cloth) => cloth.cloth.lostPerTear > 0))
    remarks.push({
      code: 'torn-edges',
      text: 'Torn pieces are larger than marked by what is lost at their torn edges: trim the frayed threads off to the size written on them.',
    })
  return remarks
}
