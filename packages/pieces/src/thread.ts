import type { Length } from '@lengthwise/units'
import { length } from '@lengthwise/units'
import type { Hem } from './order.ts'
import type { Piece, SeamLine } from './way.ts'

/**
 * Thread for one copy, by stitch type of ISO 4915, in tenths of thread per length of seam. Source of the ratios: a thread
 * maker's stitch guide (scribd 49933681) and apparelscience 'ISO stitch types 300–400': 301 lockstitch 2.5, 304 zigzag 5.5.
 */
const LOCKSTITCH = 25
const ZIGZAG = 55
/** Ends, breaks and winding: 15 % on top (apparelscience 'measuring actual thread consumption': 10 to 15 %). */
const WITH_WASTE_PERCENT = 115

/** Rows of lockstitch in each kind of seam. */
const ROWS: Record<SeamLine['kind'], number> = { plain: 1, french: 2, 'flat-felled': 2, lapped: 2, zip: 2 }

/**
 * Needle and bobbin thread together, waste included. Plain and zip seams have their raw edges overcast by zigzag
 * (a selvedge or kept hem needs none); French and felled seams enclose theirs. `hems`: stitched length of hems, one row.
 */
export function threadLength(pieces: readonly Piece[], seams: readonly SeamLine[], hems: number): Length {
  const byName = new Map(pieces.map((piece) => [piece.name, piece]))
  let tenths = hems * LOCKSTITCH
  for (const seam of seams) {
    tenths += seam.length * ROWS[seam.kind] * LOCKSTITCH
    if (seam.kind !== 'plain' && seam.kind !== 'zip') continue
    const raw = [seam.a, seam.b].filter((ref) => byName.get(ref.piece)?.needs[ref.edge].kind === 'none').length
    // outer seams are pressed to one side and overcast as one, seams inside a face are pressed open
    tenths += seam.length * ZIGZAG * (seam.role === 'side' ? Math.min(1, raw) : raw)
  }
  return length(Math.ceil((tenths * WITH_WASTE_PERCENT) / 1000))
}

/** What a hem takes of the cloth beyond its fold. */
export const hemTake = (hem: Hem): Length => length(hem.depth + hem.turnedIn)
