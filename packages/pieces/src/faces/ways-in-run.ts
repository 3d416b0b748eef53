import type { Length } from '@lengthwise/units'
import { beforeShrinking, length, NO_SHARE, roundUpTo } from '@lengthwise/units'
import type { RefusedWay } from '../answers.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { Run } from '../cut-size.ts'
import { shareOut, shrinksBy } from '../cut-size.ts'
import type { Edge, Order } from '../order.ts'
import type { Lack } from '../refusals.ts'
import { asSold, otherwise, tooNarrow, tooShort, widthAsSold } from '../refusals.ts'
import type { FaceAsk, FaceWay, FaceWays } from './face.ts'
import { refusal, show, WORDS, wordsOf } from './face-words.ts'
import type { Cell, Lane } from './lanes.ts'
import { assemble } from './lanes.ts'
import { availableWidth, lengthToCut, selvedgeWants, usedUp } from './limits.ts'
import type { Shrinks } from './shrinking.ts'
import { shrinkAlike } from './shrinking.ts'
import type { Split, Splits, Strip } from './split.ts'
import { narrowest, splitsOf } from './split.ts'
import { phaseOf } from './ties.ts'

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

/** Wider cloth is thought of for so many panels at most. */
const MOST_WIDTHS_TRIED = 4

const NO_SHRINKING = { width: NO_SHARE, length: NO_SHARE }

