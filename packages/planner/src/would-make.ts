import type { Cloth, ClothEdge, Order, Pillowcase } from '@lengthwise/pieces'
import { NAMED_SIZES, onTable, PILLOWCASE_HEM, waysToMake } from '@lengthwise/pieces'
import { lay } from '@lengthwise/solver'
import { cm, inches, length, printSize } from '@lengthwise/units'
import type { Bundle } from './demand.ts'
import { ask, bundlesOf } from './demand.ts'
import { groundOf } from './field.ts'
import type { Box, CutCloth } from './result.ts'

/** Most further items named for one remnant, the largest first. */
const MOST_NAMED = 3
const STEPS = 2_000

/**
 * Pillowcases of the size table that a remnant would still yield, each laid out inside it: 'pillowcase 40 × 60 cm'. The
 * remnant has the edges the cloth has there, its print and its way of being divided.
 */
export function wouldMake(order: Order, cloth: CutCloth, box: Box): readonly string[] {
  const usable = common(box, cloth.usable)
  if (usable.width <= 0 || usable.length <= 0) return []
  const remnant = asCloth(cloth, usable)
  const inHand: Order = {
    ...order,
    // what was washed before cutting has been washed
    wash: order.wash === 'before-cutting' ? 'none' : order.wash,
    cloths: [remnant],
  }
  const found: string[] = []
  for (const item of pillowcases(order)) {
    if (found.length === MOST_NAMED) break
    if (item.finished.width * item.finished.length > box.width * box.length) continue
    if (fits({ ...inHand, items: [item] }, item)) found.push(`pillowcase ${printSize(item.finished, order.measureIn)}`)
  }
  return found
}

function fits(order: Order, item: Pillowcase): boolean {
  const [cloth] = order.cloths
  const table = onTable(order, cloth!, -1)
  const ground = groundOf(order, table, table.length, 1)
  const { ways } = waysToMake(order, item, new Map([[cloth!.name, table]]))
  return ways.some((way) => {
    const taken = bundlesOf(way, ground)
    if (!taken) return false
    const bundles = new Map<string, Bundle>(taken.map(({ bundle }) => [bundle.key, bundle]))
    const counts = new Map<string, number>()
    for (const { bundle, count } of taken) counts.set(bundle.key, (counts.get(bundle.key) ?? 0) + count)
    return lay(ask(order, ground, counts, bundles).request, { effort: STEPS, tidy: false }).length !== null
  })
}

/** A remnant may hold what is trimmed off elsewhere; that is not to be sewn. */
function common(a: Box, b: Box): Box {
  const x = Math.max(a.x, b.x)
  const y = Math.max(a.y, b.y)
  return {
    x: length(x),
    y: length(y),
    width: length(Math.min(a.x + a.width, b.x + b.width) - x),
    length: length(Math.min(a.y + a.length, b.y + b.length) - y),
  }
}

function asCloth(cloth: CutCloth, box: Box): Cloth {
  const raw: ClothEdge = { kind: 'raw' }
  const { edges } = cloth
  return {
    ...cloth.cloth,
    name: 'remnant',
    from: 'remnant',
    widths: [],
    size: { width: box.width, length: box.length },
    count: 1,
    edges: {
      left: box.x === 0 ? edges.left : raw,
      right: box.x + box.width === cloth.width ? edges.right : raw,
      head: box.y === 0 ? edges.start : raw,
      foot: box.y + box.length === cloth.length ? edges.end : raw,
    },
    mustKeep: [],
    unusedSelvedge: length(0),
    spareEachEnd: length(0),
    flaws: cloth.cloth.flaws.map((flaw) => ({
      ...flaw,
      x: length(flaw.x - box.x),
      y: length(flaw.y - box.y),
      on: null,
    })),
  }
}

/** One pillowcase of each size in the table, the largest first, in the units of the plan where both are there. */
function pillowcases(order: Order): readonly Pillowcase[] {
  const inInches = order.measureIn === 'in'
  const sizes = new Map<string, Pillowcase>()
  for (const { kind, size, name, cot, region } of NAMED_SIZES) {
    if (kind !== 'pillow' && kind !== 'pillowcase') continue
    if (inInches !== (region === 'United States' || region === 'Canada')) continue
    sizes.set(`${size.width} ${size.length}`, {
      item: 'pillowcase',
      style: 'inside-flap',
      faces: 'any',
      finished: size,
      flap: inInches ? inches(6) : cm(15),
      flange: length(0),
      hem: PILLOWCASE_HEM,
      cuff: null,
      openingEdge: { kind: 'none' },
      cloth: ['remnant'],
      backCloth: ['remnant'],
      lengthRuns: 'either',
      count: 1,
      for: '',
      sizeName: name,
      cot,
      seam: order.seam,
      path: '',
    })
  }
  const area = (item: Pillowcase) => item.finished.width * item.finished.length
  return [...sizes.values()].sort((a, b) => area(b) - area(a) || a.finished.width - b.finished.width)
}
