import { isWanted } from '../../core/library/mark.ts'
import type { RecordFigure } from '../../core/report/record-figures.ts'
import { listed, sentence } from '../../core/report/words.ts'
import { Problems } from '../parts/problem.tsx'
import { MarkedName } from '../parts/trust-word.tsx'
import { Formula, Name } from '../parts/words.tsx'
import { entryServer, type Kept } from './api.ts'
import { own } from './own.ts'
import { openMending } from './place.ts'
import { useFound } from './use-found.ts'

/** Materials with all that is known of them, how sure each figure is, and by whose word. */
export function MaterialList({ words, kept }: { readonly words: string; readonly kept: Kept }) {
  const { answer, problems } = useFound(entryServer.materials, words, kept)
  if (words.trim() === '' && kept.trust === '') return <p class="soft">Write a name, a formula or a CAS number, or choose how sure.</p>
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
            {row.own && <span class="own"> yours</span>}{' '}
            <button type="button" class="do s" onClick={() => openMending(row.id)}>
              put right<span class="unseen">: {row.name}</span>
            </button>
            {shownOf(row.figures, kept).map(one => (
              <MarkedName of={one} value={one.value} key={one.figure} />
            ))}
            <InPlaceOfBundled id={row.id} />
            <span class="s soft block">{sourcesOf(shownOf(row.figures, kept))}</span>
          </li>
        ))}
      </ul>
    </>
  )
}

/** What an own record says otherwise than the bundled one beneath it. */
function InPlaceOfBundled({ id }: { readonly id: string }) {
  const told =
    own.value?.overrides.find(row => row.list === 'materials' && row.id === id)?.fields.filter(one => one.key !== 'sources') ?? []
  return told.length === 0 ? null : (
    <span class="s own block">own record, in place of the bundled one: {told.map(one => one.text).join('; ')}</span>
  )
}

/** Where the list is kept to figures so sure, only those. */
const shownOf = (figures: readonly RecordFigure[], { trust, figure }: Kept): readonly RecordFigure[] =>
  trust === '' ? figures : figures.filter(one => (figure === '' || one.figure === figure) && isWanted(trust, one.mark))

/** Each source once, with what it is the source of. */
function sourcesOf(figures: readonly RecordFigure[]): string {
  const bySource = new Map<string, string[]>()
  for (const { figure, source } of figures) if (source !== null) bySource.set(source, [...(bySource.get(source) ?? []), figure])
  return [...bySource].map(([source, of]) => sentence(`${listed(of)}: ${source}`)).join(' ')
}
