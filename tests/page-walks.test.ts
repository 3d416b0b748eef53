import { readPlan } from '@lengthwise/plan-file'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import type { Browser, Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { answered, launch, missing, open, openPlan, saved, served } from './page-browser.ts'

/** Six walks through the page as a sewist takes them, from disk with the network off. */
let browser: Browser

beforeAll(async () => {
  if (missing === null) browser = await launch()
})
afterAll(() => browser?.close())

const walk = (name: string, steps: () => Promise<void>): void =>
  test(name, async (context) => {
    if (missing !== null) return context.skip(missing)
    await steps()
  })

const wordsOf = async (locator: Locator): Promise<string> => ((await locator.textContent()) ?? '').replace(/\s+/g, ' ')
const answerOf = (page: Page): Promise<string> => wordsOf(page.locator('#buy ~ .answer').first())

describe('walks', () => {
  walk('a first duvet cover: the metres change with the size', async () => {
    const { page, requests, faults } = await open(browser)
    expect(await wordsOf(page.locator('.so-far'))).toMatch(
      /For 1 duvet cover 200\s×\s200\scm and 2 pillowcases 50\s×\s75\scm: buy [\d.]+\sm of the \d+\scm cloth/,
    )
    const before = await answerOf(page)
    await page.getByLabel('Finished width, in centimetres').first().fill('220')
    await page.getByLabel('Finished length, in centimetres').first().fill('230')
    await answered(page)
    expect(await answerOf(page)).not.toBe(before)
    expect(await page.getByText('No shorter layout exists').first().isVisible()).toBe(true)
    await page.getByRole('button', { name: 'Undo the last change' }).first().click()
    await page.getByRole('button', { name: 'Undo the last change' }).first().click()
    await answered(page)
    expect(await answerOf(page)).toBe(before)
    expect([...requests, ...faults]).toEqual([])
  })

  walk(
    'a queen cover in inches from cloth of 45 in: what was typed stays when something else is taken out',
    async () => {
      const { page, requests, faults } = await open(browser)
      await page.getByLabel('Inches').check()
      expect(await page.getByLabel('Finished width, in inches').first().inputValue()).toBe('79')
      await page.getByLabel('Finished width, in inches').first().fill('90')
      await page.getByLabel('Finished length, in inches').first().fill('96')
      await page.getByRole('button', { name: 'Remove pillowcase' }).click()
      await page.getByLabel('Width 1, in inches').fill('45')
      await page.getByLabel('What you call it').fill('quilting cotton')
      await page.getByRole('button', { name: 'Take out width 2' }).click()
      await page.getByLabel('It has a top').check()
      await answered(page)
      expect(await page.getByLabel('Finished width, in inches').first().inputValue()).toBe('90')
      // yards in eighths, as the shop sells; 45 in as it is sold, 97 % of it on the table
      expect(await wordsOf(page.locator('.so-far .lead'))).toMatch(
        /^For 1 duvet cover 90\s×\s96\sin: buy \d+( \d\/[248])?\syd of the 45\sin quilting cotton\.$/,
      )
      expect([...requests, ...faults]).toEqual([])
    },
  )

  walk('a sheet with kept hems: the deep hem becomes the zip edge, one tear at a time', async () => {
    const { page, requests, faults } = await open(browser)
    await start(page, 'A back from an old sheet, its hems kept')
    // a sheet of 230 × 260, hems 10 and 2.5, finger 2, lap 0.4: strip 12 × 203 and body 192 × 203 (worked by hand)
    const sheet = page.getByRole('region', { name: /^Old sheet, 230/ })
    expect(await wordsOf(sheet.getByRole('row', { name: /zip strip/ }))).toContain('203 × 12 cm')
    expect(await wordsOf(sheet.getByRole('row', { name: /body/ }))).toContain('203 × 192 cm')
    const steps = sheet.locator('.steps')
    await steps.getByRole('button', { name: /one at a time/ }).click()
    const count = Number(/of (\d+)/.exec(await wordsOf(steps.getByRole('status')))?.[1])
    expect(count).toBeGreaterThan(1)
    for (let n = 1; n < count; n++) {
      expect(await wordsOf(steps.getByRole('status'))).toContain(`${n} of ${count}`)
      await steps.getByRole('button', { name: /^Done, show/ }).click()
    }
    await steps.getByRole('button', { name: 'Done', exact: true }).click()
    expect(await wordsOf(steps.getByRole('status'))).toContain('All done')
    expect([...requests, ...faults]).toEqual([])
  })

  walk('widths in the shop on a phone: the first screen says how many metres', async () => {
    const { page, requests, faults } = await open(browser, {
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      isMobile: true,
      deviceScaleFactor: 2,
    })
    const inView = async (selector: string): Promise<boolean> =>
      page
        .locator(selector)
        .first()
        .evaluate((element) => element.getBoundingClientRect().bottom <= window.innerHeight)
    expect(await inView('.so-far .lead')).toBe(true)
    expect(await inView('.shop-widths')).toBe(true)
    expect(await inView('#shop-width')).toBe(true)
    await page.getByLabel('Another width, in centimetres').fill('137.5')
    await page.getByRole('button', { name: 'How much?' }).tap()
    await answered(page)
    const row = page.locator('.shop-widths li', { hasText: '137.5' })
    expect(await wordsOf(row)).toMatch(/137\.5\scm\s*[\d.]+\sm/)
    expect([...requests, ...faults]).toEqual([])
  })

  walk('a one-way print: half-drop panels take the 9.5 m worked by hand', async () => {
    const { page, requests, faults } = await open(browser)
    await start(page, 'A print with a top and a half-drop repeat')
    // cover 225 × 220, cloth 140, repeat 64 half-drop, placket 4 + 4: laid length 939, with 5 at each end 949 (worked by hand)
    expect(await answerOf(page)).toContain('9.5')
    // sides of 47 less 1.5 at each edge: seams 44 from either side
    expect(await wordsOf(page.locator('.seams'))).toBe('Seams 44 and 181 cm from the left')
    expect(await page.getByLabel('It has a top').first().isChecked()).toBe(true)
    await page.getByLabel('It looks the same upside down').click()
    await answered(page)
    expect(await page.getByText('Which way does the top of the print face?').count()).toBe(0)
    await page.getByLabel('I do not know', { exact: false }).first().click()
    await answered(page)
    expect(await page.getByText('Which way does the top of the print face?').count()).toBe(1)
    expect([...requests, ...faults]).toEqual([])
  })

  walk('lengths in place of words: what the file says stands in boxes, and an emptied box stays', async () => {
    const { page, requests, faults } = await open(browser)
    await openPlan(page, LENGTHS)
    await page.getByRole('button', { name: 'Change the back, the opening or the seams' }).click()
    expect(await page.getByLabel('Zips to hand, how long, in centimetres').inputValue()).toBe('140; 180')
    const centre = page.getByLabel('Finished width of the centre of the front, in centimetres')
    expect(await centre.inputValue()).toBe('110')
    await page.getByRole('button', { name: 'Change its hems, how it lies and which edges it needs' }).click()
    const depth = page.getByLabel('Depth that the kept hem at the head end needs')
    expect(await depth.inputValue()).toBe('8')
    await depth.fill('')
    expect(await depth.isVisible()).toBe(true)
    await depth.fill('9')
    expect(await page.getByLabel('Head hem must stay').isChecked()).toBe(true)
    expect(await page.getByLabel('Foot hem must stay').isChecked()).toBe(false)
    await page.getByLabel('Foot hem must stay').check()
    await answered(page)
    const told = readPlan((await saved(page, 'Save this plan')).bytes.toString('utf8'))
    expect(told).toEqual(readPlan(LENGTHS.replace('kept-hem: 8', 'kept-hem: 9').replace('{ head: must }', 'must')))
    expect([...requests, ...faults]).toEqual([])
  })

  walk('a broken plan is opened and mended', async () => {
    const { page, requests, faults } = await open(browser)
    const before = await answerOf(page)
    await openPlan(page, BROKEN)
    const summary = page.getByRole('region', { name: 'There is a problem' })
    await expect.poll(() => summary.isVisible()).toBe(true)
    expect(await summary.evaluate((element) => element === document.activeElement)).toBe(true)
    expect(await page.title()).toMatch(/^Problem: /)
    const lines = await summary.getByRole('listitem').allInnerTexts()
    const told = readPlan(BROKEN)
    expect(told.ok).toBe(false)
    if (!told.ok) expect(lines).toHaveLength(told.problems.length)
    await summary.getByRole('link').first().click()
    expect(await page.evaluate(() => document.activeElement?.id)).toMatch(/^at-make-0/)
    await page.getByLabel('Finished width, in centimetres').first().fill('200')
    await page.getByLabel('Width 1, in centimetres').fill('150')
    await answered(page)
    expect(await summary.count()).toBe(0)
    expect(await answerOf(page)).not.toBe(before)
    expect([...requests, ...faults]).toEqual([])
  })

  walk('the map is saved and read back, from disk and from loopback alike', async () => {
    const maps = [await mapFrom(), await served((address) => mapFrom(address))]
    expect(maps[1]!.bytes.equals(maps[0]!.bytes)).toBe(true)
    const text = await textOf(maps[0]!.bytes)
    expect(text).toContain('Cut to the numbers, not to the picture')
    expect(text).toContain('A first duvet cover')
    expect(text).toMatch(/T1/)
  })
})

async function mapFrom(address?: string): Promise<{ readonly name: string; readonly bytes: Buffer }> {
  const { page, requests, faults } = await open(browser, {}, address)
  await page.getByLabel('US Letter').check()
  const map = await saved(page, 'Save the cutting map (PDF)')
  expect(map.name).toBe('a-first-duvet-cover.pdf')
  expect([...requests, ...faults]).toEqual([])
  return map
}

async function textOf(bytes: Buffer): Promise<string> {
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise
  const pages = Array.from({ length: document.numPages }, async (_, n) => {
    const content = await (await document.getPage(n + 1)).getTextContent()
    return content.items.map((item) => ('str' in item ? item.str : '')).join(' ')
  })
  return (await Promise.all(pages)).join('\n')
}

async function start(page: Page, example: string): Promise<void> {
  await page.getByText('Start from an example').click()
  await page.getByRole('button', { name: example }).click()
  await answered(page)
}

const LENGTHS = `plan: 1
make:
  - item: duvet-cover
    finished: 200 x 200 cm
    front: { cloth: linen, joined: centre-and-sides, centre: 110 cm }
    back: { cloth: linen }
    opening: { kind: zip, zips: [140 cm, 180 cm] }
  - item: rectangle
    name: tray cloth
    finished: 40 x 60 cm
    cloth: old sheet
    edges: { head: { kept-hem: 8 cm } }
cloth:
  - { name: linen, from: bolt, widths: [150 cm] }
  - { name: old sheet, from: sheet, size: 230 x 260 cm, hems: { head: 10 cm, foot: 2.5 cm }, keep: { head: must } }
`

const BROKEN = `plan: 1
title: Broken on purpose
make:
  - item: duvet-cover
    finished: 2oo x 200 cm
    front: { cloth: linen }
    opening: zip
cloth:
  - name: linen
    from: bolt
    widths: [wide]
    print: plain
`
