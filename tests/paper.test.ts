import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { cuttingMap, slips } from '@lengthwise/drawing'
import type { TestContext } from 'vitest'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { cases } from '../packages/drawing/test/cases.ts'
import { drawnSizes, overlaps, segmentsOf } from './paper/drawn.ts'
import { mmOf, opened, printed, textsOf } from './paper/print.ts'

const room = cases['twin room']!

describe.each(['a4', 'letter'] as const)('the twin room on %s', (paper) => {
  const result = room()
  const scene = cuttingMap(result, { paper })
  let bytes: Uint8Array
  beforeAll(async () => {
    bytes = await printed(scene)
  })

  test('pages are A4 (ISO 216) or US Letter (ANSI Y14.1)', async () => {
    const document = await opened(bytes)
    const [width, height] = paper === 'a4' ? [210, 297] : [215.9, 279.4]
    for (let n = 1; n <= document.numPages; n++) {
      const [, , right, top] = (await document.getPage(n)).view
      expect(mmOf(right!)).toBeCloseTo(width, 2)
      expect(mmOf(top!)).toBeCloseTo(height, 2)
    }
    expect(document.numPages).toBe(scene.pages.length)
  })

  test('the check line is 100 mm, 283.46 pt, on the first page and on every map', async () => {
    for (const [i, page] of scene.pages.entries()) {
      if (page.kind !== 'map' && i !== 0) continue
      const long = (await segmentsOf(bytes, i + 1)).filter(
        ([x1, y1, x2, y2]) => y1 === y2 && Math.abs(Math.abs(x2 - x1) - 283.4646) < 0.005,
      )
      expect(long.length, `page ${i + 1}`).toBeGreaterThanOrEqual(1)
    }
  })

  test('pieces are drawn to scale within 0.01 pt', async () => {
    const { checked, wrong } = await drawnSizes(result, scene, bytes)
    expect(wrong).toEqual([])
    expect(checked).toBeGreaterThanOrEqual(9)
  })

  test('all fonts are embedded, and none but ours', async () => {
    const text = Buffer.from(bytes).toString('latin1')
    const names = [...text.matchAll(/\/BaseFont \/(\S+)/g)].map((m) => m[1]!)
    expect(names.length).toBeGreaterThan(0)
    for (const name of names) expect(name).toMatch(/^[A-Z]{6}\+AlegreyaSans-(Regular|Medium|Bold)$/)
    expect([...text.matchAll(/\/FontFile2 /g)].length).toBe(new Set(names).size)
    expect([...text.matchAll(/\/ToUnicode /g)].length).toBe(new Set(names).size)
  })

  test('tagged: language, title, headings, tables with heads, figures that say what they show', async () => {
    const text = Buffer.from(bytes).toString('latin1')
    expect(text).toContain('/Marked true')
    expect(text).toMatch(/\/Lang \(en-GB\)/)
    expect(text).toContain('/DisplayDocTitle true')
    expect(text).toContain('/PrintScaling /None')
    const document = await opened(bytes)
    const { info } = await document.getMetadata()
    expect((info as { Title: string }).Title).toBe('Hillside guest house, twin room')
    const roles = new Map<string, number>()
    for (let n = 1; n <= document.numPages; n++) {
      const onPage = nodes(await (await document.getPage(n)).getStructTree())
      expect(onPage.filter((node) => node.role === 'H1').length, `headings of page ${n}`).toBe(1)
      for (const node of onPage) {
        roles.set(node.role, (roles.get(node.role) ?? 0) + 1)
        if (node.role === 'Figure') expect(node.alt ?? '', `figure on page ${n}`).not.toBe('')
      }
    }
    for (const role of ['H1', 'H2', 'P', 'L', 'LI', 'LBody', 'Table', 'TR', 'TH', 'TD', 'Figure'])
      expect(roles.get(role) ?? 0, role).toBeGreaterThan(0)
    expect(text).toMatch(/\/Scope \/Column/)
  })

  test('no text overlaps another, and none on a map is smaller than 3.5 mm', async () => {
    const pages = await textsOf(bytes)
    for (const [i, items] of pages.entries()) {
      expect(overlaps(items), `page ${i + 1}`).toEqual([])
      if (scene.pages[i]!.kind === 'map')
        // capitals are 0.641 to 0.644 of the type size
        expect(Math.min(...items.map((item) => mmOf(item.size) * 0.6445))).toBeGreaterThanOrEqual(3.499)
    }
  })

  test('the same map gives the same bytes', async () => {
    expect(Buffer.from(await printed(cuttingMap(room(), { paper }))).equals(Buffer.from(bytes))).toBe(true)
  })

  test('under 400 kB', () => {
    expect(bytes.length).toBeLessThan(400_000)
  })
})

