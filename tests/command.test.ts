import { spawn, spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'

const root = join(import.meta.dirname, '..')
const built = join(root, 'apps/cli/dist/lengthwise.mjs')
const folder = mkdtempSync(join(tmpdir(), 'lengthwise-'))
afterAll(() => rmSync(folder, { recursive: true }))

const DEMO = join(root, 'fixtures/guest-house.yaml')

function run(words: readonly string[], input?: string): { code: number | null; out: string; err: string } {
  const { status, stdout, stderr } = spawnSync(process.execPath, [built, ...words], {
    encoding: 'utf8',
    cwd: folder,
    ...(input !== undefined && { input }),
  })
  return { code: status, out: stdout, err: stderr }
}

function planFile(name: string, text: string): string {
  const file = join(folder, name)
  writeFileSync(file, text)
  return file
}

const SMALL = `plan: 1
title: Tray cloths
measure-in: cm
make:
  - item: rectangle
    name: tray cloth
    cut: 40 x 60 cm
    count: 4
    cloth: cotton
cloth:
  - name: cotton
    from: bolt
    widths: [150 cm]
    price: 10.00 per m
    currency: EUR
`

describe('help', () => {
  test('no words: a short help with examples, exit 0, on standard output', () => {
    const { code, out, err } = run([])
    expect(code).toBe(0)
    expect(out).toContain('lengthwise lay my-plan.yaml')
    expect(err).toBe('')
  })

  test('--help and -h anywhere win; no line is longer than 100 columns', () => {
    for (const words of [['--help'], ['lay', '-h'], ['map', '--help']]) {
      const { code, out } = run(words)
      expect(code).toBe(0)
      expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100)
    }
  })

  test('--version prints the version and nothing else', () => {
    expect(run(['--version']).out).toMatch(/^\d+\.\d+\.\d+\n$/)
  })

  test('a command that does not exist: wrong use, the nearest one named, nothing run', () => {
    const { code, out, err } = run(['widhts', DEMO])
    expect(code).toBe(64)
    expect(out).toBe('')
    expect(err).toContain('widths')
  })

  test('words that go against each other are wrong use', () => {
    expect(run(['lay', DEMO, '--json', '--csv']).code).toBe(64)
    expect(run(['map', DEMO]).code).toBe(64)
    expect(run(['lay', DEMO, '--effort', 'much']).code).toBe(64)
    expect(run(['lay', DEMO, '--time', 'soon']).code).toBe(64)
  })
})

describe('plans', () => {
  test('new writes a sample that check accepts, and never over a file without --force', () => {
    const file = join(folder, 'mine.yaml')
    expect(run(['new', file]).code).toBe(0)
    expect(run(['check', file])).toMatchObject({ code: 0 })
    writeFileSync(file, 'my own words')
    const again = run(['new', file])
    expect(again.code).toBe(73)
    expect(again.err).toContain('--force')
    expect(readFileSync(file, 'utf8')).toBe('my own words')
    expect(run(['new', file, '--force']).code).toBe(0)
    expect(readFileSync(file, 'utf8')).toContain('plan: 1')
  })

  test('a plan that is not there: 66, with the next step', () => {
    const { code, err } = run(['lay', 'not-here.yaml'])
    expect(code).toBe(66)
    expect(err).toContain('lengthwise new')
  })

  test('mistakes: 65, each with its line, nothing written', () => {
    const file = planFile(
      'broken.yaml',
      SMALL.replace('count: 4', 'count: -4').replace('cloth: cotton', 'cloth: coton'),
    )
    const { code, out, err } = run(['map', file, '-o', 'broken.pdf'])
    expect(code).toBe(65)
    expect(out).toBe('')
    expect(err).toMatch(/line \d+/)
    expect(err).toContain('cotton')
    expect(err).toContain('Nothing was laid out.')
    expect(existsSync(join(folder, 'broken.pdf'))).toBe(false)
  })

  test('check --json gives the problems as data and the same exit code', () => {
    const file = planFile('broken-2.yaml', SMALL.replace('150 cm', '"1,250"'))
    const { code, out } = run(['check', file, '--json'])
    expect(code).toBe(65)
    const answer = JSON.parse(out) as { ok: boolean; problems: { code: string; path: string; hint: string }[] }
    expect(answer.ok).toBe(false)
    expect(answer.problems.length).toBeGreaterThan(0)
    for (const problem of answer.problems) expect(problem.hint).not.toBe('')
  })

  test('a plan on standard input', () => {
    expect(run(['check', '-'], SMALL).code).toBe(0)
  })

  test('cloth that cannot serve: 1, and what would do, in JSON too', () => {
    const file = planFile(
      'narrow.yaml',
      SMALL.replace('cut: 40 x 60 cm', 'cut: 200 x 160 cm').replace('widths: [150 cm]', 'widths: [150 cm]'),
    )
    const { code, out, err } = run(['lay', file, '--json'])
    expect(code).toBe(1)
    expect(err).toMatch(/160|200/)
    expect((JSON.parse(out) as { missing: unknown[] }).missing.length).toBeGreaterThan(0)
  })
})

