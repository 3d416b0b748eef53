import { existsSync, readFileSync } from 'node:fs'
import { createServer } from 'node:http'
import { createRequire } from 'node:module'
import type { AddressInfo } from 'node:net'
import { fileURLToPath, pathToFileURL } from 'node:url'
import type { Browser, BrowserContextOptions, Download, Page } from 'playwright-core'
import { chromium } from 'playwright-core'
import { expect } from 'vitest'

/** The built page and the browser that opens it. */
export const FILE = fileURLToPath(new URL('../apps/web/dist/lengthwise.html', import.meta.url))
const CHROMIUM = '/usr/bin/chromium'

/** Why the walks cannot be walked here; null where they can. With LENGTHWISE_ALL_TESTS=1 nothing is passed over. */
export const missing: string | null =
  process.env.LENGTHWISE_ALL_TESTS === '1' || existsSync(CHROMIUM) ? null : `there is no ${CHROMIUM} on this machine`

export const launch = (): Promise<Browser> => chromium.launch({ executablePath: CHROMIUM })

/** An open page that notes every request and every fault; the network is off. */
export interface Opened {
  readonly page: Page
  readonly requests: readonly string[]
  readonly faults: readonly string[]
}

export async function open(
  browser: Browser,
  options: BrowserContextOptions = {},
  address = fileAddress(),
): Promise<Opened> {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 900 },
    acceptDownloads: true,
    ...options,
  })
  const page = await context.newPage()
  const requests: string[] = []
  const faults: string[] = []
  page.on('request', (request) => {
    if (!/^(data|blob):/.test(request.url()) && request.url() !== address) requests.push(request.url())
  })
  page.on('pageerror', (fault) => faults.push(fault.message))
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text())
  })
  await page.goto(address)
  await context.setOffline(true)
  await answered(page)
  return { page, requests, faults }
}

export const fileAddress = (): string => pathToFileURL(FILE).href

const beside = (name: string): string => fileURLToPath(new URL(`../apps/web/served/${name}`, import.meta.url))
const SERVED: Readonly<Record<string, readonly [type: string, file: string]>> = {
  '/lengthwise.webmanifest': ['application/manifest+json', beside('lengthwise.webmanifest')],
  '/offline.js': ['text/javascript', beside('offline.txt')],
}

/** The page on loopback, as the command serves it. */
export async function served<T>(use: (address: string) => Promise<T>): Promise<T> {
  const server = createServer((request, response) => {
    const [type, file] = SERVED[request.url ?? ''] ?? ['text/html; charset=utf-8', FILE]
    response.setHeader('content-type', type)
    response.end(readFileSync(file))
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  try {
    return await use(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`)
  } finally {
    server.close()
  }
}

/** Waits until there is an answer, or problems, for the plan as it stands now. */
export async function answered(page: Page): Promise<void> {
  // the pause for typing out is over before the page is believed
  await page.waitForTimeout(300)
  await page.waitForFunction(
    () => document.querySelector('[data-answer]')?.getAttribute('data-answer') !== 'working',
    null,
    {
      timeout: 60_000,
    },
  )
}

export async function saved(page: Page, button: string): Promise<{ readonly name: string; readonly bytes: Buffer }> {
  const [download] = (await Promise.all([
    page.waitForEvent('download', { timeout: 60_000 }),
    page.getByRole('button', { name: button }).click(),
  ])) as [Download, unknown]
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) }
}

/** Opens a plan from text, as a file chosen by hand, and waits for its answer. */
export async function openPlan(page: Page, text: string | Buffer): Promise<void> {
  await choosePlan(page, text)
  await answered(page)
}

/** The same without waiting. */
export async function choosePlan(page: Page, text: string | Buffer, name = 'opened.yaml'): Promise<void> {
  await page.getByLabel('Open a plan you saved').setInputFiles({
    name,
    mimeType: 'application/yaml',
    buffer: typeof text === 'string' ? Buffer.from(text) : text,
  })
}

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js')
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']

/** The rules of WCAG 2.2 A and AA that axe-core can check hold for the page as it stands. */
export async function expectAccessible(page: Page): Promise<void> {
  // the policy of the page lets no foreign script in, so it comes by the debugger's way
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(readFileSync(AXE, 'utf8'))
  const found = await page.evaluate(async (tags) => {
    const axe = (window as unknown as { axe: { run(root: Document, options: object): Promise<AxeResults> } }).axe
    interface AxeResults {
      readonly violations: readonly { readonly id: string; readonly nodes: readonly { readonly html: string }[] }[]
    }
    const results = await axe.run(document, { runOnly: { type: 'tag', values: tags } })
    return results.violations.map((v) => `${v.id}: ${v.nodes.map((node) => node.html.slice(0, 160)).join(' | ')}`)
  }, TAGS)
  expect(found).toEqual([])
}

/** Nothing reaches beyond the right edge; what may be wider scrolls inside itself. */
export async function expectNoSidewaysScroll(page: Page): Promise<void> {
  const [content, view] = await page.evaluate(() => [document.documentElement.scrollWidth, window.innerWidth])
  expect(content).toBeLessThanOrEqual(view!)
}
