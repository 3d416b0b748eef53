import type { Cloth, ClothOnTable, Order, Way } from '@lengthwise/pieces'
import { onTable } from '@lengthwise/pieces'
import type { Length } from '@lengthwise/units'
import { lengthOnTable } from './buying.ts'
import type { Bundle, Counts } from './demand.ts'
import { bundlesOf } from './demand.ts'
import type { Ground } from './field.ts'
import { groundOf } from './field.ts'

/** One cloth at one width: the lengths of it at hand, and whether more can be bought. */
export interface Setting {
  readonly cloth: Cloth
  readonly widthIndex: number
  readonly table: ClothOnTable
  /** sheets, remnants, a length of bolt already owned: grounds that are alike stand together */
  readonly owned: readonly { readonly ground: Ground; readonly nths: readonly number[] }[]
  readonly open: Ground | null
  /** where bundles are worked out: a bolt of open length, or the first sheet or remnant */
  readonly ground: Ground
  /** every bundle met so far, by key */
  readonly bundles: Map<string, Bundle>
  /** differs for cloths and widths, and is the same for the same */
  readonly id: string
}

/** null: a bolt of which there is nothing and nothing can be had. */
export function settingOf(order: Order, cloth: Cloth, widthIndex: number): Setting | null {
  const table = onTable(order, cloth, widthIndex)
  const bolt = cloth.from === 'bolt'
  const have = bolt && cloth.have > 0 ? lengthOnTable(order, cloth, cloth.have) : null
  const owned = bolt
    ? have === null
      ? []
      : [{ ground: groundOf(order, table, have, 1), nths: [1] }]
    : alike(order, table, table.length!)
  const open = bolt && cloth.sold ? groundOf(order, table, null, have === null ? 1 : 2) : null
  if (!open && owned.length === 0) return null
  // a bolt too short is short of length, not a cloth its pieces do not fit on
  const ground = open ?? (bolt ? groundOf(order, table, null, 1) : owned[0]!.ground)
  return { cloth, widthIndex, table, owned, open, ground, bundles: new Map(), id: `${cloth.name}@${table.width}` }
}

/** Is cloth of this setting bought, rather than taken from what is owned? */
export const isBought = (setting: Setting): boolean => setting.open !== null

/** What a way takes from this cloth, its bundles noted; null when a piece cannot lie on it at all. */
export function takes(setting: Setting, way: Way): Counts | null {
  const found = bundlesOf(way, setting.ground)
  if (!found) return null
  const counts = new Map<string, number>()
  for (const { bundle, count } of found) {
    setting.bundles.set(bundle.key, bundle)
    counts.set(bundle.key, (counts.get(bundle.key) ?? 0) + count)
  }
  return counts
}

// like sheets differ only by flaws
function alike(order: Order, table: ClothOnTable, long: Length) {
  const groups: { ground: Ground; nths: number[] }[] = []
  for (let nth = 1; nth <= table.cloth.count; nth++) {
    const ground = groundOf(order, table, long, nth)
    const same = groups.find((g) => JSON.stringify(g.ground.field.flaws) === JSON.stringify(ground.field.flaws))
    if (same) same.nths.push(nth)
    else groups.push({ ground, nths: [nth] })
  }
  return groups
}
