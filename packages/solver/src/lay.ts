import { repriced } from './bounds/bars.ts'
import { Bounds } from './bounds/bounds.ts'
import { roundUpLength, simpleBound } from './bounds/index.ts'
import type { Allowance } from './bounds/values.ts'
import { aroundFlaws, exchanged, variantsOf } from './exact/around-flaws.ts'
import { spotsOf } from './exact/blocks.ts'
import type { Finished } from './exact/fronts.ts'
import { fronts } from './exact/fronts.ts'
import { multisets } from './exact/multisets.ts'
import { Phases } from './exact/phases.ts'
import type { Target } from './exact/shortest.ts'
import { shortest } from './exact/shortest.ts'
import type { Layout } from './layout.ts'
import { answerOf, layoutFrom, layoutOf } from './layout.ts'
import type { Answer, Certificate, Control, Placement, Request } from './model.ts'
import type { Problem, Spot } from './problem.ts'
import { normalise, placementsOf, shortAcross, shortAlong } from './problem.ts'
import { searchFree, searchGuillotine } from './search/index.ts'
import { quickStart } from './starts/index.ts'
import { tidiestLayout } from './tidiest.ts'
import { tidier, tidiestTree, tidinessOf } from './tidy.ts'

/**
 * The shortest layout of a request that effort allows, with a bound that no layout goes below.
 *
 * One step is one candidate block looked at by an exact method, or what costs as much in the searches; a common machine does about
 * five million a second. Throws RangeError when the request is no request (numbers that are not whole, sizes that are not positive).
 */
export function lay(request: Request, control: Control): Answer {
  validate(request)
  const problem = normalise(request)
  if (!problem) return cannot(request)
  return new Run(problem, control).answer()
}

/** What is known of a request before it is laid, from the same demands on fields of other widths. */
export interface Known {
  /** an answer for a wider field: nothing is shorter here than its bound */
  readonly wider: Answer | null
  /** a layout that fits this field too */
  readonly placements: readonly Placement[] | null
}

/** As `lay`, with something known beforehand. */
export function layKnowing(request: Request, control: Control, known: Known): Answer {
  validate(request)
  const problem = normalise(request)
  if (!problem) return cannot(request)
  return new Run(problem, control).answer(known)
}

/**
 * Is there a layout of `request` no longer than `length`? Null when effort ended before the answer was sure. Cheaper than laying:
 * the first layout that short is enough, and one limit is searched instead of rising ones.
 */
export function laysWithin(request: Request, length: number, control: Control): boolean | null {
  validate(request)
  const within = Math.min(length, request.field.length ?? length)
  const problem = normalise(request)
  if (!problem) return false
  const start = quickStart(problem)
  const found = start && layoutOf(problem, start)
  if (found && found.length <= within) return true
  const bounds = new Bounds(problem, allowanceFor(control))
  const limit = Math.floor(within / problem.unitAlong)
  if (bounds.best(limit + 1).bound > limit) return false
  const certain =
    problem.cuts === 'guillotine' && problem.flaws.length === 0 && (!problem.tied || Phases.of(problem, true))
  if (!certain || multisets(problem) > MOST_MULTISETS) {
    const answer = lay(request, control)
    return answer.length !== null && answer.length <= within ? true : answer.bound > within ? false : null
  }
  const weights = bounds.weightsFor(limit)
  if (weights === null) return false
  const { effort, stop } = control
  const trials = [{ width: problem.width, length: limit, weights }]
  const search = fronts(problem, { trials, effort, stop })
  return search.finished ? search.best[0]!.some((b) => b.length <= limit) : null
}

/**
 * A bound on the length of any layout, with what shows it. Throws when a demand cannot be placed at all.
 * What it costs beyond the usual is added to `paid.steps`.
 */
export function bound(
  request: Request,
  paid: { steps: number; readonly stop?: () => boolean } = { steps: 0 },
): Certificate {
  validate(request)
  const problem = normalise(request)
  if (!problem) throw new RangeError('bound: a demand cannot be placed at all')
  const allowance = allowanceFor({ effort: 0, ...paid })
  const certificate = new Bounds(problem, allowance).best(Number.POSITIVE_INFINITY)
  paid.steps += unusual(allowance)
  return { ...certificate, bound: certificate.bound * problem.unitAlong }
}

