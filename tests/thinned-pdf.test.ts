import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { inflateRawSync } from 'node:zlib'
import type { Mark, Scene } from '@lengthwise/drawing'
import { cuttingMap } from '@lengthwise/drawing'
import type { Fonts } from '@lengthwise/pdf'
import { write } from '@lengthwise/pdf'
import { readPlanObject } from '@lengthwise/plan-file'
import { plan } from '@lengthwise/planner'
import { build } from 'vite'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { EXAMPLES } from '../apps/web/src/examples.ts'
import type { Weights } from '../apps/web/src/fonts-apart.ts'
import { fontsApart } from '../apps/web/src/fonts-apart.ts'

/**
 * The page prints with a PDF library of which parts have been left out, and with fonts of fewer letters. They write what the
 * whole library writes with the whole fonts, byte for byte: the library as published is the independent answer.
 */
interface Thinned {
  readonly write: typeof write
  readonly letters: readonly (readonly [number, number])[]
}

const folder = mkdtempSync(join(tmpdir(), 'thinned-'))
let thinned: Thinned
let fonts: Weights

beforeAll(async () => {
  const web = new URL('../apps/web/', import.meta.url)
  const { packedFonts } = await import(new URL('map-fonts.mjs', web).href)
  const { default: page } = await import(new URL('vite.config.mjs', web).href)
  const entry = join(folder, 'entry.mjs')
  writeFileSync(
    entry,
    "export { write } from '@lengthwise/pdf'\nexport { LETTERS as letters } from 'virtual:map-fonts'\n",
  )
  const built = join(folder, 'built.mjs')
  await build({
    configFile: false,
    root: folder,
    logLevel: 'error',
    plugins: page.plugins,
    resolve: {
      alias: { ...page.resolve.alias, '@lengthwise/pdf': createRequire(import.meta.url).resolve('@lengthwise/pdf') },
    },
    build: { outDir: folder, emptyOutDir: false, lib: { entry, formats: ['es'], fileName: () => 'built.mjs' } },
  })
  thinned = await import(pathToFileURL(built).href)
  fonts = fontsApart(new Uint8Array(inflateRawSync(Buffer.from(packedFonts(), 'base64'))))
})
afterAll(() => rmSync(folder, { recursive: true }))

const check = async (scene: Scene): Promise<void> => {
  const page = await thinned.write(scene, { medium: fonts[500], bold: fonts[700] })
  expect(Buffer.from(page).equals(await write(scene, wholeFonts()))).toBe(true)
}

describe('the thinned PDF library writes the bytes of the whole one', () => {
  test.each(EXAMPLES.map((example) => [example.words, example.plan] as const))('map of "%s"', async (_, example) => {
    const order = readPlanObject(example)
    if (!order.ok) throw new Error('the example has problems')
    const result = plan(order.value, { effort: 'quick' })
    await check(cuttingMap(result, { paper: 'a4', large: false }))
  })

  test('every letter the page can print, alone and beside others, in both weights', async () => {
    const all = thinned.letters.flatMap(([first, last]) =>
      Array.from({ length: last - first + 1 }, (_, n) => String.fromCodePoint(first + n)),
    )
    expect(all.length).toBeGreaterThan(500)
    const beside = [...'AVTofy17(.\u2044αТ']
    const lines = all.map((letter) => beside.map((other) => `${letter}${other}${letter}`).join(letter))
    await check(written([...lines, '1\u20442 m, 23\u204445 in, 7/8 × 3½', 'office fjord affluent Þórr', '']))
  })

  test('every letter has the outline and the width of the whole typeface, in the three weights', () => {
    const fontkit = library('fontkit')
    for (const [weight, name] of Object.entries(NAMES)) {
      const page = fontkit.create(Buffer.from(fonts[Number(weight) as keyof Weights]))
      const whole = fontkit.create(readFileSync(typeface(name)))
      for (const [first, last] of thinned.letters)
        for (let point = first; point <= last; point++) {
          for (const features of [{}, FIGURES]) {
            const [ours, theirs] = [page, whole].map((font) => font.layout(String.fromCodePoint(point), features))
            expect(ours.advanceWidth).toBe(theirs.advanceWidth)
            expect(ours.glyphs[0].path.toSVG()).toBe(theirs.glyphs[0].path.toSVG())
          }
        }
    }
  })

  test('letters keep their distance as in the whole typeface, in the three weights', () => {
    const fontkit = library('fontkit')
    const all = thinned.letters.flatMap(([first, last]) =>
      Array.from({ length: last - first + 1 }, (_, n) => String.fromCodePoint(first + n)),
    )
    // some thousands of the pairs, other ones for each first letter
    const pairs = all.flatMap((one, n) => all.filter((_, m) => (n + 7 * m) % 31 === 0).map((other) => one + other))
    for (const [weight, name] of Object.entries(NAMES)) {
      const page = fontkit.create(Buffer.from(fonts[Number(weight) as keyof Weights]))
      const whole = fontkit.create(readFileSync(typeface(name)))
      const kerned = pairs.filter((pair) => {
        const [ours, theirs] = [page, whole].map((font) => font.layout(pair, FIGURES).positions[0].xAdvance)
        if (ours !== theirs) throw new Error(`${pair} at ${weight}: ${ours} for ${theirs}`)
        return theirs !== whole.layout(pair[0]!, FIGURES).positions[0].xAdvance
      })
      expect(kerned.length).toBeGreaterThan(500)
    }
  })

  test('a name in each script, digits beside fractions, signs alone', async () => {
    await check(
      written([
        'Ξενώνας στο βουνό',
        'Дом на горе',
        'Žluťoučký kůň',
        'Nhà nghỉ trên đồi',
        '≈ □ → ½',
        '3\u20448',
        'Дом αβγ Haus 1\u204416',
      ]),
    )
  })
})

function written(lines: readonly string[]): Scene {
  const marks = lines.flatMap((text, n): Mark[] =>
    ([500, 700] as const).map((weight) => ({
      kind: 'text',
      x: 10,
      y: 10 + n,
      text,
      capital: 2 + (n % 3),
      weight,
      anchor: 'start',
      turn: n % 2 === 0 ? 0 : 90,
    })),
  )
  const page = { kind: 'before', width: 210, height: 297, parts: [{ role: 'paragraph', marks }] } as const
  return { title: 'Letters', language: 'en-GB', paper: 'a4', date: null, pages: [page, page] }
}

// as the page and the map are set
const FIGURES = { lnum: true, tnum: true }

const NAMES = { 400: '400Regular', 500: '500Medium', 700: '700Bold' } as const
const pdf = createRequire(createRequire(import.meta.url).resolve('@lengthwise/pdf'))
const typeface = (name: string): string =>
  pdf.resolve(`@expo-google-fonts/alegreya-sans/${name}/AlegreyaSans_${name}.ttf`)

/** What the PDF library brings along. */
const library = (name: string) => pdf(pdf.resolve(name, { paths: [dirname(pdf.resolve('pdfkit'))] }))

const wholeFonts = (): Fonts => ({
  medium: new Uint8Array(readFileSync(typeface(NAMES[500]))),
  bold: new Uint8Array(readFileSync(typeface(NAMES[700]))),
})
