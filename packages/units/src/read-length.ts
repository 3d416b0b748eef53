import type { Length } from './length.ts'
import { length, UNITS_PER_64TH_INCH, UNITS_PER_MM } from './length.ts'
import type { Fault, WrittenNumber } from './number-text.ts'
import { mixedNumber, plainText, readNumber, show } from './number-text.ts'
import type { Outcome, Problem } from './problem.ts'
import { bad, good } from './problem.ts'

/** How a length is read: the unit of a bare number, and where it stands, for its problem. */
export interface ReadOptions {
  readonly measureIn: 'cm' | 'mm' | 'in'
  readonly path?: string
}

type Unit = 'mm' | 'cm' | 'm' | 'in' | 'ft' | 'yd'

/** Nothing on a cutting table is longer: 1000 m. */
const LONGEST = 1000 * 1000 * UNITS_PER_MM
const PER_INCH = BigInt(64 * UNITS_PER_64TH_INCH)
const UNITS_IN: Readonly<Record<Unit, bigint>> = {
  mm: 320n,
  cm: 3200n,
  m: 320_000n,
  in: PER_INCH,
  ft: 12n * PER_INCH,
  yd: 36n * PER_INCH,
}

/**
 * A length such as `112 cm`, `1.12 m`, `45"`, `1 5/8 in`, `54⅛`, `4' 6"`, `2 1/4 yd`; a bare number is in `measureIn`.
 *
 * What is written in inches, and fractions of a foot or yard, must come to whole 64ths of an inch, otherwise it is
 * refused. Everything else is rounded half up to 1/320 mm: `3.3333 cm` is 33.334375 mm, three thousandths of a millimetre at most astray.
 */
export function readLength(text: string, options: ReadOptions): Outcome<Length> {
  const plain = plainText(text)
  const read = typeof plain === 'string' ? lengthOf(plain, options.measureIn) : plain
  return typeof read === 'object' ? bad(lengthProblem(read, options.path)) : good(read)
}

/**
 * Sizes such as `200 x 230 cm`, `20 1/8 × 30 5/8 in`, `150 by 200 by 32`: as many lengths as `count` says.
 * A unit at the end serves all before it; a unit that stops before the end is refused unless it is `measureIn` itself.
 */
export function readLengths(text: string, count: number, options: ReadOptions): Outcome<readonly Length[]> {
  const plain = plainText(text)
  if (typeof plain !== 'string') return bad(lengthProblem(plain, options.path))
  const measures = plain.split(/ ?(?:[x×]|\bby\b) ?/i)
  if (measures.length !== count) return bad(countProblem(plain, measures.length, count, options))
  const ownUnits = measures.map(unitAtEnd)
  const last = ownUnits.at(-1)
  const stray = last === undefined && ownUnits.some((unit) => unit !== undefined && unit !== options.measureIn)
  if (stray)
    return bad(
      lengthProblem(
        {
          fault: 'unit',
          message: `${show(plain)}: the last measure has no unit and the one before it has`,
          hint: 'Write the unit once at the end, or after each measure',
        },
        options.path,
      ),
    )
  const read = measures.map((measure) => lengthOf(measure, options.measureIn, last))
  const faults = read.filter((r): r is Fault => typeof r === 'object')
  if (faults.length > 0) return bad(...faults.map((fault) => lengthProblem(fault, options.path)))
  return good(read as Length[])
}

/** A size W × L, across the bed first. */
export function readSize(
  text: string,
  options: ReadOptions,
): Outcome<{ readonly width: Length; readonly length: Length }> {
  const read = readLengths(text, 2, options)
  if (!read.ok) return read
  const [width, long] = read.value
  return good({ width: width!, length: long! })
}

/** One plain text to a length; `served` is the unit that stands at the end of a size. */
function lengthOf(plain: string, measureIn: ReadOptions['measureIn'], served?: Unit): Length | Fault {
  if (plain === '')
    return { fault: 'empty', message: 'A measure is missing', hint: 'Write a number on both sides of the x' }
  const terms = termsOf(plain)
  if (terms === undefined) return notALength(plain)
  let total = 0n
  let before: Unit | undefined
  for (const { digits, unit: own } of terms) {
    if (own === undefined && terms.length > 1)
      return {
        fault: 'unit',
        message: `${show(plain)} ends without a unit`,
        hint: 'Write both units, such as 4\' 6" or 4 ft 6 in',
      }
    const unit = own ?? served ?? measureIn
    if (before !== undefined && !follows(before, unit)) return notALength(plain)
    before = unit
    const number = readNumber(digits)
    if ('fault' in number)
      return number.fault === 'number' ? { ...number, message: `${show(plain)} is no length that can be read` } : number
    const units = unitsOf(number, unit)
    if (typeof units === 'object') return units
    total += units
  }
  if (total > BigInt(LONGEST))
    return {
      fault: 'too-large',
      message: `${show(plain)} is longer than 1000 m`,
      hint: 'Write a length of at most 1000 m, and look at its unit',
    }
  return length(Number(total))
}

