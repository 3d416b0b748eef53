import type { Length } from '@lengthwise/units'
import { cm, inches, length } from '@lengthwise/units'
import type { Hem, Order, Seam } from '../order.ts'
import { frenchRows, OVERCAST, say, step } from '../sewing.ts'
import type { SewingLine } from '../way.ts'
import type { ZipChoice } from '../zips.ts'

/** One step: what is sewn to what, how long (each, where there are several alike), with which allowance, and how its edges are finished. */
export function sewingStep(order: Order, seam: Seam, what: string, seamLength: Length, each = seamLength): SewingLine {
  const long = `${say(order, each)} long${each === seamLength ? '' : ' each'}`
  const text = `${what}: ${KINDS[seam.kind]}, ${long}, allowance ${say(order, seam.allowance)}. ${finish(order, seam)}`
  return step(text, seamLength)
}

/** A hem turned at its fold mark and stitched over `hemLength`. */
export function hemStep(order: Order, hem: Hem, where: string, hemLength: Length): SewingLine {
  const text = `Hem ${where}, at the fold mark: turn ${say(order, hem.turnedIn)} under, then ${say(order, hem.depth)} deep, and stitch ${say(order, hemLength)}.`
  return step(text, hemLength)
}

/** A zip in the middle of a seam: the seam is closed outside it, and the zip stitched behind the opening. */
export function zipSteps(
  order: Order,
  seam: Seam,
  what: string,
  seamLength: Length,
  zip: ZipChoice,
): readonly SewingLine[] {
  const shut = length(Math.floor((seamLength - zip.opening) / 2))
  // a length that shrinks afterwards is not told from the raw end
  const ends = order.wash === 'after-sewing' ? '' : `, ${say(order, shut)} from each raw end`
  const closed = `${what}, closed outside ${say(order, zip.opening)} left open in the middle for the zip${ends}`
  return [sewingStep(order, plainly(seam), closed, seamLength), zipBehind(order, zip)]
}

/** Stitching clear of the teeth of a zip in the middle of its opening (common practice, no source). */
export function zipBehind(order: Order, zip: ZipChoice | null): SewingLine {
  const beside = say(order, order.measureIn === 'in' ? inches(1 / 4) : cm(0.6))
  return step(
    zip?.zips.length === 2
      ? `Press the allowances open, lay the two zips behind the opening head to head, so that their sliders meet in the middle, and stitch them ${beside} from the fold on either side; leave them open.`
      : `Press the allowances open, lay the zip behind the opening and stitch it ${beside} from the fold on either side; leave it open.`,
  )
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
