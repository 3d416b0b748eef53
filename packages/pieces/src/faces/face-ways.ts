import type { RefusedWay } from '../answers.ts'
import { tablesOf } from '../build.ts'
import type { ClothOnTable } from '../cloth.ts'
import { runsOf } from '../cut-size.ts'
import type { Order } from '../order.ts'
import { otherwise } from '../refusals.ts'
import type { Piece } from '../way.ts'
import { waysWithBands } from './band.ts'
import type { FaceAsk, FaceWay, FaceWays } from './face.ts'
import { refusal } from './face-words.ts'
import { waysInRun } from './ways-in-run.ts'

/**
 * Every way of making a face in the closed list: one piece, joined panels, along or across the cloth, each panel of at most
 * `crossJoins` + 1 equal parts, with a band where asked; from each cloth that may serve.
 */
export function waysOfFace(order: Order, ask: FaceAsk, tables: ReadonlyMap<string, ClothOnTable>): FaceWays {
  if (ask.spec.band !== null) return waysWithBands(order, ask, tables, waysOfFace)
  const all: Collected = { ways: [], refused: [], capped: false }
  const found = tablesOf(ask.spec.cloth, tables)
  for (const table of found) {
    const many = found.length > 1
    const runs = runsOf(table.cloth, ask.spec.lengthRuns)
    if (runs.length === 0)
      all.refused.push(
        refusal(
          ask,
          `on ${table.cloth.name}`,
          'the top of the print asks for the other direction',
          otherwise(table.cloth.name),
        ),
      )
    const inRuns = runs.map((run) => waysInRun(order, ask, table, run, many))
    for (const one of eitherWayAlike(order, ask, table, inRuns)) {
      all.ways.push(...one.ways)
      all.refused.push(...one.refused)
      all.capped ||= one.capped
    }
  }
  return all
}

interface Collected {
  ways: FaceWay[]
  refused: RefusedWay[]
  capped: boolean
}

/** A face of one piece that is cut the same along and across is one way: the layout turns it as it likes. */
function eitherWayAlike(
  order: Order,
  ask: FaceAsk,
  table: ClothOnTable,
  inRuns: readonly FaceWays[],
): readonly FaceWays[] {
  const [along, across] = inRuns
  const shrinks = table.cloth.shrinks
  if (along === undefined || across === undefined) return inRuns
  if (order.wash === 'after-sewing' && ask.asCut !== true && shrinks.along !== shrinks.across) return inRuns
  const [a, b] = [along.ways.find(free), across.ways.find(free)]
  if (a === undefined || b === undefined || a.width !== b.width || a.length !== b.length) return inRuns
  const either: FaceWay = {
    ...a,
    id: a.id.replace(/\/along$/, ''),
    words: a.words.replace(/, along the cloth$/, ''),
    run: 'either',
    pieces: a.pieces.map((piece) => ({ ...piece, lengthRuns: 'either' as const })),
  }
  return [
    { ...along, ways: along.ways.map((way) => (way === a ? either : way)) },
    { ...across, ways: across.ways.filter((way) => way !== b) },
  ]
}

function free(way: FaceWay): boolean {
  const piece = way.pieces[0]
  return way.pieces.length === 1 && piece !== undefined && !piece.spansWidth && piece.tie === null && !needsAny(piece)
}
const needsAny = (piece: Piece): boolean => Object.values(piece.needs).some((need) => need.kind !== 'none')
