import { goTo, openQuestion, type QuestionNumber } from './state/view.ts'

const words: readonly (readonly [QuestionNumber, string])[] = [
  [1, 'have'],
  [2, 'become'],
  [3, 'way'],
  [4, 'amount'],
  [5, 'need'],
  [6, 'hurt'],
  [7, 'log'],
]

/** The phone's thumb index: seven numerals at the foot. */
export const Thumbs = () => (
  <nav class="thumbs" aria-label="Questions">
    {words.map(([no, word]) => (
      <button type="button" aria-pressed={openQuestion.value === no} onClick={() => goTo(no)} key={no}>
        {no}
        <span>{word}</span>
      </button>
    ))}
  </nav>
)
