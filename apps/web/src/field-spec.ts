import type { Option } from './fields.tsx'

/**
 * A field of the form, as data: which key of the plan it edits and what it is called.
 * The `usual` of a length, metric and in inches, holds when nothing is written.
 */
export type FieldSpec = {
  /** key below the item or cloth, with dots: `opening.depth` */
  readonly key: string
  readonly label: string
  readonly hint?: string
  /** only asked when this holds of the item or cloth; `get` reads a key of it */
  readonly when?: (get: (key: string) => unknown) => boolean
} & (
  | {
      readonly kind: 'length'
      readonly usual?: readonly [string, string]
      /** what another key becomes when nothing is written here any more, lest the box vanish under the hand */
      readonly emptied?: readonly [key: string, value: string]
    }
  | { readonly kind: 'count' | 'percent' | 'words' | 'cloths' | 'lengths' }
  | { readonly kind: 'size'; readonly labels: readonly string[] }
  /** `usual` is what holds when the plan says nothing; undefined: nothing is chosen yet */
  | {
      readonly kind: 'choice'
      readonly options: readonly Option[]
      readonly usual: unknown
      readonly inRow?: boolean
      /** choosing drops everything beside the key but these: each kind of opening has measures of its own */
      readonly keeps?: readonly string[]
      /** one more choice: a length of one's own, for which there is a box; metric and in inches to begin with */
      readonly own?: { readonly words: string; readonly key: string; readonly start: readonly [string, string] }
    }
)

/** How one kind of thing to sew is asked for. */
export interface ItemForm {
  readonly words: string
  readonly plural: string
  /** boxes for the finished size; null: the fields ask for it themselves */
  readonly size: readonly string[] | null
  /** a measured insert may be given instead */
  readonly insert?: string
  readonly first: readonly FieldSpec[]
  readonly moreWords: string
  readonly more: readonly FieldSpec[]
  /** what a new one starts as, without its cloth */
  readonly fresh: Readonly<Record<string, unknown>>
  /** where its cloth is said, for the keys that a new one needs */
  readonly clothKeys: readonly string[]
}
