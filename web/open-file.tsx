import { readPlanFile } from '../core/plan/file.ts'
import { openingProblems, showFile } from './state/opening.ts'

/** A plan file from this computer; what is wrong with it is told, all at once. */
export const OpenFile = () => (
  <label class="do file">
    Open a plan file
    <input
      type="file"
      accept=".json,application/json"
      class="unseen"
      onChange={event => {
        const file = event.currentTarget.files?.[0]
        if (file === undefined) return
        event.currentTarget.value = ''
        void file.text().then(text => {
          const opened = readPlanFile(file.name, text)
          if (opened.ok) showFile(opened.value)
          else openingProblems.value = opened.problems
        })
      }}
    />
  </label>
)
