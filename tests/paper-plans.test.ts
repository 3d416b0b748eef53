import { readdirSync, readFileSync } from 'node:fs'
import type { Page, Scene } from '@lengthwise/drawing'
import { cuttingMap, marksOf } from '@lengthwise/drawing'
import { readPlan } from '@lengthwise/plan-file'
import { plan } from '@lengthwise/planner'
import { expect, test } from 'vitest'
import { clashes, missingLabels, outsiders, struckThrough } from '../packages/drawing/test/faults.ts'
import { drawnSizes, overlaps } from './paper/drawn.ts'
import { mmOf, printed, textsOf } from './paper/print.ts'
import type { Size } from './paper/rehearse.ts'
import { inOrder, numberOf, rehearse } from './paper/rehearse.ts'

// no straight cut goes through this one: four pieces turn round a fifth
const PINWHEEL = `
plan: 1
title: Pinwheel
measure-in: cm
make:
  - { item: rectangle, name: wide, cut: 60 x 40 cm, count: 2, cloth: velvet, length-runs: along }
  - { item: rectangle, name: tall, cut: 40 x 60 cm, count: 2, cloth: velvet, length-runs: along }
  - { item: rectangle, name: middle, cut: 20 x 20 cm, cloth: velvet }
cloth:
  - { name: velvet, from: bolt, widths: [100 cm], sold-by: 10 cm, divide-by: shears }
`

test('cuts that end inside the cloth say where, and the pieces fall out with the last', async () => {
  const order = readPlan(PINWHEEL)
  if (!order.ok) throw new Error(order.problems.map((each) => each.message).join('\n'))
  const result = plan(order.value)
  expect(result.cloths[0]!.divisions.some((d) => d.to - d.from < d.hand.width)).toBe(true)
  const scene = cuttingMap(result, { paper: 'a4' })
  expect([...clashes(scene), ...outsiders(scene), ...struckThrough(scene), ...missingLabels(result, scene)]).toEqual([])
  const { cut, listed, faults } = rehearse(await textsOf(await printed(scene)))
  expect(faults).toEqual([])
  expect([...cut.keys()].sort()).toEqual([...listed.keys()].sort())
})

const FIXTURES = new URL('../fixtures/', import.meta.url)
const plans = readdirSync(FIXTURES).filter((name) => name.endsWith('.yaml'))

test.each(plans)('%s: the paper is sound', async (name) => {
  const order = readPlan(readFileSync(new URL(name, FIXTURES), 'utf8'))
  if (!order.ok) throw new Error(order.problems.map((each) => each.message).join('\n'))
  const result = plan(order.value, { effort: 'quick', compareWidths: false })
  const scene = cuttingMap(result, { paper: 'a4' })
  expect([...clashes(scene), ...outsiders(scene), ...struckThrough(scene), ...missingLabels(result, scene)]).toEqual([])
  // names are said in full or in fewer words, never cut short
  expect(wordsOf(scene, 'map').filter((words) => words.includes('…'))).toEqual([])

  const bytes = await printed(scene)
  expect(bytes.length).toBeLessThan(400_000)
  const pages = await textsOf(bytes)
  for (const [i, page] of scene.pages.entries()) {
    expect(overlaps(pages[i]!), `page ${i + 1}`).toEqual([])
    // everything is printed once, in the order in which it is read, and nothing else is
    const said = marksOf(page).flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
    expect(lettersOf(pages[i]!.map((item) => item.text)), `page ${i + 1}`).toBe(lettersOf(said))
    // capitals are 0.641 to 0.644 of the type size (Alegreya Sans)
    expect(Math.min(...pages[i]!.map((item) => mmOf(item.size) * 0.6445)), `page ${i + 1}`).toBeGreaterThanOrEqual(
      3.499,
    )
  }
  const { checked, wrong } = await drawnSizes(result, scene, bytes)
  expect(wrong).toEqual([])
  expect(checked).toBeGreaterThan(0)

  // whoever has a mark to carry over is told so, once
  const marked = result.cloths.flatMap((c) => c.placed.filter((p) => p.marks.length > 0).map((p) => p.label))
  expect(markedOnPaper(scene).sort()).toEqual(marked.sort())

  const { cut, listed, faults } = rehearse(pages)
  expect(faults).toEqual([])
  expect([...cut.keys()].sort()).toEqual([...listed.keys()].sort())
  for (const [label, size] of cut) {
    // the list gives sizes as they lie on the bed, so a piece may be turned on the cloth
    const [got, wanted] = [size, listed.get(label)!].map((each) => [...each].sort((a, b) => a - b)) as [
      number[],
      number[],
    ]
    expect(Math.abs(got[0]! - wanted[0]!), label).toBeLessThan(0.14)
    expect(Math.abs(got[1]! - wanted[1]!), label).toBeLessThan(0.14)
  }

  // on larger cloth the pieces come out as they should, but for those of which it is said, or it says to stop
  const changed = (other: ReadonlyMap<string, Size>): string[] =>
    [...cut].filter(([label, size]) => /^\d/.test(label) && !sameSize(size, other.get(label))).map(([label]) => label)
  const larger = rehearse(pages, (cloth, [across, along]) => [
    across + (stopsIfWider(scene, cloth) ? 0 : 1.5),
    along + 2,
  ])
  expect(changed(larger.cut).sort()).toEqual([...new Set(toldOfLarger(scene))].sort())
  // and on cloth just as large as it must be all of them do
  const least = rehearse(pages, (cloth, size) => {
    const figures = leastOf(scene, cloth)
    return [Math.min(size[0], figures[0] + 0.2), Math.min(size[1], figures[1] + 0.2)]
  })
  expect(changed(least.cut)).toEqual([])
})

