import { repriced } from './bounds/bars.ts'
import { Bounds } from './bounds/bounds.ts'
import { simpleBound } from './bounds/index.ts'
import { roundUpLength } from './bounds/reachable.ts'
import type { Allowance } from './bounds/values.ts'
import { aroundFlaws, exchanged, variantsOf } from './exact/around-flaws.ts'
import { spotsOf } from './exact/blocks.ts'
import type { Finished } from './exact/fronts.ts'
import { multisets } from './exact/multisets.ts'
import { Phases } from './exact/phases.ts'
import type { Shortest, Target } from './exact/shortest.ts'
import { shortest } from './exact/shortest.ts'
import type { Layout } from './layout.ts'
import { answerOf, layoutFrom, layoutOf } from './layout.ts'
import type { Answer, Certificate, Control, Placement } from './model.ts'
import type { Problem, Spot } from './problem.ts'
import { placementsOf } from './problem.ts'
import { searchFree, searchGuillotine } from './search/index.ts'
import { quickStart } from './starts/index.ts'
import { tidiestLayout } from './tidiest.ts'
import type { Worth } from './tidy.ts'
import { tidier, tidiestTree, tidinessOf, worthOf } from './tidy.ts'

/** What is known of a request before it is laid, from the same demands on fields of other widths. */
export interface Known {
  /** an answer for a wider field: nothing is shorter here than its bound */
  readonly wider: Pick<Answer, 'certificate'> | null
  /** a layout that fits this field too */
  readonly placements: readonly Placement[] | null
}

/** Steps that the bounds of one run may take, however little effort there is, and however much. */
const LEAST_BOUND_STEPS = 200_000
const MOST_BOUND_STEPS = 2_000_000

/** So many of them are part of what any run costs and not counted; the others are told with the answer. */
const FREE_BOUND_STEPS = 100_000

export const unusual = ({ steps }: Allowance): number => Math.max(0, steps - FREE_BOUND_STEPS)

export const allowanceFor = ({ effort, stop }: Pick<Control, 'effort' | 'stop'>): Allowance => ({
  most: Math.max(LEAST_BOUND_STEPS, Math.min(effort, MOST_BOUND_STEPS)),
  steps: 0,
  stop,
})

/** With more pieces than this, or less effort, scales cost more than they spare. */
const MOST_FOR_SCALES = 60
const EFFORT_FOR_SCALES = 50_000

export const worthScales = (problem: Problem, effort: number): boolean =>
  effort >= EFFORT_FOR_SCALES && problem.kinds.reduce((n, kind) => n + kind.count, 0) <= MOST_FOR_SCALES

/** Most multisets that numbers can tell apart. */
export const MOST_MULTISETS = 2 ** 50

/** With no more multisets than this all are looked at in one run, without bounds beforehand; ties make more blocks of each. */
const FEW_MULTISETS = 1000
const FEW_TIED_MULTISETS = 500
/** About the steps it takes. */
const STEPS_PER_MULTISET = 200

/** Steps for each width after which bounds are worth having first. */
const ONCE_STEPS = 50_000

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
const TIDIEST_STEPS = 25_000

