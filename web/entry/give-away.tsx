import { useEffect, useState } from 'preact/hooks'
import { entryServer } from './api.ts'
import { own } from './own.ts'

/** The own library as files to take along, each with what its form cannot hold. */
export function GiveAway() {
  const [lost, setLost] = useState<ReadonlyMap<string, readonly string[]>>(new Map())
  const version = own.value?.version ?? 0
  useEffect(() => {
    let wanted = true
    entryServer.forms().then(
      ({ forms }) => wanted && setLost(new Map(forms.map(one => [one.form, one.notHeld]))),
      // The links work without; what a form lacks is then told by nobody here.
      () => {},
    )
    return () => {
      wanted = false
    }
  }, [version])
  return (
    <section>
      <h2>Your own library as a file</h2>
      <ul class="rows">
        {downloads.map(([form, words]) => (
          <li key={form}>
            <a class="do" href={`./api/v1/own-library/file?form=${form}`} download>
              {words}
            </a>
            {(lost.get(form) ?? []).length > 0 && <span class="s soft block">Not in it: {lost.get(form)!.join(' ')}</span>}
          </li>
        ))}
      </ul>
      <p class="s soft">
        The charges of one step are given as a table beside its sources, in the library; changed and read back, they change its charges and
        nothing else. A plan file carries the records that it uses with it, so that it opens on another machine without these.
      </p>
    </section>
  )
}

const downloads = [
  ['json', 'library file (JSON): everything'],
  ['csv', 'materials as a table (CSV)'],
  ['tsv', 'materials as a table (TSV)'],
  ['sdf', 'materials with their structures (SDF)'],
  ['charges-csv', 'charges of all steps as a table (CSV)'],
  ['charges-tsv', 'charges of all steps as a table (TSV)'],
  ['rdf', 'transformations with their drawn reactions (RDF)'],
  ['smi', 'equations as reaction SMILES'],
  ['rxn', 'equations as MDL reaction files'],
] as const
