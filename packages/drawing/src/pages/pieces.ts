import type { Placed, Result } from '@lengthwise/planner'
import { clothTitle } from '../cloth/names.ts'
import type { Style } from '../cloth/style.ts'
import type { Measure } from '../measure.ts'
import { oneLine } from '../text.ts'
import { byNumber, capital } from '../words/hands.ts'
import { labelsListed } from '../words/list.ts'
import type { Leaf } from './leaf.ts'
import { FRAME, joined, leaf, section } from './leaf.ts'
import type { Cell, Column } from './table.ts'
import { setTable } from './table.ts'

const COLUMNS: readonly Column[] = [
  { head: 'Piece', share: 3 },
  { head: 'For', share: 2 },
  { head: 'Width × length', share: 0 },
  { head: 'Cloth', share: 2 },
  { head: 'Cut', share: 0.01 },
]

const LONG_SIDE_UP: readonly string[] = ['pillowcase', 'cushion', 'sham', 'bolster']

/** Pieces of one name, size and cloth. */
interface Kind {
  readonly words: string
  readonly whose: string[]
  readonly size: string
  readonly cloth: string
  readonly labels: string[]
}

// so many have room in a row that never fills a page
const MOST = 60

/**
 * All pieces and remnants in one list, those alike in one row, with a box to tick for each as it comes away: below what
 * stands on the last of the pages before it where all of it fits, or where it needs several pages and half a page is left.
 */
export function withPieces(before: readonly Leaf[], result: Result, measure: Measure, style: Style): readonly Leaf[] {
  const fresh = pieceLeaves(result, measure, style, null)
  const all = joined(before, fresh)
  const last = before.at(-1)
  if (fresh.length < 2 || last === undefined || last.y > FRAME.height / 2) return all
  // a list that goes on anyway begins where there is room
  return [...before, ...pieceLeaves(result, measure, style, last)]
}

/** The list on new pages, or its first part below what stands on a page and the rest on new ones. */
function pieceLeaves(result: Result, measure: Measure, style: Style, on: Leaf | null): readonly Leaf[] {
  const rows = [...pieceKinds(result, measure), ...remnantKinds(result, measure)].map((kind): readonly Cell[] => [
    kind.words,
    forWhom(kind.whose),
    kind.size,
    kind.cloth,
    { ticks: kind.labels },
  ])
  const title = 'Pieces to cut'
  const heads = headsOf(result, measure)
  if (on !== null) section(on, title, heads, style)
  const first = on ?? leaf('pieces', title, heads, style)
  const leaves = [first]
  setTable(first, COLUMNS, rows, style, () => {
    const next = leaf('pieces', `${title}, goes on`, [], style)
    leaves.push(next)
    return next
  })
  // clear of the rule under the last row
  leaves.at(-1)!.y += 6
  return on === null ? leaves : leaves.slice(1)
}

function headsOf({ order, finished, pieces }: Result, measure: Measure): readonly string[] {
  const unit = measure.unit === 'in' ? 'inches' : measure.unit
  const asCut = finished.filter((row) => row.asCut).map(({ item }) => item)
  const own = byNumber(pieces.filter(({ item }) => asCut.includes(item)).map(({ label }) => label))
  return [
    `Cut sizes in ${unit}, seams and hems included: across the bed first, then from head to foot.`,
    // pillowcases and cushions are given short side first, and their long side is uppermost
    ...(order.items.some((item) => LONG_SIDE_UP.includes(item.item))
      ? ['Pillowcases, cushions, shams, bolsters: height first; they lie long side up.']
      : []),
    ...(own.length > 0
      ? [`Cut to a size of your own, sewn as you like: ${labelsListed(own)}. Seams and hems come off it.`]
      : []),
  ]
}

function pieceKinds(result: Result, measure: Measure): readonly Kind[] {
  const placed = new Map(result.cloths.flatMap((cloth) => cloth.placed.map((p) => [p.piece, p] as const)))
  const inOrder = [...result.pieces].sort((a, b) => Number(a.label) - Number(b.label))
  const kinds: Kind[] = []
  for (const row of inOrder) {
    const on = placed.get(row.piece)
    const words = `${capital(oneLine(row.words))}${on?.turned ? ', turned' : ''}${on === undefined ? '' : topAside(on)}${on?.crosswise ? ', crosswise' : ''}`
    const size = measure.size(row.cutWidth, row.cutLength)
    const cloth = clothTitle(row.cloth)
    const whose = oneLine(on?.whose ?? row.item)
    const alike = kinds.find(
      (kind) => kind.words === words && kind.size === size && kind.cloth === cloth && kind.labels.length < MOST,
    )
    if (alike === undefined) kinds.push({ words, whose: [whose], size, cloth, labels: [row.label] })
    else {
      alike.whose.push(whose)
      alike.labels.push(row.label)
    }
  }
  return kinds
}

const topAside = ({ top }: Placed): string => (top === 'left' || top === 'right' ? `, top\u00a0at\u00a0${top}` : '')

const remnantKinds = (result: Result, measure: Measure): readonly Kind[] =>
  result.cloths.flatMap((cloth) =>
    cloth.remnants.map((r) => ({
      words: 'Remnant',
      whose: [],
      size: measure.size(r.width, r.length),
      cloth: clothTitle(cloth.name),
      labels: [r.name],
    })),
  )

/** 'cover 1 and 2; tray cloth 1' */
function forWhom(whose: readonly string[]): string {
  const things = new Map<string, string[]>()
  for (const each of new Set(whose)) {
    const [, thing, number] = /^(.*?) ?(\d*)$/.exec(each)!
    things.set(thing!, [...(things.get(thing!) ?? []), number!])
  }
  return [...things]
    .map(([thing, numbers]) => `${thing} ${labelsListed(numbers.sort((a, b) => Number(a) - Number(b)))}`.trim())
    .join('; ')
}
