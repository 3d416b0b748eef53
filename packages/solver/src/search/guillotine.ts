/**
 * Shortest strip for many pieces under guillotine divisions, at any time with the best so far. Trial lengths between the bound and
 * the best are filled by beam search, then regrown, and windows solved exactly, until every piece has room or the share of the effort
 * is used up. Where pieces
 * may lie anywhere, each trial starts anew, and two failures double the beam (iterative widening, as in Fontan and Libralesso);
 * elsewhere most trials start from the best found, cut off. Nothing is proved here: the caller compares with its bound.
 */
import type { Control, Rect } from '../model.ts'
import { END } from '../model.ts'
import type { Problem } from '../problem.ts'
import type { Filled, FillOptions, Meter } from './fill.ts'
import { fill, meterOf } from './fill.ts'
import type { Random } from './random.ts'
import { randomFrom } from './random.ts'
import type { Growth } from './regrow.ts'
import { regrow } from './regrow.ts'
import { laidSection, sectionPlan } from './sections.ts'
import type { Part } from './tree.ts'
import { closedUp, piecesIn, rect, splitOf, tightLength } from './tree.ts'
import type { Shape, Trial } from './trial.ts'
import { isPlain, seat, trialOf } from './trial.ts'
import { resolved } from './windows.ts'

export interface Found {
  readonly length: number
  readonly part: Part
  /** the trial it was made for: its phases hold in it */
  readonly trial: Trial
}

export function growStrip(
  problem: Problem,
  control: Control,
  bound: number,
  longest: number,
): { found: Found | null; steps: number } {
  const random = randomFrom(Number.isFinite(longest) ? longest : 0)
  const pieces = problem.kinds.reduce((sum, kind) => sum + kind.count, 0)
  const meter = meterOf(control)
  const laid = isBatch(problem, pieces) ? inSections(trialOf(problem, bound, random), meter, random) : null
  if (laid !== null && laid.length <= longest) control.onProgress?.(laid.length, bound)
  const rest: Control = { ...control, effort: meter.steps }
  const { found, steps } = growFrom(problem, rest, bound, longest, random, laid)
  return {
    found: found !== null && found.length <= longest ? found : null,
    steps: control.effort - meter.steps + steps,
  }
}

/** Trials one after another, from `start` where there is one. */
function growFrom(
  problem: Problem,
  control: Control,
  bound: number,
  longest: number,
  random: Random,
  start: Found | null,
): { found: Found | null; steps: number } {
  const meter = meterOf(control)
  const whole = needsWhole(problem) ? problem.length : null
  const pieces = problem.kinds.reduce((sum, kind) => sum + kind.count, 0)
  // beam searches find short layouts of pieces that may lie anywhere more often than cutting off the one found does
  const anew = start === null && isPlain(problem)
  let beam = Math.max(8, Math.min(32, Math.floor(control.effort / (10 * pieces * pieces))))
  let failed = 0
  let noise = 0
  let patience = Math.min((anew ? 1_500 : 12_000) * pieces, Math.ceil(control.effort / 12))
  let found = start
  for (let attempt = 0; meter.steps > 0 && !meter.stop(); attempt++) {
    const first = found === null
    const upper: number = found === null ? longest : Math.min(longest, found.length - 1)
    if (upper < bound) break
    const further = anew ? inSteps(bound, upper, first, failed) : near(bound, upper, first, attempt)
    const length = whole ?? Math.min(upper, further)
    const before = meter.steps
    const guide = anew
      ? { beam, greed: [0.1, 0.07][failed % 2]!, noise }
      : { beam: 24 << random.below(2), greed: [0.1, 0.2, 0.2, 0.3][random.below(4)]! }
    const begun =
      found === null || anew || random.below(3) === 0
        ? begunAnew(problem, length, guide, meter, random)
        : begunFrom(found, length, random)
    const cost = before - meter.steps
    const hopeless = anew && !first && begun.growth.outArea * 16 > problem.width * length
    const limits = {
      patience: anew ? Math.max(cost, patience) : patience,
      tries: hopeless ? 0 : anew && !first ? 1 : 9,
    }
    const tried = attemptAt(problem, begun, found, limits, meter, random)
    if (tried !== null && (found === null || tried.length < found.length)) {
      found = tried
      if (found.length <= longest) control.onProgress?.(found.length, bound)
      if (whole !== null && found.length <= longest) break
      continue
    }
    if (!anew) patience = Math.ceil(patience * 1.2)
    failed++
    // after two failures wider, as long as that leaves steps for more; else with other guides
    if (failed % 2 === 0 && 8 * cost < meter.steps && beam < WIDEST) beam *= 2
    else if (failed % 2 === 0) noise = 40
  }
  return { found, steps: control.effort - meter.steps }
}

