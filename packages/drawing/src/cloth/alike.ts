import type { CutCloth } from '@lengthwise/planner'
import { byNumber } from '../words/hands.ts'

/** Cloths of one name that are cut alike: one drawing and one order serve them all. */
export interface AlikeSet {
  readonly cloth: CutCloth
  readonly others: readonly CutCloth[]
}

// more than these have no room for their boxes to tick
const MOST = 4

/** Cloths in order, those cut alike together. */
export function alikeSets(cloths: readonly CutCloth[]): readonly AlikeSet[] {
  const sets: { readonly key: string; readonly cloth: CutCloth; readonly others: CutCloth[] }[] = []
  for (const cloth of cloths) {
    const key = cutOf(cloth)
    const set = sets.find((each) => each.key === key && each.others.length + 1 < MOST)
    if (set) set.others.push(cloth)
    else sets.push({ key, cloth, others: [] })
  }
  return sets
}

/** The labels of another cloth of the set, each with the label it stands in the place of. */
export function inPlaceOf(set: AlikeSet, other: CutCloth): readonly (readonly [label: string, inPlaceOf: string])[] {
  const own = lyingIn(other)
  const instead = new Map(lyingIn(set.cloth).map((label, i) => [label, own[i]!]))
  return byNumber([...instead.keys()]).map((label) => [instead.get(label)!, label])
}

// everything the scissors see, without the numbers
function cutOf(cloth: CutCloth): string {
  const { name, width, length, edges, buy } = cloth
  const divisions = cloth.divisions.map((d) => [d.how, d.runs, d.at, d.from, d.to, d.hand, d.measure.distance])
  const pieces = [...cloth.placed]
    .sort(byPlace)
    .map((p) => [boxOf(p), p.words, p.turned, p.top, p.edges, p.marks, p.phase])
  const rests = [cloth.remnants, cloth.waste, cloth.trims].map((boxes) => [...boxes].sort(byPlace).map(boxOf))
  return JSON.stringify([name, buy?.length ?? null, width, length, edges, divisions, pieces, rests])
}

type Lying = { readonly x: number; readonly y: number; readonly width: number; readonly length: number }

const boxOf = (b: Lying) => [b.x, b.y, b.width, b.length]
const byPlace = (a: Lying, b: Lying): number => a.y - b.y || a.x - b.x

const lyingIn = (cloth: CutCloth): readonly string[] => [
  ...[...cloth.placed].sort(byPlace).map((p) => p.label),
  ...[...cloth.remnants].sort(byPlace).map((r) => r.name),
]
