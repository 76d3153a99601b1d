import { useEffect, useState } from 'preact/hooks'
import { isWanted, type WantedMark } from '../../core/library/mark.ts'
import type { WeakSpot } from '../../core/library/weak-spots.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { weakPrices } from '../../core/shopping/weak-prices.ts'
import { Problems } from '../parts/problem.tsx'
import { TrustWord } from '../parts/trust-word.tsx'
import { Name } from '../parts/words.tsx'
import { problemsOf } from '../state/asked.ts'
import { facts } from '../state/facts-here.ts'
import { plan } from '../state/store.ts'
import { entryServer } from './api.ts'
import { Choice, TextField } from './parts.tsx'
import { openMending } from './place.ts'

type Spot = WeakSpot & { readonly own: boolean }

const kindWords: Readonly<Record<WeakSpot['kind'], string>> = {
  'hazards unknown': 'Hazards unknown',
  'no density': 'No density',
  'price without source': 'Prices without a source',
  'remembered hazards': 'Hazards that are only remembered',
  'remembered yield': 'Yields that are only remembered',
  'single-source yield': 'Yields on a single source',
  'remembered charges': 'Charges that are only remembered',
  'reckoned charges': 'Charges that the library reckoned',
  'remembered properties': 'Properties that are only remembered',
  'remembered price': 'Prices that are only remembered',
  'invented price': 'Prices that are invented',
  'estimated times': 'Times that are estimated',
  'never run here': 'Never run here',
}

/** Kinds whose findings are put right in the record of a material. */
const ofMaterials: ReadonlySet<WeakSpot['kind']> = new Set(['hazards unknown', 'no density', 'remembered hazards', 'remembered properties'])

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
  const [trust, setTrust] = useState<WantedMark | ''>('')
  const wanted = words.trim().toLowerCase()
  const prices = weakPrices(facts.value.library, plan.value.packs).map(spot => ({ ...spot, own: false }))
  const told = new Set((spots ?? []).map(spot => `${spot.kind} ${spot.name}`))
  const found = [...(spots ?? []), ...prices.filter(spot => !told.has(`${spot.kind} ${spot.name}`))].filter(
    spot => (wanted === '' || `${spot.name} ${spot.id}`.toLowerCase().includes(wanted)) && (trust === '' || isWanted(trust, spot.trust)),
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
            ['not seen', 'not seen in a source'],
            ['unknown', 'unknown or not stated'],
            ['remembered', 'remembered'],
            ['invented', 'invented'],
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
      <li key={`${spot.kind} ${spot.id} ${spot.name}`}>
        <Name text={spot.name} />
        {spot.own && <span class="own"> yours</span>} <TrustWord trust={spot.trust} />
        <span class="soft s">, {spot.what}</span>{' '}
        {ofMaterials.has(spot.kind) && (
          <button type="button" class="do s" onClick={() => openMending(spot.id)}>
            put right<span class="unseen">: {spot.name}</span>
          </button>
        )}
      </li>
    ))}
  </ul>
)