/** Beyond this the nodes of one level take more memory than they are worth. */
const WIDEST = 2048

/** While nothing is found, a length that is easily met; then, as `turn` rises, between the best and the bound, in steps down. */
function inSteps(bound: number, upper: number, first: boolean, turn: number): number {
  if (first) return bound + Math.floor(bound / 24)
  return Math.max(near(bound, upper, true, turn), bound + Math.floor(((upper - bound) * (3 - (turn % 3))) / 4))
}

/** Close to the bound; with a layout at hand also halfway to it, and just short of it. */
function near(bound: number, upper: number, first: boolean, turn: number): number {
  const least = bound + Math.max(Math.min(1, turn), Math.floor(bound / 128))
  return first ? least : Math.max(least, bound + Math.floor(((upper - bound) * (turn % 3)) / 2))
}

interface Begun {
  readonly trial: Trial
  readonly growth: Growth
}

/** The field filled by a beam search. */
function begunAnew(
  problem: Problem,
  length: number,
  guide: Pick<FillOptions, 'beam' | 'greed' | 'noise'>,
  meter: Meter,
  random: Random,
): Begun {
  const trial = trialOf(problem, length, random)
  const area = trial.areas.reduce((sum, each, kind) => sum + each * trial.counts[kind]!, 0)
  // beyond this much waste more would be left out than a regrowing brings in
  const budget = trial.plain ? 3 * (trial.width * length - area) + area / 40 : Number.POSITIVE_INFINITY
  const room = rect(0, 0, trial.width, length)
  const { part } = fill(trial, room, trial.counts, { ...guide, budget, meter, random })
  return { trial, growth: growthOf(trial, part) }
}

/** The layout found, its rows in other orders, cut off at a shorter length: of several such, the fullest. */
function begunFrom(found: Found, length: number, random: Random): Begun {
  const trial = { ...found.trial, length }
  let best = growthOf(trial, cropped(found.part, length))
  for (let tries = 0; trial.plain && tries < 24; tries++) {
    const other = closedUp(shuffled(found.part, random), { x: 0, y: 0, length: found.part.rect.length })
    const growth = growthOf(trial, cropped(other, length))
    // the order at hand has been tried from before
    if (tries === 0 || growth.outArea < best.outArea) best = growth
  }
  return { trial, growth: best }
}

/** Many pieces of few kinds, each wanted several times over, that may lie anywhere. */
function isBatch(problem: Problem, pieces: number): boolean {
  return pieces >= 40 && problem.kinds.length <= 40 && pieces >= 4 * problem.kinds.length && isPlain(problem)
}

/**
 * Whole sections of the plan, rounded down, and the pieces that leaves over by search. Each further try gives the search a few more
 * sections' pieces to work with.
 */
function inSections(trial: Trial, meter: Meter, random: Random): Found | null {
  const plan = sectionPlan(trial, meter)
  if (plan.length === 0) return null
  let best: Found | null = null
  for (let spare = 0; spare < 4 && meter.steps > 0 && !meter.stop(); spare++) {
    const left = trial.counts.slice()
    const parts: Part[] = []
    let y = 0
    const times = plan.map((each) => Math.floor(each.times + 1e-6))
    for (let i = 0; i < spare; i++) {
      const at = random.below(times.length)
      times[at] = Math.max(0, times[at]! - 1)
    }
    for (const [index, { section }] of plan.entries()) {
      for (let i = 0; i < times[index]!; i++) {
        parts.push(laidSection(trial, section, y, left))
        y += section.length
      }
    }
    const rest = restLaid(trial, left, meter, random)
    if (rest === null) continue
    parts.push(rest.part)
    const whole = splitOf(rect(0, 0, trial.width, y + rest.length), true, parts)
    const found = completed({ ...trial, length: y + rest.length }, growthOf(trial, whole), meter, random)
    if (found !== null && (best === null || found.length < best.length)) best = found
  }
  return best
}

