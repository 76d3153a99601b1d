import { useState } from 'preact/hooks'
import type { Problem } from '../../core/problem/problem.ts'
import { readChargeTable } from '../../core/reading/charge-table.ts'
import { Problems } from '../parts/problem.tsx'
import { problemsOf } from '../state/asked.ts'
import { entryServer, type ReactionRead, type Trial } from './api.ts'
import { GiveAway } from './give-away.tsx'
import { saveOwn, undoOwn } from './own.ts'
import { ChangeRows, History } from './parts.tsx'
import { ReactionChoice, toWriting, writeReaction } from './reaction-choice.tsx'

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
  const [reactions, setReactions] = useState<readonly ReactionRead[]>([])

  const take = async (list: FileList): Promise<void> => {
    setSaved(false)
    setTrial(null)
    setProblems([])
    setReactions([])
    const chosen = [...list]
    const large = chosen.filter(file => file.size > mostBytes)
    if (large.length > 0) return setProblems(large.map(tooLarge))
    const read = await Promise.all(chosen.map(async file => ({ name: file.name, text: await file.text() })))
    // A reaction or a table of charges is a preparation in the making: it goes to where one is written.
    const [only] = read
    if (read.length === 1 && only !== undefined) {
      const charges = readChargeTable(only.text)
      if (charges !== null) return toWriting({ body: charges.lines.join('\n'), roles: charges.roles })
      if (/^\s*\$(?:RXN|RDFILE)/.test(only.text) || /^\s*[^\s>]+>[^\s>]*>[^\s>]+/.test(only.text)) {
        try {
          const found = await entryServer.readReaction(only.name, only.text)
          const [first] = found.reactions
          return found.reactions.length === 1 && first !== undefined ? writeReaction(first) : setReactions(found.reactions)
        } catch (fault) {
          return setProblems(problemsOf(fault))
        }
      }
    }
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
          Library files (JSON, described by <a href="./api/v1/library-schema.json">its JSON Schema</a>), tables of materials or charges
          (CSV, TSV), structures (SDF), reactions (reaction SMILES, MDL RXN and RD files). Nothing changes before you have seen what would:
          all of it is taken over, or none.
        </p>
      </section>
      {waiting && (
        <p class="soft" role="status">
          Reading and checking.
        </p>
      )}
      <Problems of={problems} />
      {reactions.length > 0 && <ReactionChoice of={reactions} />}
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

const tooLarge = (file: File): Problem => ({
  code: 'too-large',
  where: [file.name],
  what: `The file has ${Math.round(file.size / 1048576)} MB; at most 19 MB are read.`,
  why: 'The server keeps room for others.',
  cure: 'Split it.',
})
