import type { Problem } from '../../core/problem/problem.ts'
import { ProblemNote } from '../parts/problem.tsx'
import { Name } from '../parts/words.tsx'
import type { Reading, TermShown } from './api.ts'
import { replaceWriting, write, writing } from './draft.ts'
import { beginMaterial } from './material-draft.ts'
import { otherFormAsked, otherFormCode } from './other-form.ts'
import { withOverArrow } from './over-arrow.ts'
import { Drawn, Field } from './parts.tsx'
import { readingState } from './reading.ts'
import { answeredTerm, problemsAt } from './record.ts'

/** The equation: typed, read, balanced; what is off stands beside it with what would mend it. */
export function EquationPart() {
  const { equation } = writing.value
  const { reading, fresh } = readingState.value
  const terms = reading === null ? [] : [...reading.reactants, ...reading.products]
  const unbalanced = reading?.problems.filter(one => one.code === 'equation-unbalanced') ?? []
  const others =
    reading?.problems.filter(
      one => one.code === 'equation-unreadable' || one.code === 'equation-missing' || one.code === 'text-too-long',
    ) ?? []
  return (
    <section class="entry-row" aria-label="Equation">
      <Field
        label="Equation"
        field="equation"
        help="Names, formulas or SMILES with + and an arrow: 2 benzaldehyde -> benzoin. By-products belong to it. A reaction SMILES will do too."
      >
        {ids => (
          <textarea
            {...ids}
            class="blank"
            rows={2}
            spellcheck={false}
            placeholder="2 benzaldehyde -> benzoin"
            value={equation}
            aria-invalid={equation.trim() !== '' && unbalanced.length + others.length > 0}
            onInput={event => write({ equation: event.currentTarget.value })}
            onKeyDown={event => event.key === 'Enter' && event.preventDefault()}
          />
        )}
      </Field>
      <div class="read" data-stale={fresh ? undefined : ''}>
        {reading !== null && terms.length > 0 && (
          <div class="terms">
            <Side terms={reading.reactants} reading={reading} />
            <span class="arrow">→</span>
            <Side terms={reading.products} reading={reading} />
          </div>
        )}
        <div role="status">
          {reading?.balanced === true && <p>It balances.</p>}
          {unbalanced.map(problem => (
            <ProblemNote problem={withoutProposal(problem, reading?.proposals.length ?? 0)} key={problem.what}>
              {reading !== null && reading.proposals.length > 0
                ? reading.proposals.map(proposal => (
                    <button
                      type="button"
                      class="do"
                      disabled={!readingState.value.fresh}
                      key={proposal.equation}
                      onClick={() =>
                        replaceWriting({ equation: proposal.equation, body: withOverArrow(equation, writing.peek().body, reading) })
                      }
                    >
                      {proposal.text.replace(/\.$/, '')}
                    </button>
                  ))
                : undefined}
            </ProblemNote>
          ))}
          {equation.trim() !== '' && others.map(problem => <ProblemNote problem={problem} key={problem.code} />)}
          {terms
            .filter(term => term.compound === null)
            .map(term => (
              <TermAsked term={term} reading={reading!} key={term.text} />
            ))}
        </div>
      </div>
    </section>
  )
}

/** The cure becomes buttons where there are proposals. */
const withoutProposal = (problem: Problem, proposals: number): Problem =>
  proposals === 0 ? problem : { ...problem, cure: 'One of these mends it; or correct it yourself.' }

function Side({ terms, reading }: { readonly terms: readonly TermShown[]; readonly reading: Reading }) {
  return (
    <>
      {terms.map((term, at) => {
        const material = term.compound === null ? undefined : reading.materials[term.compound]
        return (
          <span class="term" key={`${term.text} ${at}`}>
            {at > 0 && <span class="plus">+</span>}
            {term.coefficient !== 1 && <span class="count">{term.coefficient}</span>}
            <span>
              {material !== undefined && term.crystalWater === undefined && material.depiction.kind === 'structure' && (
                <Drawn depiction={material.depiction} name={material.name} />
              )}
              <span class={material === undefined ? 'unknown-word' : ''}>
                <Name text={term.crystalWater === undefined ? (material?.name ?? term.text) : term.text} />
              </span>
            </span>
          </span>
        )
      })}
    </>
  )
}

/** A compound that could mean several, or that the library does not hold. */
function TermAsked({ term, reading }: { readonly term: TermShown; readonly reading: Reading }) {
  const problem = problemsAt(reading.problems, term.text)[0]
  if (problem === undefined) return null
  const isOtherForm = problem.code === otherFormCode
  if (term.candidates !== undefined)
    return (
      <ProblemNote
        problem={isOtherForm ? otherFormAsked(problem) : { ...problem, what: `Which “${term.text}” is meant?`, cure: 'Choose one:' }}
      >
        {term.candidates.map(id => (
          <button
            type="button"
            class="do"
            disabled={!readingState.value.fresh}
            key={id}
            onClick={() => replaceWriting({ equation: answeredTerm(writing.value.equation, term.text, id, reading) })}
          >
            {reading.materials[id]?.name ?? id}
          </button>
        ))}
        {isOtherForm && <AsNew text={term.text} />}
      </ProblemNote>
    )
  return (
    <ProblemNote problem={problem}>
      <AsNew text={term.text} />
    </ProblemNote>
  )
}

const AsNew = ({ text }: { readonly text: string }) => (
  <button type="button" class="do" disabled={!readingState.value.fresh} onClick={() => beginMaterial(text)}>
    Enter it as a new material
  </button>
)
