import { type ComparedRun, comparedRuns } from '../../core/logbook/compare.ts'
import { logCsv } from '../../core/logbook/log-csv.ts'
import type { Plan } from '../../core/plan/plan.ts'
import { massText, noBreakSpace, numberText } from '../../core/quantity/print.ts'
import { shortDate } from '../../core/report/dates.ts'
import { lowMelt } from '../../core/report/low-melts.ts'
import { capital } from '../../core/report/words.ts'
import { Triangle } from '../parts/problem.tsx'
import { Name, Unknown } from '../parts/words.tsx'
import { canReckon } from '../state/facts-asked.ts'
import { facts } from '../state/facts-here.ts'
import { nameOf } from '../state/names.ts'
import { standing } from '../state/reckoner.ts'
import { plan } from '../state/store.ts'
import { NewRun } from './new-run.tsx'
import { Question } from './question.tsx'
import { Take } from './take-away.tsx'
import { WaysOn } from './ways-on.tsx'

/** Question 7: what was really charged and weighed, against plan and theory; and the four ways on. */
export function Log() {
  const runs = runsOf(plan.value)
  const last = runs.filter(run => !run.replaced).at(-1)
  return (
    <Question
      no={7}
      ask="What happened?"
      empty={last === undefined}
      answer={last === undefined ? 'No run logged' : <Name text={outcome(last)} />}
    >
      {() => <LogBody runs={runs} />}
    </Question>
  )
}

const runsOf = (of: Plan): readonly ComparedRun[] => (of.log.length > 0 && canReckon.value ? comparedRuns(facts.value.library, of) : [])

const productOf = (run: ComparedRun): string => facts.value.library.transformations.get(run.entry.step)?.mainProduct ?? run.entry.step

function outcome(run: ComparedRun): string {
  const name = capital(nameOf(productOf(run)))
  if (run.yieldFraction === null || run.verdict === 'not-in-plan')
    return `${name}: ${massText(run.isolatedG)}, of a step the plan does not have`
  const percent = `${Math.round(run.yieldFraction * 100)}${noBreakSpace}%`
  if (run.verdict === 'failed') return `${name}: a run failed`
  if (run.verdict === 'above-theory') return `${name} weighs ${percent} of theory: wet or mis-weighed?`
  return `${name}: ${massText(run.isolatedG)}, ${percent} of ${run.theoryG === null ? 'the feedstock' : 'theory'}`
}

function LogBody({ runs }: { readonly runs: readonly ComparedRun[] }) {
  const { evaluation } = standing.value
  if (evaluation === null && runs.length === 0)
    return <p>Once a step was run, write here what it weighed; the plan is then reckoned on from that. Choose a goal first.</p>
  return (
    <>
      {runs.length > 0 && (
        <table class="t log">
          <thead>
            <tr>
              <th>Run</th>
              <th class="n">charged</th>
              <th class="n">weighed</th>
              <th class="n">typical</th>
              <th class="n">theory</th>
              <th class="n">yield</th>
            </tr>
          </thead>
          <tbody>
            {runs.map(run => (
              <RunRow run={run} key={run.entry.id} />
            ))}
          </tbody>
        </table>
      )}
      {runs.length > 0 && (
        <p class="take-away dos s">
          <span class="soft">As a file:</span>
          <Take name="waybench-log.csv" type="text/csv" text={() => logCsv(facts.value.library, plan.value)}>
            the log, corrections and all
          </Take>
        </p>
      )}
      {runs.length > 0 && <WaysOn />}
      {evaluation !== null && <NewRun />}
      {runs.length === 0 && (
        <p class="s soft">
          A logged run replaces the estimate of its step, and later runs of it are expected nearer to what this bench gets.
        </p>
      )}
    </>
  )
}

const verdicts: Partial<Record<ComparedRun['verdict'], string>> = {
  below: 'Less than nine runs in ten give.',
  above: 'More than nine runs in ten give.',
  failed: 'Failed: it teaches nothing about the yield.',
  'not-in-plan': 'The plan does not have this step, or no longer: the run stays here and changes no figure.',
}

const massOr = (massG: number | null) => (massG === null ? <Unknown>none</Unknown> : massText(massG))

function RunRow({ run }: { readonly run: ComparedRun }) {
  const { entry } = run
  const low = lowMelt(facts.value.library, entry)
  const written = [
    entry.date === null ? '' : shortDate(entry.date, true),
    entry.dampPercent > 0 ? `damp, ${entry.dampPercent}${noBreakSpace}% to lose` : 'dry',
    entry.purity === null ? '' : `assay ${numberText(entry.purity * 100, 3, 1)}${noBreakSpace}%`,
    entry.meltingC === undefined ? '' : `m.p. ${entry.meltingC[0]}–${entry.meltingC[1]}${noBreakSpace}°C`,
    entry.batch > 1 ? `batch ${entry.batch}` : '',
    entry.note,
  ].filter(part => part !== '')
  return (
    <>
      <tr class={run.replaced ? 'alt' : ''}>
        <th scope="row" class="plain">
          <Name text={nameOf(productOf(run))} />
          <span class={run.replaced ? 'block' : 'own block'}>{written.join(', ')}</span>
        </th>
        <td class="n">
          {entry.chargedG === null || entry.chargedAs === 'planned' ? (
            massOr(run.chargedG)
          ) : (
            <span class="own">{massText(entry.chargedG)}</span>
          )}
        </td>
        <td class="n own">{massText(entry.weighedG)}</td>
        <td class="n">{massOr(run.plannedG)}</td>
        <td class="n">{massOr(run.theoryG)}</td>
        <td class="n">
          <b>{run.yieldFraction === null ? <Unknown>none</Unknown> : `${Math.round(run.yieldFraction * 100)}${noBreakSpace}%`}</b>
        </td>
      </tr>
      {run.verdict === 'above-theory' && !run.replaced && (
        <tr class="in">
          <td colSpan={6}>
            <div class="problem">
              <Triangle />
              <div>
                <b class="inline">Above 100 %: wet, impure or mis-weighed?</b> Kept as a note; it updates no yield. Dry to constant mass and
                log the second weighing as a correction.
              </div>
            </div>
          </td>
        </tr>
      )}
      {low !== null && !run.replaced && (
        <tr class="in">
          <td colSpan={6} class="s soft under">
            {low.what} {low.why} {low.cure}
          </td>
        </tr>
      )}
      {(run.replaced || verdicts[run.verdict] !== undefined) && (
        <tr class="in">
          <td colSpan={6} class="s soft under">
            {run.replaced ? 'Corrected below.' : verdicts[run.verdict]}
          </td>
        </tr>
      )}
    </>
  )
}
