import { useEffect } from 'preact/hooks'
import { entryServer } from './api.ts'
import { write, writing } from './draft.ts'
import { sameWays } from './drafting.ts'
import { own } from './own.ts'
import { Choice } from './parts.tsx'
import { readingState } from './reading.ts'

/** Steps of the library with the same reactants and product: a new way beside them, or in place of one. */
export function InPlaceOf() {
  const { reading } = readingState.value
  const names = (terms: readonly { readonly compound: string | null }[]) =>
    terms.map(term => reading?.materials[term.compound ?? '']?.name ?? '?').sort()
  const from = reading === null ? [] : names(reading.reactants)
  const to = reading?.transformation.mainProduct === undefined ? '' : (reading.materials[reading.transformation.mainProduct]?.name ?? '')
  const version = own.value?.version ?? 0
  useEffect(() => {
    if (to === '') {
      sameWays.value = []
      return
    }
    let wanted = true
    sameWays.value = null
    entryServer.steps(to, { trust: '', figure: '' }, 100).then(
      found => {
        if (wanted) sameWays.value = found.transformations.filter(row => row.to === to && [...row.from].sort().join('|') === from.join('|'))
      },
      () => {
        if (wanted) sameWays.value = []
      },
    )
    return () => {
      wanted = false
    }
  }, [to, from.join('|'), version])
  const rows = sameWays.value ?? []
  if (rows.length === 0) return null
  return (
    <Choice
      label={
        rows.length === 1
          ? 'The library has one way with the same reactants'
          : `The library has ${rows.length} ways with the same reactants`
      }
      help="A new way stands beside them and is ranked with them. In place of one, yours is used; a bundled one stays untouched beneath it."
      value={rows.some(row => row.id === writing.value.inPlaceOf) ? writing.value.inPlaceOf : ''}
      options={[
        ['', 'this is a new way'],
        ...rows.map(
          row => [row.id, `in place of ${row.own ? 'your own ' : ''}${row.name} (usually ${row.yieldPercent.typical} %)`] as const,
        ),
      ]}
      onChoose={inPlaceOf => write({ inPlaceOf })}
    />
  )
}