/** Steps that the bounds of one run may take, however little effort there is, and however much. */
const LEAST_BOUND_STEPS = 200_000
const MOST_BOUND_STEPS = 2_000_000

/** So many of them are part of what any run costs and not counted; the others are told with the answer. */
const FREE_BOUND_STEPS = 100_000

const unusual = ({ steps }: Allowance): number => Math.max(0, steps - FREE_BOUND_STEPS)

const allowanceFor = ({ effort, stop }: Pick<Control, 'effort' | 'stop'>): Allowance => ({
  most: Math.max(LEAST_BOUND_STEPS, Math.min(effort, MOST_BOUND_STEPS)),
  steps: 0,
  stop,
})

/** Most multisets that numbers can tell apart. */
const MOST_MULTISETS = 2 ** 50

/** With no more multisets than this the fronts end in about a second, whatever the limits. */
const SURE_MULTISETS = 10_000

/** With more than this a search finds short layouts much sooner than the exact methods. */
const SOON_MULTISETS = 2 ** 20

/** With more than this the exact methods end only where hardly anything is wasted. */
const HOPEFUL_MULTISETS = 2 ** 24

/** With more than this they end where nothing is wasted, or not at all. */
const HOPELESS_MULTISETS = 2 ** 36

/** Layouts of more pieces are taken as they come; of n pieces, this over n² exchanges of halves are compared. */
const MOST_TIDIED = 24
const MOST_TIDYING = 800
/** Of few pieces the tidiest of all layouts is looked for, in so many steps: milliseconds. */
const FEW_PIECES = 8
const TIDIEST_STEPS = 50_000

class Run {
  private readonly problem: Problem
  private readonly control: Control
  private best: Layout | null = null
  private certificate: Certificate = { by: 'area', bound: 0 }
  /** the block that the best layout comes from, when the exact methods found it on cloth without flaws */
  private block: Finished | null = null
  private readonly bounds: Bounds
  private steps = 0
  private stopped = false
  private readonly allowance: Allowance

  constructor(problem: Problem, control: Control) {
    this.problem = problem
    const stop = control.stop
    this.control = stop
      ? {
          ...control,
          stop: () => {
            this.stopped ||= stop()
            return this.stopped
          },
        }
      : control
    this.allowance = allowanceFor(this.control)
    this.bounds = new Bounds(problem, this.allowance)
  }

  answer(known: Known | null = null): Answer {
    const { problem, control } = this
    const longest = problem.request.field.length
    this.best = known?.placements ? layoutFrom(problem.request, known.placements) : null
    if (known?.wider) this.raiseBy(known.wider.certificate)
    if (!this.proved()) {
      this.offer(quickStart(problem))
      const best = this.bounds.best(this.upper() ?? Number.POSITIVE_INFINITY)
      this.raise({ ...best, bound: best.bound * problem.unitAlong })
    }
    this.report()
    if (longest !== null && this.certificate.bound > longest)
      return answerOf('infeasible', null, this.certificate, this.all())
    const sets = multisets(problem)
    // a little search first: a shorter layout spares the exact methods most of their work, and few pieces under free cuts
    // are settled by the search itself, where guillotine divisions would prove nothing
    if (!this.proved() && (sets > SOON_MULTISETS || problem.cuts === 'free')) this.search(control.effort / 8)
    if (!this.proved() && (!problem.tied || Phases.of(problem, true)) && sets <= MOST_MULTISETS) {
      this.exact(this.exactShare(sets))
    }
    if (this.best === null && longest !== null && this.certificate.bound > longest)
      return answerOf('infeasible', null, this.certificate, this.all())
    if (!this.proved()) this.search(control.effort)
    this.report()
    this.tidy()
    const status = this.proved() ? 'proved' : this.stopped ? 'stopped' : 'best-found'
    return answerOf(status, this.best, this.certificate, this.all())
  }

  /** Steps taken in all: bounds have an allowance of their own, beside the effort for searches. */
  private all(): number {
    return this.steps + unusual(this.allowance)
  }

