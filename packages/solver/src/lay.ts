import { Bounds } from './bounds/bounds.ts'
import { fronts } from './exact/fronts.ts'
import { multisets } from './exact/multisets.ts'
import { Phases } from './exact/phases.ts'
import { answerOf, layoutOf } from './layout.ts'
import type { Answer, Certificate, Control, Request } from './model.ts'
import { normalise, shortAcross, shortAlong } from './problem.ts'
import type { Known } from './run.ts'
import { allowanceFor, MOST_MULTISETS, Run, unusual, worthScales } from './run.ts'
import { quickStart } from './starts/index.ts'

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

/** As `lay`, with something known beforehand. */
export function layKnowing(request: Request, control: Control, known: Known): Answer {
  validate(request)
  const problem = normalise(request)
  if (!problem) return cannot(request)
  return new Run(problem, control).answer(known)
}

/** The best of the quick layouts, told to stop the first of them, and the bound that costs next to nothing. */
export function layQuickly(request: Request, stop?: () => boolean): Answer {
  validate(request)
  const problem = normalise(request)
  if (!problem) return cannot(request)
  const run = new Run(problem, { effort: 0, tidy: false, ...(stop ? { stop } : {}) })
  run.start(null)
  return run.end()
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
  const start = quickStart(problem, control.stop)
  const found = start && layoutOf(problem, start)
  if (found && found.length <= within) return true
  const bounds = new Bounds(problem, allowanceFor(control), worthScales(problem, control.effort))
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
 * What it costs beyond the usual is added to `paid.steps`; without `scales` it costs a tenth, and may be lower.
 * `enough`: a bound no lower than this is as good as any, and may come much sooner.
 */
export function bound(
  request: Request,
  paid: { steps: number; readonly stop?: () => boolean; readonly scales?: boolean } = { steps: 0 },
  enough = Number.POSITIVE_INFINITY,
): Certificate {
  validate(request)
  const problem = normalise(request)
  if (!problem) throw new RangeError('bound: a demand cannot be placed at all')
  const allowance = allowanceFor({ effort: 0, ...paid })
  const certificate = new Bounds(problem, allowance, paid.scales ?? true).best(Math.ceil(enough / problem.unitAlong))
  paid.steps += unusual(allowance)
  return { ...certificate, bound: certificate.bound * problem.unitAlong }
}

/** Demands that have no posture the field can take, with the size they lack. */
export function cannot(request: Request): Answer {
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
export function validate(request: Request): void {
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
