import type { Length } from '@lengthwise/units'
import { beforeShrinking, length, NO_SHARE, printLength, roundUpTo, ZERO } from '@lengthwise/units'
import type { RefusedWay } from '../answers.ts'
import { makeSeam, tablesOf } from '../build.ts'
import type { Cloth, ClothOnTable } from '../cloth.ts'
import type { Run } from '../cut-size.ts'
import { runsOf, shareOut, shrinksBy } from '../cut-size.ts'
import { clearLength, clearWidth, hemDepth } from '../on-table.ts'
import type { Edge, FaceSpec, Order, Seam, Size } from '../order.ts'
import type { Piece, SeamLine } from '../way.ts'
import type { Assembled, Cell, FaceEdge, FaceEdges, Lane } from './lanes.ts'
import { assemble } from './lanes.ts'
import type { Shrinks } from './shrinking.ts'
import { lossesInCommon, lossesOf, mostShrinks, sameShrinks, shrinkAlike } from './shrinking.ts'
import type { Split, Strip } from './split.ts'
import { narrowest, splitsOf } from './split.ts'
import type { Stretch } from './stretches.ts'
import { meet, moved } from './stretches.ts'
import { phaseOf } from './ties.ts'

/** A face to be made: what shows of it, what lies beyond, and how it may be joined. */
export interface FaceAsk {
  /** name of its pieces: '/front', or '' for an item that is one face */
  readonly name: string
  /** 'Front' */
  readonly words: string
  readonly finished: Size
  readonly edges: FaceEdges
  readonly seam: Seam
  readonly spec: FaceSpec
  /** why it may not be joined at all; null where it may */
  readonly neverJoined: string | null
  /** `finished` is a cut size: it does not grow for shrinking */
  readonly asCut?: boolean
  /** cut for this loss, the largest of all it is sewn to; its own loss when not given */
  readonly shrinks?: Shrinks
  /** what shows of its length before the wash, when that is settled by what it is joined to */
  readonly lengthBeforeWash?: Length
}

/** One way to make a face from one cloth (with a band, from two). */
export interface FaceWay extends Assembled {
  /** such as `centre-and-sides/along` */
  readonly id: string
  readonly words: string
  readonly cloths: readonly Cloth[]
  readonly run: Run | 'either'
  /** its own loss in the wash after sewing; of a face with a band the larger */
  readonly shrinks: Shrinks
  /** seams inside the face */
  readonly joins: number
}

export interface FaceWays {
  readonly ways: readonly FaceWay[]
  readonly refused: readonly RefusedWay[]
  readonly capped: boolean
}

/** A split with the number of parts of each panel, before it is put together. */
interface Choice {
  readonly split: Split
  readonly parts: readonly number[]
  readonly joins: number
  /** cloth in its pieces */
  readonly area: number
}

/** Most ways of a face put together with its length running one way on one cloth. */
const MOST_IN_RUN = 24

/** An edge with a seam, or a raw one. */
export const plainEdge = (beyond: Length): FaceEdge => ({ beyond, folds: [], need: { kind: 'none' } })

/**
 * Every way of making a face in the closed list: one piece, joined panels, along or across the cloth, each panel of at most
 * `crossJoins` + 1 equal parts, with a band where asked; from each cloth that may serve.
 */
