import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { inflateRawSync } from 'node:zlib'
import type { Mark, Scene, Weight } from '@lengthwise/drawing'
import { cuttingMap } from '@lengthwise/drawing'
import type { Fonts } from '@lengthwise/pdf'
import { write } from '@lengthwise/pdf'
import { readPlanObject } from '@lengthwise/plan-file'
import { plan } from '@lengthwise/planner'
import { build } from 'vite'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { EXAMPLES } from '../apps/web/src/examples.ts'

/**
 * The page prints with a PDF library and fonts from which much has been left out. They write what the whole library writes
 * with the whole fonts, byte for byte: the library as published is the independent answer.
 */
interface Thinned {
  readonly write: typeof write
  readonly letters: readonly (readonly [number, number])[]
}

const folder = mkdtempSync(join(tmpdir(), 'thinned-'))
let thinned: Thinned
let packed: Readonly<Record<Weight, string>>

beforeAll(async () => {
  const web = new URL('../apps/web/', import.meta.url)
  const { fonts, mapFonts } = await import(new URL('map-fonts.mjs', web).href)
  const { pdfLibrary } = await import(new URL('pdf-library.mjs', web).href)
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
    plugins: [mapFonts(), ...pdfLibrary()],
    resolve: { alias: { '@lengthwise/pdf': createRequire(import.meta.url).resolve('@lengthwise/pdf') } },
    build: { outDir: folder, emptyOutDir: false, lib: { entry, formats: ['es'], fileName: () => 'built.mjs' } },
  })
  thinned = await import(pathToFileURL(built).href)
  packed = fonts()
})
afterAll(() => rmSync(folder, { recursive: true }))

const check = async (scene: Scene): Promise<void> => {
  const font = (weight: Weight): Uint8Array => new Uint8Array(inflateRawSync(Buffer.from(packed[weight], 'base64')))
  const page = await thinned.write(scene, { medium: font(500), bold: font(700) })
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

  test('a name in each script, digits beside fractions, signs alone', async () => {
    await check(
      written(['Ξενώνας στο βουνό', 'Дом на горе', 'Žluťoučký kůň', '≈ □ → ½', '3\u20448', 'Дом αβγ Haus 1\u204416']),
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

function wholeFonts(): Fonts {
  const pdf = createRequire(createRequire(import.meta.url).resolve('@lengthwise/pdf'))
  const weight = (name: string): Uint8Array =>
    new Uint8Array(readFileSync(pdf.resolve(`@expo-google-fonts/alegreya-sans/${name}/AlegreyaSans_${name}.ttf`)))
  return { medium: weight('500Medium'), bold: weight('700Bold') }
}
