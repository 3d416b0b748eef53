import { parse } from 'yaml'
import type { PlanFacts } from './layout-checker.ts'

/** What the layout checker needs of a plan, read from its text alone. Plain lengths in mm, cm, m, in or yd only. */
export function planFacts(text: string): PlanFacts {
  const plan = parse(text) as Record<string, unknown>
  const unit = String(plan['measure-in'] ?? 'cm')
  const wash = (plan.wash ?? 'none') as PlanFacts['wash']
  const [keepWidth, keepLength] = String(plan['worth-keeping'] ?? (unit === 'in' ? '8 x 20 in' : '20 x 50 cm')).split(
    /\s*(?:x|×|by)\s*/,
  )
  const keepUnit = /[a-z]+$/.exec(keepLength ?? '')?.[0] ?? unit
  const cloths = (plan.cloth as Record<string, unknown>[]).map((keys) => {
    const cloth: Record<string, unknown> = { from: 'bolt', ...keys }
    const shrinks = (cloth.shrinks ?? 'none') as 'none' | Record<string, unknown>
    const along = typeof shrinks === 'object' ? percent(shrinks.along) : shrinks === 'none' ? 0 : percent(shrinks)
    const across = typeof shrinks === 'object' ? percent(shrinks.across) : along
    const left = (s: number): number => (wash === 'before-cutting' ? (100 - s) / 100 : 1)
    const hems = (cloth.hems ?? {}) as Record<string, unknown>
    const isHem = (value: unknown): boolean => value !== undefined && value !== 'none' && value !== 'selvedge'
    const depth = (value: unknown, s: number): number =>
      isHem(value) ? Math.floor(length(value, unit) * left(s) * 320 + 1e-6) / 320 : 0
    const unused = cloth['unused-selvedge'] === undefined ? 0 : length(cloth['unused-selvedge'], unit)
    const selvedges = String(cloth.selvedges ?? (cloth.from === 'bolt' ? 'both' : 'none'))
    const has = (side: 'left' | 'right'): boolean =>
      unused === 0 && (hems[side] === undefined ? [side, 'both'].includes(selvedges) : hems[side] === 'selvedge')
    const spare = cloth.from !== 'bolt' ? '0 cm' : unit === 'in' ? '2 in' : '5 cm'
    const print = (typeof cloth.print === 'object' ? cloth.print : {}) as Record<string, unknown>
    const inShop = print['repeat-measured'] === 'in-shop'
    const repeat = Math.floor(length(print.repeat ?? 0, unit) * (inShop ? left(along) : 1) * 320 + 1e-6) / 320
    return [
      String(cloth.name),
      {
        divideBy: (cloth['divide-by'] ?? 'tearing') as 'tearing',
        spare: length(cloth['spare-each-end'] ?? spare, unit),
        shrinkAlongPercent: along,
        soldBy: length(cloth['sold-by'] ?? (unit === 'in' ? '1/8 yd' : '10 cm'), unit),
        smallestSale: length(cloth['smallest-sale'] ?? '0 cm', unit),
        pricePerMetre: price(cloth),
        repeat,
        play: print.motif === 'centred' ? repeat : 0,
        unusedSelvedge: unused,
        lostPerTear: length(cloth['lost-per-tear'] ?? 0, unit),
        selvedges: {
          left: has('left'),
          right: has('right'),
          start: hems.head === 'selvedge',
          end: hems.foot === 'selvedge',
        },
        hems: {
          left: depth(hems.left, across),
          right: depth(hems.right, across),
          start: depth(hems.head, along),
          end: depth(hems.foot, along),
        },
      },
    ] as const
  })
  return {
    wash,
    markTo: plan['mark-to'] === undefined ? (unit === 'in' ? 25.4 / 8 : 5) : length(plan['mark-to'], unit),
    worthKeeping: {
      width: length(`${keepWidth?.replace(/[a-z]+/, '')} ${keepUnit}`, unit),
      length: length(keepLength, unit),
    },
    cloths: Object.fromEntries(cloths),
  }
}

const MM: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4, yd: 914.4 }

function length(value: unknown, measureIn: string): number {
  const match = /^(?:([\d.]+)(?:\s+|\s*(?=[a-z]|$)))?(?:(\d+)\/(\d+))?\s*(mm|cm|m|in|yd)?$/.exec(String(value).trim())
  if (match === null) throw new Error(`a length this reader does not know: ${String(value)}`)
  const number = Number(match[1] ?? 0) + (match[2] === undefined ? 0 : Number(match[2]) / Number(match[3]))
  return number * (MM[match[4] ?? measureIn] ?? Number.NaN)
}

const percent = (value: unknown): number => Number(String(value ?? 0).replace('%', ''))

// null when widths have prices of their own or the price is not per metre: the cost is then not checked here
function price(cloth: Record<string, unknown>): number | null {
  const match = /^([\d.]+) per m$/.exec(String(cloth.price ?? ''))
  const own = [cloth.widths].flat().some((width) => typeof width === 'object' && width !== null && 'price' in width)
  return match === null || own ? null : Number(match[1])
}
