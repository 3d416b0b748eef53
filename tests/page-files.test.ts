import { readFileSync, statSync } from 'node:fs'
import { createRequire } from 'node:module'
import { gzipSync } from 'node:zlib'
import { cuttingMap } from '@lengthwise/drawing'
import { write } from '@lengthwise/pdf'
import { readPlan, readPlanObject, writeLayout } from '@lengthwise/plan-file'
import { plan } from '@lengthwise/planner'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import type { Browser, CDPSession } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { EXAMPLES } from '../apps/web/src/examples.ts'
import {
  answered,
  choosePlan,
  expectNoSidewaysScroll,
  FILE,
  launch,
  missing,
  open,
  openPlan,
  saved,
  served,
} from './page-browser.ts'

/** The page against the command: the same files in, the same bytes out; and against files that mean harm. */
let browser: Browser

beforeAll(async () => {
  if (missing === null) browser = await launch()
})
afterAll(() => browser?.close())

const check = (name: string, steps: () => Promise<void>): void =>
  test(name, async (context) => {
    if (missing !== null) return context.skip(missing)
    await steps()
  })

/** Processor time of the page's own thread so far. */
async function processorSeconds(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics')
  return metrics.find(({ name }) => name === 'ThreadTime')!.value
}

describe('files', () => {
  test('one file of at most 1.6 MB, 600 kB compressed', () => {
    expect(statSync(FILE).size).toBeLessThanOrEqual(1_600_000)
    expect(gzipSync(readFileSync(FILE), { level: 9 }).length).toBeLessThanOrEqual(600_000)
  })

  test.each(EXAMPLES.map((example) => [example.words, example.plan] as const))(
    'the example "%s" can be cut',
    (_, example) => {
      const order = readPlanObject(example)
      expect(order.ok ? [] : order.problems).toEqual([])
      if (order.ok) expect(plan(order.value, { effort: 'quick' }).status).toBe('laid')
    },
  )

  check('layout, map and plan are those of the command, byte for byte', async () => {
    const { page } = await open(browser)
    const order = readPlanObject(EXAMPLES[0].plan)
    if (!order.ok) throw new Error('the first example has problems')
    const result = plan(order.value, {})
    const layout = await saved(page, 'Save the layout (JSON)')
    expect(layout.bytes.toString('utf8')).toBe(writeLayout(result))
    const map = await saved(page, 'Save the cutting map (PDF)')
    const bytes = await write(cuttingMap(result, { paper: 'a4', large: false }), fonts())
    expect(map.bytes.equals(bytes)).toBe(true)
    const text = (await saved(page, 'Save this plan')).bytes.toString('utf8')
    expect(readPlan(text)).toEqual(order)
    await openPlan(page, text)
    expect((await saved(page, 'Save the layout (JSON)')).bytes.equals(layout.bytes)).toBe(true)
  })

  check(
    'Greek, Cyrillic and Vietnamese names are printed; what the typeface of the page lacks is named and boxed',
    async () => {
      const NAMES = 'Ξενώνας στο βουνό, Дом на горе, Nhà nghỉ trên đồi'
      const { page } = await open(browser)
      await page.getByLabel('Name of this plan').fill(NAMES)
      await answered(page)
      const order = readPlanObject({ ...EXAMPLES[0].plan, title: NAMES })
      if (!order.ok) throw new Error('the title is refused')
      const result = plan(order.value, {})
      const bytes = await write(cuttingMap(result, { paper: 'a4', large: false }), fonts())
      expect((await saved(page, 'Save the cutting map (PDF)')).bytes.equals(bytes)).toBe(true)
      expect(await page.getByText('A box is printed in place of').count()).toBe(0)
      await page.getByLabel('Name of this plan').fill('山の宿')
      await answered(page)
      expect(await page.getByText('A box is printed in place of 山 の 宿').isVisible()).toBe(true)
      const { bytes: boxed } = await saved(page, 'Save the cutting map (PDF)')
      const document = await getDocument({ data: new Uint8Array(boxed), verbosity: 0 }).promise
      const { items } = await (await document.getPage(1)).getTextContent()
      expect(items.map((item) => ('str' in item ? item.str : '')).join(' ')).toContain('□□□')
    },
  )

  check('a hostile plan runs nothing, asks for nothing and stays on the page', async () => {
    const { page, requests, faults } = await open(browser)
    for (const text of HOSTILE) {
      await openPlan(page, text)
      await expectNoSidewaysScroll(page)
      expect(await page.evaluate(() => (window as unknown as { harmed?: boolean }).harmed)).toBeUndefined()
      expect(await page.locator('main script, main iframe, main img').count()).toBe(0)
      expect(await page.getByRole('heading', { level: 1 }).isVisible()).toBe(true)
    }
    await openPlan(page, Buffer.alloc(1_200_000, 'a'))
    expect(await page.getByRole('region', { name: 'There is a problem' }).textContent()).toContain('larger than 1 MB')
    expect([...requests, ...faults]).toEqual([])
  })

  check('typing is answered at once while the solver runs, and a plan of 500 things stays in hand', async () => {
    const { page } = await open(browser)
    await choosePlan(page, hundreds(500))
    await page
      .getByRole('button', { name: /^Change it/ })
      .nth(250)
      .click()
    const field = page.getByLabel('What it is').first()
    await field.fill('')
    const session = await page.context().newCDPSession(page)
    await session.send('Performance.enable')
    let slowest = 0
    for (const letter of 'tray cloth') {
      const before = await processorSeconds(session)
      await field.evaluate(async (input: HTMLInputElement, typed: string) => {
        input.value += typed
        input.dispatchEvent(new InputEvent('input', { bubbles: true }))
        await new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn)))
      }, letter)
      slowest = Math.max(slowest, (await processorSeconds(session)) - before)
    }
    expect(await field.inputValue()).toBe('tray cloth')
    expect(slowest).toBeGreaterThan(0)
    expect(slowest).toBeLessThan(0.1)
  })

  check('the best so far can be used without waiting for the end', async () => {
    const { page } = await open(browser)
    await choosePlan(page, hundreds(100))
    await page.getByRole('button', { name: 'Stop and use the best so far' }).click({ timeout: 60_000 })
    expect(await page.locator('.so-far').textContent()).toMatch(/100 things: buy/)
    expect(await page.getByText('It was stopped by hand').isVisible()).toBe(true)
    // so large a map is drawn beside the page, which goes on answering
    await page.getByRole('link', { name: 'Change what you sew' }).click({ timeout: 5_000 })
    await expect.poll(() => page.locator('.figure svg').first().isVisible(), { timeout: 60_000 }).toBe(true)
    expect(await page.getByText('Drawing the map of').count()).toBe(0)
    expect(await page.locator('main').getAttribute('data-answer')).toBe('there')
  })

  check('a served page is kept on the device when asked, and then opens without its server', async () => {
    await served(async (address) => {
      const { page, requests } = await open(browser, {}, address)
      expect(requests).toEqual([])
      await page.context().setOffline(false)
      await page.getByRole('button', { name: 'Keep this page on this device' }).click()
      await expect.poll(() => page.getByText('The page is kept on this device').isVisible()).toBe(true)
      await page.context().setOffline(true)
      await page.reload()
      await answered(page)
      expect(await page.locator('.so-far').textContent()).toContain('buy')
    })
  })

  check('nothing is kept unless asked, and it is forgotten when asked', async () => {
    const { page } = await open(browser)
    await page.getByLabel('Name of this plan').fill('Attic room')
    expect(await page.evaluate(() => localStorage.length)).toBe(0)
    await page.getByRole('button', { name: 'Keep this plan in this browser' }).click()
    expect(await page.evaluate(() => localStorage.length)).toBe(1)
    await page.reload()
    await answered(page)
    expect(await page.getByLabel('Name of this plan').inputValue()).toBe('Attic room')
    await page.getByRole('button', { name: 'Forget what I typed' }).click()
    expect(await page.evaluate(() => localStorage.length)).toBe(0)
    expect(await page.getByLabel('Name of this plan').inputValue()).not.toBe('Attic room')
  })
})

