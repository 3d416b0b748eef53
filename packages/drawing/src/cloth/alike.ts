import type { CutCloth } from '@lengthwise/planner'
import { byNumber } from '../words/hands.ts'

/** Cloths of one name that are cut alike: one drawing and one order serve them all. */
export interface AlikeSet {
  readonly cloth: CutCloth
  readonly others: readonly CutCloth[]
}

/** Cloths in order, those cut alike together. */
export function alikeSets(cloths: readonly CutCloth[]): readonly AlikeSet[] {
  const sets: { readonly cloth: CutCloth; readonly others: CutCloth[] }[] = []
  for (const cloth of cloths) {
    const first = sets.find((set) => set.cloth.name === cloth.name && set.cloth.piece === cloth.cutLike)
    if (first) first.others.push(cloth)
    else sets.push({ cloth, others: [] })
  }
  return sets
}

/** The labels of another cloth of the set, each with the label it stands in the place of. */
export function inPlaceOf(set: AlikeSet, other: CutCloth): readonly (readonly [label: string, inPlaceOf: string])[] {
  const own = lyingIn(other)
  const instead = new Map(lyingIn(set.cloth).map((label, i) => [label, own[i]!]))
  return byNumber([...instead.keys()]).map((label) => [instead.get(label)!, label])
}

type Lying = { readonly x: number; readonly y: number }

const byPlace = (a: Lying, b: Lying): number => a.y - b.y || a.x - b.x

const lyingIn = (cloth: CutCloth): readonly string[] => [
  ...[...cloth.placed].sort(byPlace).map((p) => p.label),
  ...[...cloth.remnants].sort(byPlace).map((r) => r.name),
]