/** One request on its way to an answer: the best layout and the best bound so far, and the steps that led to them. */
export class Run {
  readonly problem: Problem
  private readonly control: Control
  private best: Layout | null = null
  private shown: Certificate = { by: 'area', bound: 0 }
  /** the block that the best layout comes from, when the exact methods found it on cloth without flaws */
  private block: { readonly of: Problem; readonly finished: Finished } | null = null
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
    this.bounds = new Bounds(problem, this.allowance, worthScales(problem, control.effort))
  }

  answer(known: Known | null = null): Answer {
    this.start(known)
    atOnce(this.problem, [this], this.control)
    this.goOn()
    return this.end()
  }

  /** A quick layout and the bounds that cost next to nothing. */
  start(known: Known | null): void {
    if (known) this.learn(known)
    if (this.settled()) return
    this.offer(quickStart(this.problem, this.control.stop))
    this.raiseBySimple()
  }

  /** Takes over what other widths have shown. */
  learn({ wider, placements }: Known): void {
    if (placements) this.take(layoutFrom(this.problem.request, placements))
    if (wider) this.raiseBy(wider.certificate)
  }

  /** Nothing is left to find: the shortest layout is at hand, or there is none. */
  private settled(): boolean {
    return this.proved() || this.tooLong()
  }

  /** Do the exact methods know all the rules here, and how many steps may they take? */
  exactSteps(): number {
    const { problem, control } = this
    const sets = multisets(problem)
    if (this.settled() || sets > MOST_MULTISETS || (problem.tied && !Phases.of(problem, true))) return 0
    return Math.max(0, Math.floor(exactShare(problem, sets, this.steps, control.effort)) - this.steps)
  }

  /** What the exact methods are asked, in terms of `shared`: a problem of the same demands, perhaps on a wider field. */
  target(shared: Problem): Target {
    const { problem } = this
    return {
      width: (problem.width * problem.unitAcross) / shared.unitAcross,
      lower: this.shown.bound / problem.unitAlong,
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
  }

  /**
   * What the exact methods have answered, in terms of `shared`. With flaws their length is a bound, met only when a layout avoids
   * them; without, blocks float.
   */
  found(shared: Problem, { best, others, bound }: Shortest, states: number, steps: number): void {
    const { problem } = this
    this.steps += steps
    this.exhausted(bound, states)
    if (best && problem.flaws.length === 0) {
      const of = {
        ...shared,
        width: (problem.width * problem.unitAcross) / shared.unitAcross,
        request: problem.request,
      }
      const spots = spotsOf(of, best.tree, best.start, best.moved)
      this.take(layoutFrom(problem.request, placementsOf(of, spots)))
      if (this.upper() === best.length) this.block = { of, finished: best }
    } else if (problem.flaws.length > 0) {
      const { length, zones } = problem
      for (const block of others ?? [])
        this.offer(aroundFlaws(problem, block, length === null ? (this.upper() ?? block.length) : length - zones.end))
    }
  }

  /** All that takes effort: bounds, exact methods and searches. */
  goOn(): void {
    this.raiseByBounds()
    this.report()
    // a little search first: a shorter layout spares the exact methods most of their work, and few pieces under free cuts
    // are settled by the search itself, where guillotine divisions would prove nothing
    if (!this.settled() && (multisets(this.problem) > SOON_MULTISETS || this.problem.cuts === 'free'))
      this.search(this.control.effort / 8)
    exactly(this.problem, [this], this.control, false)
    if (!this.settled()) this.search(this.control.effort)
  }

  end(): Answer {
    this.report()
    const steps = this.steps + unusual(this.allowance)
    if (this.best === null && this.tooLong()) return answerOf('infeasible', null, this.shown, steps)
    this.tidy()
    const status = this.proved() ? 'proved' : this.stopped ? 'stopped' : 'best-found'
    return answerOf(status, this.best, this.shown, steps)
  }

  get certificate(): Certificate {
    return this.shown
  }

  get layout(): Layout | null {
    return this.best
  }

  private raiseByBounds(): void {
    if (this.proved()) return
    const { length } = this.problem
    // one beyond the field shows that there is no layout at all
    const beyond = length === null ? Number.POSITIVE_INFINITY : length + 1
    const best = this.bounds.best(Math.min(beyond, this.upper() ?? beyond))
    this.raise({ ...best, bound: best.bound * this.problem.unitAlong })
  }

  /** Nothing shorter can be divided edge to edge; with other cuts that proves nothing. */
  private exhausted(bound: number, states: number): void {
    if (this.problem.cuts === 'guillotine')
      this.raise({ by: 'exhausted', bound: bound * this.problem.unitAlong, states: Math.max(1, states) })
  }

  /** The searches, until so many steps are used in all, look for something shorter than the best so far. */
  private search(until: number): void {
    const { problem, control, best } = this
    const bound = this.shown.bound / problem.unitAlong
    const longest = best === null ? (problem.length ?? Number.POSITIVE_INFINITY) : this.upper()! - 1
    const effort = Math.floor(until) - this.steps
    if (longest < bound || effort <= 0 || control.stop?.()) return
    const onProgress = (length: number | null): void => {
      control.onProgress?.(length && length * problem.unitAlong, this.shown.bound)
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
    const { problem, best, block } = this
    if (!best?.tree || this.control.tidy === false || best.placements.length > MOST_TIDIED) return
    const { field } = problem.request
    const rect = { x: 0, y: 0, width: field.width, length: field.length ?? best.length }
    const worth = worthOf(this.control.worthKeeping)
    let tidiest: Layout = best
    const most = Math.ceil(MOST_TIDYING / best.placements.length ** 2)
    const variants = block ? Math.min(most, variantsOf(block.finished.tree, problem.tied)) : 0
    for (let variant = -1; variant < variants; variant++) {
      if (this.control.stop?.()) break
      const placements = variant < 0 ? best.placements : variantOf(block!.of, block!.finished, variant)
      const tree = tidiestTree(rect, placements, worth)
      if (tree && tidier(tidinessOf(tree, worth), tidinessOf(tidiest.tree!, worth)))
        tidiest = { ...best, placements, tree }
    }
    this.best = this.tidiestOfAll(tidiest, worth)
  }

  /** Where pieces are few: the tidiest of all layouts of this length, whatever blocks they are made of; a shorter one may be among them. */
  private tidiestOfAll(known: Layout, worth: Worth): Layout {
    const { problem } = this
    if (known.placements.length > FEW_PIECES || this.control.stop?.()) return known
    const atHand = tidinessOf(known.tree!, worth)
    const task = { length: known.length / problem.unitAlong, atHand, worth, steps: TIDIEST_STEPS }
    const found = tidiestLayout(problem, task)
    if (!found) return known
    const placements = placementsOf(problem, found.spots)
    const shorter = layoutFrom(problem.request, placements)
    return shorter && shorter.length < known.length ? shorter : { length: known.length, placements, tree: found.tree }
  }

  private proved(): boolean {
    return this.best !== null && this.best.length === this.shown.bound
  }

  /** No layout is short enough for the field. */
  private tooLong(): boolean {
    const longest = this.problem.request.field.length
    return longest !== null && this.shown.bound > longest
  }

  private upper(): number | null {
    return this.best && this.best.length / this.problem.unitAlong
  }

  private offer(spots: readonly Spot[] | null): void {
    this.take(spots && layoutOf(this.problem, spots))
  }

  private take(layout: Layout | null): void {
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
    this.raiseBySimple()
  }

  private raiseBySimple(): void {
    const { problem } = this
    const simple = simpleBound(problem)
    this.raise({ ...simple, bound: roundUpLength(problem, simple.bound) * problem.unitAlong })
  }

  private raise(certificate: Certificate): void {
    if (certificate.bound > this.shown.bound) this.shown = certificate
  }

  private report(): void {
    this.control.onProgress?.(this.best?.length ?? null, this.shown.bound)
  }
}

/**
 * One exact search for all of these runs, where the multisets are so few that everything shorter than what is at hand is looked at
 * sooner than bars are priced and limits raised. The runs are of the same demands on fields of other widths, widest first, where what
 * fits a width fits every wider one; `shared` is the problem of the widest, in a unit across that divides all widths.
 */
export function atOnce(shared: Problem, runs: readonly Run[], control: Control): void {
  const sets = multisets(shared)
  const few = sets <= (shared.tied ? FEW_TIED_MULTISETS : FEW_MULTISETS)
  if (few && shared.cuts === 'guillotine' && sets * STEPS_PER_MULTISET <= control.effort)
    exactly(shared, runs, control, true)
}

/** The exact methods, with the steps that these runs may give to them; at once with few. */
function exactly(shared: Problem, runs: readonly Run[], { stop }: Control, once: boolean): void {
  const asked = runs.map((run) => ({ run, effort: run.exactSteps() })).filter(({ effort }) => effort > 0)
  if (asked.length === 0) return
  const effort = asked.reduce((sum, one) => sum + (once ? Math.min(one.effort / 2, ONCE_STEPS) : one.effort), 0)
  const targets = asked.map(({ run }) => run.target(shared))
  const { found, steps } = shortest(shared, { targets, effort, stop, atOnce: once })
  for (const [i, { run }] of asked.entries()) run.found(shared, found[i]!, steps, Math.ceil(steps / asked.length))
}

/** Steps up to which the exact methods may go on: all where they surely end, few where they hardly will. */
function exactShare({ cuts }: Problem, sets: number, steps: number, effort: number): number {
  if (sets <= SURE_MULTISETS) return effort
  // a shortest layout in guillotine divisions proves nothing for free cuts
  if (cuts === 'free') return 0
  return steps + (effort - steps) / (sets <= HOPEFUL_MULTISETS ? 2 : sets <= HOPELESS_MULTISETS ? 20 : 400)
}

/** The placements of a block with the halves of some of its joins exchanged. */
function variantOf(problem: Problem, { tree, start, moved }: Finished, variant: number): readonly Placement[] {
  return placementsOf(problem, spotsOf(problem, exchanged(tree, variant, problem.tied), start, moved))
}
