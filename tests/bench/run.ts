/**
 * The solver measured: `npm run bench [-- row …] [--seconds n] [--orders n] [--date yyyy-mm-dd] [--note text]`. Prints each case, then the
 * table of what must be reached, and writes both under tests/bench/results. Rows: small many free bedding widths batch highs sliced orders.
 * Seconds are of processor time, so that other work on the machine does not decide; a run that meets them is stopped there, all
 * else is decided by steps.
 */
import { mkdirSync, writeFileSync } from 'node:fs'
import { arch, cpus, release } from 'node:os'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import type { Row } from './rows.ts'
import { ROWS } from './rows.ts'

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seconds: { type: 'string', default: '10' },
    orders: { type: 'string', default: '10000' },
    date: { type: 'string' },
    note: { type: 'string' },
  },
})
const unknown = positionals.filter((name) => !(name in ROWS))
if (unknown.length > 0)
  throw new RangeError(`bench: no row ${unknown.join(', ')}; rows are ${Object.keys(ROWS).join(' ')}`)
const chosen = positionals.length > 0 ? positionals : Object.keys(ROWS)
const date = values.date ?? new Date().toISOString().slice(0, 10)

const lines: string[] = []
const say = (line: string): void => {
  lines.push(line)
  console.log(line)
}

say(`# Bench of ${date}`)
say('')
say(
  `Node ${process.version}, ${cpus()[0]?.model ?? 'unknown processor'}, ${arch()}, ${release()}; ${values.seconds} s at most for a case.${values.note === undefined ? '' : ` ${values.note}`}`,
)
const table: Row[] = []
for (const name of chosen) {
  say('')
  say(`## ${name}`)
  say('')
  table.push(...(await ROWS[name]!(Number(values.seconds), say, Number(values.orders))))
}
say('')
say('## What must be reached')
say('')
say('| set | must | reached | holds |')
say('|---|---|---|---|')
for (const { set, must, reached, holds } of table) {
  say(`| ${set} | ${must} | ${reached} | ${holds === null ? 'not run' : holds ? 'yes' : 'no'} |`)
}
const folder = join(import.meta.dirname, 'results')
mkdirSync(folder, { recursive: true })
const part = positionals.length > 0 ? `-${positionals.join('-')}` : ''
writeFileSync(join(folder, `${date}${part}.md`), `${lines.join('\n')}\n`)
