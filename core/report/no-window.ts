import type { Days } from '../days/days.ts'
import type { Settings } from '../plan/settings.ts'
import { durationText } from '../quantity/print.ts'
import { windowWord } from './answers.ts'
import { capital, listed } from './words.ts'

const weekdays = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday']

/**
 * Why a step has no place in the windows, without the step's own name: "grind: 4 h have to lie in one evening, and the longest is 3.5 h. No
 * date is given for it."
 *
 * @param label of a step by its id: "step 2"
 */
export function noWindowText(one: Days['tooLong'][number], windows: Settings['windows'], label: (step: string) => string): string {
  const [word] = windowWord(windows)
  return `${one.do}: ${reason(one, word, Math.max(...windows.map(window => window.hours)), label)}. No date is given for it.`
}

function reason({ why, hours, keeps }: Days['tooLong'][number], word: string, longestH: number, label: (step: string) => string): string {
  if (why === 'longer') return `${durationText(hours)} have to lie in one ${word}, and the longest is ${durationText(longestH)}`
  if (why === 'apart')
    return `from its first task to its last it takes ${durationText(hours)}, and no ${word} falls within what it may wait`
  if (keeps.length === 0) return 'no place was found for it after the steps before it'
  const products = keeps.map(
    ({ step, hours: keptH }, at) => `${at === 0 ? 'the product' : 'that'} of ${label(step)} keeps only ${durationText(keptH)}`,
  )
  return `no ${word} comes soon enough: ${listed(products)}`
}

/** What would do: "One evening of 4 h a week would do, Mondays from 18:30." Empty where every step has its date. */
export function wouldDoText({ tooLong, wouldDo }: Days): string {
  if (tooLong.length === 0) return ''
  if (wouldDo === null) return 'No single longer window was found that would do.'
  const [word] = windowWord([wouldDo])
  return capital(`one ${word} of ${durationText(wouldDo.hours)} a week would do, ${weekdays[wouldDo.weekday - 1]}s from ${wouldDo.from}.`)
}
