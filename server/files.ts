import { closeSync, openSync, readSync, realpathSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs'
import type { Problem } from '../core/problem/problem.ts'
import { Refusal } from './refusal.ts'

/** Ten times a library of ten thousand preparations. Devices and pipes without end stop here too. */
const mostBytes = 200_000_000
const chunkBytes = 1_000_000

const reasons: Readonly<Record<string, string>> = {
  EISDIR: 'it is a folder',
  EACCES: 'it may not be read or written here',
  EPERM: 'it may not be read or written here',
  EROFS: 'the disk may only be read',
  ENOSPC: 'there is no room left on the disk',
  EDQUOT: 'there is no room left for you on the disk',
  ENOTDIR: 'part of its path is no folder',
  ENAMETOOLONG: 'its name is too long',
  EMFILE: 'too many files are open',
  EBUSY: 'another program holds it',
  ELOOP: 'its links lead round in a circle',
}

type Doing = 'read' | 'written'

function fault(path: string, doing: Doing, reason: string): Refusal {
  const shown = path === '' ? 'A file without a name' : path
  const problem: Problem = {
    code: `file-not-${doing}`,
    where: path === '' ? [] : [path],
    what: `${shown} cannot be ${doing}: ${reason}.`,
    why: 'Nothing was changed.',
    cure: doing === 'read' ? 'Check the name and the folder you are in.' : 'Name another place.',
  }
  return new Refusal('bad-input', [problem])
}

function faultOf(path: string, doing: Doing, error: unknown): Refusal {
  if (error instanceof Refusal) return error
  const { code, message } = error as NodeJS.ErrnoException
  const missing = doing === 'read' ? 'there is no such file' : 'there is no such folder'
  return fault(path, doing, code === 'ENOENT' ? missing : (reasons[code ?? ''] ?? message))
}

/**
 * The text of a file, a pipe included.
 *
 * @throws Refusal where it cannot be read, is too large, or is not UTF-8: a wrong letter in a name must not pass unseen
 */
export function readText(path: string): string {
  try {
    const descriptor = openSync(path, 'r')
    try {
      return textOf(path, bytesOf(path, descriptor))
    } finally {
      closeSync(descriptor)
    }
  } catch (error) {
    throw faultOf(path, 'read', error)
  }
}

function bytesOf(path: string, descriptor: number): Buffer {
  const parts: Buffer[] = []
  for (let size = 0; ; ) {
    const part = Buffer.allocUnsafe(chunkBytes)
    const count = readSync(descriptor, part)
    if (count === 0) return Buffer.concat(parts)
    size += count
    if (size > mostBytes) throw fault(path, 'read', `it is larger than ${mostBytes / 1e6} MB`)
    parts.push(part.subarray(0, count))
  }
}

/** Bytes as text. @throws Refusal for what is no UTF-8 */
export function textOf(path: string, bytes: Uint8Array): string {
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff))
    throw fault(path, 'read', 'it is written in UTF-16; save it as UTF-8')
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)
  } catch {
    throw fault(path, 'read', 'it is no text in UTF-8; save it as UTF-8')
  }
}

/**
 * Writes a file whole or not at all: beside its place first, then moved there, so that a full disk or a cut cable leaves the old one as it was.
 *
 * @throws Refusal where it cannot be written
 */
export function writeText(path: string, text: string): void {
  try {
    const target = placeOf(path)
    if (target === null) {
      writeFileSync(path, text)
      return
    }
    const beside = `${target.path}.${process.pid}.part`
    try {
      writeFileSync(beside, text, { flush: true, ...(target.mode === null ? {} : { mode: target.mode }) })
      renameSync(beside, target.path)
    } catch (error) {
      rmSync(beside, { force: true })
      // A folder that takes no new file may still hold one that can be written.
      if (target.mode === null || (error as NodeJS.ErrnoException).code !== 'EACCES') throw error
      writeFileSync(target.path, text, { flush: true })
    }
  } catch (error) {
    throw faultOf(path, 'written', error)
  }
}

/** Where a file really lies, with the rights it has; null for what is no file that could be replaced: a device, a pipe, a folder. */
function placeOf(path: string): { readonly path: string; readonly mode: number | null } | null {
  const found = statSync(path, { throwIfNoEntry: false })
  if (found === undefined) return { path, mode: null }
  return found.isFile() ? { path: realpathSync(path), mode: found.mode & 0o777 } : null
}
