import { type ChargeLine, roles, type Stage, stageOf, stages } from '../../core/library/transformation.ts'
import { ownBench } from '../../core/library/trust.ts'
import { numberText } from '../../core/quantity/print.ts'
import { readChargeTable, withFacts } from '../../core/reading/charge-table.ts'
import { lineKeys } from '../../core/reading/line-key.ts'
import { ProblemNote } from '../parts/problem.tsx'
import { Name, Unknown } from '../parts/words.tsx'
import type { Reading } from './api.ts'
import { replaceWriting, write, writing } from './draft.ts'
import { LineAsked, LineUnread } from './line-asked.tsx'
import { Field } from './parts.tsx'
import { readingState } from './reading.ts'
import { problemsAt, unreadOfBody } from './record.ts'

/** What is charged and done, a line each; beside it every line with its moles and equivalents. */
export function ChargePart() {
  const { body } = writing.value
  const { reading, fresh } = readingState.value
  return (
    <section class="entry-row" aria-label="Charges">
      <Field
        label="Charges, and what is done"
        field="body"
        help="A line each, pasted or typed as a procedure gives them: 25 mL conc. HCl; 3 M NaOH, 20 mL; reflux 2 h. A table copied from a spreadsheet (material, amount, unit) is taken too."
      >
        {ids => (
          <textarea
            {...ids}
            class="blank"
            rows={Math.max(7, body.split('\n').length + 1)}
            spellcheck={false}
            placeholder={'benzaldehyde 60 mL\n9.2 g thiamine hydrochloride\n3 M NaOH, 20 mL'}
            value={body}
            onInput={event => write({ body: event.currentTarget.value })}
            onPaste={event => {
              const table = readChargeTable(event.clipboardData?.getData('text/plain') ?? '')
              if (table === null) return
              event.preventDefault()
              replaceWriting({
                body: [body.trimEnd(), ...table.lines].filter(Boolean).join('\n'),
                roles: { ...writing.peek().roles, ...table.roles },
                facts: { ...writing.peek().facts, ...table.facts },
              })
            }}
          />
        )}
      </Field>
      <div class="read" data-stale={fresh ? undefined : ''}>
        {reading === null ? (
          <p class="soft">Each line is read as it is typed, and shown here with its moles.</p>
        ) : (
          <Lines reading={reading} />
        )}
      </div>
    </section>
  )
}

