import type { Traits } from '../../core/hazards/traits.ts'
import { differences, type RecordDifference } from '../../core/library/differences.ts'
import { hazardsLost } from '../../core/library/hazards-lost.ts'
import type { Library, LibraryFile } from '../../core/library/library.ts'
import { materialSchema } from '../../core/library/material.ts'
import { transformationSchema } from '../../core/library/transformation.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { NameIndex } from '../../core/reading/names.ts'
import type { OwnChange, OwnList, OwnRecords, OwnVersion } from '../store/own-records.ts'
import { withChangesTold } from './changes-told.ts'
import { laidOver, sound } from './laid-over.ts'
import { namesTaken } from './names-taken.ts'
import { structuresChanged } from './structures-changed.ts'
import { structuresTwice } from './structures-twice.ts'
import { ambiguousNames, type Workshop } from './workshop.ts'

/** What is to be taken over into the bench's own library, and what is to go out of it. */
export interface OwnEdit {
  /** Raw records of the library format: read here, so that every fault of every one is told. */
  readonly materials: readonly unknown[]
  readonly transformations: readonly unknown[]
  readonly removeMaterials: readonly string[]
  readonly removeTransformations: readonly string[]
}

/** The answer to "what would happen?": nothing has been changed. */
export interface OwnTrial {
  readonly rows: readonly RecordDifference[]
  /** Why it will not be taken over; empty = it will be, whole. */
  readonly refused: readonly Problem[]
  readonly warnings: readonly Problem[]
}

/** A library with the bench's own records laid over the one it was opened on. */
interface Layered {
  readonly hasMaterials: boolean
  readonly library: Library
  readonly warnings: readonly Problem[]
  /** Why the saved records can no longer be laid over what lies beneath; empty = they are. */
  readonly broken: readonly Problem[]
  /** Of what the layer touches. */
  readonly traits: ReadonlyMap<string, Traits>
}

export interface OwnLibrary {
  /** The workshop as everything else sees it: always with what is saved now. */
  readonly workshop: Workshop
  /** What lies beneath, untouched. */
  readonly beneath: Workshop
  readonly version: () => number
  readonly history: () => readonly OwnVersion[]
  /** The own records alone, as a library file. */
  readonly file: () => LibraryFile
  /** Why the saved records are left out of planning, where a later library beneath no longer carries them. */
  readonly broken: () => readonly Problem[]
  /** Own records that stand in place of one beneath, field by field. */
  readonly overrides: () => readonly RecordDifference[]
  readonly check: (edit: OwnEdit) => OwnTrial
  /** Saves all of it or nothing. */
  readonly save: (onVersion: number, what: string, edit: OwnEdit, at: string) => OwnVersion | 'conflict' | OwnTrial
  /** Takes back the newest save that still stands, as a version of its own; null where there is none. */
  readonly undo: (onVersion: number, at: string) => OwnVersion | 'conflict' | OwnTrial | null
}

export const ownTitle = 'Own library of this bench'
const emptyEdit: OwnEdit = { materials: [], transformations: [], removeMaterials: [], removeTransformations: [] }

/**
 * The bench's own library over an opened one. A record with the id of one beneath stands in its place; what lies beneath is never written.
 *
 * Every record is screened when it is saved: one that a stop row meets, or that names such a material in any role, is refused.
 */
