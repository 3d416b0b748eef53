/**
 * Numbers as people write them at a cutting table: `137.5`, `137,5`, `54 1/8`, `54-1/8`, `54⅛`, `5/8`.
 * Read exactly, as a fraction of whole numbers; floating point never takes part (`parseFloat('1 5/8')` is 1).
 */
export interface WrittenNumber {
  readonly numerator: bigint
  readonly denominator: bigint
  /** how it was written: with a fraction, or as a whole or decimal number */
  readonly fraction: boolean
}

/** Why a text is no number: the code is completed by the reader that asked (`length-ambiguous`, `price-ambiguous`). */
export interface Fault {
  readonly fault: 'empty' | 'characters' | 'number' | 'negative' | 'ambiguous' | 'fraction' | 'too-large' | 'unit'
  readonly message: string
  readonly hint: string
}

/** No measure, price or share needs a longer text than this. */
const LONGEST_TEXT = 60
/** Digits on one side of the decimal sign. */
const MOST_DIGITS = 12
const LARGEST_DENOMINATOR = 64n

/**
 * Brings the many signs of one meaning to one: fraction characters to ` n/d`, primes and quotes to `'` and `"`,
 * every kind of space to one blank. Unicode's own compatibility folding must not come first: it makes `15⁄8` of `1⅝`.
 */
export function plainText(text: string): string | Fault {
  if (text.length > LONGEST_TEXT)
    return {
      fault: 'characters',
      message: `${text.length} characters are too many here`,
      hint: 'Write a number and a unit, such as 54 1/8 in or 137.5 cm',
    }
  if (HIDDEN.test(text))
    return {
      fault: 'characters',
      message: `${show(text)} holds characters that cannot be seen`,
      hint: 'Delete the text and type it again, digits and unit only',
    }
  const spelled = text
    .replace(FRACTION_CHARACTERS, (c) => ` ${FRACTIONS[c]} `)
    .replace(/⅟/g, ' 1/')
    .replace(/[⁄∕]/g, '/')
    .replace(/[″”“„]|''|′′|’’/g, '"')
    .replace(/[′’‘]/g, "'")
    .replace(/[−–‐‑]/g, '-')
  const plain = spelled.normalize('NFKC').replace(/\s+/g, ' ').trim()
  if (plain === '')
    return { fault: 'empty', message: 'Nothing is written here', hint: 'Write a number, such as 54 1/8 or 137.5' }
  return plain
}

