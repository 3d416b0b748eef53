// Runs the bench as one file, put together like the command: what a runner of scripts adds to every function would be timed too.
import { join } from 'node:path'
import { build } from 'esbuild'

const here = import.meta.dirname
const outdir = join(here, 'dist')
await build({
  entryPoints: ['run.ts', 'batch-alone.ts'].map((name) => join(here, name)),
  outdir,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  mainFields: ['module', 'main'],
  external: ['highs'],
  define: { 'import.meta.dirname': JSON.stringify(here) },
  banner: {
    js: "import { createRequire as __createRequire } from 'node:module'; const require = __createRequire(import.meta.url);",
  },
  logLevel: 'warning',
})
await import(join(outdir, 'run.js'))
