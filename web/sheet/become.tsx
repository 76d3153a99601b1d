import { useState } from 'preact/hooks'
import type { Problem } from '../../core/problem/problem.ts'
import { percentText } from '../../core/quantity/print.ts'
import { counted } from '../../core/report/words.ts'
import type { ReachRow } from '../api/replies.ts'
import { OwnStep } from '../entry/own-step.tsx'
import { flagWords } from '../map/wide-of-reach.ts'
import { MarkLegend, MarkSign } from '../parts/mark.tsx'
import { Problems } from '../parts/problem.tsx'
import { Clauses, Name, Unknown } from '../parts/words.tsx'
import { awaitsRecords } from '../state/facts-asked.ts'
import { dropGoal, isWanted, noLongerWanted, wanted, wantGoal } from '../state/goals.ts'
import { nameOf } from '../state/names.ts'
import { askReachAgain, reach, stopReach } from '../state/questions.ts'
import { askRoutesAgain, routesTo, stopRoutes } from '../state/route-lists.ts'
import { hasStart } from '../state/sheet-state.ts'
import { choosing, plan, sheet } from '../state/store.ts'
import { becomeAnswer, type ReachOrder, reachShown } from './become-answer.ts'
import { LookingLine } from './looking.tsx'
import { Question } from './question.tsx'

const compounds = ['compound', 'compounds'] as const
/** More rows than anybody reads: the rest is found by name. */
const mostListed = 300

/** Question 2: everything reachable downstream; a tick makes it a goal. */
export function Become() {
  const { answer, waiting, problems } = reach.value
  const goals = plan.value.goals.map(goal => goal.target)
  const clauses = answer === null ? [] : becomeAnswer(answer.reach, goals)
  const none = !hasStart(sheet.value)
    ? 'Say what you have first'
    : waiting || awaitsRecords.value
      ? 'Looking downstream'
      : problems.length > 0
        ? toldBy(problems)
        : 'Nothing in the library takes this further'
  return (
    <Question
      no={2}
      ask="What can it become?"
      empty={clauses.length === 0}
      stale={waiting}
      answer={clauses.length === 0 ? none : <Clauses of={clauses} />}
    >
      {() => <BecomeBody />}
    </Question>
  )
}

/** Only silence is told as silence: what the search refuses has its own words. */
const toldBy = ([first]: readonly Problem[]): string =>
  first === undefined || first.code === 'server-silent' ? 'Not known: the server does not answer' : first.what

function BecomeBody() {
  const { answer, waiting, problems, looking } = reach.value
  const [words, setWords] = useState('')
  const [order, setOrder] = useState<ReachOrder>('steps')
  if (!hasStart(sheet.value)) return <p>Open question 1 and name what you have: a name, a formula or a CAS number will do.</p>
  if (problems.length > 0)
    return (
      <Problems of={problems}>
        <button type="button" class="do" onClick={askReachAgain}>
          Try again
        </button>
      </Problems>
    )
  const found = answer?.reach ?? looking?.reached ?? []
  if (answer === null && found.length === 0)
    return (
      <>
        <p class="soft">{waiting ? 'Looking for what it can become.' : ''}</p>
        <LookingLine looking={looking} what={compounds} onStop={stopReach} />
      </>
    )
  if (found.length === 0)
    return (
      <p>
        No transformation of the library takes {nameOf(plan.value.start.material)} as a reactant. Start from another material, or write down
        one of your own. <OwnStep />
      </p>
    )
  const rows = reachShown(found, words, order)
  return (
    <>
      <Wanted />
      {answer === null && <LookingLine looking={looking} what={compounds} onStop={stopReach} />}
      <div class="line-form">
        <label class="field">
          <span>Look for</span>
          <input class="blank" value={words} placeholder="part of a name" onInput={event => setWords(event.currentTarget.value)} />
        </label>
        <label class="field">
          <span>In order of</span>
          <select class="blank" value={order} onChange={event => setOrder(event.currentTarget.value as ReachOrder)}>
            <option value="steps">steps</option>
            <option value="yield">best yield</option>
            <option value="name">name</option>
          </select>
        </label>
      </div>
      <table class="t reach">
        <thead>
          <tr>
            <th>Compound</th>
            <th class="n">steps</th>
            <th class="n">best yield</th>
            <th>
              <span class="unseen">remarks</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, mostListed).map(row => (
            <Row row={row} key={row.compound} />
          ))}
        </tbody>
      </table>
      {rows.length === 0 && <p class="soft">Nothing within reach is called “{words}”.</p>}
      {rows.length > mostListed && (
        <p class="s">
          The first {mostListed} of {rows.length} are listed: look for part of a name to find another.
        </p>
      )}
      {answer !== null && !answer.complete && (
        <p class="s">
          The search was stopped: what it had not looked at by then stands as not proven.{' '}
          <button type="button" class="do s" onClick={askReachAgain}>
            Look on from the beginning
          </button>
        </p>
      )}
      <MarkLegend used={rows.slice(0, mostListed).flatMap(row => row.yieldTrust ?? [])} />
      <p class="s soft">
        Best yield on start of the default routes, at typical yields; its letter tells how sure the least sure of them is.{' '}
        {choosing.value.maxSteps === null ? 'Up to three steps are shown.' : ''}
      </p>
      <OwnStep />
    </>
  )
}

