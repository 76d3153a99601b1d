import type { FigureTrust } from '../../core/library/figure-trust.ts'
import type { Trust } from '../../core/library/trust.ts'
import { sentence } from '../../core/report/words.ts'
import { Problems } from '../parts/problem.tsx'
import { TrustWord } from '../parts/trust-word.tsx'
import { Formula, Name } from '../parts/words.tsx'
import { entryServer } from './api.ts'
import { useFound } from './use-found.ts'

/** Materials with how sure their hazards and densities are, and by whose word. */
export function MaterialList({ words, trust }: { readonly words: string; readonly trust: Trust | '' }) {
  const { answer, problems } = useFound(entryServer.materials, words, trust)
  if (words.trim() === '' && trust === '') return <p class="soft">Write a name, a formula or a CAS number, or choose how sure.</p>
  const rows = answer?.materials ?? []
  return (
    <>
      <Problems of={problems} />
      {answer !== null && (
        <p class="soft" role="status">
          {answer.found} {answer.found === 1 ? 'material' : 'materials'}
          {answer.found > rows.length ? `; the first ${rows.length} are shown` : ''}.
        </p>
      )}
      <ul class="rows">
        {rows.map(row => (
          <li key={row.id}>
            <b>
              <Name text={row.name} />
            </b>{' '}
            {row.formula !== undefined && <Formula text={row.formula} />}
            {row.own && <span class="own"> yours</span>}
            {row.figures.map(one => (
              <span class="marked" key={one.figure}>
                {one.figure}
                {one.figure === 'density' && row.densityGPerMl !== undefined ? ` ${row.densityGPerMl} g/mL` : ''}{' '}
                <TrustWord trust={one.trust} source={one.source} />
              </span>
            ))}
            <span class="s soft block">{sourcesOf(row.figures)}</span>
          </li>
        ))}
      </ul>
    </>
  )
}

const sourcesOf = (figures: readonly FigureTrust[]): string =>
  figures.flatMap(one => (one.source === null ? [] : [sentence(`${one.figure}: ${one.source}`)])).join(' ')
