import type { Price } from './money.ts'
import type { Fault, WrittenNumber } from './number-text.ts'
import { plainText, readNumber, show } from './number-text.ts'
import { decimal } from './print-length.ts'
import type { Outcome } from './problem.ts'
import { bad, good } from './problem.ts'
import type { Share } from './share.ts'

/**
 * A share such as `5 %`, `2,5%` or a bare `5`, all of a hundred; at least 0 and less than 100, four decimals at most.
 * A bare number between 0 and 1 may mean a part of one, and is refused.
 */
export function readPercent(text: string, path = ''): Outcome<Share> {
  const plain = plainText(text)
  const number = typeof plain === 'string' ? readNumber(plain.replace(SIGN, '').trim()) : plain
  if ('fault' in number) return refuse('percent', path, number, 'Write it such as 5 %')
  const millionths = number.numerator * 10_000n
  if (millionths % number.denominator !== 0n)
    return refuse('percent', path, {
      fault: 'fraction',
      message: `${show(text)} has more than four decimals`,
      hint: 'Write it with four decimals at most',
    })
  const share = millionths / number.denominator
  if (share > 0n && share < 10_000n && typeof plain === 'string' && !SIGN.test(plain)) {
    const hint = `Write ${decimal(share, 100n, 4)} % or ${decimal(share, 10_000n, 4)} %`
    return bad({ code: 'percent-ambiguous', path, message: `${show(text)} can be read both ways`, hint })
  }
  if (share >= 1_000_000n)
    return refuse('percent', path, {
      fault: 'too-large',
      message: `${show(text)} leaves nothing`,
      hint: 'Write a share below 100 %, such as 5 %',
    })
  return good(Number(share) as Share)
}

/**
 * A price of cloth such as `14.50 per m`, `9,80 per yd`, `12 / m`: coins are hundredths, two decimals at most.
 */
export function readPrice(text: string, path = ''): Outcome<Price> {
  const example = 'Write it such as 14.50 per m or 9.80 per yd'
  const plain = plainText(text)
  if (typeof plain !== 'string') return refuse('price', path, plain, example)
  const parts = /^(.*?) ?(?:per|\/|\ba\b) ?([a-z]+)$/i.exec(plain)
  const per = parts ? PER[parts[2]!.toLowerCase()] : undefined
  if (!parts || per === undefined)
    return refuse('price', path, {
      fault: 'unit',
      message: `${show(text)} does not say for how much cloth`,
      hint: example,
    })
  const number = readNumber(parts[1]!)
  if ('fault' in number) return refuse('price', path, number, example)
  return priceOf(number, per, text, path)
}

function priceOf(number: WrittenNumber, per: Price['per'], text: string, path: string): Outcome<Price> {
  const coins = number.numerator * 100n
  if (coins % number.denominator !== 0n)
    return refuse('price', path, {
      fault: 'fraction',
      message: `${show(text)} has more than two decimals`,
      hint: 'Write the price with two decimals, such as 14.50 per m',
    })
  const whole = coins / number.denominator
  if (whole > DEAREST)
    return refuse('price', path, {
      fault: 'too-large',
      message: `${show(text)} is more than a million`,
      hint: 'Write the price of one metre or one yard',
    })
  return good({ coins: Number(whole), per })
}

function refuse<T>(what: string, path: string, fault: Fault, hint = fault.hint): Outcome<T> {
  const keepsHint = fault.fault === 'ambiguous' || fault.fault === 'characters' || fault.fault === 'negative'
  return bad({ code: `${what}-${fault.fault}`, path, message: fault.message, hint: keepsHint ? fault.hint : hint })
}

const SIGN = /%$|per ?cent$/i

const DEAREST = 100_000_000n

const PER: Readonly<Record<string, Price['per'] | undefined>> = Object.assign(Object.create(null), {
  m: 'm',
  metre: 'm',
  meter: 'm',
  yd: 'yd',
  yard: 'yd',
})
