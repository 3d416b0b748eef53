import type { Share } from '@lengthwise/units'
import type { Cloth } from '../cloth.ts'
import { runsOf, shrinksBy } from '../cut-size.ts'
import type { FaceSpec, Order } from '../order.ts'

/** What a face loses in the wash after sewing, by its own directions. */
export interface Shrinks {
  readonly width: Share
  readonly length: Share
}

/** One percentage point of shrinkage: seams between cloths that shrink further apart pucker. */
export const ONE_POINT = 10_000

export const shrinkAlike = (a: Shrinks, b: Shrinks): boolean =>
  Math.abs(a.width - b.width) <= ONE_POINT && Math.abs(a.length - b.length) <= ONE_POINT

export const sameShrinks = (a: Shrinks, b: Shrinks): boolean => a.width === b.width && a.length === b.length

/** The larger loss each way: faces sewn together are cut alike, so the one that shrinks most decides. */
export const mostShrinks = (a: Shrinks, b: Shrinks): Shrinks => ({
  width: Math.max(a.width, b.width) as Share,
  length: Math.max(a.length, b.length) as Share,
})

/**
 * Every loss that faces sewn together may have in common: each of `groups` lists the losses one face (or its band) may have by
 * itself. Combinations that shrink apart are left out; none is left where no cloths go together.
 */
export function lossesInCommon(groups: readonly (readonly Shrinks[])[]): readonly Shrinks[] {
  let chosen: readonly (readonly Shrinks[])[] = [[]]
  for (const group of groups)
    chosen = chosen.flatMap((some) =>
      distinct(group)
        .filter((own) => some.every((other) => shrinkAlike(own, other)))
        .map((own) => distinct([...some, own])),
    )
  return distinct(chosen.flatMap((some) => (some.length === 0 ? [] : [some.reduce(mostShrinks)])))
}

/** The losses of each part of a face: the face itself, and its band. */
export function lossesOf(order: Order, spec: FaceSpec): readonly (readonly Shrinks[])[] {
  const own = lossesOn(order, spec.cloth, spec)
  if (spec.band === null) return [own]
  return [own, lossesOn(order, spec.band.cloth.length > 0 ? spec.band.cloth : spec.cloth, spec)]
}

const lossesOn = (order: Order, names: readonly string[], spec: FaceSpec): readonly Shrinks[] =>
  order.cloths
    .filter((cloth: Cloth) => names.includes(cloth.name))
    .flatMap((cloth) => runsOf(cloth, spec.lengthRuns).map((run) => shrinksBy(order, cloth, run)))

const distinct = (all: readonly Shrinks[]): readonly Shrinks[] =>
  all.filter((one, i) => all.findIndex((other) => sameShrinks(one, other)) === i)
