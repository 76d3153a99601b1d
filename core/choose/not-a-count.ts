import { type AskedName, askedAs } from '../problem/asked-as.ts'
import type { Problem } from '../problem/problem.ts'

export const isCount = (value: number): boolean => Number.isInteger(value) && value > 0

/** Steps and routes are counted from 1. */
export const notACount = (name: AskedName, value: number): Problem => ({
  code: 'not-a-count',
  where: [askedAs(name), String(value)],
  what: `${value} is no whole number above 0.`,
  why: 'It counts steps or routes.',
  cure: 'Give a whole number such as 5.',
})