/** The shortest layout found for the pieces left, by a tenth of the steps. */
function restLaid(trial: Trial, left: readonly number[], meter: Meter, random: Random): Found | null {
  const area = left.reduce((sum, count, kind) => sum + count * trial.areas[kind]!, 0)
  const bound = Math.ceil(area / trial.width)
  if (area === 0) return { length: 0, part: { kind: 'spare', rect: rect(0, 0, trial.width, 0) }, trial }
  const kinds = trial.problem.kinds.map((kind, index) => ({ ...kind, count: left[index]! }))
  const effort = Math.floor(meter.steps / 10)
  const { found, steps } = growFrom(
    { ...trial.problem, kinds },
    { effort, stop: meter.stop },
    bound,
    Number.POSITIVE_INFINITY,
    random,
    null,
  )
  meter.steps -= steps
  return found
}

/** Grows a start to the trial length, and to up to `tries` − 1 longer ones while that brings in what is out. Null: not complete. */
function attemptAt(
  problem: Problem,
  begun: Begun,
  found: Found | null,
  { patience, tries }: { readonly patience: number; readonly tries: number },
  meter: Meter,
  random: Random,
): Found | null {
  let { trial, growth } = begun
  let best: Found | null = null
  for (let extended = 0; extended < tries; extended++) {
    // the first length has the most patience: the longer ones only let in what is still out
    growth = grownOn(trial, growth, extended === 0 ? patience : Math.ceil(patience / 4), meter, random)
    const complete = completed(trial, growth, meter, random)
    if (complete !== null && (best === null || complete.length < best.length)) best = complete
    if (growth.outArea === 0 || problem.length !== null || meter.steps <= 0 || meter.stop()) break
    const longer = trial.length + Math.ceil((growth.outArea * (2 + extended)) / (2 * trial.width))
    if (best !== null && longer >= best.length) break
    if (found !== null && longer >= found.length) break
    const part = splitOf(rect(0, 0, trial.width, longer), true, [
      growth.part,
      { kind: 'spare', rect: rect(0, trial.length, trial.width, longer - trial.length) },
    ])
    trial = { ...trial, length: longer }
    growth = growthOf(trial, part)
  }
  return best
}

/** Regrown; unlike pieces that may lie anywhere then by turns with windows solved exactly, which gather the gaps. */
function grownOn(trial: Trial, start: Growth, patience: number, meter: Meter, random: Random): Growth {
  const pieces = trial.counts.reduce((sum, count) => sum + count, 0)
  if (!trial.plain || 2 * trial.counts.length < pieces) return regrow(trial, start, { meter, random, patience })
  let growth = regrow(trial, start, { meter, random, patience: Math.ceil(patience / 2) })
  for (let turn = 0; turn < 3 && growth.outArea > 0 && meter.steps > 0 && !meter.stop(); turn++) {
    growth = resolved(trial, growth, Math.ceil(patience / 12), meter, random)
    growth = regrow(trial, growth, { meter, random, patience: Math.ceil(patience / 6) })
  }
  return growth
}

/** A piece at the end of a finite field, or a zone there, makes the trial length the field's own. */
function needsWhole({ length, zones, kinds }: Problem): boolean {
  if (length === null) return false
  return zones.end > 0 || kinds.some(({ postures }) => postures.some(({ flush }) => (flush & END) !== 0))
}

/** The rows of a layout in another order, at every depth. */
function shuffled(part: Part, random: Random): Part {
  if (part.kind !== 'split') return part
  const parts = part.parts.map((each) => shuffled(each, random))
  for (let i = parts.length - 1; part.rows && i > 0; i--) {
    const j = random.below(i + 1)
    ;[parts[i], parts[j]] = [parts[j]!, parts[i]!]
  }
  return splitOf(part.rect, part.rows, parts)
}

