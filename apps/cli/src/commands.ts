import { createServer } from 'node:http'
import { join } from 'node:path'
import type { Scene } from '@lengthwise/drawing'
import { cuttingMap, pageToSvg, shopNote, slips as slipsScene, toCsv, WORDS } from '@lengthwise/drawing'
import { layoutSchema, NAMED_SIZES, planSchema, readPlan, SAMPLE_PLAN, writeLayout } from '@lengthwise/plan-file'
import type { Progress, Result } from '@lengthwise/planner'
import type { Length, Problem } from '@lengthwise/units'
import { printLength, readLength } from '@lengthwise/units'
import { EXIT, Halt } from './exit.ts'
import { makeFolder, readPlanText, writeWhole } from './files.ts'
import { beside, fonts, page } from './inlined.ts'
import { programFault, runPlan } from './run-plan.ts'
import { table } from './table.ts'
import type { Unit } from './text.ts'
import { layoutPage, widthsLines } from './text.ts'

type Order = Result['order']

interface Common {
  readonly unit?: Unit
  readonly quiet?: boolean
  readonly color: boolean
  readonly force?: boolean
  readonly debug?: boolean
}
interface Planning extends Common {
  readonly effort: 'quick' | 'usual' | 'thorough'
  readonly time?: number
}
interface Paper {
  readonly output: string
  readonly paper: 'a4' | 'letter'
  readonly large?: boolean
}

export function newPlan(file: string, options: Common): void {
  writeWhole(file, SAMPLE_PLAN, options.force ?? false)
  if (file !== '-') talk(options, `A sample plan is in ${file}. Change it, then: lengthwise lay ${file}`)
}

export function check(plan: string, options: Common & { json?: boolean }): void {
  const outcome = readPlan(readPlanText(plan))
  if (options.json)
    process.stdout.write(
      `${JSON.stringify({ ok: outcome.ok, problems: outcome.ok ? [] : outcome.problems }, null, 2)}\n`,
    )
  if (!outcome.ok) {
    if (!options.json) process.stdout.write(`${problemLines(plan, outcome.problems).join('\n')}\n`)
    throw new Halt(EXIT.mistakesInPlan, [])
  }
  if (!options.json) process.stdout.write(`${plan} has no mistakes.\n`)
}

export async function lay(
  plan: string,
  options: Planning & { width?: string; json?: boolean; plain?: boolean; csv?: boolean; svg?: string },
): Promise<void> {
  const order = orderFrom(plan)
  const asked = options.width === undefined ? order : atWidth(order, lengthFrom('--width', options.width, order))
  await withResult(asked, options, {}, (result) => {
    const unit = options.unit ?? result.order.measureIn
    if (options.json) process.stdout.write(writeLayout(result))
    else if (options.plain) process.stdout.write(plainLines(result))
    else if (options.csv) process.stdout.write(toCsv(result, unit))
    else if (options.svg !== undefined) writeSvgs(result, options.svg, unit, options)
    else {
      process.stdout.write(layoutPage(result, unit, boldFor(options)))
      if (plan !== '-') talk(options, `To print it: lengthwise map ${plan} -o map.pdf`)
    }
  })
}

export async function widths(plan: string, options: Planning & { try?: string; json?: boolean }): Promise<void> {
  const order = orderFrom(plan)
  const tried =
    options.try === undefined
      ? order
      : withWidths(
          order,
          options.try.split(',').map((one) => lengthFrom('--try', one.trim(), order)),
        )
  await withResult(tried, options, { compareWidths: true }, (result) => {
    if (options.json) process.stdout.write(`${JSON.stringify(JSON.parse(writeLayout(result)).widths, null, 2)}\n`)
    else process.stdout.write(`${widthsLines(result, options.unit ?? order.measureIn).join('\n')}\n`)
  })
}

export async function map(plan: string, options: Planning & Paper): Promise<void> {
  await withResult(orderFrom(plan), options, {}, async (result) => {
    const scene = cuttingMap(result, {
      paper: options.paper,
      large: options.large ?? false,
      unit: options.unit ?? result.order.measureIn,
    })
    writeWhole(options.output, await pdfOf(scene), options.force ?? false)
    talk(options, `The cutting map is in ${options.output}: ${scene.pages.length} pages. Print it at actual size.`)
  })
}

export async function slips(plan: string, options: Planning & Paper): Promise<void> {
  await withResult(orderFrom(plan), options, { compareWidths: false }, async (result) => {
    const scene = slipsScene(result, {
      paper: options.paper,
      large: options.large ?? false,
      unit: options.unit ?? result.order.measureIn,
    })
    writeWhole(options.output, await pdfOf(scene), options.force ?? false)
    talk(options, `The slips are in ${options.output}.`)
  })
}