export function waysOfFace(order: Order, ask: FaceAsk, tables: ReadonlyMap<string, ClothOnTable>): FaceWays {
  if (ask.spec.band !== null) return waysWithBands(order, ask, tables)
  const all: Collected = { ways: [], refused: [], capped: false }
  const found = tablesOf(ask.spec.cloth, tables)
  for (const table of found) {
    const many = found.length > 1
    const runs = runsOf(table.cloth, ask.spec.lengthRuns)
    if (runs.length === 0)
      all.refused.push(
        refusal(ask, `on ${table.cloth.name}`, 'the top of the print asks for the other direction', null),
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

const NO_SHRINKING = { width: NO_SHARE, length: NO_SHARE }

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

/** All ways with the length of the face lying one way on one cloth. */
function waysInRun(order: Order, ask: FaceAsk, table: ClothOnTable, run: Run, nameCloth: boolean): FaceWays {
  const { spec, edges } = ask
  const { cloth } = table
  const columns = run === 'along'
  const own = ask.asCut ? NO_SHRINKING : shrinksBy(order, cloth, run)
  const shrinks = ask.shrinks ?? own
  const sides: readonly [Edge, Edge] = columns ? ['left', 'right'] : ['head', 'foot']
  const ends: readonly [Edge, Edge] = columns ? ['head', 'foot'] : ['left', 'right']
  const where = `${columns ? 'along' : 'across'} the cloth${nameCloth ? ` (${cloth.name})` : ''}`
  const refused: RefusedWay[] = []
  const refuse = (what: string, why: string, widthThatWouldDo: Length | null): void => {
    refused.push(refusal(ask, `${what}, ${where}`, why, widthThatWouldDo))
  }
  const none = (): FaceWays => ({ ways: [], refused, capped: false })

  if (!shrinkAlike(own, shrinks)) {
    refuse('any way', 'it would shrink apart from what it is sewn to: wash before cutting', null)
    return none()
  }
  // edges that must be selvedges lie along the cloth
  if (ends.some((edge) => edges[edge].need.kind === 'selvedge')) {
    refuse('any way', 'an edge that must be a selvedge would lie across the cloth', null)
    return none()
  }

  // what the panels must come to, across the cloth and along it
  const [sizeFinished, runFinished] = columns
    ? [ask.finished.width, ask.finished.length]
    : [ask.finished.length, ask.finished.width]
  const [sizeShrinks, runShrinks] = columns ? [shrinks.width, shrinks.length] : [shrinks.length, shrinks.width]
  const beyondOf = (pair: readonly [Edge, Edge]): number => edges[pair[0]].beyond + edges[pair[1]].beyond
  const grown = (finished: Length, s: Shrinks['width'], isLength: boolean): Length =>
    (isLength ? ask.lengthBeforeWash : undefined) ?? beforeShrinking(finished, s)
  const need = grown(sizeFinished, sizeShrinks, !columns) + beyondOf(sides)
  const runNeed = grown(runFinished, runShrinks, columns) + beyondOf(ends)
  const runCut = runOf(order, edges, ends, table, runNeed)
  if (typeof runCut === 'string') {
    refuse('any way', runCut, null)
    return none()
  }

  const match = cloth.print.match !== 'none'
  const join = match ? length(Math.max(table.matchLine, ask.seam.allowance)) : ask.seam.allowance
  const made = sides.filter((edge) => edges[edge].need.kind !== 'none').length
  const available = availableWidth(table, made)
  const centreCut =
    spec.centre === 'full' || spec.centre === 'any'
      ? null
      : length(beforeShrinking(spec.centre, sizeShrinks) + 2 * join)
  const maySpan = available === table.usableWidth
  const found = splitsOf({ need, available, maySpan, join, markTo: order.markTo, centreCut, spec })
  let splits = found.splits
  // both side edges made by the cloth: about as wide as the cloth means one piece of its full width, whatever comes of it
  const asCloth = made === 2 && Math.abs(table.usableWidth - need) * 10 <= need
  if (asCloth)
    splits = [{ kind: 'one-piece', detail: '', strips: [{ role: 'whole', size: table.usableWidth, spans: true }] }]
  else if (made === 2 && splits.some((split) => split.kind === 'one-piece')) {
    splits = []
    refuse(
      'one piece',
      'both edges are kept, so it would come out as wide as the cloth',
      asSold(order, table, length(need)),
    )
  }
  for (const no of asCloth ? [] : found.refused) {
    // a width that would do for one piece is worth saying only once
    if (no.kind === 'one-piece' || ask.neverJoined === null)
      refuse(WORDS[no.kind], no.why, no.narrowest === null ? null : asSold(order, table, no.narrowest))
  }

  const selvedgeJoins = spec.selvedgeToSelvedge && table.selvedges.left && table.selvedges.right
  const choices: Choice[] = []
  for (const split of splits) {
    const lanesJoined = split.strips.length - 1
    if (lanesJoined > 0 && ask.neverJoined !== null) {
      refuse(WORDS[split.kind], ask.neverJoined, asSold(order, table, length(need)))
      continue
    }
    if (lanesJoined > 0 && spec.joined === 'one-piece') {
      refuse(WORDS[split.kind], 'the face is to be of one piece', asSold(order, table, length(need)))
      continue
    }
    if (lanesJoined > 0 && spec.selvedgeToSelvedge && cloth.unusedSelvedge === 0 && !selvedgeJoins) {
      refuse(WORDS[split.kind], 'this cloth has no two selvedges to join', null)
      continue
    }
    const wants = selvedgeWants(
      split,
      available,
      selvedgeJoins,
      made === 0 ? [false, false] : sides.map((e) => edges[e].need.kind === 'selvedge'),
    )
    if (wants !== null) {
      refuse(WORDS[split.kind], wants, null)
      continue
    }
    if (
      usedUp(
        split.strips.map((strip) => strip.size),
        sides.map((edge) => edges[edge].beyond),
        join,
      )
    ) {
      refuse(WORDS[split.kind], 'a panel would be used up by its hem and its seams', null)
      continue
    }
    if (spec.mostSeams !== null && lanesJoined > spec.mostSeams) {
      refuse(
        WORDS[split.kind],
        `it takes ${lanesJoined} seams, and at most ${spec.mostSeams} are allowed`,
        asSold(order, table, narrowest({ need, join }, spec.mostSeams + 1)),
      )
      continue
    }
    choices.push(...partings(split))
  }
  // with very many ways the least cloth in pieces goes first, then the fewest seams
  const kept = choices
    .map((choice, nth) => ({ ...choice, nth }))
    .sort((a, b) => a.area - b.area || a.joins - b.joins || a.nth - b.nth)
    .slice(0, MOST_IN_RUN)
    .sort((a, b) => a.nth - b.nth)
  return {
    ways: kept.map(({ split, parts, joins }) => faceWay(split, parts, joins)),
    refused,
    capped: found.thinned || kept.length < choices.length,
  }

  /** The split with every choice of parts per panel; the two sides of a centre are parted alike. */
  function partings(split: Split): Choice[] {
    const groups = [...new Set(split.strips.map(partGroup))]
    let choices: ReadonlyMap<string, number>[] = [new Map()]
    const mayPart = ask.neverJoined === null && spec.joined !== 'one-piece'
    for (const group of groups)
      choices = choices.flatMap((choice) =>
        Array.from({ length: mayPart ? spec.crossJoins + 1 : 1 }, (_, q) => new Map(choice).set(group, q + 1)),
      )
    return choices.flatMap((choice) => {
      const parts = split.strips.map((strip) => choice.get(partGroup(strip)) ?? 1)
      const joins = split.strips.length - 1 + parts.reduce((total, q) => total + q - 1, 0)
      if (spec.mostSeams !== null && joins > spec.mostSeams) return []
      const ofEnds = ends.map((edge) => edges[edge].beyond)
      const tooShort = (q: number): boolean =>
        usedUp(
          cellsOf(q).map((cell) => cell.run),
          ofEnds,
          ask.seam.allowance,
        )
      if (parts.some(tooShort)) return []
      const cut = (q: number): number => cellsOf(q).reduce((total, cell) => total + cell.run, 0)
      const area = split.strips.reduce((total, strip, i) => total + strip.size * cut(parts[i] ?? 1), 0)
      return [{ split, parts, joins, area }]
    })
  }

  function faceWay(split: Split, parts: readonly number[], joins: number): FaceWay {
    const beforeMiddle = edges[ends[0]].beyond
    const lanes = split.strips.map((strip, i): Lane => laneOf(strip, columns, cellsOf(parts[i] ?? 1)))
    const phase = phaseOf({
      order,
      table,
      run,
      face: ask.name,
      lanes: lanes.length,
      cells: Math.max(...parts),
      middle: beforeMiddle + ((runCut as Length) - beyondOf(ends)) / 2,
    })
    const assembled = assemble({
      as: columns ? 'columns' : 'rows',
      name: ask.name,
      words: ask.words,
      table,
      run,
      lanes,
      join,
      seam: ask.seam,
      selvedgeJoins: selvedgeJoins && split.strips.length > 1,
      edges,
      phase,
    })
    const inParts = parts.some((q) => q > 1)
    return {
      ...assembled,
      id: [
        nameCloth ? cloth.name : '',
        split.kind,
        split.detail,
        inParts ? `parts-${parts.join('-')}` : '',
        columns ? 'along' : 'across',
      ]
        .filter((word) => word !== '')
        .join('/'),
      words: `${wordsOf(order, split)}${inParts ? `, panels of ${parts.join(', ')} parts` : ''}, ${where}`,
      cloths: [cloth],
      run,
      shrinks: own,
      joins,
    }
  }

  function cellsOf(parts: number): readonly Cell[] {
    const total = runCut as Length
    if (parts === 1) return [{ role: '', words: '', run: total, joint: null }]
    // equal parts of what is needed, not of what was rounded up
    const least = Math.min(total, runNeed)
    const part = roundUpTo(shareOut(least + 2 * ask.seam.allowance * (parts - 1), parts), order.markTo)
    return Array.from({ length: parts }, (_, k) => ({
      role: `${k + 1}`,
      words: `part ${k + 1}`,
      run: part,
      joint: k === 0 ? null : ({ kind: 'join', allowance: ask.seam.allowance } as const),
    }))
  }
}

/** Cut size along the lanes: marked, or the whole length of a sheet whose both end hems are kept. Words when it cannot be. */
function runOf(
  order: Order,
  edges: FaceEdges,
  ends: readonly [Edge, Edge],
  table: ClothOnTable,
  need: number,
): Length | string {
  const kept = ends.filter((edge) => edges[edge].need.kind === 'kept-hem').length
  const marked = roundUpTo(length(need), order.markTo)
  if (table.length === null) return kept > 0 ? 'a bolt has no hem to keep' : marked
  const clear = clearLength(table) ?? ZERO
  if (kept === 0) return marked <= clear ? marked : `the cloth is ${show(order, length(marked - clear))} too short`
  const hems = hemDepth(table.edges.head) + hemDepth(table.edges.foot)
  if (kept === 1) return marked <= clear + hems ? marked : 'the cloth is too short'
  const off = Math.abs(table.length - need)
  return off * 10 <= need ? table.length : 'both hems are kept, so it would come out as long as the sheet'
}

/** Width to cut panels from: without side hems, except those that are kept as edges. */
function availableWidth(table: ClothOnTable, made: number): Length {
  const hems = [hemDepth(table.edges.left), hemDepth(table.edges.right)]
  if (made === 0) return clearWidth(table)
  return made === 1 ? length(table.usableWidth - Math.min(...hems)) : table.usableWidth
}

/** Nothing would show of the first or last of the joined panels: what lies beyond the finished edge and the seam take it all. */
export function usedUp(sizes: readonly number[], beyond: readonly number[], join: Length): boolean {
  const [first, last] = [sizes[0] ?? 0, sizes.at(-1) ?? 0]
  if (sizes.length === 1) return first <= (beyond[0] ?? 0) + (beyond[1] ?? 0)
  const between = sizes.slice(1, -1).some((size) => size <= 2 * join)
  return between || first <= (beyond[0] ?? 0) + join || last <= (beyond[1] ?? 0) + join
}

/** Why selvedges wanted at seams and edges cannot all be had; null when they can. */
function selvedgeWants(split: Split, available: Length, joins: boolean, outer: readonly boolean[]): string | null {
  const { strips } = split
  for (const [i, strip] of strips.entries()) {
    const first = i === 0 ? (outer[0] ?? false) : joins
    const last = i === strips.length - 1 ? (outer[1] ?? false) : joins
    if (first && last && strip.size < available) return 'a panel narrower than the cloth would need both selvedges'
  }
  return null
}

/** With a band of another cloth, both are cut for the larger loss. */
function waysWithBands(order: Order, ask: FaceAsk, tables: ReadonlyMap<string, ClothOnTable>): FaceWays {
  if (ask.shrinks !== undefined) return waysWithBand(order, ask, tables)
  const found = lossesInCommon(lossesOf(order, ask.spec)).map((shrinks) => {
    const some = waysWithBand(order, { ...ask, shrinks }, tables)
    return { ...some, ways: some.ways.filter((way) => sameShrinks(way.shrinks, shrinks)) }
  })
  return {
    ways: found.flatMap((some) => some.ways),
    refused: found.flatMap((some) => some.refused),
    capped: found.some((some) => some.capped),
  }
}

/** The face with a band: two faces, one below the other, joined by a seam across. */
function waysWithBand(order: Order, ask: FaceAsk, tables: ReadonlyMap<string, ClothOnTable>): FaceWays {
  const band = ask.spec.band as NonNullable<FaceSpec['band']>
  const atHead = band.at === 'head'
  const inner = plainEdge(ask.seam.allowance)
  const bare = { ...ask.spec, band: null }
  const strip = waysOfFace(
    order,
    {
      ...ask,
      name: `${ask.name}/band`,
      words: `${ask.words}, band`,
      finished: { width: ask.finished.width, length: band.depth },
      edges: { ...ask.edges, [atHead ? 'foot' : 'head']: inner },
      // a band is too shallow to be joined from parts
      spec: {
        ...bare,
        cloth: band.cloth.length > 0 ? band.cloth : ask.spec.cloth,
        crossJoins: 0,
        zipEdge: null,
      },
    },
    tables,
  )
  // the rest of the face comes to what the band, on its marking step, leaves of it
  const rests = new Map<Length, FaceWays>()
  const restOf = (rest: Length): FaceWays => {
    const known = rests.get(rest)
    if (known !== undefined) return known
    const found = waysOfFace(
      order,
      {
        ...ask,
        name: `${ask.name}/main`,
        edges: { ...ask.edges, [atHead ? 'head' : 'foot']: inner },
        spec: bare,
        lengthBeforeWash: rest,
      },
      tables,
    )
    rests.set(rest, found)
    return found
  }
  const outerEnd = ask.edges[band.at].beyond
  const ways = strip.ways.flatMap((s) => {
    const whole = beforeShrinking(ask.finished.length, (ask.shrinks ?? s.shrinks).length)
    const rest = whole - (s.length - outerEnd - ask.seam.allowance)
    return rest <= 0 ? [] : restOf(length(rest)).ways.map((m) => (atHead ? stacked(s, m) : stacked(m, s)))
  })
  const main = [...rests.values()]
  return {
    ways,
    refused: [...main.flatMap((rest) => rest.refused), ...strip.refused],
    capped: strip.capped || main.some((rest) => rest.capped),
  }

  function stacked(upper: FaceWay, lower: FaceWay): FaceWay {
    const { allowance } = ask.seam
    const shift = upper.length - 2 * allowance
    const joining = meet(upper.unhemmed.foot, lower.unhemmed.head)
    const side = (edge: 'left' | 'right'): readonly Stretch[] => [
      ...trimmed(upper.outer[edge], 0, upper.length - allowance),
      ...moved(trimmed(lower.outer[edge], allowance, Number.POSITIVE_INFINITY), shift),
    ]
    const [m, s] = atHead ? [lower, upper] : [upper, lower]
    return {
      id: `${m.id}/band/${s.id}`,
      words: `${m.words}; band: ${s.words}`,
      cloths: [...m.cloths, ...s.cloths],
      run: m.run,
      shrinks: mostShrinks(m.shrinks, s.shrinks),
      joins: m.joins + s.joins + 1,
      pieces: [...upper.pieces, ...lower.pieces],
      seams: [
        ...upper.seams,
        ...lower.seams,
        ...joining.map((pair): SeamLine => makeSeam(ask.seam, pair.a, pair.b, pair.length, 'join')),
      ],
      outer: { head: upper.outer.head, foot: lower.outer.foot, left: side('left'), right: side('right') },
      unhemmed: { head: upper.unhemmed.head, foot: lower.unhemmed.foot },
      width: length(Math.min(upper.width, lower.width)),
      length: length(shift + lower.length),
    }
  }
}

/** What of the stretches lies between two places of the whole edge. */
function trimmed(stretches: readonly Stretch[], low: number, high: number): readonly Stretch[] {
  return stretches.flatMap((s) => {
    const start = Math.max(s.at, low)
    const end = Math.min(s.at + s.to - s.from, high)
    if (end <= start) return []
    const from = s.from + (start - s.at)
    return [{ ...s, at: length(start), from: length(from), to: length(from + end - start) }]
  })
}

const partGroup = (strip: Strip): string =>
  strip.role.startsWith('width-') ? 'widths' : strip.role.includes('side') ? 'sides' : strip.role

function laneOf(strip: Strip, columns: boolean, cells: readonly Cell[]): Lane {
  const [first, last] = columns ? ['left', 'right'] : ['head', 'foot']
  const role = strip.role.replace(/^first-/, `${first}-`).replace(/^last-/, `${last}-`)
  return { role, words: role.replaceAll('-', ' '), size: strip.size, spans: strip.spans, cells }
}

const WORDS: Record<Split['kind'], string> = {
  'one-piece': 'one piece',
  'centre-and-sides': 'a centre and two equal sides',
  'centre-seam': 'two halves with a seam down the middle',
  'full-widths': 'full widths and the rest',
}

function wordsOf(order: Order, split: Split): string {
  if (split.kind === 'full-widths') {
    const k = split.strips.filter((strip) => strip.role.startsWith('width-')).length
    const rest =
      split.strips.length === k
        ? ''
        : split.detail.endsWith('one-side')
          ? ' and the rest at one side'
          : ' and the rest shared at both sides'
    return `${k} full width${k === 1 ? '' : 's'}${rest}`
  }
  const centre = split.strips.find((strip) => strip.role === 'centre')
  return centre !== undefined && !centre.spans
    ? `a centre of ${show(order, centre.size)} and two equal sides`
    : WORDS[split.kind]
}

/** The narrowest cloth as sold from which a panel of `usable` can be cut. */
function asSold(order: Order, table: ClothOnTable, usable: number): Length {
  const { cloth } = table
  const onTable = length(Math.ceil(usable) + table.width - clearWidth(table))
  return order.wash === 'before-cutting' ? beforeShrinking(onTable, cloth.shrinks.across) : onTable
}

function refusal(ask: FaceAsk, words: string, why: string, widthThatWouldDo: Length | null): RefusedWay {
  const face = ask.name === '' ? '' : `${ask.words.toLowerCase()}: `
  return { words: `${face}${words}`, why, widthThatWouldDo }
}

const show = (order: Order, l: Length): string => printLength(l, order.measureIn, { places: 1 })
