import { lay } from './lay.ts'
import type { Answer, Control, FitsAnswer, Request } from './model.ts'

/**
 * Which part of the demands a field of set length can take: every list of counts that fits and to which nothing can be
 * added. Larger lists are tried first; a list below one that fits is not tried.
 */
export function whatFits(request: Request, control: Control): FitsAnswer {
  const full = request.demands.map((d) => d.count)
  const maximal: { counts: number[]; answer: Answer }[] = []
  const seen = new Set<string>()
  let complete = true
  let steps = 0
  let open = [full]
  while (open.length > 0) {
    const next: number[][] = []
    for (const counts of open) {
      const key = counts.join()
      if (seen.has(key) || maximal.some((m) => counts.every((n, i) => n <= m.counts[i]!))) continue
      seen.add(key)
      if (steps >= control.effort || control.stop?.()) return { maximal, complete: false, steps }
      const demands = request.demands.map((d, i) => ({ ...d, count: counts[i]! }))
      const answer = lay({ ...request, demands }, control)
      steps += answer.steps + 1
      if (answer.length !== null) maximal.push({ counts, answer })
      else {
        if (answer.status !== 'infeasible') complete = false
        for (const [i, n] of counts.entries()) if (n > 0) next.push(counts.map((m, j) => (j === i ? m - 1 : m)))
      }
    }
    open = next
  }
  return { maximal, complete, steps }
}