// reckoned by hand: where anything is left over it takes the difference; covers and backs as wide as their cloth cannot
test.each([
  ['guest-house', []],
  ['old-sheets', []],
  ['narrow-cloth', ['1']],
] as const)('%s on larger cloth', (name, pieces) => {
  const order = readPlan(readFileSync(new URL(`${name}.yaml`, FIXTURES), 'utf8'))
  if (!order.ok) throw new Error(order.problems.map((each) => each.message).join('\n'))
  const result = plan(order.value, { effort: 'quick', compareWidths: false })
  expect([...new Set(toldOfLarger(cuttingMap(result, { paper: 'a4' })))]).toEqual(pieces)
})

// the far selvedge of the centre panels carries the line on which the print meets the sides: nothing may come off there
test('cloth with matched seams at both selvedges is not cut down where it is wider', () => {
  const order = readPlan(readFileSync(new URL('half-drop.yaml', FIXTURES), 'utf8'))
  if (!order.ok) throw new Error(order.problems.map((each) => each.message).join('\n'))
  const scene = cuttingMap(plan(order.value, { effort: 'quick', compareWidths: false }), { paper: 'a4' })
  expect(stopsIfWider(scene, 'Vine')).toBe(true)
  expect(toldOfLarger(scene)).toEqual([])
  // sides begin 480 cm from the centres they join: seven whole repeats of 64 cm
  expect(saidBefore(scene)).toMatch(
    /before buying: one is 64.cm \..* Measure the repeat of the vine again: seven are 448.cm/,
  )
})

test('a size of the plan that is cut as it is is not called finished', () => {
  const order = readPlan(readFileSync(new URL('narrow-cloth.yaml', FIXTURES), 'utf8'))
  if (!order.ok) throw new Error(order.problems.map((each) => each.message).join('\n'))
  const scene = cuttingMap(plan(order.value, { effort: 'quick', compareWidths: false }), { paper: 'a4' })
  const words = scene.pages.flatMap((page) => wordsOf(scene, page.kind)).join(' ')
  expect(words).toContain('Cut to a size of your own, sewn as you like: 3.')
  expect(words).not.toMatch(/Bench pad 1, finished/)
  // 5.1 m is bought and 5.1 m laid
  expect(saidBefore(scene)).toContain('the plan leaves nothing to spare')
})

test('a hem that must stay is not cut off where a sheet is longer', () => {
  // two faces of 53 x 76.5, open at the hems of a sheet of just their length
  const order = readPlan(`
plan: 1
measure-in: cm
wash: none
make:
  - { item: pillowcase, style: open-end, faces: separate, finished: 50 x 75 cm, opening-edge: kept-hem, cloth: sheet }
cloth:
  - { name: sheet, from: sheet, size: 60 x 153 cm, hems: { head: 8 cm, foot: 8 cm } }
`)
  if (!order.ok) throw new Error(order.problems.map((each) => each.message).join('\n'))
  const scene = cuttingMap(plan(order.value), { paper: 'a4' })
  expect(toldOfLarger(scene).length).toBe(1)
  expect(saidBefore(scene)).toMatch(/Longer\? Cut \d at the edge without the hem to 76.5 cm\./)
})

const sameSize = (a: Size, b: Size | undefined): boolean =>
  b !== undefined && Math.abs(a[0] - b[0]) < 0.14 && Math.abs(a[1] - b[1]) < 0.14

/** Every word of what is done before the first cut. */
const saidBefore = (scene: Scene): string => wordsOf(scene, 'before').join(' ').replace(/\s+/g, ' ')

/** The pieces that are to be cut down, or will be too large as the cloth is, where the cloth is larger. */
const toldOfLarger = (scene: Scene): string[] =>
  [
    ...saidBefore(scene).matchAll(
      /(?:Wider|Longer)\? (?:Cut (.+?) at the (?:right|far end|edge without the hem) to|([\d, ]+?(?:(?:to|and) \d+)?) will be too)/g,
    ),
  ].flatMap(([, cut, grown]) => inOrder(cut ?? grown!))

/** Is there no telling what to do where a bolt is wider, but to stop? */
const stopsIfWider = (scene: Scene, cloth: string): boolean =>
  new RegExp(`${cloth}: measure the width [^:]*Wider\\? Stop, and lay out again\\.`).test(saidBefore(scene))

