// Makes a checkout ready: packages, build and, on request, a browser for the tests. Only what has changed is done again.
// Plain JavaScript on Node's own modules, since nothing is installed yet when it first runs.
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { browserPath, installBrowser } from './browser.js'
import { isInstalled } from './installed.js'

const root = dirname(dirname(fileURLToPath(import.meta.url)))
const wants = new Set(process.argv.slice(2))
// Asides go to stderr, so that the output of a command that ran this first stays its own.
const say = text => wants.has('quiet') || process.stderr.write(`waybench: ${text}\n`)

const [major, minor] = process.versions.node.split('.').map(Number)
if (major < 20 || (major === 20 && minor < 19)) {
  process.stderr.write(
    `Waybench needs Node.js 20.19 or later; this is ${process.versions.node}. Install a newer one from nodejs.org or your system.\n`,
  )
  process.exit(1)
}

const digest = files => {
  const hash = createHash('sha256')
  for (const file of files)
    hash
      .update(file)
      .update('\0')
      .update(readFileSync(join(root, file)))
      .update('\0')
  return hash.digest('hex')
}

function* filesBelow(folder) {
  for (const entry of readdirSync(join(root, folder), { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1))) {
    const path = join(folder, entry.name)
    if (entry.isDirectory()) yield* filesBelow(path)
    else yield path
  }
}

function step(name, stamp, done, run) {
  const file = join(root, '.cache', `${name}.stamp`)
  if (done() && existsSync(file) && readFileSync(file, 'utf8') === stamp) return
  run()
  mkdirSync(dirname(file), { recursive: true })
  writeFileSync(file, stamp)
}

function command(name, args) {
  // What a child prints goes to stderr too, for the same reason.
  const result = spawnSync(name, args, { cwd: root, stdio: ['ignore', 2, 2], shell: process.platform === 'win32' })
  if (result.status !== 0) {
    process.stderr.write(
      `waybench: "${name} ${args.join(' ')}" failed${result.error ? `: ${result.error.message}` : ''}; its own words stand above.\n`,
    )
    process.exit(1)
  }
}

if (!isInstalled(root)) {
  say('installing packages (about 15 seconds) ...')
  command('npm', ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'])
}

if (wants.has('build')) {
  const sources = [
    'vite.config.ts',
    'scripts/build.js',
    'package-lock.json',
    ...filesBelow('core'),
    ...filesBelow('server'),
    ...filesBelow('web'),
  ]
  step(
    'build',
    digest(sources),
    () => existsSync(join(root, 'dist', 'server', 'main.js')) && existsSync(join(root, 'dist', 'web', 'index.html')),
    () => {
      say('building the server and the page (a few seconds) ...')
      command(process.execPath, ['scripts/build.js'])
    },
  )
}

if (wants.has('browser') && !browserPath()) {
  say('installing Chromium for the browser tests (about 30 seconds) ...')
  installBrowser(command)
  if (!browserPath() || !statSync(browserPath()).isFile()) process.exit(1)
}
