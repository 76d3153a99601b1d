import { didYouMean } from '../problem/nearest.ts'
import { type Problem, problemOf } from '../problem/problem.ts'
import type { RowOf, TableRow } from './table-rows.ts'

/** What the rows of all tables owe each other: no key twice, no pointer into nothing, no pair of groups told one way and not the other. */
export function tableProblems(rows: readonly TableRow[]): readonly Problem[] {
  const of = <K extends TableRow['kind']>(kind: K): readonly RowOf<K>[] => rows.filter((row): row is RowOf<K> => row.kind === kind)
  return [
    ...repeated(
      'hazardStatement',
      of('hazardStatement').map(row => row.code),
    ),
    ...repeated(
      'precautionaryStatement',
      of('precautionaryStatement').map(row => row.code),
    ),
    ...repeated(
      'reactivityGroup',
      of('reactivityGroup').map(row => String(row.number)),
    ),
    ...repeated(
      'incidentRule',
      of('incidentRule').map(row => row.id),
    ),
    ...repeated(
      'storageGroup',
      of('storageGroup').map(row => row.id),
    ),
    ...repeated(
      'wasteStream',
      of('wasteStream').map(row => row.id),
    ),
    ...repeated(
      'regulatedList',
      of('regulatedList').map(row => row.name),
    ),
    ...repeated(
      'structureAlert',
      of('structureAlert').map(row => row.id),
    ),
    ...benchPrecautionsPoint(of('benchPrecautions'), of('precautionaryStatement'), of('hazardStatement')),
    ...listsNamed([...of('regulatedEntry'), ...of('structureAlert')], of('regulatedList')),
    ...matrixWhole(of('reactivityRow'), of('reactivityGroup'), of('reactivityConsequence')),
    ...pairsDecided(of('storagePair'), of('storageGroup')),
    ...triggersPoint(of('incidentRule'), of('reactivityGroup')),
  ]
}

function repeated(kind: string, keys: readonly string[]): Problem[] {
  const seen = new Set<string>()
  return keys.flatMap(key => {
    if (!seen.has(key)) {
      seen.add(key)
      return []
    }
    return [
      problemOf(
        'table-repeated',
        [kind, key],
        `"${key}" stands twice.`,
        'Of two rows under one key one would be lost.',
        'Keep one of them.',
      ),
    ]
  })
}

function benchPrecautionsPoint(
  rows: readonly RowOf<'benchPrecautions'>[],
  statements: readonly RowOf<'precautionaryStatement'>[],
  hazards: readonly RowOf<'hazardStatement'>[],
): Problem[] {
  const codes = statements.map(row => row.code)
  const known = new Set(codes)
  const hazardCodes = new Set(hazards.map(row => row.code))
  return rows.flatMap(row => [
    ...(hazardCodes.has(row.code) ? [] : [dangling(['benchPrecautions', row.code], row.code, [...hazardCodes])]),
    ...row.precautionary.filter(code => !known.has(code)).map(code => dangling(['benchPrecautions', row.code], code, codes)),
  ])
}

const dangling = (where: readonly string[], key: string, known: readonly string[]): Problem =>
  problemOf(
    'table-dangling',
    where,
    `"${key}" is in no table.`,
    'A pointer into nothing would silently say less than was meant.',
    `${didYouMean(key, known)}Correct it, or add the row it points to.`,
  )

function listsNamed(
  rows: readonly { readonly list: string; readonly category: string }[],
  lists: readonly RowOf<'regulatedList'>[],
): Problem[] {
  const names = lists.map(list => list.name)
  const known = new Set(names)
  return [...new Set(rows.map(row => row.list))]
    .filter(list => !known.has(list))
    .map(list => dangling(['regulatedEntry', list], list, names))
}

function matrixWhole(
  rows: readonly RowOf<'reactivityRow'>[],
  groups: readonly RowOf<'reactivityGroup'>[],
  consequences: readonly RowOf<'reactivityConsequence'>[],
): Problem[] {
  const cells = new Map(rows.map(row => [row.group, row.with]))
  const codes = consequences.map(row => row.code)
  const why = 'What may not meet in a waste container is looked up here: a cell that is missing would read as harmless.'
  const problems: Problem[] = []
  for (const { number: a } of groups) {
    for (const { number: b } of groups) {
      if (a >= b) continue
      const there = cells.get(a)?.[String(b)]
      const back = cells.get(b)?.[String(a)]
      const where = ['reactivityRow', `${a} with ${b}`]
      if (there === undefined || back === undefined)
        problems.push(problemOf('table-cell-missing', where, 'The pair is not told both ways.', why, 'Add the cell to both rows.'))
      else if (there.join() !== back.join())
        problems.push(
          problemOf(
            'table-asymmetric',
            where,
            `${there.join(', ') || 'Blank'} one way, ${back.join(', ') || 'blank'} the other.`,
            why,
            'Make the two cells the same.',
          ),
        )
      for (const code of there ?? []) if (!codes.includes(code)) problems.push(dangling(where, code, codes))
    }
  }
  return problems
}

function pairsDecided(pairs: readonly RowOf<'storagePair'>[], groups: readonly RowOf<'storageGroup'>[]): Problem[] {
  const ids = groups.map(group => group.id)
  const decided = new Set(pairs.flatMap(({ a, b }) => [`${a}|${b}`, `${b}|${a}`]))
  return [
    ...pairs.flatMap(pair =>
      [pair.a, pair.b].filter(id => !ids.includes(id)).map(id => dangling(['storagePair', `${pair.a} with ${pair.b}`], id, ids)),
    ),
    ...ids.flatMap((a, index) =>
      ids
        .slice(index)
        .filter(b => !decided.has(`${a}|${b}`))
        .map(b =>
          problemOf(
            'table-pair-missing',
            ['storagePair', `${a} with ${b}`],
            'Nothing says whether the two may share a cabinet.',
            'A pair that is not decided would read as allowed.',
            'Add a row for the pair.',
          ),
        ),
    ),
  ]
}

function triggersPoint(rules: readonly RowOf<'incidentRule'>[], groups: readonly RowOf<'reactivityGroup'>[]): Problem[] {
  const numbers = groups.map(group => group.number)
  return rules.flatMap(rule =>
    rule.trigger.allOf.flat().flatMap(member => {
      const where = ['incidentRule', rule.id, 'trigger']
      if (member.group !== undefined && !numbers.includes(member.group)) return [dangling(where, String(member.group), numbers.map(String))]
      if (member.compound === undefined && member.cas === undefined && member.group === undefined && member.smarts === undefined)
        return [
          problemOf(
            'table-trigger-empty',
            where,
            'A member of a set names nothing.',
            'The rule could never fire.',
            'Name a compound, a CAS number, a group or a structure.',
          ),
        ]
      return []
    }),
  )
}