/** The least a cloth may measure on the table, as the paper has it. */
function leastOf(scene: Scene, name: string): Size {
  const words = saidBefore(scene)
  const title = name.replace(/ \d+(?:(?:, \d+)* and \d+)?$/, '')
  const figure = String.raw`((?:\d[\d./ ]*))`
  const bolt = (what: string): RegExpExecArray | null =>
    new RegExp(`${title}: measure the ${what} .*?Less than ${figure} (?:cm|mm|in) ?\\?`).exec(words)
  const [width, long] = [bolt('width'), bolt('length')]
  if (width && long) return [numberOf(width[1]!), numberOf(long[1]!)]
  const own = title.toLowerCase()
  const owned = [
    ...words.matchAll(new RegExp(`Measure the ${own}[^.]*\\. Less than ${figure} × ${figure} (?:cm|mm|in)`, 'g')),
  ].at(-1)
  if (!owned) throw new Error(`no least size of ${name}: ${words}`)
  return [numberOf(owned[1]!), numberOf(owned[2]!)]
}

/** The numbers in the list of marks: '3 to 5, 7 and 9: ' in bold before the places. */
function markedOnPaper(scene: Scene): string[] {
  const bold = scene.pages.flatMap((page) =>
    page.parts
      .filter((part) => part.role === 'paragraph')
      .map((part) => part.marks.flatMap((m) => (m.kind === 'text' && m.weight === 700 ? [m.text] : [])).join(' ')),
  )
  return bold
    .filter((words) =>
      /^\d[\d, ]*(?:(?:to|and) [\d, ]+)*(?:, top at (?:left|right))?:$/.test(words.trim().replace(/\u00a0/g, ' ')),
    )
    .flatMap((words) =>
      [...words.matchAll(/(\d+)(?: to (\d+))?/g)].flatMap(([, from, to = from]) =>
        Array.from({ length: Number(to) - Number(from) + 1 }, (_, i) => `${Number(from) + i}`),
      ),
    )
}

// pdf.js cuts lines at wide gaps, so only the letters are compared
const lettersOf = (words: readonly string[]): string => words.join('').replace(/\s/g, '')

test('sheets cut alike share one map and one order, which say what the second gives', async () => {
  const order = readPlan(readFileSync(new URL('../fixtures/old-sheets.yaml', import.meta.url), 'utf8'))
  if (!order.ok) throw new Error(order.problems.map((each) => each.message).join('\n'))
  const result = plan(order.value, { effort: 'quick', compareWidths: false })
  const second = result.cloths.find((cloth) => cloth.name === 'old-sheets' && cloth.piece === 2)!
  const scene = cuttingMap(result, { paper: 'a4' })
  expect(wordsOf(scene, 'map').filter((words) => /Two, cut alike; the second gives /.test(words)).length).toBe(1)
  // it has the flags of the first, and those on paper run on without a gap
  const flags = [...new Set(wordsOf(scene, 'order').filter((words) => /^[TC]\d+$/.test(words)))]
  expect(second.divisions.every(({ flag }) => flags.includes(flag))).toBe(true)
  for (const letter of ['T', 'C']) {
    const numbers = flags.filter((flag) => flag.startsWith(letter)).map((flag) => Number(flag.slice(1)))
    expect(numbers.sort((a, b) => a - b)).toEqual(numbers.map((_, i) => i + 1))
  }
  const pages = await textsOf(await printed(scene))
  const { cut, faults } = rehearse(pages)
  expect(faults).toEqual([])
  for (const piece of second.placed) {
    const [across, along] = cut.get(piece.label)!
    expect(Math.abs(across - piece.width / 3200)).toBeLessThan(0.13)
    expect(Math.abs(along - piece.length / 3200)).toBeLessThan(0.13)
  }
  // a wrong pair and a map left out are noticed
  const spoilt = (from: RegExp, to: string) =>
    rehearse(pages.map((page) => page.map((item) => ({ ...item, text: item.text.replace(from, to) })))).faults
  expect(spoilt(/From the second come \d+ for/, 'From the second come 5 for 99 and')).not.toEqual([])
  expect(rehearse(pages.filter((page) => !/^Cutting map: old sheets/.test(page[0]!.text))).faults).not.toEqual([])
})

const wordsOf = (scene: Scene, kind: Page['kind']): readonly string[] =>
  scene.pages
    .filter((page) => page.kind === kind)
    .flatMap((page) => marksOf(page).flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])))

test('what finds no room for its number or flag on the map is named below it', () => {
  const order = readPlan(`
make:
  - { item: rectangle, name: tie, cut: 3 x 12 cm, count: 40, cloth: linen, length-runs: along }
  - { item: rectangle, name: face, cut: 250 x 140 cm, count: 2, cloth: linen, length-runs: along }
cloth:
  - { name: linen, from: bolt, widths: [280 cm], divide-by: thread }
`)
  if (!order.ok) throw new Error(order.problems.map((each) => each.message).join('\n'))
  const result = plan(order.value, { effort: 'quick', compareWidths: false })
  const scene = cuttingMap(result, { paper: 'a4' })
  expect(wordsOf(scene, 'map').filter((words) => words.startsWith('No room here for '))).not.toEqual([])
  expect([...clashes(scene), ...outsiders(scene)]).toEqual([])
  expect(missingLabels(result, scene).filter((label) => /^[TC]/.test(label))).toEqual([])
})
