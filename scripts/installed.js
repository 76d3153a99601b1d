// Whether the packages that the lock file names are there, whoever installed them.
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

const packagesOf = file => (existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')).packages : {})

/** npm keeps a list of what it has installed; it is compared with the lock file, version by version. Packages for other machines may lack. */
export function isInstalled(root) {
  const wanted = packagesOf(join(root, 'package-lock.json'))
  const there = packagesOf(join(root, 'node_modules', '.package-lock.json'))
  return Object.entries(wanted).every(
    ([path, { version, optional }]) => path === '' || (there[path] === undefined ? optional === true : there[path].version === version),
  )
}
