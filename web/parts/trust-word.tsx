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
