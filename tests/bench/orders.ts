import { agreement } from '../../packages/solver/test/agree.ts'
import { anyOrder } from '../../packages/solver/test/every-rule.ts'
import type { Row } from './rows.ts'

const EFFORT = 10_000
const UNITS = [3, 7, 320]
/** Orders with faults that are printed; the others are counted. */
const MOST_SHOWN = 20

/** Random orders under all rules: each verified, held against a naive method, and laid again mirrored, shuffled and scaled. */
export function ordersRow(count: number, say: (line: string) => void): Row[] {
  const { user, system } = process.cpuUsage()
  const sum = { faults: 0, proved: 0, compared: 0 }
  for (let seed = 1; seed <= count; seed++) {
    const { faults, proved, compared } = agreement(anyOrder(seed), UNITS[seed % UNITS.length]!, EFFORT)
    if (proved) sum.proved++
    if (compared) sum.compared++
    if (faults.length > 0 && sum.faults++ < MOST_SHOWN) say(`- seed ${seed}: ${faults.join('; ')}`)
  }
  const spent = process.cpuUsage({ user, system })
  const seconds = ((spent.user + spent.system) / 1e6).toFixed(0)
  const reached = `${sum.faults} with faults; ${sum.proved} settled, ${sum.compared} compared with the naive method; ${seconds} s`
  return [
    {
      set: `${count} random orders under all rules`,
      must: 'every answer verified, as the naive method says, the same mirrored, shuffled and scaled',
      reached,
      holds: sum.faults === 0 && sum.compared > 0,
    },
  ]
}
