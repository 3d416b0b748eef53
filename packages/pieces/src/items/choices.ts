import type { Share } from '@lengthwise/units'
import type { Cloth, ClothOnTable } from '../cloth.ts'
import type { Run } from '../cut-size.ts'
import { runsOf, runsToCut, shrinksBy } from '../cut-size.ts'
import { ONE_POINT } from '../faces/shrinking.ts'
import type { Order } from '../order.ts'

/** A part of an item, such as the front or the cuff: the cloths that may serve and how its length may run. */
export interface Part {
  readonly cloths: readonly string[]
  readonly asked: Run | 'either'
  /** strips and circles have no upper edge: the top of a print does not matter */
  readonly hasTop: boolean
}

/** A cloth and a run for one part, and what the part loses in the wash after sewing, by its own directions. */
export interface Choice {
  readonly cloth: Cloth
  readonly table: ClothOnTable
  readonly run: Run | 'either'
  readonly width: Share
  readonly length: Share
}

/** Most combinations looked at for one item. */
const MOST_CHOICES = 256

/**
 * Every choice of cloth and run for the parts of an item that are sewn together, in the order of `parts`. Parts with the
 * same list of cloths are cut from the same one; parts that would shrink apart by more than one point, or at all when
 * they are of one cloth, are left out.
 */
export function choicesFor(
  order: Order,
  tables: ReadonlyMap<string, ClothOnTable>,
  parts: readonly Part[],
): { readonly choices: readonly (readonly Choice[])[]; readonly capped: boolean } {
  let partial: (readonly Choice[])[] = [[]]
  let capped = false
  parts.forEach((part, index) => {
    const sameAs = parts.findIndex((other) => String(other.cloths) === String(part.cloths))
    const next: (readonly Choice[])[] = []
    for (const chosen of partial) {
      const names = sameAs < index ? [chosen[sameAs]!.cloth.name] : part.cloths
      for (const name of names) {
        const table = tables.get(name)
        if (table === undefined) continue
        for (const run of runsFor(order, table.cloth, part)) {
          const shrinks = shrinksBy(order, table.cloth, run === 'either' ? 'along' : run)
          const choice = { cloth: table.cloth, table, run, ...shrinks }
          if (chosen.every((other) => shrinkAlike(other, choice))) next.push([...chosen, choice])
        }
      }
    }
    capped ||= next.length > MOST_CHOICES
    partial = next.slice(0, MOST_CHOICES)
  })
  return { choices: partial, capped }
}

/** The larger loss each way: parts sewn together are cut alike, so the one that shrinks most decides. */
export function mostShrinking(choices: readonly Choice[]): { readonly width: Share; readonly length: Share } {
  const most = (a: Share, b: Share): Share => (a > b ? a : b)
  return choices.reduce((a, b) => ({ ...b, width: most(a.width, b.width), length: most(a.length, b.length) }))
}

/** Does the print turn the part against what the plan asks for its length? */
export const isContrary = (order: Order, cloth: Cloth, part: Part): boolean => runsFor(order, cloth, part).length === 0

function runsFor(order: Order, cloth: Cloth, part: Part): readonly (Run | 'either')[] {
  if (!part.hasTop) return runsToCut(order, { ...cloth, print: { ...cloth.print, way: 'plain' } }, part.asked)
  // where a motif is centred it matters which way the piece lies
  return cloth.print.motif === null ? runsToCut(order, cloth, part.asked) : runsOf(cloth, part.asked)
}

// the same cloth laid two ways would make the parts unlike for nothing
function shrinkAlike(a: Choice, b: Choice): boolean {
  if (a.cloth === b.cloth) return a.width === b.width && a.length === b.length
  return Math.abs(a.width - b.width) <= ONE_POINT && Math.abs(a.length - b.length) <= ONE_POINT
}
