import type { ComponentChildren } from 'preact'
import { figureId } from '../parts/figure.tsx'
import { openFigure, openQuestion, type QuestionNumber, turnTo } from '../state/view.ts'

interface Props {
  readonly no: QuestionNumber
  readonly ask: string
  /** The answer, which is the heading. */
  readonly answer: ComponentChildren
  /** Nothing has been said or found yet. */
  readonly empty?: boolean
  /** The figures in the heading are older than the plan. */
  readonly stale?: boolean
  readonly children: () => ComponentChildren
}

/** One of the seven: small the question, large its answer; open, the body under it. Escape folds the figure, then the question. */
export function Question({ no, ask, answer, empty = false, stale = false, children }: Props) {
  const open = openQuestion.value === no
  const fold = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || !open) return
    const figure = openFigure.value
    if (figure !== null) {
      openFigure.value = null
      document.getElementById(figureId(figure))?.focus()
    } else {
      openQuestion.value = null
      document.querySelector<HTMLElement>(`#q${no} > summary`)?.focus()
    }
    event.preventDefault()
  }
  return (
    <details class="q" id={`q${no}`} open={open} onKeyDown={fold}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: a summary answers a press */}
      <summary
        onClick={event => {
          event.preventDefault()
          turnTo(no)
        }}
      >
        <span class="no">{no}</span>
        <span>
          <span class="ask">{ask}</span>
          <h2 class={empty ? 'empty' : ''} data-stale={stale ? '' : undefined}>
            {answer}
          </h2>
        </span>
        <span class="fold" aria-hidden="true" />
      </summary>
      {open && <div class="body">{children()}</div>}
    </details>
  )
}
