import { readFileSync } from 'node:fs'
import type { Page } from '@lengthwise/drawing'
import { clothFigure, cuttingMap, shopNote, slips, toCsv, toSvg } from '@lengthwise/drawing'
import { readPlan, writeLayout } from '@lengthwise/plan-file'
import { plan } from '@lengthwise/planner'
import { beforeAll, describe, expect, test } from 'vitest'
import type { Item } from './paper/print.ts'
import { mmOf, printed, textsOf } from './paper/print.ts'

// The demo plan, worked by hand: two covers of 200 x 200 cm finished, eight pillowcases of 50 x 75 cm, backs from two old
// sheets. Fronts 200 + 2 x 1.5 across, 200 + 1.5 + 2 along (the foot lies over the zip). Pillowcases in one piece: 50 + 2 x 1.5
// across, 2 x 75 + 15 + 2 x 4.5 of hems along, which is 53 by 174. 240 cm less 3 % are 232.8 cm: a front beside another or
// beside a pillowcase is too wide, four pillowcases are 212 cm, so 2 x 203 + 2 x 174 = 754 cm, and (754 + 2 x 5) / 0.95 = 804.2:
// 8.1 m in steps of 10 cm.
const order = readPlan(readFileSync(new URL('../fixtures/guest-house.yaml', import.meta.url), 'utf8'))
if (!order.ok) throw new Error(order.problems.map((each) => each.message).join('\n'))
const result = plan(order.value)
const scene = cuttingMap(result, { paper: 'a4' })
let pages: readonly (readonly Item[])[]
beforeAll(async () => {
  pages = await textsOf(await printed(scene))
})

const plain = (words: string): string => words.replace(/\s+/g, ' ').trim()
const paper = (kind: Page['kind']): string =>
  plain(
    pages
      .filter((_, i) => scene.pages[i]!.kind === kind)
      .flat()
      .map((item) => item.text)
      .join(' '),
  )
describe('O1: what to buy', () => {
  test('cloth in the shop’s steps and its cost, zips, ties and thread stand on the first page', () => {
    const words = paper('before')
    // 8.1 x 21.50 = 174.15
    expect(words).toMatch(/Buy 8\.1 m \([^)]+\) of sprig, 240 cm \([^)]+\) wide, 174\.15 EUR/)
    // 200 cm of foot less 10 cm at each end
    expect(words).toContain('Buy 2 zips of 180 cm for the foot of the cover.')
    // 2 covers, 4 ties of 23 cm each: 184 cm
    expect(words).toContain('Buy 1.9 m of cord or tape')
    expect(words).toMatch(/Buy \d+ m of sewing thread\./)
  })
  test('and in the layout file, with what the shop sells in millimetres', () => {
    const { buy } = JSON.parse(writeLayout(result)) as {
      buy: { what: string; quantity: number; cost: number | null }[]
    }
    expect(buy.find((row) => row.what === 'cloth')).toMatchObject({ quantity: 8100, cost: 174.15 })
    expect(buy.find((row) => row.what === 'zip')?.quantity).toBe(2)
  })
})

describe('O2: cloth widths side by side', () => {
  test('length, area, cost, what is not used, seams, and how each compares', () => {
    // on the last page of the sewing order where there is room, else on a page of its own
    const words = `${paper('sewing')} ${paper('widths')}`
    // 8.1 x 2.4 = 19.44 m²; 14.2 x 13.20 = 187.44, 13.29 more; 13 x 14.90 = 193.70, 19.55 more
    expect(words).toMatch(/240 cm 8\.1 m 174\.15 19\.4 m² \d+ % \d+ % 0 Lowest cost/)
    expect(words).toMatch(/140 cm 14\.2 m 187\.44 19\.9 m² \d+ % \d+ % \d+ 13\.29 more/)
    expect(words).toMatch(/160 cm 13 m 193\.70 20\.8 m² \d+ % \d+ % \d+ 19\.55 more/)
  })
  test('a width that cannot serve says why', () => {
    const narrow = readPlan(`
plan: 1
title: Too narrow
measure-in: cm
make: [{ item: rectangle, name: curtain, cut: 150 x 200 cm, cloth: voile, length-runs: along }]
cloth: [{ name: voile, from: bolt, widths: [140 cm, 280 cm], sold-by: 10 cm }]
`)
    if (!narrow.ok) throw new Error(narrow.problems.map((each) => each.message).join('\n'))
    const laid = plan(narrow.value, { effort: 'quick' })
    const words = cuttingMap(laid, { paper: 'a4' }).pages.flatMap((page) =>
      page.parts.flatMap((part) => part.marks.flatMap((mark) => (mark.kind === 'text' ? [plain(mark.text)] : []))),
    )
    expect(words.find((each) => each.startsWith('140 cm: '))).toMatch(/150 cm/)
  })
})

