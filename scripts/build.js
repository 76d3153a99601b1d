// Builds the page and the server into dist/, and packs what the browser fetches.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { brotliCompressSync, constants, gzipSync } from 'node:zlib'
import { build } from 'vite'

const root = dirname(dirname(fileURLToPath(import.meta.url)))

await build({ configFile: join(root, 'vite.config.ts'), root: join(root, 'web'), logLevel: 'warn' })
await build({
  configFile: false,
  root,
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  logLevel: 'warn',
  build: {
    ssr: true,
    outDir: 'dist/server',
    emptyOutDir: true,
    target: 'node20',
    rollupOptions: {
      checks: { pluginTimings: false },
      input: { main: 'server/main.ts', traits: 'server/library/bundled-traits.ts' },
      output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
    },
  },
})

// Screening every material against every list takes a second or two; the answer only changes with the data.
const { reckonedTraitsFile, traitsFileName } = await import(join(root, 'dist', 'server', 'traits.js'))
writeFileSync(join(root, 'dist', 'server', traitsFileName), await reckonedTraitsFile())

// The page is served packed; a reader on a slow line gets a quarter of the bytes.
const page = join(root, 'dist', 'web')
for (const entry of readdirSync(page, { recursive: true, withFileTypes: true })) {
  if (!entry.isFile() || !/\.(js|css|html|svg|json|wasm)$/.test(entry.name)) continue
  const file = join(entry.parentPath, entry.name)
  const bytes = readFileSync(file)
  if (bytes.length < 1024) continue
  writeFileSync(`${file}.gz`, gzipSync(bytes, { level: 9 }))
  writeFileSync(`${file}.br`, brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: bytes.length > 1e6 ? 6 : 10 } }))
}