test('six pages take less than 400 ms', async () => {
  const result = room()
  const make = async (): Promise<number> => {
    const before = process.cpuUsage()
    const scene = cuttingMap(result, { paper: 'a4' })
    await printed({ ...scene, pages: scene.pages.slice(0, 6) })
    const { user, system } = process.cpuUsage(before)
    return (user + system) / 1000
  }
  await make()
  // processor time, the least of several: what else runs on the machine is not measured
  const times: number[] = []
  for (let i = 0; i < 5; i++) times.push(await make())
  expect(Math.min(...times)).toBeLessThan(400)
})

test('slips name every piece once', async () => {
  const result = room()
  const pages = await textsOf(await printed(slips(result, { paper: 'a4' })))
  const labels = pages
    .flat()
    .filter((item) => mmOf(item.size) > 12)
    .map((item) => item.text)
  expect(labels.sort()).toEqual(
    [...result.pieces.map((p) => p.label), ...result.cloths.flatMap((c) => c.remnants.map((r) => r.name))].sort(),
  )
})

describe('with other programs', () => {
  const folder = mkdtempSync(join(tmpdir(), 'lengthwise-paper-'))
  const file = (name: string): string => join(folder, name)
  beforeAll(async () => {
    for (const paper of ['a4', 'letter'] as const)
      writeFileSync(file(`${paper}.pdf`), await printed(cuttingMap(room(), { paper })))
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  test.for(['a4', 'letter'])('qpdf finds no fault, %s', (paper, ctx) => {
    needs(ctx, 'qpdf')
    const { status, stdout } = spawnSync('qpdf', ['--check', file(`${paper}.pdf`)], { encoding: 'utf8' })
    expect(status, stdout).toBe(0)
    expect(stdout).not.toMatch(/warning/i)
  })

  test.for(['a4', 'letter'])('the check line measures 1000 pixels at 254 dots an inch, %s', (paper, ctx) => {
    needs(ctx, 'pdftoppm')
    const picture = rasterised(file(`${paper}.pdf`), file(paper), ['-r', '254', '-gray'])
    expect(Math.abs(longestRun(picture, RIGHT_FOOT) - 1000)).toBeLessThanOrEqual(2)
  })

  test('printed at 94 % the check line shows it, and the bar scale still measures the cloth', (ctx) => {
    needs(ctx, 'pdftoppm')
    const scene = cuttingMap(room(), { paper: 'a4' })
    const page = scene.pages.findIndex((each) => each.kind === 'map')
    const map = page + 1
    const words = scene.pages[page]!.parts.flatMap((part) => part.marks)
    const label = words.find((mark) => mark.kind === 'text' && mark.text.endsWith('of cloth'))
    if (label?.kind !== 'text') throw new Error('no bar scale')
    // the bar lies left of its words, its lower edge above their line
    const over = (mm: number): number => (label.y - mm) / 297
    const [whole, small] = ['254', '238.76'].map((dpi) =>
      rasterised(file('a4.pdf'), file(`at${dpi}`), ['-r', dpi, '-gray'], map),
    )
    expect(longestRun(small!, RIGHT_FOOT)).toBeLessThan(longestRun(whole!, RIGHT_FOOT) - 50)
    for (const picture of [whole!, small!]) {
      // the bar's outline is 100 cm long, the cut end of the cloth 145.5 cm
      const bar = longestRun(picture, { left: 0.5, right: 0.95, top: over(3.2), bottom: over(0.4) })
      const cloth = longestRun(picture, { left: 0.1, right: 0.51, top: 0.175, bottom: 0.19 })
      expect(Math.abs((cloth / bar) * 100 - 145.5)).toBeLessThan(1)
    }
  })

  test('the three hatches stay apart in black and white, one bit a pixel', (ctx) => {
    needs(ctx, 'pdftoppm')
    const scene = cuttingMap(room(), { paper: 'a4' })
    const map = scene.pages.findIndex((page) => page.kind === 'map')
    const words = scene.pages[map]!.parts.flatMap((part) => part.marks)
    const picture = rasterised(file('a4.pdf'), file('mono'), ['-r', '300', '-mono'], map + 1)
    const share = (name: string): number => {
      const label = words.find((mark) => mark.kind === 'text' && mark.text === name)
      if (label?.kind !== 'text') throw new Error(`no ${name} in the key`)
      // the swatch stands 18 mm left of its words, 14 mm wide
      return inkShare(picture, { x: label.x - 17, y: label.y - 3.5, width: 12, height: 3.6 })
    }
    const [remnant, waste, trim] = [share('Remnant, worth keeping'), share('Waste'), share('Trim')]
    expect(remnant).toBeGreaterThan(0.01)
    expect(waste).toBeGreaterThan(remnant * 1.5)
    expect(trim).toBeGreaterThan(waste * 1.25)
    expect(trim).toBeLessThan(0.4)
  })
})

function needs(ctx: TestContext, program: string): void {
  if (spawnSync(program, ['--version']).error === undefined && spawnSync(program, ['-v']).error === undefined) return
  if (process.env.LENGTHWISE_ALL_TESTS === '1') throw new Error(`this test needs ${program}, which is not installed`)
  ctx.skip(`${program} is not installed`)
}

interface Picture {
  readonly width: number
  readonly height: number
  dark(x: number, y: number): boolean
}

// one page as pixels, dark ones 1 (PGM and PBM, netpbm)
function rasterised(pdf: string, out: string, options: readonly string[], page = 1): Picture {
  execFileSync('pdftoppm', [...options, '-f', `${page}`, '-l', `${page}`, '-singlefile', pdf, out])
  const mono = options.includes('-mono')
  const data = readFileSync(`${out}.${mono ? 'pbm' : 'pgm'}`)
  const head = /^P[45]\s+(\d+)\s+(\d+)\s+(?:255\s)?/.exec(data.subarray(0, 40).toString('latin1'))!
  const [width, height] = [Number(head[1]), Number(head[2])]
  const body = data.subarray(head[0].length)
  const row = Math.ceil(width / 8)
  const dark = (x: number, y: number): boolean =>
    mono ? ((body[y * row + (x >> 3)]! >> (7 - (x & 7))) & 1) === 1 : body[y * width + x]! < 128
  return { width, height, dark }
}

/** A region, in shares of the page. */
interface Region {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

const RIGHT_FOOT: Region = { left: 0.4, right: 1, top: 0.78, bottom: 1 }

// the longest level run of dark pixels that begins inside the region
function longestRun({ width, height, dark }: Picture, region: Region): number {
  let longest = 0
  for (let y = Math.floor(height * region.top); y < height * region.bottom; y++) {
    let run = Number.NEGATIVE_INFINITY
    for (let x = Math.floor(width * region.left); x < width * region.right; x++) {
      run = dark(x, y) ? run + 1 : 0
      longest = Math.max(longest, run)
    }
  }
  return longest
}

// share of dark pixels in a box of millimetres, at 300 dots an inch
function inkShare({ dark }: Picture, box: { x: number; y: number; width: number; height: number }): number {
  const dots = 300 / 25.4
  let count = 0
  let all = 0
  for (let y = Math.round(box.y * dots); y < (box.y + box.height) * dots; y++)
    for (let x = Math.round(box.x * dots); x < (box.x + box.width) * dots; x++) {
      all += 1
      if (dark(x, y)) count += 1
    }
  return count / all
}

interface Node {
  readonly role: string
  readonly alt?: string
  readonly children?: readonly Node[]
}
const nodes = (node: unknown): readonly Node[] => {
  const each = node as Node
  return [...(each.role ? [each] : []), ...(each.children ?? []).flatMap(nodes)]
}
