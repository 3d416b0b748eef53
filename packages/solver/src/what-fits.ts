import { lay } from './lay.ts'
import type { Answer, Control, FitsAnswer, Request } from './model.ts'

/** What a bound and the quick starts of one list cost, about, in steps. */
const START_STEPS = 2_000
/** A list that is not decided in this part of what is left of the effort waits until the others have had theirs. */
const FIRST_SHARE = 8

/**
 * Which part of the demands a field of set length can take: every list of counts that fits and to which nothing can be
 * added. Larger lists are tried first; a list below one that fits is not tried. No list takes all the effort, so that a large
 * one that stays undecided does not hide the smaller ones that fit; what is left over goes to the undecided, the largest first.
 */
export function whatFits(request: Request, control: Control): FitsAnswer {
  let maximal: { counts: number[]; answer: Answer }[] = []
  const undecided: number[][] = []
  const seen = new Set<string>()
  let steps = 0
  const spent = () => steps >= control.effort || (control.stop?.() ?? false)
  const covered = (counts: readonly number[]) => maximal.some((m) => counts.every((n, i) => n <= m.counts[i]!))

  let open = [request.demands.map((d) => d.count)]
  let complete = true
  while (open.length > 0) {
    const next: number[][] = []
    for (const counts of open) {
      const key = counts.join()
      if (seen.has(key) || covered(counts)) continue
      seen.add(key)
      if (areaOf(counts) <= areaOfField(request)) {
        if (spent()) return { maximal, complete: false, steps }
        const fits = tryOut(counts, (control.effort - steps) / FIRST_SHARE)
        if (fits) continue
        if (fits === null) undecided.push(counts)
      }
      for (const [i, n] of counts.entries()) if (n > 0) next.push(counts.map((m, j) => (j === i ? m - 1 : m)))
    }
    open = next
  }
  for (const counts of undecided) {
    if (covered(counts)) continue
    if (spent() || tryOut(counts, control.effort - steps) === null) complete = false
  }
  return { maximal, complete, steps }

  function tryOut(counts: number[], effort: number): boolean | null {
    const demands = request.demands.map((d, i) => ({ ...d, count: counts[i]! }))
    // the first layout is as good as the shortest
    let fits = false
    const stop = () => fits || (control.stop?.() ?? false)
    const onProgress = (best: number | null) => {
      fits ||= best !== null
    }
    const answer = lay({ ...request, demands }, { ...control, effort, stop, onProgress })
    steps += answer.steps + START_STEPS
    if (answer.length === null) return answer.status === 'infeasible' ? false : null
    maximal = [...maximal.filter((m) => m.counts.some((n, i) => n > counts[i]!)), { counts, answer }]
    return true
  }

  function areaOf(counts: readonly number[]): number {
    return request.demands.reduce(
      (sum, d, i) => sum + counts[i]! * Math.min(...d.postures.map((p) => p.width * p.length)),
      0,
    )
  }
}

const areaOfField = ({ field }: Request): number => field.width * (field.length ?? Number.POSITIVE_INFINITY)
