import type { Material } from '../../core/library/material.ts'
import { ownBench } from '../../core/library/trust.ts'
import { paragraph } from '../../core/problem/problem.ts'
import { numberText } from '../../core/quantity/print.ts'
import { byFlagLine } from '../../core/reading/by-flag.ts'
import { formWords } from '../../core/reading/stereo-forms.ts'
import { counted } from '../../core/report/words.ts'
import { dataLeft } from '../library/data-of-reaction.ts'
import { type NewStructure, newStructures } from '../library/new-structures.ts'
import { type ReactionShown, reactionsShown } from '../library/reaction-list.ts'
import type { Workshop } from '../library/workshop.ts'
import { screenedReaction } from '../planning/reactions-screen.ts'
import { Refusal } from '../refusal.ts'
import { badOption, type Given, type Option, type Terminal } from './command.ts'

/** Options for what a file of reactions holds and the library does not. */
export const newMaterialOptions: Readonly<Record<string, Option>> = {
  'new-materials': {
    type: 'boolean',
    help: 'of a file of reactions: the structures that the library does not hold, as a library file of new materials, to be saved together with their steps (own); with hazards where the tables know one by its name, to be confirmed',
  },
  called: {
    type: 'string',
    multiple: true,
    value: 'N=NAME',
    help: 'name of new material N of the list (else its formula); repeatable',
  },
}

/** The reactions of a file, each with what is wrong with it; what they need that the library does not hold. */
export function readReactions(text: string, file: string, workshop: Workshop, given: Given, terminal: Terminal): number {
  const { names, toolkit } = workshop
  const shown = reactionsShown([{ name: file === '-' ? 'standard input' : file, text }], names(), toolkit)
  if (!shown.ok) throw new Refusal('bad-input', shown.problems)
  const list = shown.value.map(one => screenedReaction(workshop, one))
  const fresh = newOnes(list, workshop, given)
  const problems = [
    ...list.flatMap(({ number, problems }) => problems.map(one => ({ ...one, where: [`reaction ${number}`, ...one.where] }))),
    ...fresh.flatMap(({ problems }, at) => problems.map(one => ({ ...one, where: [`new material ${at + 1}`, ...one.where.slice(1)] }))),
  ]
  const isStopped = problems.some(one => one.code === 'stopped')
  if (given.on('new-materials')) {
    // Half of a file would be taken for the whole of it.
    if (problems.some(one => one.code !== 'equation-unbalanced' && one.code !== dataLeft))
      throw new Refusal(isStopped ? 'no-answer' : 'bad-input', problems)
    terminal.out(`${JSON.stringify(libraryFile(fresh), null, 2)}\n`)
    for (const one of fresh) terminal.err(hazardsLine(one))
    if (fresh.length > 0)
      terminal.err('A structure does not tell its form: each stands as a solid; correct the form, and give liquids a density.\n')
    // An equation may be mended later; that it has to be is told.
    for (const problem of problems) terminal.err(`${paragraph(problem)}\n`)
    return 0
  }
  if (given.on('json')) terminal.out(`${JSON.stringify({ reactions: list, newMaterials: fresh }, null, 2)}\n`)
  else {
    for (const { number, title, read } of list) {
      terminal.out(`${number}. ${title === '' ? 'without a name' : title}: ${read?.equation ?? 'not read'}\n`)
      if (read !== null && read.agents.length > 0) terminal.out(`   over the arrow, without amounts: ${read.agents.join('; ')}\n`)
      if (read !== null && read.byFlag.length > 0) terminal.out(`   ${byFlagLine(read.byFlag)}\n`)
      if (read !== null && read.unknown.length > 0) terminal.out(`   not in the library: ${read.unknown.join('; ')}\n`)
    }
    if (fresh.length > 0) terminal.out(newList(fresh, file))
    for (const problem of problems) terminal.err(`\n${paragraph(problem)}\n`)
  }
  if (isStopped) return 1
  return list.every(one => one.read !== null && one.balanced) && problems.every(one => one.code === dataLeft) ? 0 : 2
}