/** The PDF library takes a while to load, and most commands print nothing. */
async function pdfOf(scene: Scene): Promise<Uint8Array> {
  const { write } = await import('@lengthwise/pdf')
  return write(scene, fonts())
}

export async function note(plan: string, options: Planning): Promise<void> {
  await withResult(orderFrom(plan), options, {}, (result) => {
    process.stdout.write(shopNote(result, options.unit ?? result.order.measureIn))
  })
}

export function sizes(region: string | undefined, options: Common & { json?: boolean }): void {
  const asked = region?.toLowerCase()
  const rows = NAMED_SIZES.filter(
    (s) => asked === undefined || s.region.toLowerCase().startsWith(asked) || s.name.startsWith(`${asked}-`),
  )
  if (rows.length === 0) {
    const regions = [...new Set(NAMED_SIZES.map((s) => s.region))].join(', ')
    throw new Halt(EXIT.wrongUse, [`No sizes are known for ${region}.`, `Regions: ${regions}.`])
  }
  if (options.json) {
    process.stdout.write(
      `${JSON.stringify(
        rows.map((s) => ({ ...s, size: { width: s.size.width / 320, length: s.size.length / 320 }, unit: 'mm' })),
        null,
        2,
      )}\n`,
    )
    return
  }
  const unit = (name: string): Unit => options.unit ?? (name.startsWith('us-') || name.startsWith('ca-') ? 'in' : 'cm')
  const lines = table(
    ['Name', 'What', 'Size', 'Source', 'Where sources disagree'],
    rows.map((s) => [
      s.name,
      s.words,
      `${printLength(s.size.width, unit(s.name))} × ${printLength(s.size.length, unit(s.name))}`,
      s.source,
      s.disagreement,
    ]),
    [false, false, true, false, false],
  )
  process.stdout.write(
    `${lines.join('\n')}\n\nAcross the bed first. Measure the real thing: names differ between makers, and ease can be set in the plan.\n`,
  )
}

export async function web(options: Common & { output?: string; port: number }): Promise<void> {
  if (options.output !== undefined) {
    writeWhole(options.output, page(), options.force ?? false)
    talk(options, `The page is in ${options.output}. Open it from the disk; it needs no network.`)
    return
  }
  const server = createServer((request, response) => {
    const [type, text] = beside[request.url ?? ''] ?? []
    if (type !== undefined) {
      response.writeHead(200, { 'content-type': type, 'x-content-type-options': 'nosniff' }).end(text)
      return
    }
    if (request.url !== '/' && request.url !== '/index.html') {
      response.writeHead(404, { 'content-type': 'text/plain' }).end('There is only one page: /\n')
      return
    }
    response
      .writeHead(200, { 'content-type': 'text/html; charset=utf-8', 'x-content-type-options': 'nosniff' })
      .end(page())
  })
  await new Promise<void>((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) =>
      reject(
        error.code === 'EADDRINUSE'
          ? new Halt(EXIT.cannotWrite, [
              `Port ${options.port} is taken.`,
              'Choose another: lengthwise web --port 0',
              'Nothing is served.',
            ])
          : error,
      ),
    )
    server.listen(options.port, '127.0.0.1', resolve)
  })
  const address = server.address()
  process.stdout.write(
    `http://127.0.0.1:${typeof address === 'object' && address !== null ? address.port : options.port}/\n`,
  )
  talk(options, 'Serving the page to this machine only. Ctrl-C ends it.')
}

export function schema(file: string): void {
  process.stdout.write(`${JSON.stringify(file === 'plan' ? planSchema() : layoutSchema(), null, 2)}\n`)
}

export function words(term: string | undefined): void {
  const asked = term?.toLowerCase()
  const found = WORDS.filter((w) => asked === undefined || w.term.includes(asked))
  if (found.length === 0)
    throw new Halt(EXIT.wrongUse, [`'${term}' is not in the list of words.`, 'All of them: lengthwise words'])
  process.stdout.write(`${found.map((w) => `${w.term}\n    ${w.meaning} (${w.from})`).join('\n')}\n`)
}

function orderFrom(plan: string): Order {
  const outcome = readPlan(readPlanText(plan))
  if (outcome.ok) return outcome.value
  throw new Halt(EXIT.mistakesInPlan, [...problemLines(plan, outcome.problems), 'Nothing was laid out.'])
}

function problemLines(plan: string, problems: readonly Problem[]): readonly string[] {
  const name = plan === '-' ? 'standard input' : plan
  return problems.flatMap((p) => [
    `${p.path === '' ? '' : `${p.path}: `}${p.message}  (${name}${p.line === undefined ? '' : `, line ${p.line}${p.column === undefined ? '' : `, column ${p.column}`}`})`,
    `    ${p.hint}`,
  ])
}

