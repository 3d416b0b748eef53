import type { CutCloth, Division, Placed } from './result.ts'

// more than these have no room on paper for their boxes to tick
const MOST_ALIKE = 4

/**
 * Cloths with their flags numbered through all of them, T and C each by itself. Cloths of one name that are cut alike share
 * their flags, so that one drawing and one order can serve them all; `cutLike` says with which they share.
 */
export function flagged(cloths: readonly CutCloth[]): readonly CutCloth[] {
  const count = new Map<string, number>()
  const firsts = new Map<string, { readonly cloth: CutCloth; alike: number }>()
  return cloths.map((cloth) => {
    const key = cutOf(cloth)
    const first = firsts.get(key)
    if (first !== undefined && first.alike < MOST_ALIKE) {
      first.alike += 1
      return named(cloth, first.cloth.piece, (_, i) => first.cloth.divisions[i]!.flag)
    }
    const numbered = named(cloth, cloth.piece, ({ flag }) => {
      const letter = flag.charAt(0)
      const n = (count.get(letter) ?? 0) + 1
      count.set(letter, n)
      return `${letter}${n}`
    })
    firsts.set(key, { cloth: numbered, alike: 1 })
    return numbered
  })
}

function named(cloth: CutCloth, cutLike: number, flagOf: (division: Division, i: number) => string): CutCloth {
  const flags = new Map(cloth.divisions.map((division, i) => [division.flag, flagOf(division, i)]))
  const divisions = cloth.divisions.map((division) => {
    const { distance, from } = division.measure
    const measured = from.kind === 'division' ? { ...from, flag: flags.get(from.flag)! } : from
    return { ...division, flag: flags.get(division.flag)!, measure: { distance, from: measured } }
  })
  return { ...cloth, divisions, cutLike }
}

// everything the scissors see, without the numbers
function cutOf(cloth: CutCloth): string {
  const { name, width, length, edges, buy } = cloth
  const divisions = cloth.divisions.map((d) => [d.how, d.runs, d.at, d.from, d.to, d.hand, d.measure.distance])
  const pieces = byPlace(cloth.placed).map((p) => [boxOf(p), p.words, p.turned, p.top, p.edges, p.marks, p.phase])
  const rests = [cloth.remnants, cloth.waste, cloth.trims].map((boxes) => byPlace(boxes).map(boxOf))
  return JSON.stringify([name, buy?.length ?? null, width, length, edges, divisions, pieces, rests])
}

type Lying = Pick<Placed, 'x' | 'y' | 'width' | 'length'>

const boxOf = (b: Lying) => [b.x, b.y, b.width, b.length]
const byPlace = <B extends Lying>(boxes: readonly B[]): B[] => [...boxes].sort((a, b) => a.y - b.y || a.x - b.x)
