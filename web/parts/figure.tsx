import type { ComponentChildren } from 'preact'
import type { WorkingKey } from '../../core/plan/working.ts'
import { openFigure, turnFigure } from '../state/view.ts'

/**
 * A figure that opens into its working.
 *
 * @param name   unique on the page; the working of that name opens below
 * @param label  what it is the figure of, for a screen reader
 */
export function Figure({
  name,
  label,
  children,
  class: extra = '',
}: {
  readonly name: string
  readonly label: string
  readonly children: ComponentChildren
  readonly class?: string
}) {
  const open = openFigure.value === name
  return (
    <button
      type="button"
      class={`fig ${extra}`}
      aria-expanded={open}
      aria-controls={open ? workingId(name) : undefined}
      id={figureId(name)}
      onClick={() => turnFigure(name)}
    >
      {children}
      <span class="unseen">, {label}: show the working</span>
    </button>
  )
}

/** The name of a figure on the page: what it is the figure of. */
export const figureOf = (key: WorkingKey): string => JSON.stringify(key)

export const figureId = (name: string): string => `figure-${slug(name)}`
export const workingId = (name: string): string => `working-${slug(name)}`
const slug = (name: string): string => name.replace(/[^A-Za-z0-9]+/g, '-')
