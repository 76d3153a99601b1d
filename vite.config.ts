import { defineConfig } from 'vite'

/** The page. The server is built by the same tool from scripts/build.js. */
export default defineConfig({
  root: 'web',
  base: './',
  build: { outDir: '../dist/web', emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 600 },
  worker: { format: 'es' },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
})
