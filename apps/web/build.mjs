// Builds the page into one file that opens from disk: dist/lengthwise.html
import { createHash } from 'node:crypto'
import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'
import { build } from 'vite'

const here = fileURLToPath(new URL('.', import.meta.url))
await build({ root: here, configFile: `${here}vite.config.mjs`, logLevel: 'error' })

// only the scripts that were built may run: the policy names them by their hashes
const built = `${here}dist/index.html`
const html = withoutHints(readFileSync(built, 'utf8'))
const hashes = [...html.matchAll(/<script[^>]*>([\s\S]*?)<\/script>/g)].map(
  ([, code]) => `'sha256-${createHash('sha256').update(code).digest('base64')}'`,
)
const page = html.replace("script-src 'none'", `script-src ${hashes.join(' ')} blob:`)
if (page === html) throw new Error('build: the page has no policy to complete')
writeFileSync(`${here}dist/lengthwise.html`, page)
rmSync(built)
const kilobytes = (bytes) => `${Math.round(bytes / 1000)} kB`
console.log(
  `lengthwise.html ${kilobytes(Buffer.byteLength(page))}, compressed ${kilobytes(gzipSync(page, { level: 9 }).length)}`,
)

/** Takes out what compilers tell one another in comments; a space stays where words would run together. */
function withoutHints(code) {
  const hints = /([\w$]?)\/\* ?(?:[@#]__(?:PURE|NO_SIDE_EFFECTS)__|istanbul ignore [a-z ]*?) ?\*\/(?=([\w$]?))/g
  return code.replace(hints, (_, before, after) => (before !== '' && after !== '' ? `${before} ` : before))
}
