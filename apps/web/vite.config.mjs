import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'
import { mapFonts } from './map-fonts.mjs'

// a package is taken in only for what is used of it
const treeshake = { moduleSideEffects: (id) => !/\/packages\/[a-z-]+\/src\//.test(id) }

// of the PDF library: WOFF2 fonts, breaking lines, pictures, passwords
const unused = fileURLToPath(new URL('unused.mjs', import.meta.url))
const UNUSED = ['brotli/decompress.js', 'linebreak', 'png-js', '@noble/ciphers/aes']

// `build.mjs` makes one file of what this gives
export default defineConfig({
  base: './',
  // the PDF library asks where it is, for a profile of colours that the map does not use; a worker is nowhere
  define: { 'import.meta.url': '"about:blank"' },
  plugins: [mapFonts()],
  resolve: { alias: Object.fromEntries(UNUSED.map((name) => [name, unused])) },
  build: {
    target: 'es2022',
    write: false,
    assetsInlineLimit: Number.MAX_SAFE_INTEGER,
    cssCodeSplit: false,
    reportCompressedSize: false,
    modulePreload: false,
    rolldownOptions: {
      treeshake,
      input: { page: 'src/main.tsx', plan: 'src/plan-worker.ts', pages: 'src/pages-worker.ts' },
      output: { entryFileNames: '[name].js', chunkFileNames: '[name].js' },
    },
  },
})
