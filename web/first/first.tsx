import { useRef, useState } from 'preact/hooks'
import { nearest } from '../../core/problem/nearest.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { parseQuantity } from '../../core/quantity/parse.ts'
import { server } from '../api/client.ts'
import type { MaterialHit } from '../api/replies.ts'
import { openEntry } from '../entry/place.ts'
import { OpenFile } from '../open-file.tsx'
import { readHave } from '../parts/have-text.ts'
import { MaterialBox } from '../parts/material-box.tsx'
import { ProblemNote, Problems } from '../parts/problem.tsx'
import { massOf } from '../sheet/have.tsx'
import { problemsOf } from '../state/asked.ts'
import { bringFacts } from '../state/facts-asked.ts'
import { wantGoal } from '../state/goals.ts'
import { beginPlan, opening, openingProblems } from '../state/opening.ts'
import { Demo } from './demo.tsx'
import { Kept, Unsaved } from './kept.tsx'
import { Seven } from './seven.tsx'

/** The first page: two blanks, what I have and what I want; the demo; and the plans that are kept. */
export function First() {
  const [have, setHave] = useState('')
  const [hit, setHit] = useState<MaterialHit | null>(null)
  const [want, setWant] = useState('')
  const [goal, setGoal] = useState<MaterialHit | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [meant, setMeant] = useState<MaterialHit | null>(null)

  const going = useRef(false)

  /** Once at a time: a second Enter while the first is answered would begin a second plan. */
  const go = async (taken: MaterialHit | null, wanted: MaterialHit | null): Promise<void> => {
    if (going.current) return
    going.current = true
    await begin(taken, wanted)
    going.current = false
  }
  const begin = async (taken: MaterialHit | null, wanted: MaterialHit | null): Promise<void> => {
    setProblems([])
    setMeant(null)
    const { name, amountText, amount } = readHave(have)
    if (amountText !== null && amount === null) {
      const read = parseQuantity(amountText, ['what I have'], { dimensions: ['mass', 'volume', 'amount'], zero: false })
      return setProblems(read.ok ? [] : read.problems)
    }
    try {
      const found = taken ?? (await find(name))
      if (found === null) {
        setMeant(await nearestTo(name))
        return setProblems([nothingCalled(name, have)])
      }
      const goalFound = wanted ?? (want.trim() === '' ? null : await find(want.trim()))
      if (want.trim() !== '' && goalFound === null) return setProblems([nothingCalled(want.trim(), want)])
      await bringFacts([], [found.id])
      const massG = amount === null ? null : massOf(found.id, amount)
      if (amount !== null && massG === null) return setProblems([noMass(found.name)])
      beginPlan({ material: found.id, name: found.name, massG })
      if (goalFound !== null) wantGoal(goalFound.id)
    } catch (fault) {
      setProblems(problemsOf(fault))
    }
  }
  return (
    <main class="door" id="start">
      <div class="first">
        <h1>Name what you have and what you want.</h1>
        <form
          onSubmit={event => {
            event.preventDefault()
            void go(hit, goal)
          }}
        >
          <div class="two-blanks">
            <MaterialBox
              label="I have"
              placeholder="24 g benzoin"
              text={have}
              invalid={problems.length > 0}
              wordsOf={text => readHave(text).name}
              onText={text => {
                setHave(text)
                setHit(null)
              }}
              onTake={taken => {
                const { amountText } = readHave(have)
                setHave(`${amountText === null ? '' : `${amountText} `}${taken.name}`)
                setHit(taken)
              }}
              onEnter={() => void go(hit, goal)}
            />
            <svg viewBox="0 0 120 12" aria-hidden="true" preserveAspectRatio="none">
              <path d="M0 6h110" stroke="var(--rail)" stroke-width="1.3" stroke-dasharray="1.500 4" stroke-linecap="round" />
              <path d="M120 6l-9-3.800 2 3.800-2 3.800z" fill="var(--rail)" />
            </svg>
            <MaterialBox
              label="I want"
              placeholder="a compound, or leave open"
              text={want}
              onText={text => {
                setWant(text)
                setGoal(null)
              }}
              onTake={taken => {
                setWant(taken.name)
                setGoal(taken)
              }}
              onEnter={() => void go(hit, goal)}
            />
            <button type="submit" class="do" disabled={have.trim() === ''}>
              See what it can become
            </button>
          </div>
          <p class="dos">
            <button type="button" class="do" onClick={() => beginPlan(null)}>
              Begin with the shelf
            </button>
            <OpenFile />
            <button type="button" class="do" onClick={() => openEntry('write')}>
              Write a preparation of your own
            </button>
          </p>
        </form>
        {problems.map(problem => (
          <ProblemNote problem={problem} key={problem.code}>
            {meant === null ? undefined : (
              <button
                type="button"
                class="do"
                onClick={() => {
                  const { amountText } = readHave(have)
                  setHave(`${amountText === null ? '' : `${amountText} `}${meant.name}`)
                  setHit(meant)
                  setProblems([])
                  setMeant(null)
                }}
              >
                Take {meant.name}
              </button>
            )}
          </ProblemNote>
        ))}
        {opening.value && (
          <p class="soft" role="status">
            Opening the plan.
          </p>
        )}
        <Problems of={openingProblems.value} />
        <Demo />
        <Unsaved />
        <Kept />
      </div>
      <Seven />
    </main>
  )
}

async function find(name: string): Promise<MaterialHit | null> {
  const { materials } = await server.materials(name, AbortSignal.timeout(8000))
  const wanted = name.toLowerCase()
  // An exact word is taken as meant; a mere beginning is asked about.
  return materials.find(one => [one.name, one.matched, one.id, one.cas ?? ''].some(word => word.toLowerCase() === wanted)) ?? null
}

/** The material whose name is most like a mistyped one, among those with the same first letter; null where none is near. */
async function nearestTo(name: string): Promise<MaterialHit | null> {
  const { materials } = await server.materials(name.slice(0, 1), AbortSignal.timeout(5000), 100)
  const near = nearest(
    name.toLowerCase(),
    materials.map(one => one.name.toLowerCase()),
  )
  return materials.find(one => one.name.toLowerCase() === near) ?? null
}

const nothingCalled = (name: string, written: string): Problem => ({
  code: 'material-unknown',
  where: [`what you wrote: ${written}`],
  what: `No material is called “${name}”.`,
  why: 'A plan begins with something that the library knows.',
  cure: 'Choose from the list under the blank, or try a synonym, a formula or a CAS number.',
})

const noMass = (name: string): Problem => ({
  code: 'amount-without-mass',
  where: ['what I have'],
  what: `That amount of ${name} cannot be turned into grams.`,
  why: 'The library has no density or no strength for it.',
  cure: 'Weigh it and give grams.',
})
