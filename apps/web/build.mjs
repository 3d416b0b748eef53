// Builds the page into one file that opens from disk: dist/lengthwise.html
import { createHash } from 'node:crypto'
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'
import { build } from 'vite'
import { packedFonts } from './map-fonts.mjs'
import { oneScript } from './one-script.mjs'

const here = fileURLToPath(new URL('.', import.meta.url))
const { output } = await build({ root: here, configFile: `${here}vite.config.mjs`, logLevel: 'error' })
const chunks = output.filter(({ type }) => type === 'chunk')
const styles = output.filter(({ fileName }) => fileName.endsWith('.css')).map(({ source }) => source)
const script = oneScript(chunks, 'page')
const code = inHtml(withoutHints(script))
const page = [
  // only the script that was built may run: the policy names it by its hash
  ["script-src 'none'", `script-src 'sha256-${createHash('sha256').update(code).digest('base64')}' blob:`],
  ['</head>', `<style>${styles.join('')}</style>\n</head>`],
  // the fonts stand beside the script, so that no worker has to read past them
  ['</body>', `<script type="text/plain" id="fonts">${packedFonts()}</script>\n</body>`],
  ['</body>', `<script type="module">${code}</script>\n</body>`],
].reduce(replaced, readFileSync(`${here}index.html`, 'utf8'))
mkdirSync(`${here}dist`, { recursive: true })
writeFileSync(`${here}dist/lengthwise.html`, page)
const kilobytes = (bytes) => `${Math.round(bytes / 1000)} kB`
console.log(
  `lengthwise.html ${kilobytes(Buffer.byteLength(page))}, compressed ${kilobytes(gzipSync(page, { level: 9 }).length)}`,
)

function replaced(html, [place, text]) {
  if (html.split(place).length !== 2) throw new Error(`build: the page has no one place ${place}`)
  return html.replace(place, () => text)
}

/** What would end a script inside HTML is written in another way. */
function inHtml(code) {
  return code.replace(/<(?=\/script|!--)/gi, '\\x3C')
}

/** Takes out what compilers tell one another in comments; a space stays where words would run together. */
function withoutHints(code) {
  const hints = /([\w$]?)\/\* ?(?:[@#]__(?:PURE|NO_SIDE_EFFECTS)__|istanbul ignore [a-z ]*?) ?\*\/(?=([\w$]?))/g
  return code.replace(hints, (_, before, after) => (before !== '' && after !== '' ? `${before} ` : before))
}
