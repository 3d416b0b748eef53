// `npm start [-- my-plan.yaml]`: sets up, builds, lays out the plan, prints what to buy, writes the cutting map and the page.
import { spawnSync } from 'node:child_process'
import { copyFileSync, existsSync, mkdirSync } from 'node:fs'
import { basename, extname, join, relative, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = resolve(fileURLToPath(new URL('..', import.meta.url)))
const asked = process.argv[2]
const plan =
  asked === undefined
    ? join(root, 'fixtures', 'guest-house.yaml')
    : resolve(process.env.INIT_CWD ?? process.cwd(), asked)
const out = join(root, 'dist')
const shown = (file) => relative(process.env.INIT_CWD ?? process.cwd(), file) || file

if (!existsSync(plan)) {
  process.stderr.write(
    `${asked} cannot be read: there is no such file.\nWrite a sample: npm run lengthwise -- new my-plan.yaml\nNothing was laid out.\n`,
  )
  process.exit(66)
}
prepare('Setting up', 'npm', ['run', '--silent', 'setup'])
prepare('Building', 'npm', ['run', '--silent', 'build'])

mkdirSync(out, { recursive: true })
const name = basename(plan, extname(plan))
const map = join(out, `${name}-map.pdf`)
const page = join(out, 'lengthwise.html')
lengthwise(['lay', '-q', plan])
lengthwise(['map', '-q', plan, '-o', map, '--force'])
copyFileSync(join(root, 'apps/web/dist/lengthwise.html'), page)
process.stdout.write(`
The cutting map: ${shown(map)}   (print it at actual size)
The page:        ${shown(page)}   (open it in a browser; it needs no network)
Your own plan:   npm run lengthwise -- new my-plan.yaml   then   npm start -- my-plan.yaml
`)

/** Runs a step quietly; what it printed is shown only when it fails. */
function prepare(what, program, words) {
  process.stderr.write(`${what} …\n`)
  const run = spawnSync(program, words, { cwd: root, encoding: 'utf8' })
  if (run.status === 0) return
  process.stderr.write(
    `${run.stdout ?? ''}${run.stderr ?? ''}${run.error?.message ?? ''}\n${what} failed. Nothing was laid out.\n`,
  )
  process.exit(70)
}

function lengthwise(words) {
  const run = spawnSync(process.execPath, [join(root, 'apps/cli/dist/lengthwise.mjs'), ...words], { stdio: 'inherit' })
  if (run.status !== 0) process.exit(run.status ?? 70)
}