/** One number in a text that `plainText` has made plain; nothing else may stand beside it. */
export function readNumber(plain: string): WrittenNumber | Fault {
  if (/^-/.test(plain))
    return {
      fault: 'negative',
      message: `${show(plain)} is below 0`,
      hint: 'Write it without the minus sign, or 0',
    }
  const withFraction = /^(?:(\d+)(?: | ?- ?))?(\d+) ?\/ ?(\d+)$/.exec(plain)
  if (withFraction) return fractionNumber(plain, withFraction[1] ?? '0', withFraction[2]!, withFraction[3]!)
  const decimal = /^(\d*)(?:([.,])(\d*))?$/.exec(plain)
  if (decimal && /\d/.test(plain)) return decimalNumber(plain, decimal[1]!, decimal[2], decimal[3] ?? '')
  if (/^\d{1,3}([.,' ]\d{3})+([.,]\d+)?$/.test(plain)) {
    const [, whole = '', rest = ''] = /^(.*?\d{3})([.,]\d+)?$/.exec(plain) ?? []
    const bare = /[.,]/.test(rest) || rest === '' ? `${whole.replace(/\D/g, '')}${rest.replace(',', '.')}` : plain
    return {
      fault: 'number',
      message: `${show(plain)} has a sign between the thousands`,
      hint: `Write ${bare} without it`,
    }
  }
  return {
    fault: 'number',
    message: `${show(plain)} is no number that can be read here`,
    hint: 'Write it such as 54, 54 1/8 or 137.5',
  }
}

/** A text as it may stand in a message: short, on one line, hidden characters spelled out. */
export function show(text: string): string {
  const visible = text.replace(HIDDEN_ALL, (c) => `\\u${c.codePointAt(0)!.toString(16).padStart(4, '0')}`)
  return visible.length > 40 ? `“${visible.slice(0, 39)}…”` : `“${visible}”`
}

function fractionNumber(plain: string, whole: string, top: string, bottom: string): WrittenNumber | Fault {
  if (whole.length > MOST_DIGITS || top.length > MOST_DIGITS || bottom.length > MOST_DIGITS) return tooLarge(plain)
  const numerator = BigInt(top)
  const denominator = BigInt(bottom)
  if (denominator === 0n)
    return { fault: 'fraction', message: `${show(plain)} divides by 0`, hint: 'Write a fraction such as 1/8' }
  if (denominator > LARGEST_DENOMINATOR)
    return {
      fault: 'fraction',
      message: `${show(plain)} is finer than a 64th`,
      hint: `Write a fraction down to 64ths, the nearest is ${nearest64th(whole, numerator, denominator)}`,
    }
  if (whole !== '0' && numerator >= denominator)
    return {
      fault: 'fraction',
      message: `${show(plain)}: the fraction after a whole number is less than 1`,
      hint: 'Write it such as 1 5/8, or leave the whole number out',
    }
  return { numerator: BigInt(whole) * denominator + numerator, denominator, fraction: true }
}

function decimalNumber(plain: string, whole: string, sign: string | undefined, places: string): WrittenNumber | Fault {
  if (whole.length > MOST_DIGITS || places.length > MOST_DIGITS) return tooLarge(plain)
  // 1,250 is one and a quarter to one reader and twelve hundred and fifty to another; 0.125 and 1234.567 can be read one way only
  if (sign !== undefined && places.length === 3 && /^[1-9]\d{0,2}$/.test(whole)) {
    const trimmed = places.replace(/0+$/, '')
    const small = trimmed === '' ? whole : `${whole}.${trimmed.length === 3 ? `${trimmed}0` : trimmed}`
    return {
      fault: 'ambiguous',
      message: `${plain} can be read both ways`,
      hint: `Write ${whole}${places} or ${small}`,
    }
  }
  return { numerator: BigInt(`0${whole}${places}`), denominator: 10n ** BigInt(places.length), fraction: false }
}

function tooLarge(plain: string): Fault {
  return {
    fault: 'too-large',
    message: `${show(plain)} has too many digits`,
    hint: 'Write a number that fits on a cutting table, such as 54 1/8 or 137.5',
  }
}

function nearest64th(whole: string, numerator: bigint, denominator: bigint): string {
  const sixtyFourths = (numerator * 64n * 2n + denominator) / (2n * denominator) + BigInt(whole) * 64n
  return mixedNumber(sixtyFourths, 64n)
}

/** `numerator/denominator` as `54 1/8`, in lowest terms. */
export function mixedNumber(numerator: bigint, denominator: bigint): string {
  const divisor = greatestCommonDivisor(numerator, denominator)
  const n = numerator / divisor
  const d = denominator / divisor
  const whole = n / d
  const rest = n % d
  if (rest === 0n) return `${whole}`
  return whole === 0n ? `${rest}/${d}` : `${whole} ${rest}/${d}`
}

export function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  return b === 0n ? (a === 0n ? 1n : a) : greatestCommonDivisor(b, a % b)
}

// controls other than tab and line ends; format characters (bidirectional, zero-width, soft hyphen); lone surrogates
const HIDDEN = /[\p{Cf}\p{Cs}\u2028\u2029]|(?![\t\n\r])\p{Cc}/u
const HIDDEN_ALL = /[\p{Cf}\p{Cs}\p{Cc}\u2028\u2029]/gu

/** True when a text holds control characters, bidirectional signs or others that cannot be seen. */
export const hasHiddenCharacters = (text: string): boolean => HIDDEN.test(text)

// U+00BC–BE and U+2150–215E, U+2189
const FRACTIONS: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅐': '1/7',
  '⅑': '1/9',
  '⅒': '1/10',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '↉': '0/3',
}
const FRACTION_CHARACTERS = /[\u00bc-\u00be\u2150-\u215e\u2189]/g