/** All ways with the length of the face lying one way on one cloth. */
export function waysInRun(order: Order, ask: FaceAsk, table: ClothOnTable, run: Run, nameCloth: boolean): FaceWays {
  const { spec, edges } = ask
  const { cloth } = table
  const columns = run === 'along'
  const own = ask.asCut ? NO_SHRINKING : shrinksBy(order, cloth, run)
  const shrinks = ask.shrinks ?? own
  const sides: readonly [Edge, Edge] = columns ? ['left', 'right'] : ['head', 'foot']
  const ends: readonly [Edge, Edge] = columns ? ['head', 'foot'] : ['left', 'right']
  const where = `${columns ? 'along' : 'across'} the cloth${nameCloth ? ` (${cloth.name})` : ''}`
  const refused: RefusedWay[] = []
  const refuse = (what: string, why: string, lack: Lack = otherwise(cloth.name)): void => {
    refused.push(refusal(ask, `${what}, ${where}`, why, lack))
  }
  const none = (): FaceWays => ({ ways: [], refused, capped: false })

  if (!shrinkAlike(own, shrinks)) {
    refuse('any way', 'it would shrink apart from what it is sewn to: wash before cutting')
    return none()
  }
  // edges that must be selvedges lie along the cloth
  if (ends.some((edge) => edges[edge].need.kind === 'selvedge')) {
    refuse('any way', 'an edge that must be a selvedge would lie across the cloth')
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
  const asCut = ask.asCut === true
  const toCut = lengthToCut(order, edges, ends, table, { need: runNeed, asked: runFinished + beyondOf(ends), asCut })
  if ('why' in toCut) {
    refuse('any way', toCut.why, toCut.lack)
    return none()
  }
  const { cut: runCut, room } = toCut
  const mayPart = ask.neverJoined === null && spec.joined !== 'one-piece'
  const mostParts = mayPart ? spec.crossJoins + 1 : 1
  // too short even for the shortest parts it may be joined from
  const over = room === null ? 0 : Math.max(...cellsOf(mostParts).map((cell) => cell.run)) - room
  if (over > 0) {
    refuse('any way', 'the cloth is too short', tooShort(order, table, (table.length ?? 0) + over))
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
  const splitsOn = (usable: Length): Splits =>
    splitsOf({ need, available: usable, maySpan, join, markTo: order.markTo, centreCut, spec })
  const found = splitsOn(available)
  let splits = found.splits
  // with both side edges made by the cloth one piece is as wide as the cloth, whatever the wash leaves of it: that does when
  // the cloth as sold is as wide as asked, and not a tenth wider
  const asked = length(sizeFinished + beyondOf(sides))
  const sold = asCut ? table.usableWidth : widthAsSold(table)
  const asCloth = made === 2 && sold >= asked && (table.usableWidth - need) * 10 <= need
  if (asCloth)
    splits = [{ kind: 'one-piece', detail: '', strips: [{ role: 'whole', size: table.usableWidth, spans: true }] }]
  else if (made === 2 && splits.some((split) => split.kind === 'one-piece')) {
    splits = []
    refuse('one piece', 'both edges are kept, so it would come out as wide as the cloth')
  }

  // a print meets at its match line, which lies inside a selvedge: there the seams must be
  const meetsAtSelvedges = match && (table.repeat > 0 || table.acrossRepeat > 0)
  const selvedgesAsked = spec.selvedgeToSelvedge || meetsAtSelvedges
  const selvedgeJoins = selvedgesAsked && table.selvedges.left && table.selvedges.right
  let wider: Lack | undefined
  // a width that would do for one piece is worth saying only once
  const fromEdgeToEdge = `from edge to edge of ${cloth.name} it comes out ${show(order, sold)} ${columns ? 'wide' : 'long'}, and ${show(order, asked)} is asked`
  for (const no of asCloth ? [] : found.refused)
    if (no.kind === 'one-piece' || ask.neverJoined === null)
      refuse(WORDS[no.kind], no.kind === 'one-piece' && made === 2 ? fromEdgeToEdge : no.why, ofWidth())
  const choices: Choice[] = []
  for (const split of splits) {
    const no = whyNot(split, available)
    if (no !== null) {
      refuse(WORDS[split.kind], no.why, no.isOfWidth ? ofWidth() : undefined)
      continue
    }
    const parted = partings(split)
    choices.push(...parted)
    if (parted.length > 0) continue
    if (room !== null && runCut > room)
      refuse(
        WORDS[split.kind],
        'the cloth is too short to make do with so few seams',
        tooShort(order, table, (table.length ?? 0) + runCut - room),
      )
    else refuse(WORDS[split.kind], 'a section would be used up by its hem and its seams')
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

  /** Why a split of cloth with `usable` to cut panels from will not do; null when it will. */
  function whyNot(split: Split, usable: Length): { readonly why: string; readonly isOfWidth: boolean } | null {
    const lanesJoined = split.strips.length - 1
    const ofWidth = (why: string) => ({ why, isOfWidth: true })
    const ofOther = (why: string) => ({ why, isOfWidth: false })
    if (lanesJoined > 0 && ask.neverJoined !== null) return ofWidth(ask.neverJoined)
    if (lanesJoined > 0 && spec.joined === 'one-piece') return ofWidth('the face is to be of one piece')
    if (lanesJoined > 0 && selvedgesAsked && cloth.unusedSelvedge === 0 && !selvedgeJoins)
      return ofWidth(
        meetsAtSelvedges
          ? 'its print meets at the selvedges, and it does not have both'
          : 'this cloth has no two selvedges to join',
      )
    const outer = made === 0 ? [false, false] : sides.map((e) => edges[e].need.kind === 'selvedge')
    const wants = selvedgeWants(split, usable, selvedgeJoins, outer)
    if (wants !== null) return ofWidth(wants)
    const sizes = split.strips.map((strip) => strip.size)
    const beyond = sides.map((edge) => edges[edge].beyond)
    if (usedUp(sizes, beyond, join)) return ofOther('a panel would be used up by its hem and its seams')
    if (spec.mostSeams !== null && lanesJoined > spec.mostSeams)
      return ofWidth(`it takes ${lanesJoined} seams, and at most ${spec.mostSeams} are allowed`)
    return null
  }

  /** The narrowest of the wider cloths from which the face can be made, each tried: one that n panels just reach across. */
  function ofWidth(): Lack {
    wider ??= widerCloth()
    return wider
  }

  function widerCloth(): Lack {
    if (made === 2) return tooNarrow(table, asCut ? asSold(order, asked, cloth.shrinks.across) : asked)
    const step = Math.max(1, order.markTo)
    const tried = Array.from({ length: MOST_WIDTHS_TRIED }, (_, n) => narrowest({ need, join }, n + 1))
      .flatMap((width) => [width, roundUpTo(width, order.markTo), length(roundUpTo(width, order.markTo) + step)])
      .filter((width) => width > available)
      .sort((a, b) => a - b)
    const does = (usable: Length): boolean =>
      splitsOn(usable).splits.some((split) => whyNot(split, usable) === null && partings(split).length > 0)
    const enough = tried.find(does)
    if (enough === undefined) return otherwise(cloth.name)
    return tooNarrow(table, asSold(order, table.width - available + enough, cloth.shrinks.across))
  }

  /** The split with every choice of parts per panel; the two sides of a centre are parted alike. */
  function partings(split: Split): Choice[] {
    const groups = [...new Set(split.strips.map(partGroup))]
    let choices: ReadonlyMap<string, number>[] = [new Map()]
    for (const group of groups)
      choices = choices.flatMap((choice) =>
        Array.from({ length: mostParts }, (_, q) => new Map(choice).set(group, q + 1)),
      )
    return choices.flatMap((choice) => {
      const parts = split.strips.map((strip) => choice.get(partGroup(strip)) ?? 1)
      const joins = split.strips.length - 1 + parts.reduce((total, q) => total + q - 1, 0)
      if (spec.mostSeams !== null && joins > spec.mostSeams) return []
      const ofEnds = ends.map((edge) => edges[edge].beyond)
      const nothingLeft = (q: number): boolean =>
        usedUp(
          cellsOf(q).map((cell) => cell.run),
          ofEnds,
          ask.seam.allowance,
        )
      const tooLong = (q: number): boolean => room !== null && cellsOf(q).some((cell) => cell.run > room)
      if (parts.some((q) => tooLong(q) || nothingLeft(q))) return []
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
      middle: beforeMiddle + (runCut - beyondOf(ends)) / 2,
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
      words: `${wordsOf(order, split)}${inParts ? `, panels joined from ${parts.join(', ')} sections` : ''}, ${where}`,
      cloths: [cloth],
      run,
      shrinks: own,
      joins,
    }
  }

  function cellsOf(parts: number): readonly Cell[] {
    if (parts === 1) return [{ role: '', words: '', run: runCut, joint: null }]
    // equal parts of what is needed, not of what was rounded up
    const least = Math.min(runCut, runNeed)
    const part = roundUpTo(shareOut(least + 2 * ask.seam.allowance * (parts - 1), parts), order.markTo)
    return Array.from({ length: parts }, (_, k) => ({
      role: `${k + 1}`,
      words: `section ${k + 1}`,
      run: part,
      joint: k === 0 ? null : ({ kind: 'join', allowance: ask.seam.allowance } as const),
    }))
  }
}

const partGroup = (strip: Strip): string =>
  strip.role.startsWith('width-') ? 'widths' : strip.role.includes('side') ? 'sides' : strip.role

function laneOf(strip: Strip, columns: boolean, cells: readonly Cell[]): Lane {
  const [first, last] = columns ? ['left', 'right'] : ['head', 'foot']
  const role = strip.role.replace(/^first-/, `${first}-`).replace(/^last-/, `${last}-`)
  return { role, words: role.replaceAll('-', ' '), size: strip.size, spans: strip.spans, cells }
}
