import { existsSync, statSync } from 'node:fs'
import type { LibraryFile } from '../../core/library/library.ts'
import { readText } from '../files.ts'
import { withChangesTold } from '../library/changes-told.ts'
import { laidOver } from '../library/laid-over.ts'
import { ownTitle } from '../library/own-library.ts'
import { recordsIn } from '../library/records-in.ts'
import { openWorkshop, type Workshop, withLayer } from '../library/workshop.ts'
import { Refusal } from '../refusal.ts'
import type { Given } from './command.ts'
import { storeIn } from './data-folder.ts'

/**
 * The workshop that the common options name: the library, further lists, and the bench's own records laid over it.
 *
 * @throws Refusal with every problem of the files, and for own records that a list ends planning with
 */
export async function workshopFor(given: Given): Promise<Workshop> {
  const beneath = await openWorkshop(given.texts('library'), given.texts('lists'))
  const own = given.texts('own')
  if (own.length === 0) return beneath
  const { materials, transformations, warnings } = withChangesTold(ownRecords(own, beneath), beneath.library)
  const over = laid(beneath, materials, transformations)
  return { ...over, warnings: [...over.warnings, ...warnings] }
}

/** A workshop with raw records over it; one with the id of a record beneath stands in its place. */
export function laid(beneath: Workshop, materials: readonly unknown[], transformations: readonly unknown[]): Workshop {
  const layer = laidOver(beneath, ownTitle, materials, transformations)
  if (!layer.ok) throw new Refusal(layer.problems.some(one => one.code === 'stopped') ? 'no-answer' : 'bad-input', layer.problems)
  return { ...withLayer(beneath, layer.value, layer.warnings), beneath: beneath.library }
}

/** Raw records of library files in any form that is read, and of data folders of `waybench serve`. */
export function ownRecords(names: readonly string[], beneath: Workshop): Pick<LibraryFile, 'materials' | 'transformations'> {
  const parts = names.map(name => (existsSync(name) && statSync(name).isDirectory() ? ofFolder(name) : ofFile(name, beneath)))
  return {
    materials: parts.flatMap(part => part.materials) as LibraryFile['materials'],
    transformations: parts.flatMap(part => part.transformations) as LibraryFile['transformations'],
  }
}

function ofFolder(folder: string): { readonly materials: readonly unknown[]; readonly transformations: readonly unknown[] } {
  const store = storeIn(folder, true)
  const records = store.own.records()
  store.close()
  const of = (list: string): unknown[] => records.filter(one => one.list === list).map(one => JSON.parse(one.body) as unknown)
  return { materials: of('materials'), transformations: of('transformations') }
}

function ofFile(name: string, beneath: Workshop): { readonly materials: readonly unknown[]; readonly transformations: readonly unknown[] } {
  const read = recordsIn([{ name, text: readText(name) }], beneath)
  if (!read.ok) throw new Refusal('bad-input', read.problems)
  return read.value
}
