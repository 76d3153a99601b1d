import type { Told } from '../../core/choose/in-turns.ts'
import type { Checked } from '../../core/problem/problem.ts'
import type { Found, SearchAsked } from './library-here.ts'

/** What the page tells the worker that searches. */
export type SearchOrder =
  /** First of all: where the library is, which is then fetched. */
  | { readonly kind: 'bring'; readonly address: string }
  | { readonly kind: 'search'; readonly id: number; readonly asked: SearchAsked }
  /** Make do with what was found. */
  | { readonly kind: 'stop'; readonly id: number }
  /** Nobody waits for it any more. */
  | { readonly kind: 'leave'; readonly id: number }

/** What that worker tells the page. */
export type SearchAnswer =
  | { readonly kind: 'ready' }
  /** It can search, in this edition; null = the library is too large, or the server did not hand it out this time. */
  | { readonly kind: 'library'; readonly edition: string | null; readonly tooLarge: boolean }
  | { readonly kind: 'told'; readonly id: number; readonly event: Told }
  | { readonly kind: 'found'; readonly id: number; readonly edition: string; readonly answer: Checked<Found> }
  /** The server is to be asked: this time, or where the library is too large each time. */
  | { readonly kind: 'elsewhere'; readonly id: number; readonly tooLarge: boolean }
