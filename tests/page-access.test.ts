import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { answered, expectAccessible, expectNoSidewaysScroll, launch, missing, open, openPlan } from './page-browser.ts'

/** WCAG 2.2 AA: what axe-core can see on every state, and what it cannot: targets, reflow, the keyboard, forced colours. */
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

describe('the page for everyone', () => {
  check('axe finds nothing on any state', async () => {
    const { page } = await open(browser)
    await expectAccessible(page)
    await openAll(page)
    await expectAccessible(page)
    await page
      .getByRole('button', { name: /one at a time/ })
      .first()
      .click()
    await page
      .getByRole('button', { name: /^Bigger/ })
      .first()
      .click()
    await expectAccessible(page)
    await page.getByLabel('Finished width, in centimetres').first().fill('wide')
    await answered(page)
    await page.keyboard.press('Tab')
    await expectAccessible(page)
    await page.getByLabel('Finished width, in centimetres').first().fill('900')
    await answered(page)
    await expectAccessible(page)
    await openPlan(page, 'make: [')
    await expectAccessible(page)
  })

  check(
    'everything that can be pressed is at least 44 pixels high, and wide, apart from words in a sentence',
    async () => {
      const { page } = await open(browser, { viewport: { width: 390, height: 844 } })
      await openAll(page)
      const small = await page.evaluate(() =>
        [...document.querySelectorAll('button, select, summary, a, input, label.option, label.open')].flatMap(
          (element) => {
            // a radio, a tick box and the file box are pressed by their whole label
            const target = element.closest('label.option, label.open') ?? element
            const box = target.getBoundingClientRect()
            if (box.width === 0 || element.matches('.skip') || (box.height >= 44 && box.width >= 44)) return []
            return [`${element.outerHTML.slice(0, 90)} ${Math.round(box.width)} × ${Math.round(box.height)}`]
          },
        ),
      )
      expect(small).toEqual([])
    },
  )

  check('at 320 pixels and at 400 % nothing scrolls sideways', async () => {
    for (const viewport of [
      { width: 320, height: 640 },
      { width: 320, height: 256 },
    ]) {
      const { page } = await open(browser, { viewport, deviceScaleFactor: viewport.height === 256 ? 4 : 1 })
      await openAll(page)
      await expectNoSidewaysScroll(page)
      // the spacing of WCAG 1.4.12
      await page.evaluate(() => {
        for (const element of document.querySelectorAll<HTMLElement>('body *')) {
          element.style.lineHeight = '1.5'
          element.style.letterSpacing = '0.12em'
          element.style.wordSpacing = '0.16em'
        }
      })
      await expectNoSidewaysScroll(page)
    }
  })

  check('a whole order by keyboard alone', async () => {
    const { page } = await open(browser)
    await page.keyboard.press('Tab')
    expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('Go to what to buy')
    await reach(page, 'at-make-0-finished')
    await page.keyboard.type('135')
    await reach(page, 'at-cloth-0-widths-0')
    await page.keyboard.type('114')
    await answered(page)
    expect(await page.locator('.shop-widths').textContent()).toContain('114')
    await reachText(page, /one at a time/)
    await page.keyboard.press('Enter')
    expect(await page.locator('.steps').first().textContent()).toMatch(/1 of \d+/)
    await reachText(page, /^1, show it/)
    await page.keyboard.press('Space')
    expect(await page.locator('.found').count()).toBe(1)
    await reachText(page, /^Save the cutting map/)
    const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')])
    expect(download.suggestedFilename()).toMatch(/\.pdf$/)
  })

  check('every control shows where the keyboard is', async () => {
    const { page } = await open(browser)
    const without: string[] = []
    for (let n = 0; n < 60; n++) {
      await page.keyboard.press('Tab')
      const bare = await page.evaluate(() => {
        const element = document.activeElement
        const shown = element?.closest('label.open') ?? element
        if (!shown || shown === document.body) return null
        return getComputedStyle(shown).outlineStyle === 'none' ? shown.outerHTML.slice(0, 100) : null
      })
      if (bare !== null) without.push(bare)
    }
    expect(without).toEqual([])
  })

  check('in forced colours and without motion everything is still drawn', async () => {
    const { page } = await open(browser, { forcedColors: 'active', colorScheme: 'dark', reducedMotion: 'reduce' })
    const drawn = await page.evaluate(() => {
      const colour = (selector: string, property: 'stroke' | 'color' | 'fill' | 'borderTopColor'): string =>
        getComputedStyle(document.querySelector(selector)!)[property]
      const paper = getComputedStyle(document.documentElement).backgroundColor
      return {
        paper,
        line: colour('.figure svg [stroke]', 'stroke'),
        cloth: colour('.lying g', 'stroke'),
        word: colour('.figure svg text', 'fill'),
        box: colour('input[type=text]', 'borderTopColor'),
        ticked: getComputedStyle(document.querySelector('input:checked')!, '::after').backgroundColor,
      }
    })
    for (const [what, colour] of Object.entries(drawn))
      if (what !== 'paper') expect(`${what} ${colour}`).not.toBe(`${what} ${drawn.paper}`)
    const moving = await page.evaluate(() => document.getAnimations().length)
    expect(moving).toBe(0)
    await expectAccessible(page)
  })

  check('headings go down one step at a time, and every region has a name', async () => {
    const { page } = await open(browser)
    const levels = await page.evaluate(() =>
      [...document.querySelectorAll('h1, h2, h3, h4')].map((h) => Number(h.tagName[1])),
    )
    expect(levels.filter((level) => level === 1)).toHaveLength(1)
    expect(levels.filter((level, n) => n > 0 && level > levels[n - 1]! + 1)).toEqual([])
    const order = await page.getByRole('heading', { level: 2 }).allInnerTexts()
    expect(order).toEqual([
      'What are you sewing?',
      'What cloth?',
      'What to buy',
      'Where to cut',
      'Take it to the table',
    ])
  })
})

/** Everything that can be unfolded is unfolded. */
async function openAll(page: Page): Promise<void> {
  for (const summary of await page.locator('summary').all()) await summary.click()
  const closed = page.locator('button[aria-expanded="false"]')
  while ((await closed.count()) > 0) await closed.first().click()
  await answered(page)
}

/** Tabs on until the element with this id has the keyboard. */
const reach = (page: Page, id: string): Promise<void> => tabUntil(page, (active) => active.id === id, id)
const reachText = (page: Page, text: RegExp): Promise<void> =>
  tabUntil(page, (active) => text.test(active.text), String(text))

async function tabUntil(
  page: Page,
  there: (active: { readonly id: string; readonly text: string }) => boolean,
  what: string,
): Promise<void> {
  for (let n = 0; n < 200; n++) {
    await page.keyboard.press('Tab')
    const active = await page.evaluate(() => ({
      id: document.activeElement?.id ?? '',
      text: document.activeElement?.textContent ?? '',
    }))
    if (there(active)) return
  }
  throw new Error(`the keyboard never reached ${what}`)
}
