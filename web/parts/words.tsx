import { type ComponentChildren, Fragment } from 'preact'
import { formulaRuns } from '../map/scheme/runs.ts'
import { softened } from '../map/softened.ts'

/** A formula with its subscripts. */
export function Formula({ text }: { readonly text: string }) {
  return <>{formulaRuns(text).map((run, at) => (run.sub ? <sub key={at}>{run.t}</sub> : run.t))}</>
}

/** Prefixes that are set in italics. Source: IUPAC recommendations on typography (locants and stereodescriptors are italic). */
const italics = /^(o|m|p|N|E|Z|cis|trans|tert|sec|meso|endo|exo)(?=-)/

/** A compound's name, its locant prefix in italics; a long one may break at its chemical joints. */
export function Name({ text }: { readonly text: string }) {
  const prefix = italics.exec(text)?.[1]
  return prefix === undefined ? (
    <>{softened(text)}</>
  ) : (
    <>
      <i>{prefix}</i>
      {softened(text.slice(prefix.length))}
    </>
  )
}

const small = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten']

/** A count in words up to ten, as a sentence says it. */
export const inWords = (count: number): string => small[count] ?? String(count)

/** "one bottle", "six bottles", "14 bottles". */
export const counted = (count: number, one: string, many = `${one}s`): string => `${inWords(count)} ${count === 1 ? one : many}`

/** First letter as a capital; that of a name with a locant (o-phenylenediamine) after the locant. */
export function capital(text: string): string {
  const prefix = italics.exec(text)?.[1]
  const at = prefix === undefined ? 0 : prefix.length + 1
  return text.slice(0, at) + text.charAt(at).toUpperCase() + text.slice(at + 1)
}

/** Names as a list in a sentence: "a, b and c". */
export const listed = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`

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
