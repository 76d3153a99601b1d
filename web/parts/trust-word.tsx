import type { Trust } from '../../core/library/trust.ts'

/**
 * How sure: the rule beside it is solid, dashed or hatched as everywhere, and the word says it.
 *
 * @param source  told where the pointer rests
 */
export const TrustWord = ({ trust, source = null }: { readonly trust: Trust; readonly source?: string | null }) => (
  <span class={`trust ${trust.replace(' ', '-')}`} title={source ?? undefined}>
    {trust}
  </span>
)

/** The rule alone, where a column has no room for the word; the words stand in the row below, and are read out here. */
export const TrustMark = ({ trust, source = null }: { readonly trust: Trust; readonly source?: string | null }) => (
  <span class={`trust mark ${trust.replace(' ', '-')}`} title={source === null ? trust : `${trust}: ${source}`}>
    <span class="unseen">, {trust}</span>
  </span>
)
