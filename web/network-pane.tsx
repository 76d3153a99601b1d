import { reach } from './state/questions.ts'
import { hasStart } from './state/sheet-state.ts'
import { sheet } from './state/store.ts'

/** The wide network downstream, beside the list of the same in question 2. */
export function NetworkPane() {
  if (!hasStart(sheet.value)) return <p class="soft">Name what you have in question 1; what it can become is then drawn here.</p>
  const { answer, waiting } = reach.value
  if (answer === null)
    return (
      <p class="soft" role="status">
        {waiting ? 'Looking downstream.' : ''}
      </p>
    )
  return null
}
