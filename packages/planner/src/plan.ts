import type { Cloth, Order, Remark, Way } from '@lengthwise/pieces'
import { cautionsFor, goodToKnowFor, sewUp } from '@lengthwise/pieces'
import type { Numbers, OnePiece } from './assemble.ts'
import { copiesWithWays, cutCloths, piecesOf } from './assemble.ts'
import type { AtWidths } from './at-widths.ts'
import { basketOf } from './basket.ts'
import { isBolt, objectiveOf } from './buying.ts'
import { costOfPrint } from './cost-of-print.ts'
import { cuttingOf } from './cutting.ts'
import { effortOf } from './effort.ts'
import type { Refusal } from './fault.ts'
import { ProgramFault } from './fault.ts'
import { formOf, isCutSize } from './form.ts'
import { groupsOf } from './groups.ts'
import { LayoutBook } from './layout-book.ts'
import { missingFrom } from './missing.ts'
import { remarksOn, remarksOnSizes } from './remarks.ts'
import type { CutCloth, PlanOptions, PlanProof, Result, WidthRow } from './result.ts'
import type { GroupAnswer, Searched } from './search-widths.ts'
import { searchWidths } from './search-widths.ts'
import { sewingOf } from './sewing-rows.ts'
import type { Spread } from './share.ts'
import { tidyLayouts } from './tidy-layouts.ts'
import { layoutFaults, verify } from './verify.ts'
import { chosenRow, triedRows, widthRows } from './width-rows.ts'
import { lesser } from './wishes.ts'
import { wouldMake } from './would-make.ts'

/** However many groups there are, each may spend this part of the steps for choices. */
const LEAST_SHARE = 100

/**
 * A plan worked out: ways, widths and owned cloth chosen together for the least purchase, laid out, taken apart into an order
 * of divisions, and checked. Throws a ProgramFault when its own checks refuse the answer.
 */
