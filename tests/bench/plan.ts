import { writeFileSync } from 'node:fs'
import { daysOf } from '../../core/days/calendar.ts'
import { hazardsOf } from '../../core/hazards/list.ts'
import type { Library } from '../../core/library/library.ts'
import type { Transformation } from '../../core/library/transformation.ts'
import { evaluate } from '../../core/plan/evaluate.ts'
import { libraryOfParts } from '../../core/plan/library-of-parts.ts'
import type { Plan } from '../../core/plan/plan.ts'
import { reckoned } from '../../core/plan/reckoned.ts'
import { drawCount, strata, stratumScores } from '../../core/yields/draw.ts'
import { demoParts } from '../../server/library/demo.ts'
import { openWorkshop } from '../../server/library/workshop.ts'
import { benzoinGoal, benzoinPlan, benzoinSteps, logEntry, mass, rest, share } from '../support/benzoin-plans.ts'

/**
 * Speed of a whole evaluation of an eight-step convergent plan with sixty materials, as a ratio to one bare pass of the same draws: for each step and draw the
 * yield from its two scores, multiplied up. Rounds alternate between what is compared; figures are the least of the rounds in ms, since other
 * work on the machine only adds. `--json FILE` writes them.
 *
 * An amount that moves leaves the yields as drawn, which are kept; `fresh draws` reckons each round with another seed, and keeps nothing.
 *
 * Without the basket: the solver runs behind the slider, in the worker, once the amounts stand.
 */
const jsonFile = process.argv.includes('--json') ? process.argv[process.argv.indexOf('--json') + 1] : undefined
const rounds = 25

const workshop = await openWorkshop([])
const { tables } = workshop
const traits = workshop.traits()
const { settings, packs, shelf } = demoParts()
const copper = 'benzil-copper-ammonium-nitrate'
const dioxime = [copper, 'benzil-dioxime']
const targets = ['lophine', '2-3-diphenylquinoxaline', 'benzil-dioxime', 'hexaphenylbenzene']
const library = withMaterials(60)

/**
 * The bundled library with further lines in the eight steps, taken from the charges of its other steps, so that the plan takes as many
 * materials as are wanted: it holds no plan of eight steps that takes sixty.
 */
function withMaterials(wanted: number): Library {
  const before = workshop.library
  const ids = new Set([...Object.values(benzoinSteps).flat(), ...dioxime])
  const steps = [...ids]
    .map(id => before.transformations.get(id)!)
    .filter(t => targets.some(to => benzoinSteps[to]?.includes(t.id) || dioxime.includes(t.id)))
  const used = new Set(steps.flatMap(t => t.charge.map(line => line.material)))
  const worked = ['solvent', 'wash', 'drying', 'extraction', 'recrystallisation', 'catalyst', 'other']
  const further: Transformation['charge'][number][] = []
  for (const { charge, id } of before.transformations.values())
    for (const line of charge) {
      if (ids.has(id) || used.has(line.material) || used.size >= wanted || line.amount === null || !worked.includes(line.role)) continue
      used.add(line.material)
      further.push(line)
    }
  const changed = new Map(steps.map((t, i) => [t.id, { ...t, charge: [...t.charge, ...further.filter((_, k) => k % steps.length === i)] }]))
  const all = [...before.transformations.values()].map(t => changed.get(t.id) ?? t)
  return libraryOfParts({ title: before.title }, [...before.materials.values()], all)
}
const plan = (amounts: readonly Plan['goals'][number]['amount'][], own: Partial<Plan> = {}, confidence: number | null = null): Plan =>
  benzoinPlan(
    targets.map((target, i) =>
      target === 'benzil-dioxime' ? benzoinGoal(library, target, amounts[i]!, dioxime) : benzoinGoal(library, target, amounts[i]!),
    ),
    { packs, shelf, ...own, settings: { ...settings, confidence } },
  )
const cases: Readonly<Record<string, Plan>> = {
  'typical yields': plan([mass(2), mass(2), mass(1), rest]),
  'masses at 9 in 10': plan([mass(2), mass(2), mass(1), mass(1)], { start: { material: 'benzoin', massG: null } }, 0.9),
  'share and rest at 9 in 10': plan([mass(2), mass(2), share(0.2), rest], {}, 0.9),
  'after a logged run': plan([mass(2), mass(2), mass(1), rest], { log: [logEntry({ weighedG: 17 })] }),
}

let sink = 0
const timed = (work: () => number): number => {
  const before = performance.now()
  sink += work()
  return performance.now() - before
}

/** What no plan can be faster than: each yield of each draw once. */
function barePass(steps: number): number {
  let sum = 0
  const score = stratumScores()
  const product = new Float64Array(drawCount).fill(1)
  for (let step = 0; step < steps; step++) {
    const bench = strata(`bare-${step}`, 'b', 1)
    const run = strata(`bare-${step}`, 'r1', 1)
    for (let k = 0; k < drawCount; k++) product[k] = product[k]! / (1 + Math.exp(-(1.5 + 0.7 * (score[bench[k]!]! + score[run[k]!]!))))
  }
  for (let k = 0; k < drawCount; k++) sum += product[k]!
  return sum
}

let seed = 2
const rows: Record<string, number | string>[] = []
for (const [name, one] of Object.entries(cases)) {
  const input = { library, tables, traits, plan: one, solver: null }
  const amounts = reckoned(library, one)
  const materials = new Set(amounts.steps.flatMap(step => step.charges.map(line => line.material)))
  const works: Readonly<Record<string, () => number>> = {
    bare: () => barePass(amounts.steps.length),
    whole: () => Object.keys(evaluate(input)).length,
    fresh: () => Object.keys(evaluate({ ...input, plan: { ...one, seed: seed++ } })).length,
    amounts: () => reckoned(library, one).steps.length,
    hazards: () => hazardsOf({ library, tables, traits, steps: amounts.toRun, start: one.start, settings: one.settings }).materials.length,
    days: () => daysOf({ library, steps: amounts.toRun, ...one.settings }).booked.length,
  }
  const times = new Map(Object.keys(works).map(key => [key, [] as number[]]))
  for (let round = 0; round < rounds + 3; round++)
    for (const [key, work] of Object.entries(works)) {
      const took = timed(work)
      // The first rounds warm the compiler and the streams.
      if (round >= 3) times.get(key)!.push(took)
    }
  const at = (key: string): number => Number(Math.min(...times.get(key)!).toFixed(2))
  rows.push({
    plan: name,
    steps: amounts.steps.length,
    materials: materials.size,
    'bare pass, ms': at('bare'),
    'whole evaluation, ms': at('whole'),
    'whole over bare': Number((at('whole') / at('bare')).toFixed(1)),
    'with fresh draws, ms': at('fresh'),
    'amounts and draws, ms': at('amounts'),
    'hazards, ms': at('hazards'),
    'days, ms': at('days'),
  })
}
console.table(rows)
if (jsonFile !== undefined) writeFileSync(jsonFile, `${JSON.stringify(rows, null, 2)}\n`)
if (!Number.isFinite(sink)) process.exitCode = 1
