// One file that runs anywhere Node does: code, typeface and page inside it.
import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'

const here = fileURLToPath(new URL('.', import.meta.url))
if (!existsSync(`${here}../web/dist/lengthwise.html`)) throw new Error('build the page first: node apps/web/build.mjs')

await build({
  entryPoints: [`${here}src/main.ts`],
  outfile: `${here}dist/lengthwise.mjs`,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  // names stay as they are, so that --debug shows them
  minifySyntax: true,
  minifyWhitespace: true,
  mainFields: ['module', 'main'],
  loader: { '.ttf': 'base64', '.html': 'text', '.txt': 'text', '.webmanifest': 'text' },
  // some libraries inside are CommonJS and ask for require
  banner: {
    js: "#!/usr/bin/env node\nimport { createRequire as __createRequire } from 'node:module'; const require = __createRequire(import.meta.url);",
  },
  logLevel: 'warning',
})