/** `4 ft 6 1/2 in` to its numbers and units; undefined when a word stands there that is no unit. */
function termsOf(plain: string): { digits: string; unit: Unit | undefined }[] | undefined {
  const terms: { digits: string; unit: Unit | undefined }[] = []
  for (const [, digits = '', word = ''] of plain.matchAll(/([^a-z"']*)([a-z]+\.?|["']|$)/gi)) {
    if (digits.trim() === '' && word === '') continue
    const unit = word === '' ? undefined : WORDS[word.toLowerCase().replace(/\.$/, '')]
    if (word !== '' && unit === undefined) return undefined
    terms.push({ digits: digits.trim(), unit })
  }
  return terms.length > 0 && terms.every((term) => term.digits !== '') ? terms : undefined
}

const unitAtEnd = (measure: string): Unit | undefined => termsOf(measure)?.at(-1)?.unit

/** Feet after yards, inches after feet, centimetres after metres: the finer unit of the same family. */
function follows(before: Unit, unit: Unit): boolean {
  const family = METRIC.has(before) === METRIC.has(unit)
  return family && UNITS_IN[unit] < UNITS_IN[before]
}

function unitsOf(number: WrittenNumber, unit: Unit): bigint | Fault {
  const numerator = number.numerator * UNITS_IN[unit]
  const { denominator } = number
  const byThe64th = unit === 'in' || (number.fraction && !METRIC.has(unit))
  const sixtyFourth = BigInt(UNITS_PER_64TH_INCH) * denominator
  if (byThe64th && numerator % sixtyFourth !== 0n) {
    const below = numerator / sixtyFourth
    return {
      fault: 'fraction',
      message: 'This is no whole number of 64ths of an inch',
      hint: `Write ${mixedNumber(below, 64n)} in or ${mixedNumber(below + 1n, 64n)} in`,
    }
  }
  return (2n * numerator + denominator) / (2n * denominator)
}

function notALength(plain: string): Fault {
  if (/^[\d.]+e[+-]?\d+$|^0x[\da-f]+$/i.test(plain))
    return {
      fault: 'number',
      message: `${show(plain)} is written for machines`,
      hint: 'Write the number out in digits',
    }
  const word = /[a-z]+/i.exec(plain)?.[0]
  const known = word === undefined || WORDS[word.toLowerCase()] !== undefined
  return known || !/\d/.test(plain)
    ? {
        fault: 'number',
        message: `${show(plain)} is no length that can be read`,
        hint: 'Write a number and a unit, such as 54 1/8 in or 137.5 cm',
      }
    : {
        fault: 'unit',
        message: `${show(plain)}: ${show(word)} is no unit known here`,
        hint: 'Use mm, cm, m, in, ft or yd',
      }
}

function lengthProblem(fault: Fault, path = ''): Problem {
  return { code: `length-${fault.fault}`, path, message: fault.message, hint: fault.hint }
}

function countProblem(plain: string, found: number, count: number, options: ReadOptions): Problem {
  const unit = options.measureIn
  const example = count === 3 ? `150 x 200 x 32 ${unit}` : `50 x 75 ${unit}`
  const message = `${show(plain)} has ${found === 1 ? 'one measure' : `${found} measures`}, ${count} are needed`
  return { code: 'size-count', path: options.path ?? '', message, hint: `Write it such as ${example}` }
}

const METRIC: ReadonlySet<Unit> = new Set(['mm', 'cm', 'm'])

// a table without a prototype, so that no word such as constructor is found in it
const WORDS: Readonly<Record<string, Unit | undefined>> = Object.assign(Object.create(null), {
  ...spelled('mm', 'mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'),
  ...spelled('cm', 'cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'),
  ...spelled('m', 'm', 'metre', 'metres', 'meter', 'meters'),
  ...spelled('in', 'in', 'inch', 'inches', '"'),
  ...spelled('ft', 'ft', 'foot', 'feet', "'"),
  ...spelled('yd', 'yd', 'yds', 'yard', 'yards'),
})

function spelled(unit: Unit, ...words: string[]): Record<string, Unit> {
  return Object.fromEntries(words.map((word) => [word, unit]))
}