export function plan(order: Order, asked: PlanOptions = {}): Result {
  // whatever was told to stop, and however far it was by then, has ended early
  let ended = false
  const { stop } = asked
  const options: PlanOptions = stop ? { ...asked, stop: () => (ended ||= stop()) } : asked
  const effort = effortOf(options)
  const book = new LayoutBook(order, objectiveOf(order), effort)
  const groups = groupsOf(order)
  const found: Searched[] = []
  for (const [g, group] of groups.entries()) {
    // what the groups before it left over is there for those to come
    const steps = Math.max(effort.steps / LEAST_SHARE, (effort.steps - book.steps) / (groups.length - g))
    found.push(searchWidths(book, group, Math.ceil(steps), options, tellBetter))
  }
  if (found.some((one) => !one.best)) return cannotBeCut(found)
  const parts = found.map((one): GroupAnswer => ({ ...one, best: tidyLayouts(book, one.best!) }))
  const result = resultOf(parts, options.compareWidths !== false)
  return checked(result.result, result.spreads)

  /** Something better in one group is something better in all, once every group has something. */
  function tellBetter(better: AtWidths, bound: bigint): void {
    const others = found.flatMap((one) => (one.best ? [{ ...one, best: one.best }] : []))
    const all = others.length === groups.length - 1
    const parts = [...others, { group: groups[found.length]!, best: better, bound, at: () => better }]
    const sum = (values: readonly bigint[]) => values.reduce((a, b) => a + b, 0n)
    const best = all ? sum(parts.map((part) => part.best.answer.best!.wish.value)) : null
    options.onProgress?.({ words: 'ways and layouts', best, bound: sum(parts.map((part) => part.bound)) })
    if (!all || !options.onBetter) return
    const early = resultOf(parts, false)
    options.onBetter(checked(early.result, early.spreads))
  }

  function proofOf(parts: readonly GroupAnswer[]): PlanProof {
    let value = 0n
    let bound = 0n
    for (const { best, bound: least } of parts) {
      const { wish } = best.answer.best!
      value += wish.value
      bound += lesser(least, wish.value)
    }
    const status = bound === value ? 'proved' : ended ? 'stopped' : 'best-found'
    const by = (['exhausted', 'bars', 'area'] as const).find((b) => parts.some((part) => part.best.answer.by === b))
    return { status, objective: book.objective, value, bound, by: by ?? 'exhausted' }
  }

  function resultOf(
    parts: readonly GroupAnswer[],
    withRows: boolean,
  ): { readonly result: Result; readonly spreads: readonly Spread[] } {
    const cutting = cuttingOf(
      order,
      parts.map((part) => part.best),
    )
    const numbers: Numbers = { labels: 0, remnants: 0 }
    const cut = cutCloths(order, cutting, numbers)
    const copies = copiesWithWays(order, cutting)
    const drawn = cut.map(({ cloth }) => ({
      ...cloth,
      remnants: cloth.remnants.map((r) => ({ ...r, wouldMake: options.stop?.() ? [] : wouldMake(order, cloth, r) })),
    }))
    const widths = rowsFor(parts, (cloth, part) =>
      withRows ? widthRows(book, cloth, part, drawn) : chosenRow(book, cloth, part, drawn),
    )
    // copies made alike come out alike
    const sewnWays = new Map(copies.map(({ copy, way }) => [way, copy.item]))
    const sewnUps = new Map([...sewnWays].map(([way, item]) => [way, sewnUp(order, item, way)]))
    const finished = copies.map(({ copy, way }) => {
      const sewn = sewnUps.get(way)!
      const { item, id } = copy
      return { item: id, ...sewn.finished, asked: sewn.asked, form: formOf(item), asCut: isCutSize(item) }
    })
    const remarks = withRows ? order.cloths.flatMap((cloth) => printRemarks(cloth, parts)) : []
    const result: Result = {
      order,
      status: 'laid',
      timed: ended,
      proof: proofOf(parts),
      cloths: drawn,
      widths,
      missing: [],
      buy: basketOf(
        drawn,
        copies.map((c) => c.way),
        order.measureIn,
      ),
      pieces: pieceRows(copies.flatMap(piecesOf), drawn),
      seams: copies.flatMap(({ copy, way }) =>
        way.seams.map((seam) => ({
          a: `${copy.id}${seam.a.piece}#${seam.a.edge}`,
          b: `${copy.id}${seam.b.piece}#${seam.b.edge}`,
          length: seam.length,
          allowanceA: seam.allowanceA,
          allowanceB: seam.allowanceB,
          lap: seam.lap,
          match: seam.match,
        })),
      ),
      finished,
      sewing: sewingOf(copies),
      cautions: cautionsFor(order),
      goodToKnow: [...goodToKnowFor(order), ...remarksOn(drawn), ...remarksOnSizes(order, finished), ...remarks],
    }
    return { result, spreads: cut.map((c) => c.spread) }
  }

  function printRemarks(cloth: Cloth, parts: readonly GroupAnswer[]): readonly Remark[] {
    const part = parts.find(({ group }) => group.cloths.includes(cloth))
    return part ? costOfPrint(book, cloth, part) : []
  }

  /** Rows of every bolt, in the order of the plan. */
  function rowsFor<P extends Pick<GroupAnswer, 'group'>>(
    parts: readonly P[],
    rows: (cloth: Cloth, part: P) => readonly WidthRow[],
  ): readonly WidthRow[] {
    return order.cloths.filter(isBolt).flatMap((cloth) => {
      const part = parts.find(({ group }) => group.cloths.includes(cloth))
      return part ? rows(cloth, part) : []
    })
  }

  function cannotBeCut(found: readonly Searched[]): Result {
    const failed = found.filter((one) => !one.best)
    const tried = failed.flatMap((one) => one.tried)
    const widths = rowsFor(found, (cloth, part) => triedRows(book, cloth, part))
    const missing = failed.flatMap((one) => missingFrom(book, one.tried))
    return {
      order,
      status: 'cannot-be-cut',
      timed: ended,
      proof: {
        status: tried.every((a) => a.answer.status === 'proved') ? 'proved' : ended ? 'stopped' : 'best-found',
        objective: book.objective,
        value: 0n,
        bound: 0n,
        by: 'exhausted',
      },
      cloths: [],
      widths,
      missing,
      buy: [],
      pieces: [],
      seams: [],
      finished: [],
      sewing: [],
      cautions: cautionsFor(order),
      goodToKnow: goodToKnowFor(order),
    }
  }
}

/** Sewn up by the check that reads pieces and seams only; what it finds wrong is a fault of ours. */
function sewnUp(order: Order, item: Order['items'][number], way: Way) {
  const sewn = sewUp(order, item, way)
  if (sewn.faults.length > 0)
    throw new ProgramFault(sewn.faults.map((fault) => ({ code: fault.code, message: fault.message })))
  return sewn
}

function checked(result: Result, spreads: readonly Spread[]): Result {
  const refusals: Refusal[] = [
    ...spreads.flatMap((spread) => layoutFaults(spread.asked.request, spread.answer)),
    ...verify(result),
  ]
  if (refusals.length > 0) throw new ProgramFault(refusals)
  return result
}

function pieceRows(pieces: readonly OnePiece[], cloths: readonly CutCloth[]): Result['pieces'] {
  const labels = new Map(cloths.flatMap((cloth) => cloth.placed.map((p) => [p.piece, p.label] as const)))
  return pieces.map(({ name, piece, copy }) => ({
    piece: name,
    item: copy.id,
    label: labels.get(name) ?? '',
    words: piece.words,
    cloth: piece.cloth,
    cutWidth: piece.cutWidth,
    cutLength: piece.cutLength,
    marks: piece.marks,
  }))
}
