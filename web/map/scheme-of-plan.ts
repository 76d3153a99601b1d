import type { Depiction } from '../../core/chemistry/drawing.ts'
import { type Library, transformationOf } from '../../core/library/library.ts'
import { isBuyable } from '../../core/library/material.ts'
import { compoundIn } from '../../core/library/reference-charge.ts'
import type { Transformation } from '../../core/library/transformation.ts'
import type { Evaluation } from '../../core/plan/evaluation.ts'
import { type MergedSteps, mergedSteps } from '../../core/plan/merged-steps.ts'
import type { Plan } from '../../core/plan/plan.ts'
import { massText, noBreakSpace, numberText } from '../../core/quantity/print.ts'
import type { ChargedLine } from '../../core/route/charged.ts'
import { conditionsOf, sureOf, sureWord, underOf } from './conditions.ts'
import { mapName } from './map-name.ts'
import { formulaRuns, plain } from './scheme/runs.ts'
import type { Cell, Item, Keep, SchemeIn, Shape, Step, Way } from './scheme/types.ts'
import { softened } from './softened.ts'

export interface SchemeOfPlan {
  readonly library: Library
  /** Typical yields, percent, that own records stand in place of, by step. */
  readonly beneath?: ReadonlyMap<string, number>
  readonly depictions: ReadonlyMap<string, Depiction>
  readonly plan: Plan
  /** Null before the first reckoning: the scheme then stands without amounts. */
  readonly evaluation: Evaluation | null
  /** Other transformations that make a compound, by that compound: ways not chosen. */
  readonly otherMakers: ReadonlyMap<string, readonly string[]>
  /** Compounds that the whole library knows how to make. */
  readonly makeable: ReadonlySet<string>
  readonly pane: number
  readonly form: SchemeIn['form']
  readonly touch?: number
  readonly keep?: Keep
}

/** A co-reactant is drawn from so many heavy atoms on; smaller ones stand over the arrow. */
const leastDrawnAtoms = 6
/** More alternatives than this are told in the comparison. */
const mostDetours = 4

const legend: readonly Item[] = [
  plain('Ink: chosen. Grey: not chosen.'),
  plain('Solid: seen in a source. Dashed: remembered. Hatched: unknown.'),
  plain('Letters: e estimated, d reckoned by the library, r remembered.'),
  plain('Blue: yours to change.', { pen: true }),
]

/** The plan as the scheme layout takes it: a cell a compound, a step a reaction; null where its routes do not go together. */
export function schemeOfPlan(input: SchemeOfPlan): SchemeIn | null {
  const merged = mergedSteps(input.library, input.plan.goals)
  if (!merged.ok) return null
  const draft = new Draft(input, merged.value)
  return {
    pane: input.pane,
    form: input.form,
    start: merged.value.start,
    cells: draft.cells,
    steps: draft.steps,
    legend,
    ...(input.keep === undefined ? {} : { keep: input.keep }),
    ...(input.touch === undefined ? {} : { touch: input.touch }),
  }
}

/** A mass as the map tells it: one decimal from 1 g on. */
export const shortMass = (massG: number): string => (massG >= 1 ? `${numberText(massG, 3, 1)}${noBreakSpace}g` : massText(massG, 2))

/** The reactant that carries a step's row: the limiting one where it is the start or made, else the first that is. */
export function carrierOf(transformation: Transformation, start: string, made: ReadonlySet<string>): string {
  const ours = transformation.reactants.map(one => one.compound).filter(id => id === start || made.has(id))
  return ours.includes(transformation.limiting) ? transformation.limiting : (ours[0] ?? transformation.limiting)
}

class Draft {
  readonly cells: Record<string, Cell> = {}
  readonly steps: Step[] = []
  readonly #of: SchemeOfPlan
  readonly #merged: MergedSteps
  readonly #made: ReadonlySet<string>

