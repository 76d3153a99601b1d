import { useState } from 'preact/hooks'
import type { Problem } from '../../core/problem/problem.ts'
import { chargeCells } from '../../core/reading/charge-columns.ts'
import { readChargeTable } from '../../core/reading/charge-table.ts'
import { Problems } from '../parts/problem.tsx'
import { problemsOf } from '../state/asked.ts'
import { entryServer, type Trial } from './api.ts'
import { GiveAway } from './give-away.tsx'
import { saveOwn, undoOwn } from './own.ts'
import { ChangeRows, History } from './parts.tsx'
import { ReactionChoice, toWriting } from './reaction-choice.tsx'
import { awayWith, beginQueue, bringBack, putAway, queue, writingOf } from './reactions.ts'

interface Dropped {
  readonly name: string
  readonly text: string
}

/** The largest file that the server takes, bytes. */
const mostBytes = 19 * 1024 * 1024

/** Files in and out: shown first, taken over whole or not at all. */
export function FilePage() {
  const [files, setFiles] = useState<readonly Dropped[]>([])
  const [trial, setTrial] = useState<Trial | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [saved, setSaved] = useState(false)
  const [waiting, setWaiting] = useState(false)

  const take = async (list: FileList): Promise<void> => {
    setSaved(false)
    setTrial(null)
    setProblems([])
    setFiles([])
    const chosen = [...list]
    const large = chosen.filter(file => file.size > mostBytes)
    if (large.length > 0) return setProblems(large.map(tooLarge))
    const read = await Promise.all(chosen.map(async file => ({ name: file.name, text: await file.text() })))
    // A table of charges without its steps is a preparation in the making: it goes to where one is written.
    const [only] = read
    if (read.length === 1 && only !== undefined) {
      const charges = readChargeTable(only.text)
      if (charges !== null && !hasSteps(only.text))
        return toWriting({ body: charges.lines.join('\n'), roles: charges.roles, facts: charges.facts })
    }
    const equations = read.filter(file => isEquations(file.text))
    const rest = read.filter(file => !equations.includes(file))
    if (equations.length > 0) {
      const wasEmpty = queue.peek() === null
      setProblems(await beginQueue(equations))
      const [first, second] = queue.peek()?.items ?? []
      // One alone is written and saved like any other preparation.
      if (wasEmpty && second === undefined && rest.length === 0 && first?.read != null && first.read.unknown.length === 0) {
        putAway()
        awayWith.value = null
        return toWriting(writingOf(first))
      }
    }
    if (rest.length > 0) await tryFiles(rest)
  }
  const tryFiles = async (read: readonly Dropped[]): Promise<void> => {
    setFiles(read)
    setWaiting(true)
    try {
      setTrial(await entryServer.check({ files: read }))
    } catch (fault) {
      setProblems(problemsOf(fault))
    }
    setWaiting(false)
  }
  const save = async (): Promise<void> => {
    const found = await saveOwn(`from ${files.map(file => file.name).join(', ')}`, { files })
    setProblems(found)
    setSaved(found.length === 0)
  }
  const news = trial?.rows.filter(row => row.change !== 'same') ?? []
  return (
    <>
      <section>
        <p>
          <label class="do file">
            Choose files
            <input
              type="file"
              multiple
              class="unseen"
              accept=".json,.csv,.tsv,.txt,.sdf,.sd,.rxn,.rdf,.smi,.smiles"
              onChange={event => {
                const list = event.currentTarget.files
                if (list !== null && list.length > 0) void take(list)
              }}
            />
          </label>
        </p>
        <p class="s soft">
          Library files (JSON, described by{' '}
          <a class="do" href="./api/v1/library-schema.json">
            its JSON Schema
          </a>
          ), plan files (the records of their own that they bring), tables of materials or charges (CSV, TSV), structures (SDF), reactions
          (reaction SMILES, MDL RXN and RD files, several at a time). Nothing changes before you have seen what would: all of it is taken
          over, or none. Structures of a reaction that the library does not hold come with it as new materials. What a table has no column
          for stays as it is.
        </p>
      </section>
      {waiting && (
        <p class="soft" role="status">
          Reading and checking.
        </p>
      )}
      <Problems of={problems} />
      {queue.value !== null && <ReactionChoice />}
      {queue.value === null && awayWith.value !== null && (
        <p class="dos">
          <button type="button" class="do" onClick={bringBack}>
            Bring back the reactions that were put away
          </button>
        </p>
      )}
      {trial !== null && (
        <section class="entry-save" aria-label="What would change">
          <h2>
            {trial.refused.length > 0
              ? `Refused: ${trial.refused.length} ${trial.refused.length === 1 ? 'fault' : 'faults'}, nothing would be taken over`
              : news.length === 0
                ? 'Nothing in it is new'
                : `${news.length} ${news.length === 1 ? 'record' : 'records'} would be taken over`}
          </h2>
          <ChangeRows rows={trial.rows} refused={trial.refused} />
          <Problems of={trial.refused} />
          {trial.warnings.length > 0 && (
            <details>
              <summary class="do">{trial.warnings.length === 1 ? 'One thing to mind' : `${trial.warnings.length} things to mind`}</summary>
              <Problems of={trial.warnings} />
            </details>
          )}
          <p class="dos">
            <button
              type="button"
              class="do strong"
              disabled={trial.refused.length > 0 || news.length === 0 || saved}
              onClick={() => void save()}
            >
              Take {news.length === 1 ? 'it' : 'all of them'} over
            </button>
            {saved && (
              <button
                type="button"
                class="do"
                onClick={() => {
                  setSaved(false)
                  void undoOwn()
                }}
              >
                Take it back
              </button>
            )}
          </p>
        </section>
      )}
      <GiveAway />
      <History />
    </>
  )
}

/** A table of charges that says of which steps it is: it changes records. */
const hasSteps = (text: string): boolean => chargeCells(text)?.headings.includes('step') === true

/** Reactions without the records of transformations. */
const isEquations = (text: string): boolean =>
  /^\s*\$(?:RXN|RDFILE)/.test(text)
    ? !/^\$DTYPE waybench:/m.test(text)
    : /^\ufeff?(?:#[^\n]*\n|\s)*[^\s>]+>[^\s>]*>[^\s>]+/.test(text.slice(0, mostHead))

/** Of a large file only the head is looked at, characters. */
const mostHead = 20_000

const tooLarge = (file: File): Problem => ({
  code: 'too-large',
  where: [file.name],
  what: `The file has ${Math.round(file.size / 1048576)} MB; at most 19 MB are read.`,
  why: 'The server keeps room for others.',
  cure: 'Split it.',
})
