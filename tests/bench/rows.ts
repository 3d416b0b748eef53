import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import type { Answer, Request } from '@lengthwise/solver'
import { check, lay } from '@lengthwise/solver'
import type { Case } from './corpus.ts'
import { batch, bedding, instancesFolder, published, requestOf, seeded, shapeOf, sliced } from './corpus.ts'
import type { Piece } from './models.ts'
import { freeModel, optimum } from './models.ts'
import { ordersRow } from './orders.ts'
import { packerLength } from './packer.ts'
import { widths } from './widths.ts'

/** One line of the table of what must be reached. */
export interface Row {
  readonly set: string
  readonly must: string
  readonly reached: string
  /** null: could not be run */
  readonly holds: boolean | null
}

export type Say = (line: string) => void
type RowRunner = (seconds: number, say: Say, orders: number) => Row[] | Promise<Row[]>

export const ROWS: Record<string, RowRunner> = {
  small,
  many,
  free,
  bedding: beddingRow,
  widths,
  batch: batchRow,
  highs,
  sliced: slicedRow,
  orders: (_, say, orders) => ordersRow(orders, say),
}

interface Measured {
  readonly answer: Answer
  /** processor time in milliseconds */
  readonly ms: number
}

/** Steps for a case, about as many as the tree search takes in ten seconds. */
const EFFORT = 60_000_000