describe('hostile input and output', () => {
  const shell = (line: string) => spawnSync('bash', ['-c', line], { encoding: 'utf8', cwd: folder, timeout: 20_000 })
  const command = `"${process.execPath}" "${built}"`

  test('a pipe whose writer is slow is read to its end', () => {
    const file = planFile('slow.yaml', SMALL)
    const { status, stderr } = shell(`(sleep 0.5; cat "${file}"; sleep 0.5; echo) | ${command} check -`)
    expect([status, stderr]).toEqual([0, ''])
  })

  test.each(['-', '/dev/zero'])('what never ends is refused: %s', (plan) => {
    const { status, stderr } = shell(`yes | ${command} check ${plan}`)
    expect(status).toBe(65)
    expect(stderr).toContain('larger than 1 MB')
  })

  test('letters that are not UTF-8: 66, and not a name with other letters', () => {
    writeFileSync(join(folder, 'latin.yaml'), Buffer.from(SMALL.replace('tray', 'tr\u00e4y'), 'latin1'))
    const { code, err } = run(['check', 'latin.yaml'])
    expect(code).toBe(66)
    expect(err).toContain('UTF-8')
  })

  test('a file that was to be a folder: 73', () => {
    const file = planFile('file.yaml', SMALL)
    for (const words of [
      ['map', file, '-o', `${file}/map.pdf`],
      ['lay', file, '--svg', file],
    ])
      expect(run(words)).toMatchObject({ code: 73, err: expect.stringContaining('Nothing was written.') })
  })

  test.runIf(existsSync('/dev/full'))('a full disk: 73 without a stack, and a device stays a device', () => {
    const file = planFile('full.yaml', SMALL)
    const printed = shell(`${command} lay "${file}" > /dev/full`)
    expect(printed.status).toBe(73)
    expect(printed.stderr).toContain('the disk is full')
    expect(printed.stderr).not.toContain('node:')
    expect(run(['map', file, '-o', '/dev/full', '--force']).code).toBe(73)
    expect(statSync('/dev/full').isCharacterDevice()).toBe(true)
  })

  test('more time than a clock can count is all the time there is', () => {
    const { code, err } = run(['lay', planFile('patient.yaml', SMALL), '--plain', '--time', '99999999999s'])
    expect([code, err]).toEqual([0, ''])
  })
})