/** The layout cut off at `end`: pieces that reach beyond it are taken out. */
function cropped(part: Part, end: number): Part {
  const { x, y, width, length } = part.rect
  if (y + length <= end) return part
  const whole = rect(x, y, width, Math.max(0, end - y))
  if (part.kind !== 'split' || end <= y) return { kind: 'spare', rect: whole }
  const parts = part.parts.map((each) => cropped(each, end))
  return splitOf(whole, part.rows, parts)
}

function growthOf(trial: Trial, part: Part): Growth {
  const out = trial.counts.slice()
  for (const piece of piecesIn(part)) out[piece.of] = out[piece.of]! - 1
  return { part, out, outArea: out.reduce((sum, count, kind) => sum + count * trial.areas[kind]!, 0) }
}

/** The layout with the pieces that found no room in rows behind it; null where the field ends too early for them. */
function completed(trial: Trial, growth: Growth, meter: Meter, random: Random): Found | null {
  let { part } = growth
  let whole = trial
  if (growth.outArea > 0) {
    const most = roomFor(trial, growth.out)
    const length = trial.problem.length === null ? most : Math.min(most, trial.problem.length - trial.length)
    if (length <= 0) return null
    whole = { ...trial, length: trial.length + length }
    const filling = filledFrom(whole, rect(0, trial.length, trial.width, length), growth.out, 30, meter, random)
    const behind = filling.area < growth.outArea ? oneByOne(whole, trial.length, growth.out) : filling.part
    if (behind === null) return null
    part = splitOf(rect(0, 0, trial.width, whole.length), true, [part, behind])
  }
  if (!trial.plain) {
    const end = piecesIn(part).reduce((farthest, { rect: { y, length } }) => Math.max(farthest, y + length), 0)
    return { length: end, part, trial: whole }
  }
  const length = tightLength(part)
  return { length, part: closedUp(part, { x: 0, y: 0, length }), trial: whole }
}

/** Each piece in a row of its own, from `from` to the end of the trial; null where one fits nowhere. */
function oneByOne(trial: Trial, from: number, out: readonly number[]): Part | null {
  const rows: Part[] = []
  let start = from
  const shapesOf: Shape[][] = out.map(() => [])
  for (const shape of trial.shapes) shapesOf[shape.kind]!.push(shape)
  for (const [kind, count] of out.entries()) {
    const shapes = shapesOf[kind]!
    for (let i = 0; i < count; i++) {
      const room = rect(0, start, trial.width, trial.length - start)
      const shape = shapes.find((each) => seat(trial, room, each) !== null)
      if (shape === undefined) return null
      const { x, y } = seat(trial, room, shape)!
      const { width, length } = shape
      rows.push({ kind: 'spare', rect: rect(0, start, trial.width, y - start) })
      rows.push(
        splitOf(rect(0, y, trial.width, length), false, [
          { kind: 'spare', rect: rect(0, y, x, length) },
          { kind: 'piece', rect: rect(x, y, width, length), of: kind, posture: shape.posture },
          { kind: 'spare', rect: rect(x + width, y, trial.width - x - width, length) },
        ]),
      )
      start = y + length
    }
  }
  rows.push({ kind: 'spare', rect: rect(0, start, trial.width, trial.length - start) })
  return splitOf(rect(0, from, trial.width, trial.length - from), true, rows)
}

/** A length that surely takes the pieces one behind another, with what zones, phases and flaws may cost each. */
function roomFor(trial: Trial, out: readonly number[]): number {
  const { kinds, zones, flaws } = trial.problem
  let length = zones.start
  for (const flaw of flaws) length += flaw.length
  for (const [kind, count] of out.entries()) {
    const { postures, tie } = kinds[kind]!
    length +=
      count * (Math.max(...postures.map((posture) => posture.length)) + (tie?.axis === 'along' ? tie.repeat : 0))
  }
  return length
}

function filledFrom(
  trial: Trial,
  room: Rect,
  available: readonly number[],
  beam: number,
  meter: Meter,
  random: Random,
): Filled {
  const budget = Number.POSITIVE_INFINITY
  return fill(trial, room, available, { beam, budget, greed: [0.1, 0.2, 0.2, 0.3][random.below(4)]!, meter, random })
}
