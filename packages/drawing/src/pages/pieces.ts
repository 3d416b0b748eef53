import type { Result } from '@lengthwise/planner'
import { clothTitle } from '../cloth/names.ts'
import type { Style } from '../cloth/style.ts'
import type { Measure } from '../measure.ts'
import { oneLine } from '../text.ts'
import { capital } from '../words/hands.ts'
import { labelsListed } from '../words/list.ts'
import type { Leaf } from './leaf.ts'
import { leaf } from './leaf.ts'
import type { Cell, Column } from './table.ts'
import { setTable } from './table.ts'

const COLUMNS: readonly Column[] = [
  { head: 'Piece', share: 3 },
  { head: 'For', share: 2 },
  { head: 'Width × length', share: 0 },
  { head: 'Cloth', share: 2 },
  { head: 'Cut', share: 0.01 },
]

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

/** All pieces and remnants in one list, those alike in one row, with a box to tick for each as it comes away. */
export function pieceLeaves(result: Result, measure: Measure, style: Style): readonly Leaf[] {
  const rows = [...pieceKinds(result, measure), ...remnantKinds(result, measure)].map((kind): readonly Cell[] => [
    kind.words,
    forWhom(kind.whose),
    kind.size,
    kind.cloth,
    { ticks: kind.labels },
  ])
  const title = 'Pieces to cut'
  const below = `Cut sizes in ${measure.unit === 'in' ? 'inches' : measure.unit}, seams and hems included: across the bed first, then from head to foot.`
  const leaves = [leaf('pieces', title, [below], style)]
  setTable(leaves[0]!, COLUMNS, rows, style, () => {
    const next = leaf('pieces', `${title}, goes on`, [], style)
    leaves.push(next)
    return next
  })
  return leaves
}

function pieceKinds(result: Result, measure: Measure): readonly Kind[] {
  const placed = new Map(result.cloths.flatMap((cloth) => cloth.placed.map((p) => [p.piece, p] as const)))
  const byNumber = [...result.pieces].sort((a, b) => Number(a.label) - Number(b.label))
  const kinds: Kind[] = []
  for (const row of byNumber) {
    const words = capital(oneLine(row.words))
    const size = measure.size(row.cutWidth, row.cutLength)
    const cloth = clothTitle(row.cloth)
    const whose = oneLine(placed.get(row.piece)?.whose ?? row.item)
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