function Lines({ reading }: { readonly reading: Reading }) {
  const ownUnread = unreadOfBody(writing.value, reading)
  let known = -1
  const keys = lineKeys(reading.lines.map(line => line.text))
  const operations = reading.transformation.operations ?? []
  return (
    <>
      {reading.lines.length > 0 && (
        <table class="t lines-read">
          <thead>
            <tr>
              <th>Line</th>
              <th>role</th>
              <th class="n read-amount">amount</th>
              <th class="n">mmol</th>
              <th class="n">eq</th>
            </tr>
          </thead>
          <tbody>
            {reading.lines.map((line, at) => {
              if (line.material !== null) known++
              const charge = line.material === null ? undefined : reading.transformation.charge?.[known]
              const material = line.material === null ? undefined : reading.materials[line.material]
              return (
                <tr key={`${line.text} ${at}`}>
                  <th scope="row" class="plain">
                    {material === undefined ? <i>{line.text}</i> : <Name text={material.name} />}
                    <span class="s soft as-typed">
                      {material === undefined ? 'not settled' : line.text}
                      {charge?.amount != null && (
                        <span class="amount-within">
                          {' '}
                          = {numberText(charge.amount, 4)} {charge.unit}
                        </span>
                      )}
                    </span>
                  </th>
                  <td>{charge !== undefined && <RoleAndStage charge={charge} at={keys[at]!} of={material?.name ?? line.text} />}</td>
                  {material === undefined ? (
                    <td class="n s soft" colSpan={3}>
                      asked about below
                    </td>
                  ) : charge?.perGramProduct !== undefined ? (
                    <td class="n s" colSpan={3}>
                      {charge.perGramProduct} {charge.unit} per g of product
                    </td>
                  ) : charge !== undefined && charge.amount === null ? (
                    <td class="n s" colSpan={3}>
                      as needed, in {withFacts(charge, undefined, writing.value.facts[keys[at]!]).unit}
                    </td>
                  ) : (
                    <>
                      <td class="n nb read-amount">
                        {charge === undefined ? <Unknown /> : `${numberText(charge.amount!, 4)} ${charge.unit}`}
                      </td>
                      <td class="n">{line.amountMol === null ? <Unknown /> : numberText(line.amountMol * 1000, 4)}</td>
                      <td class="n">{line.equivalents === null ? <Unknown /> : numberText(line.equivalents, 3)}</td>
                    </>
                  )}
                </tr>
              )
            })}
          </tbody>
        </table>
      )}
      {reading.lines.some(line => line.material !== null) && (
        <p class="s soft help" id="role-help">
          What a line is for, where it goes and where its amount comes from are read from its words and may be chosen otherwise. The
          substrate, reagents, catalysts and solvents of the vessel count as charged and make its volume; what goes into the quench or the
          work-up is bought and counts in neither.
        </p>
      )}
      {reading.limiting !== null && (
        <p>
          <b>
            <Name text={reading.materials[reading.limiting]?.name ?? reading.limiting} />
          </b>{' '}
          gives out first: equivalents and yields are counted on it.
        </p>
      )}
      <div role="status">
        {reading.lines
          .filter((line, at) => reading.lines.findIndex(one => one.text === line.text) === at)
          .filter(line => problemsAt(reading.problems, line.text).length > 0)
          .map(line => (
            <LineAsked text={line.text} candidates={line.candidates} reading={reading} key={line.text} />
          ))}
        {reading.problems
          .filter(problem => problem.code === 'limiting-unknown' && reading.lines.length > 0)
          .map(problem => (
            <ProblemNote problem={problem} key={problem.code} />
          ))}
        {[...new Set(ownUnread)].map(line => (
          <LineUnread line={line} key={line} />
        ))}
      </div>
      {reading.notes.length > 0 && (
        <ul class="s soft">
          {reading.notes.map(note => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      {operations.length > 0 && (
        <p class="s soft">
          Read as what is done: {operations.join('; ')}.{' '}
          {reading.transformation.elapsedHours === undefined ? '' : `Times named: ${numberText(reading.transformation.elapsedHours, 3)} h.`}
        </p>
      )}
    </>
  )
}

const stageWords: Readonly<Record<Stage, string>> = { vessel: 'into the vessel', quench: 'into the quench', workup: 'in the work-up' }

/** Where one amount can come from, in the words of the library format; what a table says besides stays as it is. */
function fromChoices(said: string | undefined): readonly (readonly [value: string, words: string])[] {
  const known = [
    ['', 'as the source'],
    ['from memory', 'from memory'],
    ['common practice', 'common practice'],
    [ownBench, 'own bench'],
  ] as const
  return said === undefined || known.some(([value]) => value === said) ? known : [...known, [said, said]]
}

/** What a line is for, where it goes and where its amount comes from, each as read until a person says otherwise. */
function RoleAndStage({ charge, at, of }: { readonly charge: ChargeLine; readonly at: string; readonly of: string }) {
  const { roles: set, facts } = writing.value
  const line = withFacts(charge, set[at], facts[at])
  return (
    <>
      <select
        class="blank bare s"
        aria-label={`role of ${of}`}
        aria-describedby="role-help"
        value={line.role}
        onChange={event => write({ roles: { ...set, [at]: event.currentTarget.value } })}
      >
        {roles.map(role => (
          <option value={role} key={role}>
            {role}
          </option>
        ))}
      </select>
      <select
        class="blank bare s"
        aria-label={`where ${of} goes`}
        aria-describedby="role-help"
        value={stageOf(line)}
        onChange={event => write({ facts: { ...facts, [at]: { ...facts[at], at: event.currentTarget.value as Stage } } })}
      >
        {stages.map(stage => (
          <option value={stage} key={stage}>
            {stageWords[stage]}
          </option>
        ))}
      </select>
      {(line.amount !== null || line.perGramProduct !== undefined) && (
        <select
          class="blank bare s"
          aria-label={`where the amount of ${of} comes from`}
          aria-describedby="role-help"
          value={line.from ?? ''}
          onChange={event => write({ facts: { ...facts, [at]: { ...facts[at], from: event.currentTarget.value } } })}
        >
          {fromChoices(line.from).map(([value, words]) => (
            <option value={value} key={value}>
              {words}
            </option>
          ))}
        </select>
      )}
      {line.derived === true && <span class="s soft block">reckoned, not printed</span>}
    </>
  )
}
