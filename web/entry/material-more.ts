import type { Material } from '../../core/library/material.ts'
import type { Lack } from './record.ts'

/** What is said of a material besides what it is and what its figures are, as typed; empty = not said. */
export interface TypedMore {
  /** Parted by semicolons: names have commas in them. */
  readonly synonyms: string
  readonly note: string
  /** An exposure limit as it is published ("10 mg/m3", "5 ppm"), and whose it is. */
  readonly twa: string
  readonly stel: string
  readonly ceiling: string
  readonly notation: string
  readonly basis: string
  /** Ids of rows of the tables. */
  readonly storageGroup: string
  readonly wasteStream: string
}

export const emptyMore: TypedMore = {
  synonyms: '',
  note: '',
  twa: '',
  stel: '',
  ceiling: '',
  notation: '',
  basis: '',
  storageGroup: '',
  wasteStream: '',
}

const limitFields = ['twa', 'stel', 'ceiling', 'notation'] as const
const moreKeys = ['synonyms', 'note', 'exposureLimit', 'storageGroup', 'wasteStream'] as const satisfies readonly (keyof Material)[]
type MoreKey = (typeof moreKeys)[number]

/** What a record says of these, as the page shows it. */
export function moreFrom({ synonyms = [], note = '', exposureLimit, storageGroup = '', wasteStream = '' }: Material): TypedMore {
  const { twa = '', stel = '', ceiling = '', notation = '', basis = '' } = exposureLimit ?? {}
  return { synonyms: synonyms.join('; '), note, twa, stel, ceiling, notation, basis, storageGroup, wasteStream }
}

/** What was typed of these, as a record says it. */
export function moreTyped(typed: TypedMore): Partial<Pick<Material, MoreKey>> {
  const synonyms = typed.synonyms
    .split(';')
    .map(one => one.trim())
    .filter(one => one !== '')
  const said = (fields: readonly (keyof TypedMore)[]) =>
    Object.fromEntries(fields.flatMap(field => (typed[field].trim() === '' ? [] : [[field, typed[field].trim()]])))
  return {
    ...(synonyms.length === 0 ? {} : { synonyms }),
    ...(hasLimit(typed) ? { exposureLimit: { basis: typed.basis.trim(), ...said(limitFields) } } : {}),
    ...said(['note', 'storageGroup', 'wasteStream']),
  }
}

/** Of these, what says something else than the record does. */
export function changedMore(typed: TypedMore, over: Material): readonly MoreKey[] {
  const [before, now] = [moreTyped(moreFrom(over)), moreTyped(typed)]
  return moreKeys.filter(key => JSON.stringify(now[key]) !== JSON.stringify(before[key]))
}

/** Of these, those that stand by somebody's word: a name or a note is the bench's own. */
export const wantsSource = (key: keyof Material): boolean => key !== 'synonyms' && key !== 'note'

export const hasLimit = (typed: TypedMore): boolean => limitFields.some(field => typed[field].trim() !== '')

/** A limit holds somewhere: whose it is has to be said. */
export const limitLacks = (typed: TypedMore): readonly Lack[] =>
  hasLimit(typed) && typed.basis.trim() === '' ? [{ field: 'basis', what: 'whose exposure limit it is' }] : []
