import type { Problem } from '../../core/problem/problem.ts'
import { counted } from '../../core/report/words.ts'
import type { TableReply } from '../api/replies.ts'
import { problemsOf } from '../state/asked.ts'
import { halfDone } from '../state/half-done.ts'
import { Problems } from './problem.tsx'

interface TableFileProps {
  /** What the button says. */
  readonly label: string
  /** What a line is: "bottle", "pack". */
  readonly one: string
  /** Has a table read; good lines are taken there and then. Gives how many, and what was not taken. */
  readonly read: (name: string, text: string) => Promise<TableReply & { readonly taken: number }>
}

interface Read {
  readonly said: string
  readonly problems: readonly Problem[]
  /** What was not taken. */
  readonly left: { readonly name: string; readonly text: string } | null
}

const nothingRead: Read = { said: '', problems: [], left: null }

/**
 * A table from this computer, chosen or dropped. Lines that cannot be read stay here, whole and with what is wrong with them, to be
 * corrected in place and read again: nothing of the file is lost, though the question is folded meanwhile.
 */
export function TableFile({ label, one, read }: TableFileProps) {
  const [{ said, problems, left }, setSo] = halfDone(label, nothingRead)
  const take = async (name: string, text: string): Promise<void> => {
    try {
      const reply = await read(name, text)
      const heading = text.split(/\r\n|\r|\n/, 1)[0] ?? ''
      const lines = reply.refused.map(row => row.text)
      setSo({
        said: [`${counted(reply.taken, one)} taken from ${name}.`, ...reply.notes.map(note => note.what)].join(' '),
        problems: [...reply.problems, ...reply.refused.flatMap(row => row.problems)],
        left: reply.problems.length > 0 ? { name, text } : lines.length === 0 ? null : { name, text: [heading, ...lines].join('\n') },
      })
    } catch (fault) {
      setSo({ said: '', problems: problemsOf(fault), left: { name, text } })
    }
  }
  const takeFile = (file: File | undefined): void => {
    if (file !== undefined) void file.text().then(text => take(file.name, text))
  }
  return (
    <fieldset
      class="table-file"
      aria-label={label}
      onDragOver={event => event.preventDefault()}
      onDrop={event => {
        event.preventDefault()
        takeFile(event.dataTransfer?.files[0])
      }}
    >
      <label class="do file s">
        {label}
        <input
          type="file"
          accept=".csv,.tsv,.txt,text/csv"
          class="unseen"
          onChange={event => {
            const file = event.currentTarget.files?.[0]
            event.currentTarget.value = ''
            takeFile(file)
          }}
        />
      </label>
      {said !== '' && (
        <span class="s soft" role="status">
          {' '}
          {said}
        </span>
      )}
      {problems.length > 0 && <Problems of={problems} />}
      {left !== null && (
        <form
          class="line-form"
          onSubmit={event => {
            event.preventDefault()
            void take(left.name, left.text)
          }}
        >
          <label class="field">
            <span>Not taken; correct it here</span>
            <textarea
              class="blank"
              rows={Math.min(12, left.text.split('\n').length + 1)}
              cols={48}
              value={left.text}
              onInput={event => setSo({ said, problems, left: { ...left, text: event.currentTarget.value } })}
            />
          </label>
          <button type="submit" class="do">
            Read it again
          </button>
          <button type="button" class="do" onClick={() => setSo(nothingRead)}>
            Leave it
          </button>
        </form>
      )}
    </fieldset>
  )
}