describe('O3: the cutting map', () => {
  test('every tear numbered, hems and selvedges named, waste in two figures, scale, bar scale and check line', () => {
    const words = paper('map')
    for (const division of result.cloths.flatMap((cloth) => cloth.divisions))
      expect(words).toContain(` ${division.flag} `)
    for (const said of ['Selvedge', 'Cut end', 'Bolt end', 'Head hem, kept, 10 deep', 'Foot hem, kept, 2.5 deep'])
      expect(words).toContain(said)
    expect(words).toMatch(/\d+ % not used, of it \d+ % worth keeping\. Cut to the numbers, not to the picture\./)
    for (const page of pages.filter((_, i) => scene.pages[i]!.kind === 'map')) {
      const said = page.map((item) => plain(item.text))
      expect(said.some((each) => /^SCALE 1:(10|20|50)$/.test(each))).toBe(true)
      expect(said).toContain('This line measures 100 mm')
      expect(said.some((each) => /^(1 m|50 cm|2 m) of cloth$/.test(each))).toBe(true)
    }
  })
  test('remnants are named with their size', () => {
    const words = paper('map')
    for (const remnant of result.cloths.flatMap((cloth) => cloth.remnants)) expect(words).toContain(remnant.name)
  })
})

describe('O4: the tear-and-cut order', () => {
  test('each division says from which edge, how far, and what comes away; through hems with shears', () => {
    const words = paper('order')
    expect(words).toContain('Tear across the cloth, 5 cm from the cut end. Takes off 5 cm of trim; the cloth goes on.')
    expect(words).toMatch(/Cut across the cloth, 12 cm from the fold of the head hem/)
    expect(words).toMatch(/from the left selvedge, through hems with shears/)
    for (const { flag } of result.cloths.flatMap((cloth) => cloth.divisions)) expect(words).toContain(`${flag} `)
  })
  test('a box to tick beside every flag, and a flag for every division', () => {
    const steps = scene.pages
      .filter((page) => page.kind === 'order')
      .flatMap((page) => page.parts.filter((part) => part.role === 'list-item'))
    const flags = steps.map(({ marks }) =>
      marks.flatMap((mark) => (mark.kind === 'text' && /^[TC]\d+$/.test(mark.text) ? [mark.text] : [])),
    )
    // boxes to tick are 4.4 mm wide, the frames of flags wider
    const boxes = steps.map(
      ({ marks }) =>
        marks.filter(
          (mark) =>
            mark.kind === 'path' && mark.closed && Math.abs(mark.points[1]![0] - mark.points[0]![0] - 4.4) < 0.01,
        ).length,
    )
    for (const [i, own] of flags.entries()) expect(boxes[i]).toBe(Math.max(own.length, 1))
    expect(flags.flat()).toEqual(result.cloths.flatMap((cloth) => cloth.divisions.map((d) => d.flag)))
  })
})

describe('O5: the sewing order', () => {
  test('every step, with the length of its seam and its allowance', () => {
    const words = paper('sewing')
    for (const step of result.sewing) expect(words.replace(/ /g, '')).toContain(plain(step.text).replace(/ /g, ''))
    // the left side seam of a cover: 200 + 1.5 + 2 cm
    expect(words).toContain('sew the left seam, front to back: 203.5 cm, allowance 1.5 cm')
  })
})

describe('O6: note, slips, table, layout and drawing', () => {
  test('the note fits a telephone: at most 40 letters a line', () => {
    const note = shopNote(result)
    for (const line of note.split('\n')) expect([...line].length).toBeLessThanOrEqual(40)
    expect(note).toContain('8.1 m')
    expect(note).toContain('219 cm or more is enough')
  })
  test('a slip for every piece and remnant, numbers large', async () => {
    const items = (await textsOf(await printed(slips(result, { paper: 'a4' })))).flat()
    const numbers = items.filter((item) => mmOf(item.size) > 12).map((item) => item.text)
    const remnants = result.cloths.flatMap((cloth) => cloth.remnants.map((r) => r.name))
    expect(numbers.sort()).toEqual([...result.pieces.map((p) => p.label), ...remnants].sort())
  })
  test('the table holds every piece with its cut size', () => {
    const rows = toCsv(result).trim().split('\r\n')
    expect(rows.filter((row) => row.startsWith('piece,')).length).toBe(15)
    expect(rows.filter((row) => /^piece,\d+,"?Pillowcase.*,53,174,1,$/.test(row)).length).toBe(8)
  })
  test('the layout file and the drawing show the same pieces', () => {
    const file = JSON.parse(writeLayout(result)) as {
      format: string
      cloths: { placed: { label: string }[] }[]
    }
    expect(file.format).toBe('lengthwise-layout/1')
    const drawn = result.cloths.map((cloth) => clothFigure(result, cloth, { mmPerMetre: 100, smallestCapital: 3.5 }))
    expect(
      drawn.map((figure) =>
        figure.spots
          .filter((spot) => spot.kind === 'piece')
          .map((spot) => spot.name)
          .sort(),
      ),
    ).toEqual(file.cloths.map((cloth) => cloth.placed.map((p) => p.label).sort()))
    for (const figure of drawn) expect(toSvg(figure)).toMatch(/^<svg [^>]*role="img"/)
  })
})
