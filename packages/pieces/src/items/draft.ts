import type { Length } from '@lengthwise/units'
import { length, printLength, ZERO } from '@lengthwise/units'
import type { RefusedWay, Ways } from '../answers.ts'
import { bestWays } from '../build.ts'
import type { ClothEdge, ClothOnTable } from '../cloth.ts'
import type { Run } from '../cut-size.ts'
import type { Edge, EdgeNeed, Order } from '../order.ts'
import { asSold, otherwise, tooNarrow, tooShort } from '../refusals.ts'
import { threadLength } from '../thread.ts'
import type { Notion, Piece, Way } from '../way.ts'

/** A way as an item's own file writes it down: without thread, which follows from seams and hems. */
export interface Draft extends Omit<Way, 'notions'> {
  readonly notions: readonly Notion[]
  /** stitched length of all hems */
  readonly hems: number
}

/**
 * Drafts as ways: thread added, and those refused, with the reason, that hold a piece no cloth of theirs can give,
 * be it too wide, too long or without the hem or selvedge it needs.
 */
export function waysFrom(
  order: Order,
  drafts: readonly Draft[],
  tables: ReadonlyMap<string, ClothOnTable>,
  capped = false,
): Ways {
  const ways: Way[] = []
  const refused: RefusedWay[] = []
  for (const draft of drafts) {
    const why = firstRefusal(order, draft, tables)
    if (why === null) ways.push(withThread(draft))
    else refused.push(why)
  }
  return bestWays(ways, refused, capped)
}

function withThread({ hems, ...draft }: Draft): Way {
  const thread = threadLength(draft.pieces, draft.seams, hems)
  if (thread === 0) return draft
  return { ...draft, notions: [...draft.notions, { what: 'thread', length: thread, words: 'sewing thread' }] }
}

function firstRefusal(order: Order, draft: Draft, tables: ReadonlyMap<string, ClothOnTable>): RefusedWay | null {
  for (const piece of draft.pieces) {
    const table = tables.get(piece.cloth)
    if (table === undefined) continue
    const withNeeds = runsWithNeeds(piece, table)
    if (withNeeds.length === 0) return { words: draft.words, why: missingEdge(piece), ...otherwise(table.cloth.name) }
    if (!withNeeds.some((run) => fits(piece, run, table)))
      return { words: draft.words, ...tooSmall(order, draft, piece, table) }
  }
  return null
}

function tooSmall(order: Order, draft: Draft, piece: Piece, table: ClothOnTable): Omit<RefusedWay, 'words'> {
  const say = (l: Length): string => printLength(l, order.measureIn, { places: 2 })
  const { cloth } = table
  const runs = runsWithNeeds(piece, table)
  const least = narrowestFor(piece, table)
  if (least === null) {
    const why = `${piece.words} is ${say(piece.cutWidth)} by ${say(piece.cutLength)}, more than ${cloth.name} gives`
    const along = runs
      .filter((run) => spans(piece, run).across <= table.usableWidth)
      .map((run) => spans(piece, run).along)
    if (along.length === 0) return { why, ...otherwise(cloth.name) }
    return { why, ...tooShort(order, table, Math.min(...along) + 2 * cloth.spareEachEnd) }
  }
  const why = `${piece.words} takes ${say(least)} across ${cloth.name}, which has ${say(table.usableWidth)} to use`
  // a width does only when it does for every piece
  const all = draft.pieces.filter((p) => p.cloth === cloth.name).map((p) => narrowestFor(p, table))
  if (all.some((one) => one === null)) return { why, ...otherwise(cloth.name) }
  const onTable = Math.max(...all.map(Number)) + 2 * cloth.unusedSelvedge
  return { why, ...tooNarrow(table, asSold(order, onTable, cloth.shrinks.across)) }
}

/** Across the cloth a piece takes the less of the ways that are short enough; null when none is. */
function narrowestFor(piece: Piece, table: ClothOnTable): Length | null {
  const room = roomAlong(table)
  const across = runsWithNeeds(piece, table)
    .filter((run) => room === null || spans(piece, run).along <= room)
    .map((run) => spans(piece, run).across)
  return across.length === 0 ? null : length(Math.min(...across))
}

function runsWithNeeds(piece: Piece, table: ClothOnTable): readonly Run[] {
  const runs: Run[] = piece.lengthRuns === 'either' ? ['along', 'across'] : [piece.lengthRuns]
  return runs.filter((run) => needsMet(piece, run, table) && reachesBothSides(piece, run, table))
}

function missingEdge(piece: Piece): string {
  const kept = Object.values(piece.needs).some((need) => need.kind === 'kept-hem')
  return kept
    ? `${piece.words} needs a kept hem, which ${piece.cloth} does not have deep enough on that side`
    : `${piece.words} needs a selvedge, which ${piece.cloth} does not have on that side`
}

function spans(piece: Piece, run: Run): { readonly across: Length; readonly along: Length } {
  return run === 'along'
    ? { across: piece.cutWidth, along: piece.cutLength }
    : { across: piece.cutLength, along: piece.cutWidth }
}

function fits(piece: Piece, run: Run, table: ClothOnTable): boolean {
  const { across, along } = spans(piece, run)
  const room = roomAlong(table)
  return across <= table.usableWidth && (room === null || along <= room)
}

function roomAlong(table: ClothOnTable): Length | null {
  return table.length === null ? null : length(Math.max(ZERO, table.length - 2 * table.cloth.spareEachEnd))
}

// head and foot of a piece lie at the cloth's ends when its length runs along, at its sides when it runs across
function needsMet(piece: Piece, run: Run, table: ClothOnTable): boolean {
  const ends = [table.edges.head, table.edges.foot]
  const { left, right } = table.edges
  const sides = table.cloth.unusedSelvedge > 0 ? [] : [left, right]
  const offered = (edge: Edge): readonly ClothEdge[] =>
    (edge === 'head' || edge === 'foot') === (run === 'along') ? ends : sides
  return (Object.keys(piece.needs) as Edge[]).every((edge) => {
    const need = piece.needs[edge]
    return need.kind === 'none' || offered(edge).some((edgeOfCloth) => serves(edgeOfCloth, need))
  })
}

/** A piece that needs two opposite edges of the cloth is as wide, or as long, as the cloth itself. */
function reachesBothSides(piece: Piece, run: Run, table: ClothOnTable): boolean {
  const { across, along } = spans(piece, run)
  const needs = (edge: Edge): boolean => piece.needs[edge].kind !== 'none'
  const [ends, sides] = [needs('head') && needs('foot'), needs('left') && needs('right')]
  const [bothSides, bothEnds] = run === 'along' ? [sides, ends] : [ends, sides]
  return (!bothSides || across === table.width) && (!bothEnds || along === table.length)
}

function serves(edge: ClothEdge, need: EdgeNeed): boolean {
  if (need.kind === 'selvedge') return edge.kind === 'selvedge'
  return need.kind === 'kept-hem' && edge.kind === 'hem' && edge.depth >= need.depth
}