  constructor(of: SchemeOfPlan, merged: MergedSteps) {
    this.#of = of
    this.#merged = merged
    this.#made = new Set(merged.steps.map(step => step.makes))
    this.#addCell(merged.start, merged.start, 'start', this.#startAmount())
    for (const { transformation, makes } of merged.steps) this.#addStep(transformationOf(of.library, transformation), makes)
  }

  #startAmount(): Pick<Cell, 'amount'> {
    const { massG } = this.#of.plan.start
    if (massG !== null) return { amount: plain(shortMass(massG), { pen: true }) }
    const needed = this.#of.evaluation?.start.massG
    return needed === undefined ? {} : { amount: plain(shortMass(needed)) }
  }

  #addStep(transformation: Transformation, makes: string): void {
    const { start } = this.#merged
    const carrier = carrierOf(transformation, start, this.#made)
    const others = [...new Set(transformation.reactants.map(one => one.compound))].filter(id => id !== carrier)
    const made = others.filter(id => this.#made.has(id))
    const co = others.filter(id => !this.#made.has(id) && id !== start && this.#isDrawn(id))
    for (const id of co) this.#addCo(transformation, id)
    for (const id of made) this.#markMade(id)
    this.#addProduct(transformation, makes, carrier)
    const left = new Set([carrier, ...co, ...made])
    const from = this.#root(transformation, carrier)
    this.steps.push({
      ...this.#way(transformation, left),
      no: this.#merged.numbers.get(transformation.id) ?? '',
      from,
      to: makes,
      co: co.map(id => coCell(id, transformation)),
      made,
      leaves: this.#leavers(transformation),
      alts: this.#detours(transformation, makes, carrier, left),
    })
  }

  #way(transformation: Transformation, left: ReadonlySet<string>): Way {
    const { over, brief } = conditionsOf(this.#of.library, transformation, left)
    const word = sureWord(transformation, this.#of.beneath?.get(transformation.id))
    const under = underOf(transformation)
    return {
      id: transformation.id,
      over,
      brief,
      under: word === null ? under : [...under, plain(word, { i: true })],
      sure: sureOf(transformation),
    }
  }

  #detours(transformation: Transformation, makes: string, carrier: string, left: ReadonlySet<string>): readonly Way[] {
    return (this.#of.otherMakers.get(makes) ?? [])
      .flatMap(id => this.#of.library.transformations.get(id) ?? [])
      .filter(other => other.id !== transformation.id && other.reactants.some(one => one.compound === carrier))
      .slice(0, mostDetours)
      .map(other => this.#way(other, left))
  }

  #leavers(transformation: Transformation): Step['leaves'] {
    const gases = transformation.gasEvolved.map(({ compound }) => ({ text: this.#gasText(compound) }))
    const second = (transformation.coProducts ?? []).map(({ compound }) => {
      const cell = `${compound}@${transformation.id}`
      const made = this.#of.evaluation?.coProducts.find(
        one => one.compound === compound && one.step === (this.#merged.numbers.get(transformation.id) ?? transformation.id),
      )
      this.#addCell(cell, compound, 'co', made === undefined ? {} : { amount: plain(shortMass(made.expectedG)) })
      return { cell }
    })
    return [...gases, ...second]
  }

  #gasText(compound: string): Item {
    const material = this.#of.library.materials.get(compound)
    const formula = material?.displayFormula ?? material?.formula
    return formula === undefined ? plain(material?.name ?? compound) : formulaRuns(formula)
  }

  #addProduct(transformation: Transformation, makes: string, carrier: string): void {
    const { evaluation, plan } = this.#of
    const step = evaluation?.steps.find(one => one.transformation === transformation.id)
    const goal = evaluation?.goals.find(one => one.target === makes)
    const isGoal = plan.goals.some(one => one.target === makes)
    const massG = goal?.medianG ?? step?.medianG
    const note = isGoal ? this.#shareNote(transformation, carrier) : null
    this.#addCell(makes, makes, isGoal ? 'goal' : 'mid', {
      ...(massG === undefined ? {} : { amount: plain(shortMass(massG)) }),
      ...(note === null ? {} : { note: plain(note) }),
    })
  }

  /** "3.9 g of the benzil": what a branch takes of a compound that others take too. */
  #shareNote(transformation: Transformation, carrier: string): string | null {
    const { evaluation, library } = this.#of
    const users = this.#merged.steps.filter(step =>
      transformationOf(library, step.transformation).reactants.some(one => one.compound === carrier),
    )
    const step = evaluation?.steps.find(one => one.transformation === transformation.id)
    if (users.length < 2 || step === undefined || step.limiting.compound !== carrier) return null
    return `${shortMass(step.limiting.massG)} of the ${mapName(library.materials.get(carrier)?.name ?? carrier)}`
  }

  #addCo(transformation: Transformation, compound: string): void {
    const { library, evaluation, makeable } = this.#of
    const lines = evaluation?.steps
      .find(one => one.transformation === transformation.id)
      ?.charges.filter(line => {
        const material = library.materials.get(line.material)
        return material !== undefined && compoundIn(material) === compound && line.at !== 'workup'
      })
    const molarMass = library.molarMass.get(compound)
    // Of a solution the map tells what is in it, as the equation takes it.
    const inLine = (line: ChargedLine): number =>
      line.material !== compound && molarMass !== undefined && line.amountMol !== null ? line.amountMol * molarMass : (line.massG ?? 0)
    const massG = lines === undefined || lines.length === 0 ? null : lines.reduce((sum, line) => sum + inLine(line), 0)
    const open = lines?.some(line => line.basis === 'at-least' || line.basis === 'open') ?? false
    this.#addCell(coCell(compound, transformation), compound, 'co', {
      ...(massG === null || massG === 0 ? {} : { amount: plain(`${shortMass(massG)}${open ? ' +' : ''}`, open ? { i: true } : {}) }),
      ...(makeable.has(compound) ? { pick: 'buy' } : {}),
    })
  }

  /** The cell a row begins at: the start or something made; where a co-reactant is made from something bought, that stands there itself. */
  #root(transformation: Transformation, carrier: string): string {
    if (carrier === this.#merged.start || this.#made.has(carrier)) return carrier
    this.#addCo(transformation, carrier)
    return coCell(carrier, transformation)
  }

  /** A made co-reactant says that it might be bought. */
  #markMade(compound: string): void {
    const cell = this.cells[compound]
    const material = this.#of.library.materials.get(compound)
    if (cell === undefined || cell.role === 'start') return
    this.cells[compound] = { ...cell, pick: material !== undefined && isBuyable(material) ? 'make' : 'make only' }
  }

  #isDrawn(compound: string): boolean {
    const depiction = this.#of.depictions.get(compound)
    const formula = this.#of.library.materials.get(compound)?.formula ?? ''
    return depiction?.kind === 'structure' && /C(?![a-z])/.test(formula) && depiction.drawing.atoms.length >= leastDrawnAtoms
  }

  #addCell(id: string, compound: string, role: Cell['role'], more: Pick<Cell, 'amount' | 'note' | 'pick'>): void {
    const { library, depictions } = this.#of
    const depiction = depictions.get(compound)
    const name = softened(mapName(library.materials.get(compound)?.name ?? compound))
    const base = { id, name, role, ...more }
    this.cells[id] =
      depiction?.kind === 'structure'
        ? { ...base, kind: 'structure', shape: shapeOf(depiction) }
        : depiction?.kind === 'formula'
          ? { ...base, kind: 'formula', formula: formulaRuns(depiction.formula) }
          : { ...base, kind: 'words' }
  }
}

/** One co-reactant may feed several steps: it stands at each of them. */
const coCell = (compound: string, transformation: Transformation): string => `${compound}@${transformation.id}`

/** The compound of a cell. */
export const compoundOfCell = (cell: string): string => cell.replace(/@.*$/, '')

const shapeOf = ({ drawing }: Extract<Depiction, { kind: 'structure' }>): Shape => ({
  w: drawing.w,
  h: drawing.h,
  topX: drawing.topX,
  topY: drawing.topY,
})
