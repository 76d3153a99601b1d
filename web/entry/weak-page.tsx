import { useEffect, useState } from 'preact/hooks'
import type { Trust } from '../../core/library/trust.ts'
import type { WeakSpot } from '../../core/library/weak-spots.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { Problems } from '../parts/problem.tsx'
import { TrustWord } from '../parts/trust-word.tsx'
import { Name } from '../parts/words.tsx'
import { problemsOf } from '../state/asked.ts'
import { entryServer } from './api.ts'
import { Choice, TextField } from './parts.tsx'

type Spot = WeakSpot & { readonly own: boolean }

const kindWords: Readonly<Record<WeakSpot['kind'], string>> = {
  'hazards unknown': 'Hazards unknown',
  'no density': 'No density',
  'remembered yield': 'Yields that are only remembered',
  'single-source yield': 'Yields on a single source',
  'estimated times': 'Times that are estimated',
  'never run here': 'Never run here',
}

/** Rows of a kind that are shown before one asks for more. */
const shownAtFirst = 12

/** What the library rests on too little, gravest first. */
export function WeakPage() {
  const [spots, setSpots] = useState<readonly Spot[] | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [words, setWords] = useState('')
  useEffect(() => {
    entryServer.weak().then(
      answer => setSpots(answer.spots),
      fault => setProblems(problemsOf(fault)),
    )
  }, [])
  const [trust, setTrust] = useState<Trust | ''>('')
  const wanted = words.trim().toLowerCase()
  const found = (spots ?? []).filter(
    spot => (wanted === '' || `${spot.name} ${spot.id}`.toLowerCase().includes(wanted)) && (trust === '' || spot.trust === trust),
  )
  return (
    <>
      <Problems of={problems} />
      <div class="line-form">
        <TextField label="Look for" help="A material or a step." value={words} onText={setWords} />
        <Choice
          label="How sure"
          help="Of each finding: what its figure rests on."
          value={trust}
          options={[
            ['', 'all'],
            ['unknown', 'unknown'],
            ['remembered', 'remembered'],
            ['seen', 'seen in one source'],
            ['own bench', 'own bench'],
          ]}
          onChoose={setTrust}
        />
      </div>
      {spots === null && problems.length === 0 && (
        <p class="soft" role="status">
          Looking through the library.
        </p>
      )}
      {(Object.keys(kindWords) as WeakSpot['kind'][]).map(kind => {
        const rows = found.filter(spot => spot.kind === kind)
        if (rows.length === 0) return null
        return (
          <section key={kind}>
            <h2>
              {kindWords[kind]}: {rows.length}
            </h2>
            <p class="s soft">{rows[0]!.cure}</p>
            <Rows rows={rows.slice(0, shownAtFirst)} />
            {rows.length > shownAtFirst && (
              <details>
                <summary class="do">{rows.length - shownAtFirst} more</summary>
                <Rows rows={rows.slice(shownAtFirst)} />
              </details>
            )}
          </section>
        )
      })}
      {spots !== null && found.length === 0 && <p>Nothing weak is called that, or is so sure.</p>}
    </>
  )
}

const Rows = ({ rows }: { readonly rows: readonly Spot[] }) => (
  <ul class="rows">
    {rows.map(spot => (
      <li key={`${spot.kind} ${spot.id}`}>
        <Name text={spot.name} />
        {spot.own && <span class="own"> yours</span>} <TrustWord trust={spot.trust} />
        <span class="soft s">, {spot.what}</span>
      </li>
    ))}
  </ul>
)
