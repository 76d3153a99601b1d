import { existsSync, statSync } from 'node:fs'
import { openStore, type Store } from '../store/store.ts'
import { badOption } from './command.ts'

/** What the system says of a folder, in words. */
const faults: Readonly<Record<string, string>> = {
  EACCES: 'may not be written by you',
  EPERM: 'may not be written by you',
  EROFS: 'stands on a disk that cannot be written',
  ENOTDIR: 'leads through a file',
  ENOENT: 'cannot be made there',
  ENOSPC: 'stands on a full disk',
  ENAMETOOLONG: 'has a name longer than the system takes',
}

/**
 * The saved plans of a data folder.
 *
 * @param mustExist  true = what is not there is refused, for commands that only read
 * @throws Refusal that names `--data`, in words, where it cannot be used
 */
export function storeIn(folder: string, mustExist = false): Store {
  if (folder === '') throw badOption('--data', 'is empty.', 'Saved plans need a folder.', 'Name a folder.')
  const inMemory = folder === ':memory:'
  const there = !inMemory && existsSync(folder)
  if (there && !statSync(folder).isDirectory())
    throw badOption('--data', `${folder} is a file.`, 'Saved plans need a folder.', 'Name the folder that it stands in, or another.')
  if (mustExist && !there && !inMemory)
    throw badOption('--data', `${folder} is not there.`, 'The logs of its saved plans were to be read.', 'Correct the name of the folder.')
  try {
    return openStore(folder)
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error)
    const code = String((error as NodeJS.ErrnoException).code)
    // The database says only that it could not open its file.
    const what = faults[code] ?? (/unable to open database|readonly database/i.test(message) ? faults.EACCES : undefined)
    throw badOption(
      '--data',
      what === undefined ? `${folder} cannot be used: ${message}` : `${folder} ${what}.`,
      'Saved plans need a folder that can be written.',
      'Name another folder, or let whoever owns this one give you the right to write in it.',
    )
  }
}