function lengthFrom(option: string, text: string, order: Order): Length {
  const outcome = readLength(text, { measureIn: order.measureIn })
  if (outcome.ok) return outcome.value
  throw new Halt(EXIT.wrongUse, [
    `${option} ${text}: ${outcome.problems[0]?.message ?? 'not a length'}`,
    outcome.problems[0]?.hint ?? 'Write a length such as 150cm.',
    'Nothing was laid out.',
  ])
}

/** The same order with every bolt offered in these widths; a width the plan knows keeps its price. */
function withWidths(order: Order, asked: readonly Length[]): Order {
  return {
    ...order,
    cloths: order.cloths.map((cloth) =>
      cloth.from === 'bolt'
        ? {
            ...cloth,
            widths: asked.map((width) => cloth.widths.find((w) => w.width === width) ?? { width, price: cloth.price }),
          }
        : cloth,
    ),
  }
}

/** The same order at one width: bolts that come in it lose their others; when none does, every bolt is taken to come in it. */
function atWidth(order: Order, width: Length): Order {
  const comes = (cloth: Order['cloths'][number]): boolean => cloth.widths.some((w) => w.width === width)
  if (!order.cloths.some(comes)) return withWidths(order, [width])
  return {
    ...order,
    cloths: order.cloths.map((cloth) =>
      comes(cloth) ? { ...cloth, widths: cloth.widths.filter((w) => w.width === width) } : cloth,
    ),
  }
}

/** Plans, shows, and ends with the code the contract asks for. */
async function withResult(
  order: Order,
  options: Planning,
  planOptions: { compareWidths?: boolean },
  show: (result: Result) => void | Promise<void>,
): Promise<void> {
  const progress = progressLine(options)
  const { result, interrupted } = await runPlan(order, {
    effort: options.effort,
    seconds: options.time ?? null,
    ...(progress && { onProgress: progress.show }),
    ...planOptions,
  }).catch((error: unknown) => {
    throw programFault(error, options.debug ?? false)
  })
  progress?.clear()
  if (result.status === 'cannot-be-cut' && interrupted && result.proof.status !== 'proved')
    throw new Halt(EXIT.interrupted, ['Interrupted before any layout was found.', 'Nothing was laid out.'])
  if (result.status === 'cannot-be-cut') {
    if ('json' in options && options.json) process.stdout.write(writeLayout(result))
    throw new Halt(EXIT.cannotBeCut, [...result.missing.map((m) => m.words), 'Nothing was laid out.'])
  }
  await show(result)
  if (interrupted) throw new Halt(EXIT.interrupted, ['Interrupted: this is the best found so far.'])
}

/** Progress in words on a terminal, at most once a second, on one line that goes away. */
function progressLine(options: Common): { show: (p: Progress) => void; clear: () => void } | null {
  if (options.quiet || !process.stderr.isTTY) return null
  let last = 0
  let shown = false
  return {
    show: (p) => {
      const now = Date.now()
      if (now - last < 1000) return
      last = now
      shown = true
      process.stderr.write(`\r\x1b[K${p.words}`)
    },
    clear: () => void (shown && process.stderr.write('\r\x1b[K')),
  }
}

function talk(options: Common, text: string): void {
  if (!options.quiet) process.stderr.write(`${text}\n`)
}

function boldFor(options: Common): (text: string) => string {
  const plain =
    !options.color || !process.stdout.isTTY || (process.env.NO_COLOR ?? '') !== '' || process.env.TERM === 'dumb'
  return plain ? (text) => text : (text) => `\x1b[1m${text}\x1b[22m`
}

const plainLines = (result: Result): string =>
  result.cloths
    .flatMap((cloth) =>
      cloth.placed.map((p) =>
        [cloth.name, cloth.piece, p.label, p.piece, p.x / 320, p.y / 320, p.width / 320, p.length / 320].join('\t'),
      ),
    )
    .map((line) => `${line}\n`)
    .join('')

function writeSvgs(result: Result, folder: string, unit: Unit, options: Common): void {
  const scene = cuttingMap(result, { paper: 'a4', unit })
  const wanted = scene.pages.map((p, i) => ({ kind: p.kind, i })).filter((p) => p.kind === 'map' || p.kind === 'whole')
  makeFolder(folder)
  for (const { i } of wanted) writeWhole(join(folder, `page-${i + 1}.svg`), pageToSvg(scene, i), options.force ?? false)
  talk(options, `${wanted.length} pages of the cutting map are in ${folder}.`)
}
