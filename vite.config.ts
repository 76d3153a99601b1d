import { createLogger, defineConfig } from 'vite'

const logger = createLogger('warn')
const warn = logger.warn
// The solver asks for this module only where it runs on Node; in the page it never does.
logger.warn = (text, options) => {
  if (!text.includes('Module "node:module" has been externalized')) warn(text, options)
}

/** The page. The server is built by the same tool from scripts/build.js. */
export default defineConfig({
  root: 'web',
  base: './',
  customLogger: logger,
  build: {
    outDir: '../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    // The structure toolkit is one piece of 1.1 MB, loaded only where a structure is drawn.
    chunkSizeWarningLimit: 1200,
    rollupOptions: { checks: { pluginTimings: false } },
  },
  worker: { format: 'es', rollupOptions: { checks: { pluginTimings: false } } },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
})