describe('answers', () => {
  test('lay: what to buy comes first, then widths, then the order', () => {
    const { code, out } = run(['lay', DEMO])
    expect(code).toBe(0)
    const buy = out.indexOf('Buy')
    const widths = out.indexOf('Cloth widths')
    const order = out.indexOf('Tear and cut in this order')
    expect(buy).toBeGreaterThan(0)
    expect(widths).toBeGreaterThan(buy)
    expect(order).toBeGreaterThan(widths)
  })

  test('four tray cloths 40 by 60 from 150 cm: 3 across turned or not, by hand 1.4 m or less', () => {
    // 4 × 60 × 40 = 9600 cm²: three side by side take 120 of 150 cm at 60 cm, the fourth another 60; 120 + 0 spare -> 1.2 m to the exact unit
    const { out } = run(['lay', planFile('small.yaml', SMALL), '--json'])
    const layout = JSON.parse(out) as {
      format: string
      cloths: { proof: { status: string; length: number } }[]
      buy: { what: string; quantity: number }[]
    }
    expect(layout.format).toBe('lengthwise-layout/1')
    expect(layout.cloths[0]?.proof).toMatchObject({ status: 'proved' })
    expect(layout.cloths[0]?.proof.length).toBeLessThanOrEqual(1200)
  })

  test('the same plan gives the same bytes twice', () => {
    expect(run(['lay', DEMO, '--json']).out).toBe(run(['lay', DEMO, '--json']).out)
  })

  test('--csv, --plain and --svg', () => {
    expect(run(['lay', DEMO, '--csv']).out.split('\n').length).toBeGreaterThan(10)
    expect(run(['lay', DEMO, '--plain']).out.split('\n')[0]?.split('\t').length).toBe(8)
    expect(run(['lay', DEMO, '--svg', 'pictures']).code).toBe(0)
    const pictures = readdirSync(join(folder, 'pictures'))
    expect(pictures.length).toBeGreaterThan(0)
    for (const name of pictures) expect(readFileSync(join(folder, 'pictures', name), 'utf8')).toMatch(/^<svg/)
  })

  test('map writes a PDF and says where; the note has at most 40 columns', () => {
    const { code, err } = run(['map', DEMO, '-o', 'map.pdf'])
    expect(code).toBe(0)
    expect(err).toContain('map.pdf')
    expect(readFileSync(join(folder, 'map.pdf')).subarray(0, 5).toString()).toBe('%PDF-')
    const { out } = run(['note', DEMO])
    expect(Math.max(...out.split('\n').map((line) => [...line].length))).toBeLessThanOrEqual(40)
  })

  test('widths --try compares others than the plan names', () => {
    const { code, out } = run(['widths', planFile('small-2.yaml', SMALL), '--try', '112cm,140cm,30cm', '--json'])
    expect(code).toBe(0)
    const rows = JSON.parse(out) as { width: number; possible: boolean; why: string | null }[]
    expect(rows.map((row) => row.width).toSorted((a, b) => a - b)).toEqual([300, 1120, 1400])
    expect(rows.find((row) => row.width === 300)).toMatchObject({ possible: false })
    expect(rows.find((row) => row.width === 300)?.why).toBeTruthy()
  })

  test('no colour codes when standard output is no terminal', () => {
    expect(run(['lay', DEMO]).out).not.toContain('\u001b')
  })
})

describe('the rest', () => {
  test('sizes cites a source in every row', () => {
    const { out } = run(['sizes', '--json'])
    const rows = JSON.parse(out) as { name: string; source: string }[]
    expect(rows.length).toBeGreaterThan(40)
    for (const row of rows) expect(row.source, row.name).not.toBe('')
    expect(run(['sizes', 'atlantis']).code).toBe(64)
  })

  test('schema plan and schema layout are JSON Schema', () => {
    for (const file of ['plan', 'layout']) expect(JSON.parse(run(['schema', file]).out)).toHaveProperty('$schema')
    expect(run(['schema', 'other']).code).toBe(64)
  })

  test('words explains a term; completion prints a script for each shell', () => {
    expect(run(['words', 'selvedge']).out).toContain('long edge')
    expect(run(['words', 'xyzzy']).code).toBe(64)
    for (const shell of ['bash', 'zsh', 'fish']) expect(run(['completion', shell]).out).toContain('widths')
  })

  test('web writes the page whole', () => {
    expect(run(['web', '-o', 'page.html']).code).toBe(0)
    expect(readFileSync(join(folder, 'page.html'), 'utf8')).toContain('Content-Security-Policy')
  })

  test('web serves the page on loopback', async () => {
    const server = spawn(process.execPath, [built, 'web', '--port', '0'], { cwd: folder })
    try {
      const url = await new Promise<string>((resolve) =>
        server.stdout.once('data', (data: Buffer) => resolve(data.toString().trim())),
      )
      expect(url).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/)
      expect(await (await fetch(url)).text()).toContain('<html')
      expect((await fetch(`${url}other`)).status).toBe(404)
    } finally {
      server.kill()
    }
  })

  test('Ctrl-C: the best so far is printed, exit 130', async () => {
    const many = SMALL.replace('count: 4', 'count: 1').replace(
      /make:[\s\S]*?cloth:\n {2}- name/,
      `make:\n${Array.from({ length: 60 }, (_, i) => `  - item: rectangle\n    name: cloth ${i}\n    cut: ${37 + ((i * 29) % 83)} x ${41 + ((i * 53) % 97)} cm\n    count: 2\n    cloth: cotton\n`).join('')}cloth:\n  - name`,
    )
    const child = spawn(
      process.execPath,
      [built, 'lay', planFile('many.yaml', many), '--plain', '--effort', 'thorough'],
      { cwd: folder },
    )
    let out = ''
    child.stdout.on('data', (data: Buffer) => {
      out += data.toString()
    })
    await new Promise((resolve) => setTimeout(resolve, 1500))
    child.kill('SIGINT')
    const code = await new Promise<number | null>((resolve) => child.on('exit', resolve))
    expect(code).toBe(130)
    expect(out.trim().split('\n').length).toBe(120)
  })
})