  /** Steps up to which the exact methods may go on: all where they surely end, few where they hardly will. */
  private exactShare(sets: number): number {
    const { effort } = this.control
    if (sets <= SURE_MULTISETS) return effort
    // a shortest layout in guillotine divisions proves nothing for free cuts
    if (this.problem.cuts === 'free') return 0
    return this.steps + (effort - this.steps) / (sets <= HOPEFUL_MULTISETS ? 2 : sets <= HOPELESS_MULTISETS ? 20 : 400)
  }

  /** Exact methods; without flaws, as blocks float. With flaws their length is a bound, met only when a layout avoids them. */
  private exact(until: number): void {
    const { problem, control } = this
    const target: Target = {
      width: problem.width,
      lower: this.certificate.bound / problem.unitAlong,
      upper: this.upper(),
      weightsFor: (reach) => this.bounds.weightsFor(reach),
      ...(problem.cuts === 'guillotine' && {
        improve: (effort: number) => {
          this.search(this.steps + effort)
          return this.upper()
        },
      }),
      onBound: (bound, states) => {
        this.exhausted(bound, states)
        this.report()
      },
    }
    const effort = Math.max(0, Math.floor(until) - this.steps)
    const { found: answers, steps } = shortest(problem, { targets: [target], effort, stop: control.stop })
    const found = answers[0]!
    this.steps += steps
    this.exhausted(found.bound, steps)
    if (found.best && problem.flaws.length === 0) {
      this.offer(spotsOf(problem, found.best.tree, found.best.start, found.best.moved))
      if (this.upper() === found.best.length) this.block = found.best
    } else if (problem.flaws.length > 0) {
      const { length, zones } = problem
      for (const block of found.others ?? [])
        this.offer(aroundFlaws(problem, block, length === null ? (this.upper() ?? block.length) : length - zones.end))
    }
  }

  /** Nothing shorter can be divided edge to edge; with other cuts that proves nothing. */
  private exhausted(bound: number, states: number): void {
    if (this.problem.cuts === 'guillotine')
      this.raise({ by: 'exhausted', bound: bound * this.problem.unitAlong, states: Math.max(1, states) })
  }

  /** The searches, until so many steps are used in all, look for something shorter than the best so far. */
  private search(until: number): void {
    const { problem, control, best } = this
    const bound = this.certificate.bound / problem.unitAlong
    const longest = best === null ? (problem.length ?? Number.POSITIVE_INFINITY) : this.upper()! - 1
    const effort = Math.floor(until) - this.steps
    if (longest < bound || effort <= 0 || control.stop?.()) return
    const onProgress = (length: number | null): void => {
      control.onProgress?.(length && length * problem.unitAlong, this.certificate.bound)
    }
    const run = problem.cuts === 'free' ? searchFree : searchGuillotine
    const { spots, steps, finished } = run(problem, { ...control, effort, onProgress }, bound, longest)
    this.steps += steps
    this.offer(spots)
    if (finished && this.best !== null)
      this.raise({ by: 'exhausted', bound: this.best.length, states: Math.max(1, steps) })
  }

  /** Among layouts of this length, the one with the largest left-over, then the fewest cuts and changes of direction. */
  private tidy(): void {
    const { problem, best } = this
    if (!best?.tree || this.control.tidy === false || best.placements.length > MOST_TIDIED) return
    const { field } = problem.request
    const rect = { x: 0, y: 0, width: field.width, length: field.length ?? best.length }
    let tidiest: Layout = best
    const most = Math.ceil(MOST_TIDYING / best.placements.length ** 2)
    const variants = this.block ? Math.min(most, variantsOf(this.block.tree, problem.tied)) : 0
    for (let variant = -1; variant < variants; variant++) {
      if (this.control.stop?.()) break
      const spots =
        variant < 0
          ? null
          : spotsOf(problem, exchanged(this.block!.tree, variant, problem.tied), this.block!.start, this.block!.moved)
      const placements = spots ? placementsOf(problem, spots) : best.placements
      const tree = tidiestTree(rect, placements)
      if (tree && tidier(tidinessOf(tree), tidinessOf(tidiest.tree!))) tidiest = { ...best, placements, tree }
    }
    this.best = this.tidiestOfAll(tidiest)
  }

