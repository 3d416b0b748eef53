import { defineConfig } from 'vite'
import { viteSingleFile } from 'vite-plugin-singlefile'
import { mapFonts } from './map-fonts.mjs'
import { pdfLibrary } from './pdf-library.mjs'
import { planLibraries } from './plan-libraries.mjs'

// a package is taken in only for what is used of it: the page itself holds no solver
const treeshake = { moduleSideEffects: (id) => !/\/packages\/[a-z-]+\/src\//.test(id) }

export default defineConfig({
  base: './',
  plugins: [mapFonts(), viteSingleFile({ removeViteModuleLoader: true })],
  worker: {
    format: 'iife',
    plugins: () => [mapFonts(), ...pdfLibrary(), ...planLibraries()],
    rolldownOptions: { treeshake },
  },
  build: {
    target: 'es2022',
    outDir: 'dist',
    emptyOutDir: false,
    assetsInlineLimit: Number.MAX_SAFE_INTEGER,
    cssCodeSplit: false,
    reportCompressedSize: false,
    rolldownOptions: { treeshake },
  },
})
