// Where the browser for the end-to-end tests is, and how it gets here.
import { existsSync } from 'node:fs'

const candidates = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
]

/** Path of a Chromium, or null. CHROMIUM_PATH goes first. */
export const browserPath = () => [process.env.CHROMIUM_PATH, ...candidates].find(path => path && existsSync(path)) ?? null

/** Installs Debian's Chromium where that is possible; else tells how to name one. `command(name, args)` runs a program or ends the run. */
export function installBrowser(command) {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) {
    process.stderr.write(
      'No Chromium found for the browser tests. Install Chromium or Chrome, or name one: CHROMIUM_PATH=/path/to/chromium npm test\n',
    )
    process.exit(1)
  }
  // The lock option waits for another apt that may be running.
  const lock = ['-o', 'DPkg::Lock::Timeout=300']
  command('apt-get', [...lock, '-qq', 'update'])
  command('apt-get', [...lock, '-qq', 'install', '-y', '--no-install-recommends', 'chromium', 'fonts-dejavu-core'])
}
