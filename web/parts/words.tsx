import { type ComponentChildren, Fragment } from 'preact'
import { formulaRuns } from '../map/scheme/runs.ts'
import { softened } from '../map/softened.ts'

/** A formula with its subscripts. */
export function Formula({ text }: { readonly text: string }) {
  return <>{formulaRuns(text).map((run, at) => (run.sub ? <sub key={at}>{run.t}</sub> : run.t))}</>
}

/** Prefixes that are set in italics. Source: IUPAC recommendations on typography (locants and stereodescriptors are italic). */
const italics = /^(o|m|p|N|E|Z|cis|trans|tert|sec|meso|endo|exo)(?=-)/

/** In running text a word breaks only where it would not fit a column; a soft hyphen is copied along with the name. */
const longWord = 20

/** A compound's name, its locant prefix in italics; a long one may break at its chemical joints, a short one not even after its locants. */
export function Name({ text }: { readonly text: string }) {
  const prefix = italics.exec(text)?.[1]
  const rest = softened(prefix === undefined ? text : text.slice(prefix.length), longWord)
  const name = prefix === undefined ? rest : [<i key="prefix">{prefix}</i>, rest]
  return text.length <= longWord && !text.includes(' ') ? <span class="nb">{name}</span> : <>{name}</>
}

/** A word for what is not known, never a dash or a zero. */
export const Unknown = ({ children = 'unknown' }: { readonly children?: ComponentChildren }) => <i class="unknown-word">{children}</i>

/** Clauses of a heading, which breaks between them. */
export const Clauses = ({ of }: { readonly of: readonly ComponentChildren[] }) => (
  <>
    {of.map((clause, at) => (
      <Fragment key={at}>
        {at > 0 ? ' ' : ''}
        <span class="cl">{clause}</span>
      </Fragment>
    ))}
  </>
)
