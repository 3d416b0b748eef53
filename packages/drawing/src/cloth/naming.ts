import { meet, padded } from '../box.ts'
import { findSpot } from './block.ts'
import type { DrawOptions, Ground } from './draw.ts'
import { placeLabel } from './labels.ts'
import { leaderTo } from './leader.ts'
import { alike, marginLabel } from './margin.ts'
import type { Named } from './pieces.ts'
import { numberAlone } from './pieces.ts'

/**
 * Writes every name: inside where it has room, else the number inside and the rest in a margin with a leader to it.
 * Answers how many names of pieces stand outside, and whether some piece has not even its number inside.
 */
export function nameAll(
  named: readonly Named[],
  options: DrawOptions,
  ground: Ground,
): { readonly outside: number; readonly bare: boolean } {
  const { style } = options
  const by = style.by
  const small: Named[] = []
  for (const item of named) {
    const label = placeLabel(item, style, ground.near(item.box), 'whole')
    if (label === null) small.push(item)
    else ground.add(label)
  }
  const numbered = new Set<Named>()
  for (const item of small)
    for (const block of numberAlone(item, style)) {
      const spot = findSpot(block, padded(item.box, -0.5 * by), ground.near(item.box), { x: 0.5, y: 0.5 })
      if (spot === null) continue
      ground.add(spot.marks)
      numbered.add(item)
      break
    }
  let outside = 0
  for (const group of alike(small)) {
    const bare = group.filter((item) => !numbered.has(item))
    const outer = marginLabel(group, options, ground)
    if (outer !== null) {
      ground.add(outer.marks)
      if (group[0]!.kind === 'piece') outside += 1
      if (pointedAt(group, bare)) continue
    }
    for (const item of bare) {
      const label = placeLabel(item, style, ground.near(item.box), 'cut short')
      if (label === null) ground.homeless.push(item.label)
      else ground.add(label)
    }

    // the numbers inside say which they are; those without one need a leader, one for all that lie side by side
    function pointedAt(all: readonly Named[], without: readonly Named[]): boolean {
      if (without.length > 0)
        return clusters(without)
          .map((cluster) => nearestFirst(cluster).some((item) => pointTo(item)))
          .every((found) => found)
      pointTo(all[0]!, 60 * by)
      return true
    }

    function nearestFirst(all: readonly Named[]): readonly Named[] {
      const { at } = outer!
      const away = ({ box: b }: Named): number =>
        Math.abs(b.x + b.width / 2 - at.x - at.width / 2) + Math.abs(b.y + b.height / 2 - at.y - at.height / 2)
      return [...all].sort((a, b) => away(a) - away(b))
    }

    // a leader that need not be there may not run far
    function pointTo(item: Named, most = Number.POSITIVE_INFINITY): boolean {
      const { at } = outer!
      const leader = leaderTo(item, at, [ground.texts, ground.leaders], by) ?? leaderTo(item, at, [ground.texts], by)
      if (leader === null || leader.long > most) return false
      ground.marks.push(...leader.marks)
      ground.dots.add(leader.dots)
      ground.lead(leader.along)
      return true
    }
  }
  return { outside, bare: numbered.size < small.length }
}

/** Those that touch each other, directly or through others. */
function clusters(items: readonly Named[]): readonly (readonly Named[])[] {
  const found: Named[][] = []
  for (const item of items) {
    const near = found.filter((cluster) => cluster.some((other) => touches(item, other)))
    const merged = [...near.flat(), item]
    found.splice(0, found.length, ...found.filter((cluster) => !near.includes(cluster)), merged)
  }
  return found
}

const touches = (a: Named, b: Named): boolean => meet(padded(a.box, 0.25), padded(b.box, 0.25))
