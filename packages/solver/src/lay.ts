import { simpleBound } from './bounds/index.ts'
import type { Layout } from './layout.ts'
import { answerOf, layoutOf } from './layout.ts'
import type { Answer, Certificate, Control, Request } from './model.ts'
import type { Problem } from './problem.ts'
import { normalise, shortAcross, shortAlong } from './problem.ts'
import { quickStart } from './starts/index.ts'

/** The shortest layout of a request that effort allows, with a bound that no layout goes below. */
export function lay(request: Request, control: Control): Answer {
  validate(request)
  const problem = normalise(request)
  if (!problem) return cannot(request)
  const certificate = inRequestUnits(problem, simpleBound(problem))
  if (request.field.length !== null && certificate.bound > request.field.length)
    return answerOf('infeasible', null, certificate, 0)
  const spots = quickStart(problem)
  const layout: Layout | null = spots && layoutOf(problem, spots)
  control.onProgress?.(layout?.length ?? null, certificate.bound)
  return answerOf(layout?.length === certificate.bound ? 'proved' : 'best-found', layout, certificate, 0)
}

/** A bound on the length of any layout, with what shows it. Throws when a demand cannot be placed at all. */
export function bound(request: Request): Certificate {
  validate(request)
  const problem = normalise(request)
  if (!problem) throw new RangeError('bound: a demand cannot be placed at all')
  return inRequestUnits(problem, simpleBound(problem))
}

function inRequestUnits(problem: Problem, certificate: Certificate): Certificate {
  return { ...certificate, bound: certificate.bound * problem.unitAlong }
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
