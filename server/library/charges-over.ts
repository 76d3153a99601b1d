import type { Transformation } from '../../core/library/transformation.ts'
import type { ChargeHeading } from '../../core/reading/charge-columns.ts'

type Line = Readonly<Record<string, unknown>>

const asked = ['at', 'derived', 'from'] as const
const amounts = ['material', 'amount', 'unit', 'perGramProduct'] as const

/**
 * The charges of a table in place of a record's own, all else of which stays. What the table has no column for is kept of the line whose
 * amount it repeats; an amount that it changes comes from the table, where its line does not say otherwise: nobody read it in the record's
 * sources.
 *
 * @param record    as raw as the file that it came from
 * @param headings  of the table
 */
export function chargesOver(record: object, lines: readonly Line[], name: string, headings: readonly (ChargeHeading | null)[]): object {
  const { charge: own, sources } = record as { readonly charge?: unknown; readonly sources?: unknown }
  const before: readonly Line[] = Array.isArray(own) ? own : []
  const citation = `from the table ${name}`
  const charge = lines.map((line): Line => {
    const alike = before.filter(one => amounts.every(key => one[key] === line[key]))
    const same = alike.find(one => one.role === line.role) ?? alike[0]
    const kept = Object.fromEntries(asked.flatMap(key => (headings.includes(key) || same?.[key] === undefined ? [] : [[key, same[key]]])))
    // What the library has no charge for is not changed, and what was reckoned says so anyway.
    const isChanged = before.length > 0 && same === undefined && line.from === undefined && line.derived !== true && hasAmount(line)
    return { ...line, ...kept, ...(isChanged ? { from: citation } : {}) }
  })
  const named: Transformation['sources'][number] = { citation, for: 'charge', checked: false }
  if (!Array.isArray(sources) || charge.every(line => line.from !== citation)) return { ...record, charge }
  const isNamed = sources.some(one => (one as { readonly citation?: unknown } | null)?.citation === citation)
  return { ...record, charge, sources: isNamed ? sources : [...sources, named] }
}

const hasAmount = ({ amount, perGramProduct }: Line): boolean => amount !== null || perGramProduct !== undefined
