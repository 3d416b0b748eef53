import type { NamedSize, Size } from '@lengthwise/pieces'
import type { Length, Outcome, Price, Share } from '@lengthwise/units'
import { length, readLength, readLengths, readPercent, readPrice, readSize, showText } from '@lengthwise/units'
import * as z from 'zod'
import { LIMITS } from '../limits.ts'
import { nearest } from '../nearest.ts'

// zod would otherwise compile its objects with new Function, which the page's content security policy forbids
z.config({ jitless: true })

export type Measure = 'cm' | 'mm' | 'in'

/** What a plan's text fields are read by; bare numbers are in `measureIn`. */
export type Leaves = ReturnType<typeof leaves>

export interface MattressSize extends Size {
  readonly depth: Length
}

/** How a refinement tells its problem: code and hint ride along with the message. */
export type Context = z.core.$RefinementCtx<unknown>

export function refuse(context: Context, code: string, message: string, hint: string): never {
  context.issues.push({ code: 'custom', message, input: context.value, params: { code, hint } })
  return z.NEVER
}

/** The value of an outcome, or its problems handed on. */
function taken<T>(outcome: Outcome<T>, context: Context): T {
  if (outcome.ok) return outcome.value
  for (const { code, message, hint } of outcome.problems) refuse(context, code, message, hint)
  return z.NEVER
}

// texts may be written without quotes, so a number stands for its digits
const written = (example: string) =>
  z.union([z.string(), z.number()], { error: () => `Write it such as ${example}` }).transform(digits)

// a number that comes as one is no text that can be read two ways: 54.125 becomes 54.1250
function digits(value: string | number): string {
  return typeof value === 'number' && /^[1-9]\d{0,2}\.\d{3}$/.test(String(value)) ? `${value}0` : String(value)
}

/**
 * An object of known keys. Zod names the unknown ones only, and the hint needs the known ones too:
 * they travel as the message of the issue, which `problems.ts` turns into words.
 */
export function keys<Shape extends z.core.$ZodLooseShape>(shape: Shape) {
  return z.strictObject(shape, {
    error: (issue) => (issue.code === 'unrecognized_keys' ? Object.keys(shape).join(' ') : undefined),
  })
}

/** One of several words of the trade, some with other names. */
export function word<const Words extends readonly string[]>(
  words: Words,
  aliases: Readonly<Record<string, Words[number]>> = {},
) {
  const others: Record<string, Words[number]> = { ...aliases }
  for (const one of words) {
    const other = one.replace('centre', 'center').replace('selvedge', 'selvage')
    if (other !== one) others[other] = one
  }
  return z
    .enum([...(words as readonly string[]), ...Object.keys(others)])
    .transform((text): Words[number] => others[text] ?? text)
}

/** Several forms of one value; `forms` says them when none fits. */
export function either<const Options extends readonly z.ZodType[]>(forms: string, ...options: Options) {
  return z.union(options, { error: () => `Write ${forms}` })
}

/** Yes or no; YAML reads the words as text. */
export const yesNo = () =>
  either('yes or no', z.boolean(), z.enum(['yes', 'no'])).transform((value) => value === true || value === 'yes')

export const text = () => z.union([z.string(), z.number()], { error: () => 'Write it as text' }).transform(String)

/** A name that other places of the plan, files and slips repeat. */
export const name = () =>
  text().transform((value, context) => {
    const trimmed = value.trim()
    if (trimmed === '') return refuse(context, 'name-empty', 'The name is empty', 'Write a short name')
    if (trimmed.length > LIMITS.nameCharacters)
      return refuse(
        context,
        'name-long',
        `The name has more than ${LIMITS.nameCharacters} characters`,
        'Write a shorter name',
      )
    if (/[\n\r\t]/.test(trimmed))
      return refuse(context, 'name-lines', 'The name runs over several lines', 'Write it on one line')
    if (/\.\.|[/\\]/.test(trimmed))
      return refuse(
        context,
        'name-path',
        `${showText(trimmed)} looks like a path to a file`,
        'Write the name without .. and slashes',
      )
    if (trimmed === '__proto__' || trimmed === 'constructor' || trimmed === 'prototype')
      return refuse(context, 'name-path', `${showText(trimmed)} cannot be used as a name`, 'Write another name')
    return trimmed
  })

export const line = () =>
  text().transform((value, context) =>
    value.length > 200 || /[\n\r]/.test(value)
      ? refuse(
          context,
          'text-long',
          'The text runs over several lines or 200 characters',
          'Write it shorter, on one line',
        )
      : value,
  )

export const count = (most: number = LIMITS.pieces) =>
  z
    .int({ error: () => 'Write a whole number such as 2' })
    .min(1)
    .max(most)

export const price = () => written('14.50 per m').transform((value, context): Price => taken(readPrice(value), context))
export const percentage = () =>
  either('a share such as 5 %', z.string(), z.number()).transform(
    (value, context): Share => taken(readPercent(String(value)), context),
  )