/** A goal that is being looked for, or to which no route was found. */
function Wanted() {
  const target = wanted.value
  if (target === null) return null
  const { waiting, problems, answer, looking } = routesTo(target)
  if (problems.length > 0)
    return (
      <Problems of={problems}>
        {problems.some(problem => problem.code === 'server-silent') && (
          <button type="button" class="do" onClick={() => askRoutesAgain(target)}>
            Try again
          </button>
        )}
        <button type="button" class="do" onClick={() => noLongerWanted(target)}>
          Leave it
        </button>
      </Problems>
    )
  if (waiting)
    return (
      <>
        <p class="soft" role="status">
          Looking for routes to {nameOf(target)}.
        </p>
        <LookingLine looking={looking} what={['route', 'routes']} onStop={() => stopRoutes(target)} />
      </>
    )
  if (answer !== null && answer.routes.length === 0)
    return (
      <p role="status">
        <b>No route to {nameOf(target)}</b> keeps to what is avoided and owned. Loosen that in question 3, or take a goal nearer by.
      </p>
    )
  return null
}

function Row({ row }: { readonly row: ReachRow }) {
  const goals = plan.value.goals
  const isGoal = goals.some(goal => goal.target === row.compound)
  const onTheWay = goals.some(goal => goal.route.steps.some(step => step.makes === row.compound && step.makes !== goal.target))
  return (
    <tr>
      <th scope="row" class={isGoal ? '' : 'plain'}>
        <label class="dot-choice">
          <input
            type="checkbox"
            checked={isGoal || isWanted(row.compound)}
            onChange={() => (isGoal || isWanted(row.compound) ? dropGoal(row.compound) : wantGoal(row.compound))}
          />
          <span class="as-name">
            <Name text={row.name} />
          </span>
          <span class="unseen"> as a goal</span>
        </label>
      </th>
      <td class="n">{row.steps ?? <Unknown />}</td>
      <td class="n" title={`${row.counted ? '' : 'at least '}${counted(row.routes, 'route')}`}>
        {row.bestYieldOnStart === null ? <Unknown>not proven</Unknown> : percentText(row.bestYieldOnStart)}
        {row.yieldTrust !== null && <MarkSign of={{ mark: row.yieldTrust, source: 'the least sure yield of its steps' }} />}
      </td>
      <td>
        {isGoal ? (
          <span class="own">goal</span>
        ) : onTheWay ? (
          <span class="soft">on the way</span>
        ) : (
          <span class="soft s">{flagWords(row.flags)[0]}</span>
        )}
      </td>
    </tr>
  )
}
