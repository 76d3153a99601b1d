import { type Browser, chromium } from 'playwright-core'
import { browserPath } from '../../scripts/browser.js'

/** Starts the machine's Chromium without a window and without the connections of its own that a closed network would refuse. */
export async function launchBrowser(): Promise<Browser> {
  const executablePath = browserPath()
  if (executablePath === null) throw new Error('No Chromium for the browser tests: run them by npm test, or name one in CHROMIUM_PATH.')
  return chromium.launch({
    executablePath,
    args: [
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
      ...['--disable-gpu', '--disable-dev-shm-usage', '--disable-quic', '--no-first-run', '--disable-background-networking'],
      ...['--disable-component-update', '--disable-sync'],
    ],
  })
}
