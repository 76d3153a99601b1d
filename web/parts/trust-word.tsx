import type { FigureTrust } from '../../core/library/figure-trust.ts'
import type { Mark } from '../../core/library/mark.ts'
import type { Trust } from '../../core/library/trust.ts'

/**
 * How sure: the rule beside it is solid, dashed or hatched as everywhere, and the word says it.
 *
 * @param mark    says it more closely; the plain trust where absent
 * @param source  told where the pointer rests
 */
export const TrustWord = ({
  trust,
  mark = trust,
  source = null,
}: {
  readonly trust: Trust
  readonly mark?: Mark
  readonly source?: string | null
}) => (
  <span class={`trust ${trust.replace(' ', '-')}`} title={source ?? undefined}>
    {closer[mark] ?? mark}
  </span>
)

const closer: Partial<Record<Mark, string>> = { derived: 'reckoned', typed: 'typed here' }

/** A figure by its name, with how sure it is. */
export const MarkedName = ({
  of: { figure, trust, mark, source, inPart },
  value,
}: {
  readonly of: FigureTrust
  readonly value?: string | undefined
}) => (
  <span class="marked" data-mark={mark}>
    {figure}
    {value === undefined ? '' : ` ${value}`} <TrustWord trust={trust} mark={mark} source={source} />
    {inPart && ' in part'}
  </span>
)
