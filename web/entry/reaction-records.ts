import { useEffect, useState } from 'preact/hooks'
import type { Problem } from '../../core/problem/problem.ts'
import { Refused } from '../api/client.ts'
import { problemsOf } from '../state/asked.ts'
import { entryServer, type Reading, type Trial } from './api.ts'
import { textOf, writing } from './draft.ts'
import { namedIn, news } from './new-structures.ts'
import { own } from './own.ts'
import { type Queue, queue, writtenOf } from './reactions.ts'
import { drafted, type Lack } from './record.ts'

/** How far a reaction of the list has come. */
export interface Standing {
  readonly record: Readonly<Record<string, unknown>> | null
  readonly lacking: readonly Lack[]
}

/** All reactions of the list as records, and what taking them over would do. */
export interface Together {
  /** By place in the list; absent for one that is left out, cannot be read or is not read yet. */
  readonly standing: ReadonlyMap<number, Standing>
  /** Null until every reaction that is not left out is ready. */
  readonly trial: Trial | null
  readonly problems: readonly Problem[]
}

const nothing: Together = { standing: new Map(), trial: null, problems: [] }
/** After the last change, ms. */
const restMs = 200

/** Ids that the library beneath has turned out to hold: a new step is not to stand in place of one unsaid. */
const beneath = new Set<string>()

/** What was read of a text; the library's own records may have changed since, so that it is kept for one edition of them. */
let readings = new Map<string, Reading>()
let edition = -1

/** Reads what stands for each reaction of the list, and tries all of them together; anew at every change. */
export function useTogether(today: string): Together {
  const [together, setTogether] = useState<Together>(nothing)
  const now = queue.value
  const version = own.value?.version ?? 0
  const texts = now === null ? [] : wanted(now).map(at => [at, JSON.stringify(writtenOf(now, at))] as const)
  const { all, fresh } = news.value
  const materials = all.map(one => one.record)
  const key = JSON.stringify([version, texts, now?.items.length, fresh, all])
  useEffect(() => {
    if (now === null) return setTogether(nothing)
    // What the new structures are comes first: the reactions are read with them.
    if (!fresh) return
    const stop = new AbortController()
    const timer = setTimeout(() => {
      tried(now, today, version, materials, stop.signal).then(
        answer => !stop.signal.aborted && setTogether(answer),
        fault => !stop.signal.aborted && setTogether({ ...nothing, problems: problemsOf(fault) }),
      )
    }, restMs)
    return () => {
      clearTimeout(timer)
      stop.abort()
    }
  }, [key])
  return together
}

async function readingOf(text: string, materials: readonly unknown[], signal: AbortSignal): Promise<Reading | readonly Problem[]> {
  const key = `${text}\n${JSON.stringify(materials)}`
  const known = readings.get(key)
  if (known !== undefined) return known
  try {
    const reading = await entryServer.read(text, materials, signal)
    readings.set(key, reading)
    return reading
  } catch (fault) {
    if (fault instanceof Refused && fault.status === refused) return fault.problems
    throw fault
  }
}

/** HTTP: understood, and refused. */
const refused = 422

const wanted = ({ items }: Queue): readonly number[] => items.flatMap((item, at) => (item.read === null || item.left ? [] : [at]))

async function tried(now: Queue, today: string, version: number, materials: readonly unknown[], signal: AbortSignal): Promise<Together> {
  if (version !== edition) {
    readings = new Map()
    edition = version
  }
  const taken = new Set([...(own.peek()?.transformations ?? []).map(one => one.id), ...beneath])
  const standing = new Map<number, Standing>()
  for (const at of wanted(now)) {
    const written = now.at === at ? writing.peek() : writtenOf(now, at)
    const text = textOf(written)
    const reading = await readingOf(text, materials, signal)
    if (!('lines' in reading)) {
      // What ends planning in one reaction is said of that one.
      standing.set(at, { record: null, lacking: reading.map(({ what }) => ({ field: 'equation', what })) })
      continue
    }
    const { record, lacking } = drafted(written, reading, today, id => taken.has(id))
    if (record !== null) taken.add(String(record.id))
    standing.set(at, { record, lacking })
  }
  const all = [...standing.values()]
  const transformations = all.map(one => one.record)
  const isWhole =
    all.length > 0 &&
    now.items.every(item => item.left || item.read !== null) &&
    transformations.every(record => record !== null) &&
    news.peek().all.every(one => one.lacking.length === 0)
  const trial: Trial | null = isWhole ? await entryServer.check({ materials: namedIn(transformations), transformations }, signal) : null
  const asked = new Set(wanted(now).map(at => writtenOf(now, at).inPlaceOf))
  const unsaid = (trial?.rows ?? []).filter(row => row.change === 'overrides' && !asked.has(row.id))
  if (unsaid.length > 0) {
    for (const row of unsaid) beneath.add(row.id)
    return tried(now, today, version, materials, signal)
  }
  return { standing, trial, problems: [] }
}