export function milliseconds(): number {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

function measured(request: Request, seconds: number): Measured {
  const start = milliseconds()
  const stop = (): boolean => milliseconds() - start > seconds * 1000
  const answer = lay(request, { effort: EFFORT, stop })
  const ms = milliseconds() - start
  const faults = check(request, answer)
  if (faults.length > 0) throw new Error(`a wrong answer: ${faults.map(({ message }) => message).join('; ')}`)
  return { answer, ms }
}

/** Runs every case, prints each, and gives the gaps to the best known (or else to the bound) in per cent. */
function runAll(cases: readonly Case[], seconds: number, say: Say, beside?: (each: Case) => string) {
  say(shapeOf(cases))
  say('')
  say('| case | length | known | bound | gap % | status | steps | ms | beside |')
  say('|---|---|---|---|---|---|---|---|---|')
  return cases.map((each) => {
    const { answer, ms } = measured(each.request, seconds)
    const known = each.known?.length ?? null
    const gap = (100 * (answer.length! - (known ?? answer.bound))) / (known ?? answer.bound)
    say(
      `| ${each.name} | ${answer.length} | ${known ?? ''} | ${answer.bound} | ${gap.toFixed(2)} | ${answer.status} | ${answer.steps} | ${ms.toFixed(0)} | ${beside?.(each) ?? ''} |`,
    )
    return { answer, ms, gap }
  })
}

function absent(set: string, must: string): Row[] {
  return [{ set, must, reached: `no instances in ${instancesFolder()}`, holds: null }]
}

function small(seconds: number, say: Say): Row[] {
  const must = 'every optimum, proved; all in a few seconds'
  const cases = published('guillotine', (_, pieces, proved) => proved && pieces <= 22)
  if (cases === null) return absent('small published', must)
  const results = runAll(cases, seconds, say)
  const right = results.filter(({ answer, gap }) => gap === 0 && answer.status === 'proved').length
  const total = results.reduce((sum, { ms }) => sum + ms, 0)
  const reached = `${right} of ${cases.length} proved in ${(total / 1000).toFixed(1)} s together`
  return [{ set: 'small published', must, reached, holds: right === cases.length && total < 10_000 }]
}

function many(seconds: number, say: Say): Row[] {
  const must = 'average gap at most 1 %, stretch 0.5 %'
  const set = `guillotine-perfect, 25 to 199 pieces, ${seconds} s each`
  const cases = published('guillotine', (name) => /^C[2-7]P[13]$|T7/.test(name))
  if (cases === null) return absent(set, must)
  const gap = mean(runAll(cases, seconds, say).map((result) => result.gap))
  return [{ set, must, reached: `${gap.toFixed(2)} %`, holds: gap <= 1 }]
}

function free(seconds: number, say: Say): Row[] {
  const must = 'average gap to best known at most 1 %, stretch 0.4 % on C'
  const each = Math.min(seconds, 3)
  const set = `free cuts: C, Burke's N, gcut, ngcut, cgcut, beng, ${each} s each`
  const cases = published('free', (name) => /^(C\d|BKW|gcut|ngcut|cgcut|beng)/.test(name))
  if (cases === null) return absent(set, must)
  const packer: number[] = []
  const results = runAll(cases, each, say, (one) => {
    const gap = (100 * (packerLength(one.request) - one.known!.length)) / one.known!.length
    packer.push(gap)
    return `maxrects ${gap.toFixed(1)} %`
  })
  const gap = mean(results.map((result) => result.gap))
  const onC = mean(results.filter((_, i) => /^C\d/.test(cases[i]!.name)).map((result) => result.gap))
  const reached = `${gap.toFixed(2)} %; on C ${onC.toFixed(2)} %; maxrects-packer alone ${mean(packer).toFixed(1)} %`
  return [{ set, must, reached, holds: gap <= 1 }]
}

function beddingRow(seconds: number, say: Say): Row[] {
  const cases = Array.from({ length: 60 }, (_, seed) => bedding(seed + 1))
  const results = runAll(cases, Math.min(seconds, 1), say)
  const proved = results.filter(({ answer }) => answer.status === 'proved').length
  const times = results.map(({ ms }) => ms).sort((a, b) => a - b)
  const [median, late] = [times[Math.floor(times.length / 2)]!, times[Math.floor(times.length * 0.95)]!]
  return [
    {
      set: 'bedding orders to 20 pieces in up to 8 kinds, 1 s each at most',
      must: 'proved in every case; median at most 20 ms, 95th percentile at most 500 ms',
      reached: `${proved} of ${cases.length} proved; median ${median.toFixed(0)} ms, 95th percentile ${late.toFixed(0)} ms`,
      holds: proved === cases.length && median <= 20 && late <= 500,
    },
  ]
}

/** In a process of its own, whose memory the operating system tells at its end. */
function batchRow(seconds: number, say: Say): Row[] {
  const script = join(import.meta.dirname, 'dist/batch-alone.js')
  const cases = [batch(1), batch(2)]
  say(shapeOf(cases))
  let gap = 0
  let memory = 0
  for (const seed of [1, 2]) {
    const ran = spawnSync(process.execPath, [script, String(seed), String(seconds)], { encoding: 'utf8' })
    if (ran.status !== 0) throw new Error(ran.stderr)
    const result = JSON.parse(ran.stdout) as { length: number; bound: number; status: string; megabytes: number }
    say(`- batch ${seed}: ${JSON.stringify(result)}`)
    gap = Math.max(gap, (100 * (result.length - result.bound)) / result.bound)
    memory = Math.max(memory, result.megabytes)
  }
  return [
    {
      set: '500 pieces of 12 kinds',
      must: `gap to the bound at most 1 % in ${seconds} s, memory at most 400 MB`,
      reached: `${gap.toFixed(2)} %, ${memory.toFixed(0)} MB`,
      holds: gap <= 1 && memory <= 400,
    },
  ]
}

/** Both sides warmed up on other orders, then each order twice in turns; the better time of each side counts. */
async function highs(seconds: number, say: Say): Promise<Row[]> {
  for (let seed = 901; seed <= 915; seed++) {
    const pieces = mixed(seed, 6)
    await optimum(freeModel(100, pieces), 10)
    measured(requestOf(100, pieces, 'free'), seconds)
  }
  const ratios: number[] = []
  let agreed = 0
  let ended = 0
  for (let seed = 1; seed <= 18; seed++) {
    const pieces = mixed(seed, 6 + (seed % 3))
    const request = requestOf(100, pieces, 'free')
    let theirs: number | null = null
    let best = Number.POSITIVE_INFINITY
    let ours: Measured | null = null
    for (let turn = 0; turn < 2; turn++) {
      const start = milliseconds()
      theirs = await optimum(freeModel(100, pieces), 60)
      best = Math.min(best, milliseconds() - start)
      const again = measured(request, seconds)
      if (ours === null || again.ms < ours.ms) ours = again
    }
    const { answer, ms } = ours!
    if (theirs !== null) ended++
    if (theirs !== null && answer.status === 'proved' && answer.length === theirs) agreed++
    ratios.push(best / ms)
    say(
      `- seed ${seed}, ${pieces.length} pieces: HiGHS ${theirs ?? 'not ended'} in ${best.toFixed(0)} ms, ours ${answer.length} in ${ms.toFixed(1)} ms`,
    )
  }
  const ratio = median(ratios)
  return [
    {
      set: 'against HiGHS: 6 to 8 pieces, free cuts',
      must: 'the same answer, at least 50 times faster in the median',
      reached: `${agreed} of the ${ended} that HiGHS ended the same and proved, ${ratio.toFixed(0)} times faster`,
      holds: agreed === ended && ratio >= 50,
    },
  ]
}

function mixed(seed: number, count: number): Piece[] {
  const below = seeded(seed)
  return Array.from({ length: count }, () => ({ width: 10 + below(50), length: 10 + below(50) }))
}

function slicedRow(seconds: number, say: Say): Row[] {
  const shapes: [number, number, number][] = [
    [100, 120, 15],
    [100, 120, 25],
    [160, 200, 50],
    [200, 240, 100],
    [200, 300, 200],
  ]
  const cases = shapes.flatMap(([width, length, count]) => [1, 2].map((seed) => sliced(width, length, count, seed)))
  const gap = mean(runAll(cases, Math.min(seconds, 5), say).map((result) => result.gap))
  const must = 'average gap at most 1 %'
  return [
    { set: 'own sliced strips, 15 to 200 pieces, 5 s each', must, reached: `${gap.toFixed(2)} %`, holds: gap <= 1 },
  ]
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}

export function median(values: readonly number[]): number {
  return values.slice().sort((a, b) => a - b)[Math.floor(values.length / 2)]!
}
