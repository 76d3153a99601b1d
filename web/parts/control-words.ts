import { type AskedWords, inWords } from '../../core/problem/asked-as.ts'
import type { Problem } from '../../core/problem/problem.ts'

const words: AskedWords = {
  from: 'what you have',
  to: 'what you want',
  start: 'what you have',
  goals: 'what you want',
  avoid: '“Avoid”',
  avoidStep: '“Avoid” a step',
  avoidCode: '“Avoid” a hazard statement',
  avoidList: '“Avoid” a regulated list',
  mustPass: '“Through”',
  ownedOnly: '“only what the bench owns”',
  seenOnly: '“only yields seen in a source or at your bench”',
  maxSteps: '“At most”',
  make: '“Make or buy”',
  count: 'how many ways are listed',
  apart: '“Apart”',
  unbeaten: '“Unbeaten on”',
  'keepsRecords: true': '“Keep the old”',
  'keepsRecords: false': '“Reckon with the new”',
  reach: 'question 2',
  'read-reactions': '“Choose files”',
}

/** A problem as the page says it: by the words of its controls. */
export const inControls = (problem: Problem): Problem => inWords(problem, words)
