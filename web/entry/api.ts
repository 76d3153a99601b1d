import type { Depiction } from '../../core/chemistry/drawing.ts'
import type { RecordDifference } from '../../core/library/differences.ts'
import type { LibraryFile } from '../../core/library/library.ts'
import type { WantedMark } from '../../core/library/mark.ts'
import type { Material } from '../../core/library/material.ts'
import type { Transformation, YieldPercent } from '../../core/library/transformation.ts'
import type { Trust } from '../../core/library/trust.ts'
import type { WeakSpot } from '../../core/library/weak-spots.ts'
import type { Problem } from '../../core/problem/problem.ts'
import type { PreparationRead } from '../../core/reading/preparation.ts'
import type { StereoForm } from '../../core/reading/stereo-forms.ts'
import type { RecordFigure } from '../../core/report/record-figures.ts'
import { ask, post } from '../api/client.ts'

export interface TermShown {
  readonly text: string
  readonly coefficient: number
  readonly compound: string | null
  readonly candidates?: readonly string[]
  /** Of a hydrate: water that comes with one of the compound. */
  readonly crystalWater?: number
}

export interface MaterialShown {
  readonly name: string
  readonly form: Material['form']
  readonly contains?: Material['contains']
  readonly molarMass: number | null
  readonly depiction: Depiction
}

/** What the reader made of a text, with what is needed to show it. */
export interface Reading extends Omit<PreparationRead, 'reactants' | 'products'> {
  readonly reactants: readonly TermShown[]
  readonly products: readonly TermShown[]
  readonly materials: Readonly<Record<string, MaterialShown>>
}

/** What stands in the blanks of a material, as typed; an empty text is nothing said. */
export interface MaterialBlanks {
  readonly name: string
  readonly smiles: string
  readonly formula: string
  readonly cas: string
  readonly form: Material['form']
  readonly density: string
  readonly melting: string
  readonly boiling: string
  readonly flash: string
}

/** A material as the server is asked about it: everything as typed, what a solution is of and made up with by id. */
export interface MaterialTyped extends MaterialBlanks {
  /** Id of the record that it is to stand in place of; empty = a new one. */
  readonly over: string
  readonly of: string
  readonly strength: string
  readonly rest: string
}

export interface Identified {
  readonly material: Material
  readonly withHazards: Material | null
  readonly record: { readonly id: string; readonly name: string; readonly cas: string | null } | null
  readonly molarMass: number | null
  readonly depiction: Depiction
  readonly groups: readonly { readonly number: number; readonly name: string }[]
  readonly screened: boolean
  readonly regulated: readonly { readonly action: string; readonly list: string; readonly category: string; readonly reason: string }[]
  readonly matches: readonly {
    readonly id: string
    readonly name: string
    readonly by: string
    /** What it is beside the structure typed, where they differ by hands or double bonds alone. */
    readonly form: StereoForm['relation'] | null
    readonly named: boolean
  }[]
  readonly problems: readonly Problem[]
}

/** A structure of a file as a new material, with every way in which the file writes it. */
export interface NewStructure extends Identified {
  readonly structures: readonly string[]
}

export interface Trial {
  readonly rows: readonly RecordDifference[]
  readonly refused: readonly Problem[]
  readonly warnings: readonly Problem[]
  readonly version: number
}

export interface OwnVersion {
  readonly version: number
  readonly what: string
  readonly undoes: number | null
  readonly savedAt: string
  readonly records: number
}

export interface OwnReply extends Pick<LibraryFile, 'materials' | 'transformations'> {
  readonly version: number
  readonly overrides: readonly RecordDifference[]
  readonly broken: readonly Problem[]
  readonly history: readonly OwnVersion[]
}

export interface Edit {
  readonly materials?: readonly unknown[]
  readonly transformations?: readonly unknown[]
  readonly removeMaterials?: readonly string[]
  readonly removeTransformations?: readonly string[]
  readonly files?: readonly { readonly name: string; readonly text: string }[]
}

export interface StepRow {
  readonly id: string
  readonly name: string
  readonly kind: string
  readonly from: readonly string[]
  readonly to: string
  readonly yieldPercent: YieldPercent
  readonly trust: Trust
  readonly figures: readonly RecordFigure[]
  readonly charges: readonly (RecordFigure & { readonly material: string })[]
  readonly sources: readonly string[]
  readonly runs: number
  readonly own: boolean
  readonly overrides: boolean
  readonly beneath: { readonly low: number; readonly typical: number; readonly high: number } | null
}

export interface MaterialRow {
  readonly id: string
  readonly name: string
  readonly formula?: string
  readonly figures: readonly RecordFigure[]
  readonly own: boolean
}

/** Where materials stand and where their waste goes, by id. */
export type PlaceTables = Readonly<Record<'storageGroups' | 'wasteStreams', Readonly<Record<string, { readonly name: string }>>>>

/** One reaction of a file. */
export interface ReactionRead {
  readonly title: string
  readonly equation: string
  readonly agents: readonly string[]
  readonly unknown: readonly string[]
  readonly byFlag: readonly string[]
}

/** What a list is kept to: figures so sure, of one kind or of any; '' = all. */
export interface Kept {
  readonly trust: WantedMark | ''
  readonly figure: string
}

const keptTo = ({ trust, figure }: Kept): string =>
  trust === '' ? '' : `&trust=${encodeURIComponent(trust)}${figure === '' ? '' : `&figure=${encodeURIComponent(figure)}`}`

/** The addresses of the entry pages; each rejects with a refusal that names a cure. */
export const entryServer = {
  /** Read as though the library held the materials, which are to be saved with it. */
  read: (text: string, materials: readonly unknown[], signal: AbortSignal) =>
    ask<Reading>('read', { ...post(materials.length === 0 ? { text } : { text, materials }), signal }),
  readReaction: (name: string, text: string) => ask<{ reactions: readonly ReactionRead[] }>('read-reaction', post({ name, text })),
  identify: (typed: MaterialTyped, signal: AbortSignal) => ask<Identified>('new-material', { ...post(typed), signal }),
  newStructures: (structures: readonly MaterialTyped[], signal: AbortSignal) =>
    ask<{ materials: readonly NewStructure[] }>('new-structures', { ...post({ structures }), signal }),
  own: () => ask<OwnReply>('own-library'),
  forms: () => ask<{ forms: readonly { readonly form: string; readonly notHeld: readonly string[] }[] }>('own-library/forms'),
  check: (edit: Edit, signal?: AbortSignal) => ask<Trial>('own-library/check', { ...post(edit), ...(signal && { signal }) }),
  save: (onVersion: number, what: string, edit: Edit) => ask<OwnVersion>('own-library', post({ ...edit, onVersion, what })),
  undo: (onVersion: number) => ask<OwnVersion>('own-library/undo', post({ onVersion })),
  steps: (q: string, kept: Kept, most: number) =>
    ask<{ transformations: readonly StepRow[]; found: number }>(`transformations?q=${encodeURIComponent(q)}&most=${most}${keptTo(kept)}`),
  materials: (q: string, kept: Kept, most: number) =>
    ask<{ materials: readonly MaterialRow[]; found: number }>(`materials?q=${encodeURIComponent(q)}&most=${most}${keptTo(kept)}`),
  material: (id: string) => ask<Material>(`materials/${encodeURIComponent(id)}`),
  step: (id: string) => ask<Transformation>(`transformations/${encodeURIComponent(id)}`),
  places: () => ask<PlaceTables>('tables'),
  weak: () => ask<{ spots: readonly (WeakSpot & { readonly own: boolean })[] }>('weak-spots'),
}
