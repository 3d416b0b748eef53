import { sizeNamed } from '@lengthwise/plan-file'
import type { Length } from '@lengthwise/units'
import { printLength, readLengths } from '@lengthwise/units'
import { isRecord, textOf } from './plan.ts'

/** The size of a thing as the plan says it, for its picture and its heading; null while it cannot be read. */
export function sizeOfThing(
  item: unknown,
  measureIn: 'cm' | 'mm' | 'in',
): { readonly width: Length; readonly length: Length; readonly words: readonly [string, string] } | null {
  if (!isRecord(item)) return null
  const named = textOf(item.size)
  const size = named === '' ? typed(item, measureIn) : sizeNamed(named, textOf(item.item) as never)?.size
  if (!size) return null
  const words = (l: Length): string => printLength(l, measureIn, { bare: true, places: 1, finest: 8 })
  return { ...size, words: [words(size.width), words(size.length)] }
}

function typed(item: Record<string, unknown>, measureIn: 'cm' | 'mm' | 'in'): { width: Length; length: Length } | null {
  const text =
    ['finished', 'insert', 'mattress', 'base', 'quilt', 'cut'].map((key) => textOf(item[key])).find((t) => t !== '') ??
    `${textOf(item.diameter) || textOf(item.width)} x ${textOf(item.length) || textOf(item.run)}`
  const count = item.mattress === undefined ? 2 : 3
  const read = readLengths(text, count, { measureIn })
  const [width, length] = read.ok ? read.value : []
  return width === undefined || length === undefined ? null : { width, length }
}
