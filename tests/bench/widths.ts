import type { Answer, Request } from '@lengthwise/solver'
import { check, lay, layForWidths } from '@lengthwise/solver'
import { bedding } from './corpus.ts'
import type { Row, Say } from './rows.ts'
import { median, milliseconds } from './rows.ts'

const WIDTHS = [1400, 1500, 1600, 2200, 2400, 2800]

/** Steps for one width, on either side. */
const EFFORT = 20_000_000

/** An order that takes longer is not measured a second time. */
const LONG = 1000

/** Processor time of one order in milliseconds. */
interface Times {
  readonly widest: number
  readonly together: number
  /** each width by itself, added up */
  readonly apart: number
  readonly group: Group
}

type Group = 'closed by a bound' | 'needs search' | 'not proved'

/**
 * Bedding orders at six widths in one call, beside the widest alone and beside every width alone: the same effort for each, both sides
 * warmed up on other orders, then in turns; the better time of each counts. Widths narrower than a piece are left out, so some orders
 * have fewer than six. Measured as asked for by default, and without the tidying of each width's own layout.
 */
export function widths(seconds: number, say: Say): Row[] {
  for (let seed = 181; seed <= 195; seed++) measured(seed, Math.min(seconds, 1), true)
  const tidied = timesOf(seconds, true, say)
  const groups: Group[] = ['closed by a bound', 'needs search', 'not proved']
  const set = 'six widths side by side'
  return [
    rowOf(set, tidied),
    ...groups.map((group) => {
      const of = tidied.filter((times) => times.group === group)
      return rowOf(`of these, the widest alone ${group}`, of)
    }),
    rowOf(`${set}, layouts not tidied, all that are proved`, timesOf(seconds, false, say).filter(isProved)),
  ]
}

const isProved = ({ group }: Times): boolean => group !== 'not proved'

function timesOf(seconds: number, tidy: boolean, say: Say): Times[] {
  const all: Times[] = []
  for (let seed = 201; seed <= 220; seed++) {
    const { count, times } = measured(seed, seconds, tidy)
    const again = times.apart > LONG ? times : measured(seed, seconds, tidy).times
    const better = {
      widest: Math.min(times.widest, again.widest),
      together: Math.min(times.together, again.together),
      apart: Math.min(times.apart, again.apart),
      group: times.group,
    }
    all.push(better)
    const [widest, together, apart] = [better.widest, better.together, better.apart].map((ms) => ms.toFixed(1))
    const which = `seed ${seed}${tidy ? '' : ', not tidied'}, ${times.group}`
    say(`- ${which}: widest alone ${widest} ms, ${count} widths ${together} ms, one by one ${apart} ms`)
  }
  return all
}

function measured(seed: number, seconds: number, tidy: boolean): { readonly count: number; readonly times: Times } {
  const { request } = bedding(seed)
  const most = Math.max(...request.demands.flatMap(({ postures }) => postures.map(({ width }) => width)))
  const list = WIDTHS.filter((width) => width >= most)
  const at = (width: number): Request => ({ ...request, field: { ...request.field, width } })
  const time = <T>(run: (stop: () => boolean) => T): { readonly ms: number; readonly value: T } => {
    const start = milliseconds()
    const value = run(() => milliseconds() - start > seconds * 1000)
    return { ms: milliseconds() - start, value }
  }
  const widest = time((stop) => lay(at(2800), { effort: EFFORT, tidy, stop }))
  const together = time((stop) => layForWidths(at(2800), list, { effort: EFFORT, tidy, stop }))
  const apart = time((stop) => list.map((width) => lay(at(width), { effort: EFFORT, tidy, stop })))
  const proved = (answer: Answer) => answer.status === 'proved'
  for (const [i, { width, answer }] of together.value.entries()) {
    const alone = apart.value[i]!
    if (check(at(width), answer).length > 0 || (proved(answer) && proved(alone) && answer.length !== alone.length))
      throw new Error(`a wrong answer: seed ${seed}, width ${width}`)
  }
  const settled = proved(widest.value) && together.value.every(({ answer }) => proved(answer))
  const group = !settled ? 'not proved' : widest.value.steps === 0 ? 'closed by a bound' : 'needs search'
  return { count: list.length, times: { widest: widest.ms, together: together.ms, apart: apart.ms, group } }
}

/** Where the stop ended a side its time is no measure: such an order counts as one that does not hold, and is left out of the sums. */
function rowOf(set: string, all: readonly Times[]): Row {
  const must = 'at most 1.5 times the time of the widest alone'
  const proved = all.filter(isProved)
  const named = `${set} (${all.length} orders)`
  if (proved.length === 0) return { set: named, must, reached: 'stopped before they were proved', holds: null }
  const sum = (of: (times: Times) => number) => proved.reduce((total, times) => total + of(times), 0)
  const ratio = median(all.map((times) => (isProved(times) ? times.together / times.widest : Number.POSITIVE_INFINITY)))
  const sums = sum(({ together }) => together) / sum(({ widest }) => widest)
  const apart = sum(({ together }) => together) / sum((times) => times.apart)
  const middle = median(proved.map(({ together }) => together))
  return {
    set: named,
    must,
    reached: `${ratio.toFixed(2)} times in the median, of the sums ${sums.toFixed(2)}; ${apart.toFixed(2)} of one by one; ${middle.toFixed(1)} ms in the median; ${proved.length} proved`,
    holds: ratio <= 1.5,
  }
}
