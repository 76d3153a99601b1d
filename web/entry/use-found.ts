import { useEffect, useState } from 'preact/hooks'
import type { Problem } from '../../core/problem/problem.ts'
import { problemsOf } from '../state/asked.ts'
import type { Kept } from './api.ts'
import { own } from './own.ts'

/** Rows a list shows at most. */
const most = 60
/** From the last key to the question. */
const pauseMs = 150

/**
 * What the library holds for words as they are typed: asked anew where words, trust or the own records changed; an answer that was overtaken is
 * dropped.
 *
 * @param ask a function that stays the same from one drawing to the next
 */
export function useFound<T>(ask: (words: string, kept: Kept, most: number) => Promise<T>, words: string, { trust, figure }: Kept) {
  const [answer, setAnswer] = useState<T | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const version = own.value?.version ?? 0
  useEffect(() => {
    let wanted = true
    const timer = setTimeout(() => {
      ask(words, { trust, figure }, most).then(
        found => {
          if (!wanted) return
          setAnswer(() => found)
          setProblems([])
        },
        fault => wanted && setProblems(problemsOf(fault)),
      )
    }, pauseMs)
    return () => {
      wanted = false
      clearTimeout(timer)
    }
  }, [ask, words, trust, figure, version])
  return { answer, problems }
}
