/** Path of a Chromium, or null. CHROMIUM_PATH goes first. */
export function browserPath(): string | null
/** Installs Debian's Chromium where that is possible; else tells how to name one. */
export function installBrowser(command: (name: string, args: readonly string[]) => void): void
