import type { ComponentChildren } from 'preact'
import type { Problem } from '../../core/problem/problem.ts'
import { quantityText } from '../../core/quantity/print.ts'
import { eachOf } from '../../core/reading/amount-of-each.ts'
import { unreadWords } from '../../core/reading/unread-words.ts'
import { server } from '../api/client.ts'
import { AmountField } from '../parts/amount-field.tsx'
import { ProblemNote } from '../parts/problem.tsx'
import type { Reading } from './api.ts'
import { replaceWriting, writing } from './draft.ts'
import { beginMaterial, beginSolution } from './material-draft.ts'
import { otherFormAsked, otherFormCode } from './other-form.ts'
import { readingState } from './reading.ts'
import { answered, problemsAt } from './record.ts'

/** What a charge line leaves open, or contradicts, with the buttons that settle it. */
export function LineAsked({
  text,
  candidates,
  reading,
}: {
  readonly text: string
  readonly candidates: readonly string[] | undefined
  readonly reading: Reading
}) {
  const [problem, ...more] = problemsAt(reading.problems, text)
  if (problem === undefined) return null
  return (
    <>
      <OneAsked text={text} candidates={candidates} reading={reading} problem={problem} />
      {more.map(one => (
        <ProblemNote problem={one} key={one.what} />
      ))}
    </>
  )
}

function OneAsked({
  text,
  candidates,
  reading,
  problem,
}: Omit<Asked, 'candidates'> & { readonly candidates: readonly string[] | undefined; readonly problem: Problem }) {
  if (problem.code === 'strength-not-held')
    return <StrengthAsked text={text} candidates={candidates ?? []} problem={problem} reading={reading} />
  if (problem.code === otherFormCode)
    return (
      <ProblemNote problem={otherFormAsked(problem)}>
        <Bottles text={text} candidates={candidates ?? []} reading={reading} />
        <Mend onPress={() => beginMaterial(/"([^"]+)"/.exec(problem.what)?.[1] ?? text)}>Enter it as a new material</Mend>
      </ProblemNote>
    )
  if (candidates !== undefined)
    return (
      <ProblemNote problem={{ ...problem, what: `Which bottle is “${text}”?`, cure: 'Choose one:' }}>
        <Bottles text={text} candidates={candidates} reading={reading} />
      </ProblemNote>
    )
  const weighed = weighedIn(text)
  if (weighed !== null && (problem.code === 'product-charged' || problem.code === 'name-missing'))
    return (
      <ProblemNote problem={problem}>
        <Mend onPress={() => replaceWriting({ body: withoutLine(writing.value.body, text), outcome: weighed })}>
          {weighed} came out: put it there
        </Mend>
      </ProblemNote>
    )
  if (problem.code === 'strength-contradicts-bottle')
    return (
      <ProblemNote problem={problem}>
        <Mend onPress={() => replaceWriting({ body: writing.value.body.replace(text, text.replace(/\s*\{[a-z0-9-]*\}/, '')) })}>
          Choose the bottle anew
        </Mend>
      </ProblemNote>
    )
  const each = problem.code === 'amount-of-each' ? eachOf(text) : null
  if (each !== null)
    return (
      <ProblemNote problem={problem}>
        <Mend onPress={() => replaceWriting({ body: writing.value.body.replace(text, () => each.join('\n')) })}>
          Write these {each.length} lines
        </Mend>
      </ProblemNote>
    )
  if (problem.code === 'dash-before-amount')
    return (
      <ProblemNote problem={problem}>
        <Mend onPress={() => replaceWriting({ body: writing.value.body.replace(text, `- ${text.replace(/^[-–—−\s]+/, '')}`) })}>
          It is the mark of a list
        </Mend>
      </ProblemNote>
    )
  return (
    <ProblemNote problem={problem}>
      {problem.code === 'name-unknown' ? (
        <Mend onPress={() => beginMaterial(/"([^"]+)"/.exec(problem.what)?.[1] ?? text)}>Enter it as a new material</Mend>
      ) : undefined}
    </ProblemNote>
  )
}

/** A press that settles what is asked; it waits until the text is read as it now stands. */
const Mend = ({ onPress, children }: { readonly onPress: () => void; readonly children: ComponentChildren }) => (
  <button type="button" class="do" disabled={!readingState.value.fresh} onClick={onPress}>
    {children}
  </button>
)

interface Asked {
  readonly text: string
  readonly candidates: readonly string[]
  readonly reading: Reading
}

