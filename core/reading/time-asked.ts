import type { Problem } from '../problem/problem.ts'

/** A time of the text that is not in the hours, and how it is written so that it is. */
export function timeAsked(line: string, uncounted: string): Problem {
  const isVague = uncounted !== line && !/\d|repeat|twice|thrice|times|every/i.test(uncounted)
  return {
    code: 'time-not-counted',
    where: ['hours', `"${uncounted}"`],
    what: `"${uncounted}"${uncounted === line ? '' : ` in "${line}"`} does not say how long${isVague ? '' : ' in all'}.`,
    why: 'Hours that are left out make a plan finish on paper before it does on the bench.',
    cure: isVague
      ? `Write the hours in its place, such as "${line.replace(new RegExp(String.raw`(?:for\s+)?${uncounted.replace(/\s+/g, String.raw`\s+`)}`), /min/i.test(uncounted) ? 'for 10 min' : 'for 16 h')}" if it was that long.`
      : 'Write the hours in all in its place, such as "heat for 0.5 h in all".',
  }
}
