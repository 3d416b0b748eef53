import type { CutCloth, Result } from '@lengthwise/planner'
import type { Length, Money } from '@lengthwise/units'
import { printMoney } from '@lengthwise/units'
import { clothTitle } from '../cloth/names.ts'
import type { Measure, Unit } from '../measure.ts'
import { measureIn } from '../measure.ts'
import { oneLine } from '../text.ts'

/** What to buy, whether a better layout can exist, and what is not used: plain sentences without a full stop at the end. */
export function answerInWords(
  result: Result,
  unit?: Unit,
): { readonly buy: readonly string[]; readonly proof: string; readonly waste: string } {
  const measure = measureIn(unit ?? result.order.measureIn)
  if (result.status === 'cannot-be-cut')
    return { buy: [], proof: result.missing.map((each) => each.words).join(' '), waste: '' }
  return { buy: buyWords(result, measure), proof: proofWords(result, measure), waste: wasteOfAll(result.cloths) }
}

function buyWords(result: Result, measure: Measure): readonly string[] {
  const bolts = result.cloths.flatMap((cloth) =>
    cloth.buy === null ? [] : [`Buy ${boughtCloth(cloth, measure)}${costWords(result, cloth.buy.cost)}`],
  )
  const rest = result.buy.filter((row) => row.what !== 'cloth').map((row) => `Buy ${notionWords(row, measure)}`)
  if (bolts.length === 0) return ['Nothing to buy for the cloth: what is there will do', ...rest]
  return [...bolts, ...rest]
}

/** '6.6 m of the 150 cm ticking stripe' */
export function boughtCloth(cloth: CutCloth, measure: Measure): string {
  if (cloth.buy === null) return ''
  return `${measure.bought(cloth.buy.length)} of the ${measure.sold(cloth.buy.width)} ${clothTitle(cloth.name)}`
}

/** '2 zips of 140 cm', '11 buttons', '300 m of sewing thread' */
export function notionWords(row: Result['buy'][number], measure: Measure): string {
  const name = oneLine(row.name)
  if (row.unit === 'piece') {
    if (row.what === 'zip')
      return row.quantity === 1 ? `a ${name}` : `${row.quantity} ${name.replace(/^zip\b/, 'zips')}`
    return `${row.quantity} ${name}`
  }
  return `${measure.bought(row.quantity as Length)} of ${name}`
}

export const costWords = (result: Result, cost: Money | null): string =>
  cost === null ? '' : `, ${printMoney(cost, result.order.currency, { noBreak: true })}`

export function proofWords(result: Result, measure: Measure): string {
  const { proof } = result
  if (proof.status === 'proved')
    return result.cloths.some((c) => c.buy !== null) ? 'No shorter layout exists' : 'Nothing needs to be bought'
  const gap = proof.value - proof.bound
  if (gap <= 0n) return 'No shorter layout was found'
  if (proof.objective === 'cost')
    return `Perhaps cheaper, by at most ${printMoney(gap as Money, result.order.currency, { noBreak: true })}`
  const bolts = result.cloths.filter((each) => each.buy !== null)
  if (bolts.length === 1) return `Perhaps shorter, ${atMost(bolts[0]!, measure)}`
  return `Perhaps less cloth, by at most ${Number((gap * 1000n) / proof.value) / 10}\u00a0%`
}

/** For one cloth: 'no shorter layout exists' or 'perhaps shorter, by at most 12 cm' */
export const clothProof = (cloth: CutCloth, measure: Measure): string =>
  cloth.proof.status === 'proved' ? 'no shorter layout exists' : `perhaps shorter, ${atMost(cloth, measure)}`

const atMost = (cloth: CutCloth, measure: Measure): string =>
  `by at most ${measure.atLeast((cloth.proof.length - cloth.proof.bound) as Length)}`

/** '7 % not used, of it 2 % worth keeping' */
export const wasteWords = (cloth: {
  readonly notUsed: { readonly percent: number; readonly keepPercent: number }
}): string => wasteFigures(cloth.notUsed.percent, cloth.notUsed.keepPercent)

const wasteFigures = (percent: number, keep: number): string =>
  `${Math.round(percent)}\u00a0% not used, of it ${Math.round(keep)}\u00a0% worth keeping`

// both figures over everything bought or taken from hand
function wasteOfAll(cloths: readonly CutCloth[]): string {
  const area = (c: CutCloth): number => c.width * c.length
  const whole = cloths.reduce((sum, c) => sum + area(c), 0)
  const unused = cloths.reduce((sum, c) => sum + c.notUsed.area, 0)
  const keep = cloths.reduce((sum, c) => sum + (c.notUsed.keepPercent / 100) * area(c), 0)
  return whole === 0 ? '' : wasteFigures((100 * unused) / whole, (100 * keep) / whole)
}
