import type { Result } from '@lengthwise/planner'
import type { Style } from '../cloth/style.ts'
import type { Measure } from '../measure.ts'
import { oneLine } from '../text.ts'
import { capital } from '../words/hands.ts'
import type { Leaf } from './leaf.ts'
import { leaf } from './leaf.ts'
import type { Cell, Column } from './table.ts'
import { setTable } from './table.ts'

const COLUMNS: readonly Column[] = [
  { head: 'No.', share: 0 },
  { head: 'Piece', share: 3 },
  { head: 'For', share: 2 },
  { head: 'Width × length', share: 0 },
  { head: 'Cloth', share: 2 },
  { head: 'Cut', share: 0 },
]

/** All pieces and remnants in one list, to be ticked off as they come away. */
export function pieceLeaves(result: Result, measure: Measure, style: Style): readonly Leaf[] {
  const placed = new Map(result.cloths.flatMap((cloth) => cloth.placed.map((p) => [p.piece, p] as const)))
  const byNumber = [...result.pieces].sort((a, b) => Number(a.label) - Number(b.label))
  const rows: Cell[][] = byNumber.map((row) => [
    { bold: row.label },
    capital(oneLine(row.words)),
    oneLine(placed.get(row.piece)?.whose ?? row.item),
    measure.size(row.cutWidth, row.cutLength),
    oneLine(row.cloth),
    { tick: true },
  ])
  for (const cloth of result.cloths)
    for (const r of cloth.remnants)
      rows.push([
        { bold: r.name },
        'Remnant, to keep',
        '',
        measure.size(r.width, r.length),
        oneLine(cloth.name),
        { tick: true },
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
