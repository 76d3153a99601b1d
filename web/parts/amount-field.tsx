import { useEffect, useState } from 'preact/hooks'
import type { Problem } from '../../core/problem/problem.ts'
import { parseQuantity, type Quantity } from '../../core/quantity/parse.ts'
import type { Dimension } from '../../core/quantity/unit.ts'

interface Props {
  /** What stands there, as text. */
  readonly text: string
  readonly label: string
  readonly dimensions: readonly Dimension[]
  /** Called with what was written, once it can be read; null where an empty field means "not stated". */
  readonly onWritten: (quantity: Quantity | null) => void
  readonly mayBeEmpty?: boolean
  readonly class?: string
  readonly size?: number
}

/**
 * An amount in pen, written as people write amounts. It counts when the field is left or Enter is pressed; what cannot be read stays as
 * typed, under a dashed line, with the reason below.
 */
export function AmountField({ text, label, dimensions, onWritten, mayBeEmpty = false, class: extra = '', size = 9 }: Props) {
  const [draft, setDraft] = useState(text)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [writing, setWriting] = useState(false)
  useEffect(() => {
    // A field that is being written in, or holds what could not be read, is the person's.
    if (!writing && problems.length === 0) setDraft(text)
  }, [text, writing, problems.length])

  const settle = (): void => {
    setWriting(false)
    if (draft.trim() === text.trim()) {
      setProblems([])
      return
    }
    if (mayBeEmpty && draft.trim() === '') {
      setProblems([])
      onWritten(null)
      return
    }
    const read = parseQuantity(draft, [label], { dimensions, zero: false })
    setProblems(read.ok ? [] : read.problems)
    if (read.ok) onWritten(read.value)
  }
  const id = `wrong-${label.replace(/[^A-Za-z0-9]+/g, '-')}`
  return (
    <>
      <input
        class={`blank ${extra}`}
        size={size}
        aria-label={label}
        value={draft}
        aria-invalid={problems.length > 0}
        aria-describedby={problems.length > 0 ? id : undefined}
        autocomplete="off"
        inputMode="text"
        onFocus={event => {
          setWriting(true)
          event.currentTarget.select()
        }}
        onInput={event => setDraft(event.currentTarget.value)}
        onBlur={settle}
        onKeyDown={event => {
          if (event.key === 'Enter') settle()
          if (event.key === 'Escape' && draft !== text) {
            event.stopPropagation()
            setDraft(text)
            setProblems([])
          }
        }}
      />
      {problems.map(problem => (
        <span class="s soft wrong-field" id={id} role="status" key={problem.code}>
          {problem.what} {problem.cure}
        </span>
      ))}
    </>
  )
}