  /** Where pieces are few: the tidiest of all layouts of this length, whatever blocks they are made of; a shorter one may be among them. */
  private tidiestOfAll(known: Layout): Layout {
    const { problem } = this
    if (known.placements.length > FEW_PIECES || this.control.stop?.()) return known
    const { largest, cuts, changes } = tidinessOf(known.tree!)
    const atHand = { largest: largest / (problem.unitAcross * problem.unitAlong), cuts, changes }
    const task = { length: known.length / problem.unitAlong, atHand, steps: TIDIEST_STEPS }
    const found = tidiestLayout(problem, task)
    if (!found) return known
    const placements = placementsOf(problem, found.spots)
    const shorter = layoutFrom(problem.request, placements)
    return shorter && shorter.length < known.length ? shorter : { length: known.length, placements, tree: found.tree }
  }

  private proved(): boolean {
    return this.best !== null && this.best.length === this.certificate.bound
  }

  private upper(): number | null {
    return this.best && this.best.length / this.problem.unitAlong
  }

  private offer(spots: readonly Spot[] | null): void {
    const layout = spots && layoutOf(this.problem, spots)
    if (layout && (!this.best || layout.length < this.best.length)) {
      this.best = layout
      this.block = null
    }
  }

  /** What bounds a wider field bounds this one. */
  private raiseBy(wider: Certificate): void {
    const { problem } = this
    if (wider.by === 'exhausted') this.raise(wider)
    const bars = wider.by === 'bars' ? repriced(problem, wider) : null
    if (bars) this.raise({ ...bars, bound: roundUpLength(problem, bars.bound) * problem.unitAlong })
    const simple = simpleBound(problem)
    this.raise({ ...simple, bound: roundUpLength(problem, simple.bound) * problem.unitAlong })
  }

  private raise(certificate: Certificate): void {
    if (certificate.bound > this.certificate.bound) this.certificate = certificate
  }

  private report(): void {
    this.control.onProgress?.(this.best?.length ?? null, this.certificate.bound)
  }
}

/** Demands that have no posture the field can take, with the size they lack. */
function cannot(request: Request): Answer {
  const missing: Answer['missing'][number][] = []
  for (const [demand, d] of request.demands.entries()) {
    if (d.count === 0 || normalise({ ...request, demands: [d] })) continue
    const lacks = d.postures.map((p) => ({
      across: shortAcross(request.field, p),
      along: shortAlong(request.field, p),
    }))
    const across = lacks.filter((l) => l.across > 0).sort((a, b) => a.across - b.across)[0]
    const along = lacks.filter((l) => l.across <= 0 && l.along > 0).sort((a, b) => a.along - b.along)[0]
    if (along) missing.push({ demand, direction: 'along', short: along.along })
    else missing.push({ demand, direction: 'across', short: across?.across ?? null })
  }
  return answerOf('infeasible', null, { by: 'longest', bound: 0 }, 0, missing)
}

/** Programmer mistakes: numbers that are not whole, nothing to place it by. */
function validate(request: Request): void {
  const { field } = request
  const numbers = [field.width, field.length ?? 1, ...Object.values(field.zones)]
  for (const f of field.flaws) numbers.push(f.x, f.y, f.width, f.length)
  for (const d of request.demands) {
    if (d.postures.length === 0) throw new RangeError(`lay: demand ${d.id} has no posture`)
    if (!Number.isSafeInteger(d.count) || d.count < 0)
      throw new RangeError(`lay: demand ${d.id} is asked for ${d.count} times`)
    for (const p of d.postures)
      if (!(p.width > 0 && p.length > 0)) throw new RangeError(`lay: demand ${d.id} is ${p.width} x ${p.length}`)
      else numbers.push(p.width, p.length)
    if (d.tie) numbers.push(d.tie.repeat, d.tie.offset)
  }
  for (const n of numbers) if (!Number.isSafeInteger(n)) throw new RangeError(`lay: ${n} is no whole number`)
  if (!(field.width > 0) || (field.length !== null && !(field.length > 0)))
    throw new RangeError(`lay: a field of ${field.width} x ${field.length}`)
}
