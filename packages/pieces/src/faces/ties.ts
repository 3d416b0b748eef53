import type { Length } from '@lengthwise/units'
import { afterShrinking, length } from '@lengthwise/units'
import type { ClothOnTable } from '../cloth.ts'
import type { Run } from '../cut-size.ts'
import type { Order } from '../order.ts'
import type { Piece, Tie } from '../way.ts'

/** Where the head of a piece lies, and so which way its length counts along the cloth. */
export type HeadToward = NonNullable<Piece['headToward']>

/** What ties the panels of one face on one cloth together, or null where the print asks for nothing. */
export interface FacePhase {
  readonly headToward: HeadToward
  /**
   * The tie of a panel: `lane` counts panels side by side, `cell` the parts of one panel end to end; the part begins `at`
   * from the start of the panel (head or left) and is `run` long.
   */
  tie(lane: number, cell: number, at: number, run: number): Tie
}

export interface PhaseAsk {
  readonly order: Order
  readonly table: ClothOnTable
  readonly run: Run
  readonly face: string
  readonly lanes: number
  /** most parts in one panel */
  readonly cells: number
  /** from the start of a panel (head or left) to the middle of what shows of the face, as cut */
  readonly middle: number
}

/**
 * Print phase of a face. Panels are as long as the cloth runs, so the seams between them lie along the cloth and ask for the
 * repeat along it: neighbours start at the same place of the repeat (straight) or half of it apart (half-drop), and the
 * parts of one panel go on where the part before them stopped. Without a repeat along, parts joined across a stripe that
 * repeats across start at the same place across.
 *
 *      columns, head toward the cut end        rows, head toward the left selvedge
 *      y ↓  [ 1 ][ 2 ][ 3 ]                    y ↓  the left edge of each row lies toward the bolt:
 *           panels start alike                      what is further right lies at smaller y
 *
 * A motif in the middle sets the phase itself, and joined panels follow. Where its first place is not known, all pieces on
 * the cloth keep phase with each other: the whole layout is then moved by up to a repeat, which is bought besides.
 */
export function phaseOf(ask: PhaseAsk): FacePhase | null {
  const { table, run } = ask
  const { print } = table.cloth
  const matched = print.match !== 'none'
  const headToward = headOf(ask)
  const along = table.repeat
  if (along > 0 && (print.motif !== null || (matched && ask.lanes * ask.cells > 1))) {
    const forward = headToward === 'start' || headToward === 'right'
    const first = firstMotif(ask)
    const origin = print.motif === null ? 0 : (first ?? 0) + (forward ? -ask.middle : ask.middle)
    return {
      headToward,
      tie(lane, _cell, at, partRun) {
        const drop = print.match === 'half-drop' && lane % 2 === 1 ? Math.floor(along / 2) : 0
        const offset = origin + drop + (forward ? at : -(at + partRun))
        return {
          face: ask.face,
          axis: 'along',
          repeat: along,
          offset: modulo(offset, along),
          absolute: first !== null,
          ...(print.motif !== null && first === null ? { oneForAll: true } : {}),
        }
      },
    }
  }
  const across = table.acrossRepeat
  if (matched && along === 0 && across > 0 && ask.cells > 1)
    return {
      headToward,
      tie: (lane) => ({
        face: `${ask.face}/panel-${lane + 1}`,
        axis: 'across',
        repeat: across,
        offset: 0 as Length,
        absolute: false,
      }),
    }
  return null

  function headOf({ table: { cloth } }: PhaseAsk): HeadToward {
    if (cloth.print.way !== 'one-way') return run === 'along' ? 'start' : 'left'
    if (run === 'along') return cloth.print.top === 'bolt' ? 'end' : 'start'
    return cloth.print.top === 'right' ? 'right' : 'left'
  }
}

/** The first motif as it lies on the table; null where it is not known, or there is none. */
function firstMotif({ order, table }: PhaseAsk): Length | null {
  const first = table.cloth.print.motif?.first ?? null
  if (first === null) return null
  const shrinks = order.wash === 'before-cutting' && table.cloth.print.repeatMeasured === 'in-shop'
  return shrinks ? afterShrinking(first, table.cloth.shrinks.along) : first
}

const modulo = (a: number, n: number): Length => length(((Math.round(a) % n) + n) % n)
