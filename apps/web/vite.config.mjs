import { defineConfig } from 'vite'
import { mapFonts } from './map-fonts.mjs'
import { pdfLibrary } from './pdf-library.mjs'
import { planLibraries } from './plan-libraries.mjs'

// a package is taken in only for what is used of it
const treeshake = { moduleSideEffects: (id) => !/\/packages\/[a-z-]+\/src\//.test(id) }

// `build.mjs` makes one file of what this gives
export default defineConfig({
  base: './',
  plugins: [mapFonts(), ...pdfLibrary(), ...planLibraries()],
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
