import type { NamedSize, Size } from '@lengthwise/pieces'
import type { Length } from '@lengthwise/units'
import { length } from '@lengthwise/units'

export interface SizeKeys {
  readonly finished?: Size | undefined
  readonly size?: NamedSize | undefined
  readonly insert?: { readonly size: Size; readonly ease: Length | null } | undefined
  readonly ease?: Length | undefined
}

/** The finished size asked for: as typed, else the measured insert with its ease, else the named size with it. */
export function finishedSize(keys: SizeKeys): Size {
  if (keys.finished) return keys.finished
  const ease = keys.insert?.ease ?? keys.ease ?? 0
  const inside = keys.insert?.size ?? keys.size?.size
  if (inside === undefined) throw new Error('finishedSize: an item without a size was let through')
  return { width: length(inside.width + ease), length: length(inside.length + ease) }
}

/** The name a size was read from; null where it was typed or measured. */
export function sizeName(keys: SizeKeys): string | null {
  return keys.finished || keys.insert ? null : (keys.size?.name ?? null)
}