function newOnes(list: readonly ReactionShown[], workshop: Workshop, given: Given): readonly NewStructure[] {
  const typed = [...new Set(list.flatMap(one => one.read?.unknown ?? []))].map(smiles => ({
    ...{ smiles, name: '', formula: '', cas: '' },
    form: 'solid' as const,
  }))
  const fresh = newStructures(workshop, typed)
  const called = new Map<number, string>()
  for (const words of given.texts('called')) {
    const [at, name] = nameGiven(words, fresh.length)
    if (called.has(at))
      throw badOption('--called', `names new material ${at + 1} twice.`, 'One name is kept, and which is not guessed.', 'Leave one out.')
    called.set(at, name)
  }
  if (called.size === 0) return fresh
  return newStructures(
    workshop,
    fresh.flatMap(({ structures }, at) =>
      typed.filter(one => structures.includes(one.smiles)).map(one => ({ ...one, name: called.get(at) ?? '' })),
    ),
  )
}

function nameGiven(words: string, count: number): readonly [at: number, name: string] {
  const [, number, name] = /^\s*(\d+)\s*=\s*(.*\S)\s*$/.exec(words) ?? []
  if (number === undefined || name === undefined)
    throw badOption(
      '--called',
      `is "${words}".`,
      'It gives a new material its name.',
      'Write the number of the list, = and the name: 1=pentyl acetate.',
    )
  if (Number(number) < 1 || Number(number) > count)
    throw badOption(
      '--called',
      `names new material ${number}.`,
      `The file brings ${counted(count, 'new material')}.`,
      'Run the command without it to see their numbers.',
    )
  return [Number(number) - 1, name]
}

const entered = { citation: `${ownBench}: entered from a reaction file`, for: 'identity and properties', checked: false }

/** As the page would save them: by whose word the structure stands is said. */
const libraryFile = (fresh: readonly NewStructure[]) => ({
  format: 'waybench-library',
  version: 1,
  title: 'new materials',
  materials: fresh.map(({ material, withHazards }): Material => {
    const record = withHazards ?? material
    return { ...record, sources: [entered, ...record.sources] }
  }),
  transformations: [],
})

function hazardsLine({ material, withHazards, record }: NewStructure): string {
  const { codes = [], from = 'remembered' } = withHazards?.hazards ?? {}
  return record === null || withHazards?.hazards === undefined
    ? `${material.name} (${material.id}): hazards unknown, which is not the same as safe; state them from its data sheet.\n`
    : `${material.name} (${material.id}): ${codes.join(', ') || 'none assigned'} from the row "${record.name}" of the tables, ${from}; confirm them or take them out.\n`
}

/** Other forms of it that the library holds, or ways of writing it: no one is taken for it, and it may yet be meant. */
const formsHeld = (matches: NewStructure['matches']): string =>
  matches
    .flatMap(({ id, by, form }) =>
      form !== null ? [`${id}, which ${formWords[form]}`] : by === 'structure written otherwise' ? [`${id}, the same ${by}`] : [],
    )
    .map(words => `\n     the library holds ${words}`)
    .join('')

function newList(fresh: readonly NewStructure[], file: string): string {
  const rows = fresh.map(
    ({ material, molarMass, structures, regulated, matches }, at) =>
      `  ${at + 1}. ${material.name} (${material.id}), ${material.formula ?? 'formula unknown'}, ${molarMass === null ? 'mass unknown' : `${numberText(molarMass, 5)} g/mol`}: ${structures.join(' or ')}${regulated.map(one => `\n     § ${one.list}, ${one.category}`).join('')}${formsHeld(matches)}\n`,
  )
  return `\nNot in the library, new materials:\n${rows.join('')}waybench read ${file} --new-materials --called "1=NAME" > NEW.json writes them; waybench read PREPARATION --own NEW.json reads with them; waybench own NEW.json STEPS.json --save takes them over with their steps, all or nothing.\n`
}
