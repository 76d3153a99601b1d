// Every benchmark of the project, one after the other, each in a process of its own so that none warms up another.
// `npm run bench -- --json FILE` also writes the figures of each into FILE.search.json and so on.
import { spawnSync } from 'node:child_process'
import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const folder = fileURLToPath(new URL('.', import.meta.url))
const at = process.argv.indexOf('--json')
const json = at < 0 ? null : process.argv[at + 1]
for (const file of readdirSync(folder)
  .filter(name => name.endsWith('.ts') && name !== 'run.ts')
  .sort()) {
  process.stdout.write(`\n${file.replace('.ts', '')}\n`)
  const args = [
    '--import',
    'tsx',
    folder + file,
    ...(json ? ['--json', `${json}.${file.replace('.ts', '')}.json`] : []),
    ...process.argv.slice(2).filter(word => word === '--large'),
  ]
  const { status } = spawnSync(process.execPath, args, { stdio: 'inherit' })
  if (status !== 0) process.exitCode = 1
}
