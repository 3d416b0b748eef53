import type { Length } from '@lengthwise/units'
import type { Hem, Order, Seam } from '../order.ts'
import { frenchRows, OVERCAST, say, step } from '../sewing.ts'
import type { SewingLine } from '../way.ts'

/** One step: what is sewn to what, how long (each, where there are several alike), with which allowance, and how its edges are finished. */
export function sewingStep(order: Order, seam: Seam, what: string, seamLength: Length, each = seamLength): SewingLine {
  const long = `${say(order, each)} long${each === seamLength ? '' : ' each'}`
  const text = `${what}: ${KINDS[seam.kind]}, ${long}, allowance ${say(order, seam.allowance)}. ${finish(order, seam)}`
  return step(text, seamLength)
}

/** A hem turned at its fold mark and stitched over `hemLength`. */
export function hemStep(order: Order, hem: Hem, where: string, hemLength: Length): SewingLine {
  const turns = hem.turns === 1 ? 'a single turn' : 'a double turn'
  const text = `Hem ${where}, at the fold mark: ${turns} ${say(order, hem.depth)} deep with ${say(order, hem.turnedIn)} turned in, stitched along ${say(order, hemLength)}.`
  return step(text, hemLength)
}

/** Zips, gathers and circles are sewn with a plain seam whatever the other seams are. */
export const plainly = (seam: Seam): Seam => ({ ...seam, kind: 'plain' })

const KINDS: Readonly<Record<Seam['kind'], string>> = {
  plain: 'plain seam',
  french: 'French seam',
  'flat-felled': 'flat-felled seam',
}

function finish(order: Order, { kind, allowance }: Seam): string {
  switch (kind) {
    case 'plain':
      return OVERCAST
    case 'french':
      return `Wrong sides together, ${frenchRows(order, allowance)}`
    case 'flat-felled':
      return 'Trim one allowance, fold the other over it and stitch it down: the raw edges are enclosed.'
  }
}