/** The bottles that a line may mean, a press each. */
const Bottles = ({ text, candidates, reading }: Asked) => (
  <>
    {candidates.map(id => (
      <button
        type="button"
        class="do"
        disabled={!readingState.value.fresh}
        key={id}
        onClick={() => replaceWriting({ body: answered(writing.value.body, text, id) })}
      >
        {reading.materials[id]?.name ?? id}
      </button>
    ))}
  </>
)

/** A strength that no bottle has: another is chosen, or the solution is entered with what the line says of it. */
function StrengthAsked({ problem, ...asked }: Asked & { readonly problem: Problem }) {
  const wanted = /"([^"]+)"/.exec(problem.what)?.[1] ?? asked.text
  // Of a solid the share may be its purity: then what is pure of it is charged.
  const pure = /write what is pure of it, "([^"]+)"/.exec(problem.cure)?.[1]
  const compound = /\{([a-z0-9-]+)\} as a material/.exec(problem.cure)?.[1]
  const enter = async (): Promise<void> => {
    if (compound === undefined) return beginMaterial(wanted)
    const found = await server.materials(compound, new AbortController().signal)
    const name = found.materials.find(one => one.id === compound)?.name ?? compound
    beginSolution({ id: compound, name }, strengthIn(wanted), asked.text)
  }
  return (
    <ProblemNote
      problem={{
        ...problem,
        what: `The library holds no “${wanted}”.`,
        cure: `${pure === undefined ? '' : 'Take what is pure of it, if that is its purity; else '}${
          asked.candidates.length === 0 ? 'enter the solution:' : 'enter the solution, or choose a strength that is held:'
        }`.replace(/^e/, 'E'),
      }}
    >
      {pure !== undefined && (
        <Mend onPress={() => replaceWriting({ body: writing.value.body.replace(asked.text, () => pure) })}>
          {pure.replace(/\s*\{[a-z0-9-]*\}$/, '')}
        </Mend>
      )}
      <button type="button" class="do strong" disabled={!readingState.value.fresh} onClick={() => void enter()}>
        Enter the solution of {strengthIn(wanted) || 'this strength'}
      </button>
      <Bottles {...asked} />
    </ProblemNote>
  )
}

/** The strength that a phrase names: "0.5 M NaOH", "NaOH (2 % w/v)"; empty where it is worded otherwise. */
const strengthIn = (phrase: string): string =>
  /\d+(?:[.,]\d+)?\s*(?:%(?:\s*\(?\s*[wm]\/[wvm]\s*\)?)?|wt\.?\s*%|mol\/(?:L|dm3)|mmol\/L|g\/L|M\b|N\b)/i.exec(phrase)?.[0].trim() ?? ''

/** A line that is neither a charge nor something that is done: it stays as typed until it is reworded or taken out. */
export function LineUnread({ line }: { readonly line: string }) {
  const { what, cure, offers, toMeasure } = unreadWords(line)
  const change = (body: (now: string) => string): void => replaceWriting({ body: body(writing.value.body) })
  const { fresh } = readingState.value
  return (
    <ProblemNote problem={{ code: 'line-unread', where: [], what, why: 'It stays as typed and is not reckoned with.', cure }}>
      {offers.map(offer => (
        <button type="button" class="do" disabled={!fresh} key={offer} onClick={() => change(body => body.replace(line, () => offer))}>
          {offer}
        </button>
      ))}
      {toMeasure !== undefined && (
        <span class="field">
          <span>{toMeasure}, weighed or measured</span>
          <AmountField
            text=""
            label={`${toMeasure}, weighed or measured`}
            dimensions={['mass', 'volume']}
            onWritten={quantity =>
              quantity !== null && change(body => body.replace(line, () => `${quantityText(quantity, 6)} ${toMeasure}`))
            }
          />
        </span>
      )}
      <button type="button" class="do" disabled={!fresh} onClick={() => change(body => withoutLine(body, line))}>
        Remove the line
      </button>
    </ProblemNote>
  )
}

/** The mass in a line: "17.7 g". Null where it gives none. */
const weighedIn = (line: string): string | null => /\d+(?:[.,]\d+)?\s*(?:kg|mg|g)\b/i.exec(line)?.[0] ?? null

/** The text without the first line that says this. */
function withoutLine(body: string, line: string): string {
  const lines = body.split('\n')
  const at = lines.findIndex(one => one.trim() === line)
  return at < 0 ? body : lines.toSpliced(at, 1).join('\n')
}