function fonts(): { medium: Uint8Array; bold: Uint8Array } {
  const pdf = createRequire(createRequire(import.meta.url).resolve('@lengthwise/pdf'))
  const weight = (name: string): Uint8Array =>
    new Uint8Array(readFileSync(pdf.resolve(`@expo-google-fonts/alegreya-sans/${name}/AlegreyaSans_${name}.ttf`)))
  return { medium: weight('500Medium'), bold: weight('700Bold') }
}

const SCRIPT = '<img src=x onerror=window.harmed=true><script>window.harmed=true</script>'
const plain = (title: string, cloth: string): string =>
  JSON.stringify({
    plan: 1,
    title,
    make: [{ item: 'rectangle', name: title.slice(0, 60) || 'x', finished: '40 x 60 cm', count: 2, for: title, cloth }],
    cloth: [{ name: cloth, from: 'bolt', widths: ['150 cm'], print: 'plain' }],
  })

const HOSTILE = [
  plain(SCRIPT, '"><svg onload=harmed=1>'),
  plain('\u202ereversed\u202c', 'linen'),
  plain('javascript:window.harmed=true', 'x'.repeat(79)),
  'make: {__proto__: {harmed: true}}\nconstructor: {prototype: {harmed: true}}\n',
  'a: &a [x, x, x, x, x, x, x, x, x]\nb: &b [*a, *a, *a, *a, *a, *a, *a, *a, *a]\nc: &c [*b, *b, *b, *b, *b, *b, *b, *b]\nmake: [*c, *c, *c, *c]\n',
  'make: 7\ncloth: "everything"\nmeasure-in: [in]\ntitle: {a: 1}\n',
  'make:\n  - item: duvet-cover\n    count: 1e999\n    finished: NaN x -4 cm\ncloth:\n  - {name: linen, from: bolt, widths: [9e99 m]}\n',
  '\u0000\u0001\u0002',
]

const hundreds = (count: number): string => `plan: 1
make:
${Array.from({ length: count }, (_, n) => `  - { item: rectangle, name: cloth ${n + 1}, cut: ${20 + (n % 37)} x ${30 + (n % 41)} cm, cloth: linen }`).join('\n')}
cloth:
  - { name: linen, from: bolt, widths: [150 cm, 240 cm], print: plain }
`
