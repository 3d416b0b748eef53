import type { Cloth, Order, Way } from '@lengthwise/pieces'
import { cautionsFor, goodToKnowFor, sewUp } from '@lengthwise/pieces'
import type { Numbers, OnePiece } from './assemble.ts'
import { copiesWithWays, cutCloths, piecesOf } from './assemble.ts'
import type { AtWidths, Widths } from './at-widths.ts'
import { solveAt } from './at-widths.ts'
import { basketOf } from './basket.ts'
import { objectiveOf } from './buying.ts'
import type { Chosen } from './choose.ts'
import { chooseWays } from './choose.ts'
import { costOfPrint } from './cost-of-print.ts'
import { effortOf } from './effort.ts'
import type { Refusal } from './fault.ts'
import { ProgramFault } from './fault.ts'
import { missingFrom } from './missing.ts'
import { clothsWanted } from './named-cloths.ts'
import { remarksOn, remarksOnSizes } from './remarks.ts'
import type { CutCloth, PlanOptions, PlanProof, Result, WidthRow } from './result.ts'
import { sewingOf } from './sewing-rows.ts'
import type { Share, Spread } from './share.ts'
import { LayoutBook, valueToBuy } from './share.ts'
import { layoutFaults, verify } from './verify.ts'
import { isUsed, rowOf, widthRows } from './width-rows.ts'
import { compareWishes } from './wishes.ts'
import { wouldMake } from './would-make.ts'

/** With more combinations of widths than this, one bolt after the other is varied, and nothing is proved over all of them. */
const MOST_COMBINATIONS = 36

/** All combinations together may cost this many times the steps for a choice. */
const MOST_OVER = 4

/**
 * A plan worked out: ways, widths and owned cloth chosen together for the least purchase, laid out, taken apart into an order
 * of divisions, and checked. Throws a ProgramFault when its own checks refuse the answer.
 */
