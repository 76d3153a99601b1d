import type { ComponentChildren } from 'preact'
import type { Problem } from '../../core/problem/problem.ts'
import { inControls } from './control-words.ts'

const triangle = 'M8 1.8 15 14H1z M8 6.4v3.8 M8 11.9v.4'

/** The mark of what is wrong or to be watched: a triangle, never a colour. */
export const Triangle = ({ label }: { readonly label?: string }) => (
  <svg class="flag" viewBox="0 0 16 16" role="img" aria-label={label ?? 'Mind'}>
    <path d={triangle} fill="none" stroke="currentColor" stroke-width="1.3" stroke-linejoin="round" stroke-linecap="round" />
  </svg>
)

/** What is wrong, then where, why and the cure; the cure is an action where there is one. A stop stands on ink, and no button leads round it. */
export function ProblemNote({ problem: given, children }: { readonly problem: Problem; readonly children?: ComponentChildren }) {
  const problem = inControls(given)
  if (problem.code === 'stopped') return <StopNote problem={problem} />
  return (
    <div class="problem">
      <Triangle />
      <div>
        <b>{problem.what}</b>
        <dl>
          {problem.where.length > 0 && (
            <>
              <dt>where</dt>
              <dd>{problem.where.join(', ')}</dd>
            </>
          )}
          {problem.why !== '' && (
            <>
              <dt>why</dt>
              <dd>{problem.why}</dd>
            </>
          )}
          <dt>cure</dt>
          <dd>
            {problem.cure}
            {children !== undefined && <div class="dos">{children}</div>}
          </dd>
        </dl>
      </div>
    </div>
  )
}

/** Every problem there is, all at once; read out as they come. */
export function Problems({ of, children }: { readonly of: readonly Problem[]; readonly children?: ComponentChildren }) {
  return (
    <div role="status">
      {of.map((problem, at) => (
        <ProblemNote problem={problem} key={`${problem.code} ${at}`}>
          {at === of.length - 1 ? children : undefined}
        </ProblemNote>
      ))}
    </div>
  )
}

const StopNote = ({ problem }: { readonly problem: Problem }) => (
  <div class="stop" role="alert">
    <b>Stop</b>
    <div>
      <p>
        <b>{problem.what}</b> {problem.why}
      </p>
      <p class="s">{problem.cure}</p>
    </div>
  </div>
)