export function ownLibrary(beneath: Workshop, store: OwnRecords): OwnLibrary {
  const layOver = (materials: readonly unknown[], transformations: readonly unknown[]): { layered: Layered | null; trial: OwnTrial } => {
    const told = withChangesTold({ materials, transformations }, beneath.library)
    const laid = laidOver(beneath, ownTitle, told.materials, told.transformations)
    if (!laid.ok) return { layered: null, trial: { rows: [], refused: laid.problems.map(notEntered), warnings: [] } }
    const { library, traits } = laid.value
    return {
      layered: { hasMaterials: materials.length > 0, library, warnings: laid.warnings, broken: [], traits },
      trial: { rows: [], refused: [], warnings: laid.warnings },
    }
  }

  const stored = (): LibraryFile => {
    const records = store.records()
    const list = (name: OwnList) => records.filter(one => one.list === name).map(one => JSON.parse(one.body))
    return {
      format: 'waybench-library',
      version: 1,
      title: ownTitle,
      materials: list('materials'),
      transformations: list('transformations'),
    }
  }

  let at = -1
  let standing: Layered | null = null
  let traits: ReadonlyMap<string, Traits> | null = null
  let names: NameIndex | null = null
  /** What is saved now, read again where another save came in between, also one of another program on the same folder. */
  const now = (): Layered => {
    const version = store.version()
    if (standing !== null && version === at) return standing
    const file = stored()
    const { layered, trial } = layOver(file.materials, file.transformations)
    // A later library beneath may no longer carry what was saved on an earlier one: it is then left out of planning, kept, and said so.
    standing = layered ?? { hasMaterials: false, library: beneath.library, warnings: [], broken: trial.refused, traits: new Map() }
    at = version
    traits = null
    names = null
    return standing
  }

  const namesNow = (): NameIndex => {
    const { hasMaterials, library } = now()
    names ??= !hasMaterials ? beneath.names() : new NameIndex(library.materials, ambiguousNames(), beneath.toolkit)
    return names
  }

  const trialOf = (given: OwnEdit): { readonly trial: OwnTrial; readonly layered: Layered | null; readonly edit: OwnEdit } => {
    const file = stored()
    const { warnings: changed, ...told } = withChangesTold(given, beneath.library)
    const edit: OwnEdit = { ...given, ...told }
    const taken = (list: OwnList, records: readonly unknown[], removed: readonly string[]) => {
      const gone = new Set([...removed, ...records.map(idOf)])
      return [...file[list].filter(record => !gone.has(record.id)), ...records]
    }
    const { layered, trial } = layOver(
      taken('materials', edit.materials, edit.removeMaterials),
      taken('transformations', edit.transformations, edit.removeTransformations),
    )
    // What the schema refuses is told among the problems; all else has its row, also where another record keeps the whole from being saved.
    const materials = sound(materialSchema, edit.materials)
    const rows = differences(
      beneath.library,
      file,
      { materials, transformations: sound(transformationSchema, edit.transformations) },
      { materials: edit.removeMaterials, transformations: edit.removeTransformations },
    )
    const warnings = [
      ...hazardsLost(rows),
      ...changed,
      ...namesTaken(rows, materials, now().library.materials, namesNow()),
      ...structuresChanged(rows, beneath.toolkit),
      ...structuresTwice(rows, materials, namesNow(), beneath.toolkit),
      ...trial.warnings,
    ]
    return { layered, trial: { ...trial, rows, warnings }, edit }
  }

  const changesOf = (edit: OwnEdit, rows: readonly RecordDifference[]): readonly OwnChange[] => {
    const changed = new Set(rows.filter(row => row.change !== 'same').map(row => `${row.list} ${row.id}`))
    return (['materials', 'transformations'] as const).flatMap(list => [
      ...edit[list]
        .filter(record => changed.has(`${list} ${idOf(record)}`))
        .map(record => ({ list, id: idOf(record), body: JSON.stringify(record) })),
      ...(list === 'materials' ? edit.removeMaterials : edit.removeTransformations)
        .filter(id => changed.has(`${list} ${id}`))
        .map(id => ({ list, id, body: null })),
    ])
  }

  return {
    beneath,
    workshop: {
      get library() {
        return now().library
      },
      get warnings() {
        return [...beneath.warnings, ...now().warnings]
      },
      tables: beneath.tables,
      toolkit: beneath.toolkit,
      traits: () => {
        const { traits: touched } = now()
        traits ??= touched.size === 0 ? beneath.traits() : new Map([...beneath.traits(), ...touched])
        return traits
      },
      names: namesNow,
    },
    version: () => store.version(),
    history: () => store.history(),
    file: stored,
    broken: () => now().broken,
    overrides: () =>
      differences(beneath.library, { materials: [], transformations: [] }, stored()).filter(row => row.change === 'overrides'),
    check: edit => trialOf(edit).trial,
    save: (onVersion, what, given, savedAt) => {
      const { trial, edit } = trialOf(given)
      if (trial.refused.length > 0) return trial
      return store.save(onVersion, what, changesOf(edit, trial.rows), savedAt)
    },
    undo: (onVersion, savedAt) => {
      const undoing = store.undoing()
      if (undoing === null) return null
      const edit = editOf(undoing.changes)
      const { trial } = trialOf(edit)
      if (trial.refused.length > 0) return trial
      return store.save(onVersion, `taken back: ${undoing.what}`, undoing.changes, savedAt, undoing.undoes)
    },
  }
}

const idOf = (record: unknown): string => String((record as { id?: unknown } | null)?.id ?? '')

function editOf(changes: readonly OwnChange[]): OwnEdit {
  const of = (list: OwnList) => changes.filter(one => one.list === list)
  const kept = (list: OwnList) => of(list).flatMap(one => (one.body === null ? [] : [JSON.parse(one.body) as unknown]))
  const gone = (list: OwnList) => of(list).flatMap(one => (one.body === null ? [one.id] : []))
  return {
    ...emptyEdit,
    materials: kept('materials'),
    transformations: kept('transformations'),
    removeMaterials: gone('materials'),
    removeTransformations: gone('transformations'),
  }
}

/** A stop, told of what was to be entered. */
const notEntered = (problem: Problem): Problem =>
  problem.code === 'stopped'
    ? { ...problem, cure: 'It cannot be entered, and no step that holds it in any role can be; nothing was saved.' }
    : problem
