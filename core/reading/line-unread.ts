import type { Problem } from '../problem/problem.ts'
import { unreadWords } from './unread-words.ts'

const lineUnreadCode = 'line-unread'

/** A line that is neither a charge nor something that is done: it stays as typed, and is told with how it may be written. */
export function lineUnread(line: string): Problem {
  const { what, cure, offers } = unreadWords(line)
  return {
    code: lineUnreadCode,
    where: ['charges', line],
    what,
    why: 'It stays as typed and is not reckoned with.',
    cure: offers.length === 0 ? cure : `${cure} If that is meant: ${offers.map(offer => `"${offer}"`).join(' or ')}.`,
  }
}

/** A line that is prose: nothing of it is taken for a charge. */
export const lineTooLong = (line: string): Problem => ({
  code: lineUnreadCode,
  where: ['charges', line],
  what: `A line of ${line.length} characters is not read; it begins "${line.slice(0, 60)}".`,
  why: 'It stays as typed and is not reckoned with.',
  cure: 'Write what is charged, and what is done, a line each.',
})
