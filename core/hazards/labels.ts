import type { Material } from '../library/material.ts'
import type { MaterialUse } from '../route/materials.ts'
import { isGravest } from './classes.ts'
import { codesInEffect, isOnlyEvolved } from './known.ts'
import type { HazardTables, LabelRule } from './tables.ts'

type SignalWord = 'Danger' | 'Warning' | 'none'

/** What a label says: statements gravest first, signal word, pictograms and the bench's precautions, after the rules of precedence. */
export interface Label {
  readonly codes: readonly { readonly code: string; readonly statement: string }[]
  /** Null where no codes are known. */
  readonly signalWord: SignalWord | null
  readonly pictograms: readonly string[]
  readonly precautions: readonly { readonly code: string; readonly statement: string }[]
}

/**
 * The label of a material by the UN GHS: H318 gives way to H314 and H400 to H410, Danger to no other word, the exclamation mark to skull,
 * corrosion and respiratory sensitiser as the tables say.
 *
 * @param as what it is; a gas that is only given off goes without the codes of its cylinder
 */
export function labelOf(tables: HazardTables, material: Material, as: readonly MaterialUse[] = ['charged']): Label {
  const evolved = isOnlyEvolved(material, as)
  const all = codesInEffect(material, evolved)
  const codes = afterRules(tables.labelRules, all)
  const stated = material.hazards?.signalWord ?? null
  const signalWord = stated === null ? null : evolved ? strongest(tables, all, stated) : stated
  return {
    codes: inOrder(tables, codes, signalWord).map(code => ({ code, statement: statementOf(tables, code).statement })),
    signalWord,
    pictograms: pictogramsOf(tables, all, signalWord),
    precautions: precautionsOf(tables, codes),
  }
}

/** A code that no table holds is shown all the same, and counts as Danger until somebody has looked. */
const notInTables: HazardTables['statements'][string] = {
  statement: 'this code is in no table here: read the data sheet',
  entries: [{ class: 'unknown', classCode: 'unknown', category: '', signal: 'Danger', pictograms: [] }],
}

const statementOf = (tables: HazardTables, code: string): HazardTables['statements'][string] => tables.statements[code] ?? notInTables

/** The signal word that the remaining codes call for, never stronger than the one stated. */
function strongest(tables: HazardTables, codes: readonly string[], stated: SignalWord): SignalWord {
  const words = codes.flatMap(code => statementOf(tables, code).entries.map(entry => entry.signal))
  if (words.includes('Danger')) return stated
  return words.includes('Warning') && stated !== 'none' ? 'Warning' : 'none'
}

/** Codes less those that another one makes superfluous. */
function afterRules(rules: readonly LabelRule[], codes: readonly string[]): readonly string[] {
  const dropped = new Set(
    rules.flatMap(({ logic }) =>
      logic.if?.code !== undefined && logic.drop?.code !== undefined && codes.includes(logic.if.code) ? [logic.drop.code] : [],
    ),
  )
  return [...new Set(codes)].filter(code => !dropped.has(code))
}

/** The gravest first, then what calls for Danger, then the rest; by code within. */
function inOrder(tables: HazardTables, codes: readonly string[], signalWord: SignalWord | null): readonly string[] {
  const rank = (code: string): number =>
    isGravest(code) ? 0 : signalOf(tables, code, signalWord) === 'Danger' ? 1 : code.startsWith('EUH') ? 3 : 2
  return [...codes].sort((a, b) => rank(a) - rank(b) || (a < b ? -1 : 1))
}

/** Several categories may stand under one code (H272: Danger or Warning): the label's own word tells which is meant. */
function entriesMeant(tables: HazardTables, code: string, signalWord: SignalWord | null): HazardTables['statements'][string]['entries'] {
  const { entries } = statementOf(tables, code)
  const meant = entries.filter(entry => entry.signal === signalWord)
  return meant.length > 0 && new Set(entries.map(entry => entry.signal)).size > 1 ? meant : entries
}

const signalOf = (tables: HazardTables, code: string, signalWord: SignalWord | null): SignalWord =>
  entriesMeant(tables, code, signalWord)[0]?.signal ?? 'none'

/**
 * Pictograms of a set of codes after the rules of precedence, in order of number.
 *
 * @param signalWord of the label: tells categories under one code apart
 */
export function pictogramsOf(tables: HazardTables, codes: readonly string[], signalWord: SignalWord | null): readonly string[] {
  const calledFor = new Map<string, string[]>()
  for (const code of codes) {
    for (const pictogram of new Set(entriesMeant(tables, code, signalWord).flatMap(entry => entry.pictograms))) {
      const callers = calledFor.get(pictogram)
      if (callers) callers.push(code)
      else calledFor.set(pictogram, [code])
    }
  }
  const shown = new Set(calledFor.keys())
  for (const { logic } of tables.labelRules) {
    const holds =
      (logic.if?.pictogram !== undefined && calledFor.has(logic.if.pictogram)) ||
      (logic.if?.code !== undefined && codes.includes(logic.if.code))
    if (!holds) continue
    if (logic.drop?.pictogram !== undefined) shown.delete(logic.drop.pictogram)
    const only = logic.dropIfOnlyFor
    if (only && calledFor.get(only.pictogram)?.every(code => only.codes.includes(code))) shown.delete(only.pictogram)
  }
  return [...shown].sort()
}

/** What to do at the bench, prevention first; a code that stands in a combined one is not said twice. */
function precautionsOf(tables: HazardTables, codes: readonly string[]): Label['precautions'] {
  const wanted = [...new Set(codes.flatMap(code => tables.benchPrecautions[code] ?? []))]
  const inside = new Set(wanted.filter(code => code.includes('+')).flatMap(code => code.split('+')))
  return wanted
    .filter(code => !inside.has(code))
    .sort()
    .flatMap(code => {
      const statement = tables.precautions[code]
      return statement === undefined ? [] : [{ code, statement }]
    })
}