export function plan(order: Order, options: PlanOptions = {}): Result {
  const effort = effortOf(options)
  const book = new LayoutBook(order, objectiveOf(order), effort)
  const wanted = clothsWanted(order)
  const cloths = order.cloths.filter((cloth) => wanted.has(cloth.name))
  const known = new Map<string, AtWidths>()
  let best = null as AtWidths | null
  let timed = false

  // every combination of widths, or one bolt after the other
  const { combinations, all } = combinationsOf(cloths)
  const stepsEach = Math.ceil(effort.steps / combinations.length)
  const oneByOne = options.compareWidths !== false && combinations.length > 0 && bolts(cloths).length <= 1
  for (const widths of combinations) consider(at(widths, oneByOne ? null : (best?.answer.best?.wish.value ?? null)))
  if (!all) for (let better = true; better && !spent(); ) better = improveOneBolt()

  if (all) for (const found of [...known.values()]) if (best) beat(best, found)
  if (!best?.answer.best) return cannotBeCut()
  const chosen: AtWidths = best
  const tidied = tidy(book, chosen)
  timed ||= options.stop?.() ?? false
  const proof = proofOf(tidied.answer.best!, chosen)
  const result = resultOf(tidied, proof)
  return checked(result.result, result.spreads)

  function at(widths: Widths, cutOff: bigint | null = null): AtWidths {
    const key = [...widths.values()].join()
    const before = known.get(key)
    if (before && !before.cutOff) return before
    const found = solveAt(
      book,
      cloths,
      widths,
      known.size > 0 && spent() ? 1 : stepsEach,
      cutOff,
      (half, better, bound) => {
        options.onProgress?.({ words: 'ways and layouts', best: better.wish.value, bound })
        if (!options.onBetter || (best?.answer.best && compareWishes(better.wish, best.answer.best.wish) >= 0)) return
        const open: AtWidths = {
          ...half,
          answer: { best: better, bound, status: 'best-found', by: 'area' },
          cutOff: false,
        }
        const { result: early, spreads } = resultOf(open, proofOf(better, open), false)
        options.onBetter(checked(early, spreads))
      },
    )
    timed ||= found.answer.status === 'stopped'
    known.set(key, found)
    return found
  }

  /** What is not known to be no cheaper at other widths, or at these, is searched once more for no more than that. */
  function beat(than: AtWidths, at: AtWidths): void {
    const { wish } = than.answer.best!
    const { bound } = at.answer
    if (bound === null || bound >= wish.value || options.stop?.()) return
    const answer = chooseWays(book, at.settings, at.choices, stepsEach, null, undefined, wish)
    const raised = answer.bound !== null && answer.bound > bound ? answer.bound : bound
    const proved = at.answer.best && raised >= at.answer.best.wish.value
    const status = proved ? 'proved' : at.answer.status
    const now: AtWidths = answer.best
      ? { ...at, answer, cutOff: false }
      : { ...at, answer: { ...at.answer, bound: raised, status } }
    known.set([...at.widths.values()].join(), now)
    if (answer.best) consider(now)
    else if (at === best) best = now
  }

  function consider(found: AtWidths): boolean {
    if (!found.answer.best) return false
    if (best?.answer.best && compareWishes(found.answer.best.wish, best.answer.best.wish) >= 0) return false
    best = found
    return true
  }

  /** With many bolts or rows each further combination of widths gets a first layout only. */
  function spent(): boolean {
    return book.steps > MOST_OVER * effort.steps || (best !== null && (options.stop?.() ?? false))
  }

  function improveOneBolt(): boolean {
    const from = best?.widths ?? combinations[0]!
    return bolts(cloths).some((cloth) =>
      cloth.widths.some(
        (_, index) =>
          !spent() && consider(at(new Map([...from, [cloth.name, index]]), best?.answer.best?.wish.value ?? null)),
      ),
    )
  }

  function proofOf(found: Chosen, from: AtWidths): PlanProof {
    const { value } = found.wish
    // other widths count too: each was searched through, or left when it could not beat the best
    let bound = from.answer.bound ?? 0n
    for (const other of known.values())
      if (other.answer.bound !== null && other.answer.bound < bound) bound = other.answer.bound
    if (!all) bound = 0n
    bound = bound < value ? bound : value
    const status = bound === value ? 'proved' : timed ? 'stopped' : 'best-found'
    return { status, objective: book.objective, value, bound, by: from.answer.by }
  }

  function resultOf(
    from: AtWidths,
    proof: PlanProof,
    withRows = options.compareWidths !== false,
  ): { result: Result; spreads: readonly Spread[] } {
    const found = from.answer.best!
    const numbers: Numbers = { labels: 0, remnants: 0, tears: 0, shears: 0 }
    const cut = cutCloths(order, from.settings, from.choices, found, numbers)
    const copies = copiesWithWays(order, from.choices, found)
    const drawn = cut.map(({ cloth }) => ({
      ...cloth,
      remnants: cloth.remnants.map((r) => ({ ...r, wouldMake: wouldMake(order, cloth, r) })),
    }))
    const widths = bolts(cloths).flatMap((cloth): readonly WidthRow[] => {
      if (withRows) return widthRows(book, cloth, cloths, from, at, drawn)
      if (!isUsed(cloth, from)) return []
      return [rowOf(book, cloth, cloths, from.widths.get(cloth.name)!, from, drawn)]
    })
    const finished = copies.map(({ copy, way }) => {
      const sewn = sewnUp(order, copy.item, way)
      return { item: copy.id, ...sewn.finished, asked: sewn.asked }
    })
    const result: Result = {
      order,
      status: 'laid',
      timed,
      proof,
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
      goodToKnow: [
        ...goodToKnowFor(order),
        ...remarksOn(drawn),
        ...remarksOnSizes(order, finished),
        ...(withRows ? costOfPrint(book, cloths, from) : []),
      ],
    }
    return { result, spreads: cut.map((c) => c.spread) }
  }

  function cannotBeCut(): Result {
    const tried = [...known.values()]
    const rows = bolts(cloths).flatMap((cloth) =>
      cloth.widths.flatMap((_, index) => {
        const found = tried.find((a) => a.widths.get(cloth.name) === index)
        return found ? [rowOf(book, cloth, cloths, index, found, null)] : []
      }),
    )
    return {
      order,
      status: 'cannot-be-cut',
      timed,
      proof: {
        status: tried.every((a) => a.answer.status === 'proved') ? 'proved' : timed ? 'stopped' : 'best-found',
        objective: book.objective,
        value: 0n,
        bound: 0n,
        by: 'exhausted',
      },
      cloths: [],
      widths: rows,
      missing: missingFrom(book, tried),
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

/** The chosen layouts once more, for the largest remnant, the fewest divisions and the fewest changes of direction. */
function tidy(book: LayoutBook, chosen: AtWidths): AtWidths {
  const best = chosen.answer.best!
  let { value, laid } = best.wish
  const shares = best.shares.map((share, s): Share | null => {
    const setting = chosen.settings[s]!
    return (
      share && {
        ...share,
        spreads: share.spreads.map((spread) => {
          const { asked, answer } = book.lay(
            setting,
            spread.nth === null ? setting.open! : spread.ground,
            spread.counts,
            'tidy',
          )
          const before = spread.answer.length!
          if (answer.length === null || answer.length > before || answer.status === 'stopped') return spread
          if (spread.nth === null) {
            value += valueToBuy(book, setting, answer.length) - valueToBuy(book, setting, before)
            laid += answer.length - before
          }
          return { ...spread, asked, answer }
        }),
      }
    )
  })
  const wish = { ...best.wish, value, laid }
  return { ...chosen, answer: { ...chosen.answer, best: { ...best, shares, wish } } }
}

const bolts = (cloths: readonly Cloth[]): readonly Cloth[] => cloths.filter((cloth) => cloth.from === 'bolt')

function combinationsOf(cloths: readonly Cloth[]): { readonly combinations: readonly Widths[]; readonly all: boolean } {
  let combinations: Widths[] = [new Map()]
  const all = bolts(cloths).reduce((n, cloth) => n * cloth.widths.length, 1) <= MOST_COMBINATIONS
  for (const cloth of bolts(cloths)) {
    const widths = all ? cloth.widths : cloth.widths.slice(0, 1)
    combinations = combinations.flatMap((c) => widths.map((_, i) => new Map([...c, [cloth.name, i]])))
  }
  return { combinations, all }
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
