import { type AskedWords, inWords } from '../../core/problem/asked-as.ts'
import type { Problem } from '../../core/problem/problem.ts'

const words: AskedWords = {
  from: '--from',
  to: '--to',
  start: '--from',
  goals: '--goal',
  avoid: '--avoid',
  avoidStep: '--avoid-step',
  avoidCode: '--avoid-code',
  avoidList: '--avoid-list',
  mustPass: '--must-pass',
  ownedOnly: '--owned-only',
  seenOnly: '--seen-only',
  maxSteps: '--max-steps',
  make: '--make',
  count: '--count',
  apart: '--apart',
  unbeaten: '--unbeaten',
  'keepsRecords: true': '--records old',
  'keepsRecords: false': '--records new',
  reach: 'waybench reach',
  'read-reactions': 'waybench read',
}

/** A problem as the command line says it: by its options and commands. */
export const inOptions = (problem: Problem): Problem => inWords(problem, words)