/** A ratio such as 0.6 or 2.5 in whole hundredths. */
export const hundredths = (least: number, most: number) =>
  written(`${(least + most) / 2}`).transform((value, context): number => {
    const figure = /^\d{1,3}(?:[.,]\d{1,2})?$/.test(value)
      ? Math.round(Number(value.replace(',', '.')) * 100)
      : Number.NaN
    if (figure >= least * 100 && figure <= most * 100) return figure
    return refuse(
      context,
      'ratio',
      `${showText(value)} is no number from ${least} to ${most}`,
      `Write a number from ${least} to ${most}, two decimals at most`,
    )
  })

/** One or several names of cloths. */
export const clothNames = () =>
  either('the name of a cloth, or a list of names', name(), z.array(name()).min(1)).transform((names) =>
    typeof names === 'string' ? [names] : [...new Set(names)],
  )

/** One value or a list of them. */
export const oneOrMore = <T extends z.ZodType>(one: T, forms: string) =>
  either(forms, z.array(one), one).transform((value) => (Array.isArray(value) ? value : [value]) as z.output<T>[])

/** The fields that depend on the unit of bare numbers. */
export function leaves(measureIn: Measure) {
  const options = { measureIn }
  /** the usual figure of a plan in centimetres, and of one in inches */
  const usual = (metric: string, inch: string) => (measureIn === 'in' ? inch : metric)

  const measure = (value: string, context: Context): Length => taken(readLength(value, options), context)

  return {
    usual,
    length: () => written(usual('1.5 cm', '5/8 in')).transform(measure),
    /** a length with a usual value */
    usually: (metric: string, inch: string) =>
      written(usual('1.5 cm', '5/8 in')).transform(measure).prefault(usual(metric, inch)),

    /** a length or one of several words; what does not begin with a figure is taken for a word */
    wordOrLength: <const Words extends readonly string[]>(...words: Words) =>
      written(`${words.join(', ')} or ${usual('10 cm', '4 in')}`).transform(
        (value, context): Words[number] | Length => {
          const plain = value.trim().replace('selvage', 'selvedge').replace('center', 'centre')
          if (words.includes(plain)) return plain as Words[number]
          if (/^[\d.¼-¾⅐-⅞-]/.test(plain)) return measure(value, context)
          const near = nearest(plain, words)
          const hint = near
            ? `Did you mean ${near}?`
            : `Write ${words.join(', ')} or a length such as ${usual('10 cm', '4 in')}`
          return refuse(context, 'unknown-word', `${showText(value)} is not known here`, hint)
        },
      ),

    /** W x L */
    size: () =>
      written(usual('50 x 75 cm', '20 x 30 in')).transform(
        (value, context): Size => taken(readSize(value, options), context),
      ),

    /** W x L x depth */
    threeMeasures: () =>
      written(usual('150 x 200 x 32 cm', '60 x 80 x 12 in')).transform((value, context): MattressSize => {
        const read = readLengths(value, 3, options)
        if (!read.ok) return taken<MattressSize>(read, context)
        const [width, long, depth] = read.value
        return { width: width!, length: long!, depth: depth! }
      }),

    /** how much larger than the insert: the one length that may be below 0 */
    ease: () =>
      written(usual('2 cm', '1 in')).transform((value, context): Length => {
        const under = /^\s*[-−]\s*/.exec(value)?.[0] ?? ''
        const read = readLength(value.slice(under.length), options)
        return under !== '' && read.ok ? length(-read.value) : taken(read, context)
      }),

    /** a measured insert, `195 x 205 cm`, `195 x 205 cm with ease` or `195 x 205 cm with 2 cm ease` */
    insert: () =>
      written(usual('195 x 205 cm', '76 x 80 in')).transform((value, context) => {
        const parts = /^(.*?)(?:\s+with\s+(?:(.+?)\s+)?ease(?:\s+(?:of\s+)?(.+))?)?$/.exec(value.trim())
        const size = taken(readSize(parts?.[1] ?? value, options), context)
        const eased = parts?.[2] ?? parts?.[3]
        return { size, ease: eased === undefined ? null : measure(eased, context) }
      }),
  }
}

/** A size looked up by its name; `look` knows the names for what is sewn. */
export const namedSize = (look: { find(name: string): NamedSize | undefined; names: readonly string[] }) =>
  z.string({ error: () => 'Write the name of a size, such as uk-double' }).transform((value, context): NamedSize => {
    const found = look.find(value.trim())
    if (found) return found
    const near = nearest(value, look.names)
    const hint = near
      ? `Did you mean ${near}?`
      : 'Write one of the names that lengthwise sizes lists, or finished: and the size itself'
    return refuse(context, 'size-unknown', `${showText(value)} is the name of no size for this`, hint)
  })
