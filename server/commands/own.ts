import { existsSync } from 'node:fs'
import { type Problem, paragraph } from '../../core/problem/problem.ts'
import { counted } from '../../core/report/words.ts'
import { defaultConfig } from '../config.ts'
import { type OwnLibrary, type OwnTrial, ownLibrary } from '../library/own-library.ts'
import { recordsIn } from '../library/records-in.ts'
import { Refusal } from '../refusal.ts'
import type { OwnVersion } from '../store/own-records.ts'
import { changeLine } from './change-line.ts'
import { badOption, type Command, type Given, type Terminal } from './command.ts'
import { storeIn } from './data-folder.ts'
import { workshopFor } from './workshop-for.ts'

export const own: Command = {
  name: 'own',
  summary: 'shows what files would change in the own library of a data folder; saves it, and takes saves back',
  usage: 'FILE ... [--save] [--data DIR]\n       waybench own --undo [--data DIR]',
  options: {
    save: { type: 'boolean', help: 'saves what is shown: all of it, or nothing where any of it is refused' },
    undo: { type: 'boolean', help: 'takes the newest save back that still stands' },
    data: { type: 'string', value: 'DIR', help: 'folder of the saved plans and own records (default: data, beside the program)' },
  },
  positionals: { least: 0, most: Number.POSITIVE_INFINITY, what: 'files' },
  async run(given, terminal) {
    const undoes = given.on('undo')
    if (undoes === given.words.length > 0)
      throw badOption(
        undoes ? '--undo' : 'FILE',
        undoes ? 'stands beside files.' : 'is missing.',
        'Files are looked at and saved, or the newest save is taken back.',
        'Give files, or --undo alone.',
        'option-missing',
      )
    const folder = given.text('data') ?? defaultConfig.plansFolder
    // Looking makes no folder.
    const store = storeIn(undoes || given.on('save') || folder === '' || existsSync(folder) ? folder : ':memory:', undoes)
    try {
      const library = ownLibrary(await workshopFor(given), store.own)
      return undoes ? undo(library, given, terminal) : await take(library, given, terminal)
    } finally {
      store.close()
    }
  },
}

async function take(library: OwnLibrary, given: Given, terminal: Terminal): Promise<number> {
  const files = await Promise.all(given.words.map(async name => ({ name, text: await terminal.readFile(name) })))
  const read = recordsIn(files, library.workshop)
  if (!read.ok) throw new Refusal('bad-input', read.problems)
  const edit = { ...read.value, removeMaterials: [], removeTransformations: [] }
  const trial = library.check(edit)
  const saved =
    given.on('save') && trial.refused.length === 0
      ? library.save(library.version(), `from ${given.words.join(', ')}`, edit, new Date().toISOString())
      : null
  if (saved === 'conflict') throw new Refusal('conflict', [changedMeanwhile])
  const version = saved !== null && 'version' in saved ? saved : null
  if (given.on('json')) terminal.out(`${JSON.stringify({ ...trial, saved: version }, null, 2)}\n`)
  else {
    for (const row of trial.rows) terminal.out(changeLine(row))
    for (const problem of trial.warnings) terminal.out(`warning: ${paragraph(problem)}\n`)
    for (const problem of trial.refused) terminal.err(`refused: ${paragraph(problem)}\n`)
    terminal.out(ending(trial, version))
  }
  return trial.refused.length > 0 ? 2 : 0
}

function ending(trial: OwnTrial, saved: OwnVersion | null): string {
  if (saved !== null) return `Saved as version ${saved.version}; waybench own --undo takes it back.\n`
  if (trial.refused.length > 0) return `Refused: ${counted(trial.refused.length, 'fault')}; nothing was saved.\n`
  const news = trial.rows.filter(row => row.change !== 'same').length
  return news === 0 ? 'Nothing in it is new.\n' : `Nothing was saved yet; --save takes ${news === 1 ? 'it' : 'all of it'} over.\n`
}

function undo(library: OwnLibrary, given: Given, terminal: Terminal): number {
  const undone = library.undo(library.version(), new Date().toISOString())
  if (undone === null) throw new Refusal('not-found', [nothingToUndo])
  if (undone === 'conflict') throw new Refusal('conflict', [changedMeanwhile])
  if ('refused' in undone) throw new Refusal('bad-input', undone.refused)
  terminal.out(given.on('json') ? `${JSON.stringify({ saved: undone }, null, 2)}\n` : `Version ${undone.version}: ${undone.what}.\n`)
  return 0
}

const changedMeanwhile: Problem = {
  code: 'own-library-changed',
  where: ['own library'],
  what: 'The own library was saved by somebody else meanwhile.',
  why: 'Saving over it could lose their changes.',
  cure: 'Run the command again and look at what it would change now.',
}

const nothingToUndo: Problem = {
  code: 'nothing-to-undo',
  where: ['own library'],
  what: 'No save is left to take back.',
  why: 'Each save is taken back once, newest first.',
  cure: 'Change the record itself.',
}
