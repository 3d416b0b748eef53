/** One batch in a process of its own: prints its length, bound and the most memory the process had, as the operating system counts. */
import { check, lay } from '@lengthwise/solver'
import { batch } from './corpus.ts'

const { request } = batch(Number(process.argv[2]))
const limit = Number(process.argv[3]) * 1_000_000
const used = (): number => {
  const { user, system } = process.cpuUsage()
  return user + system
}
const start = used()
const answer = lay(request, { effort: 60_000_000, stop: () => used() - start > limit })
const faults = check(request, answer)
if (faults.length > 0) throw new Error(`a wrong answer: ${faults.map(({ message }) => message).join('; ')}`)
const { length, bound, status, steps } = answer
const megabytes = Math.round(process.resourceUsage().maxRSS / 1024)
console.log(JSON.stringify({ length, bound, status, steps, seconds: (used() - start) / 1_000_000, megabytes }))
