import type { Library } from '../library/library.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import type { Settings } from '../plan/settings.ts'
import { moneyText } from '../quantity/money.ts'
import { noBreakSpace, numberText, quantityText } from '../quantity/print.ts'
import { type LeftOver, leftOvers } from '../shopping/next-uses.ts'
import type { OtherBasket } from '../shopping/shopping.ts'
import { type SolventRecovery, solventRecovery, usualRecoveryRule } from '../shopping/solvent-recovery.ts'
import { quantityWords } from './amounts.ts'
import { nameIn } from './names.ts'
import { capital, counted, listed } from './words.ts'

/** What stands under the shopping list: how sure it is, what else could be bought, what is left and what could be got back. */
export interface ShoppingNotes {
  /** How far from the cheapest basket this one may be; null where it is proven. */
  readonly gap: string | null
  readonly otherBaskets: readonly string[]
  readonly leftOvers: readonly string[]
  readonly solvents: readonly string[]
}

/** Left-overs of a plan with what they could serve next; a slice of the library knows only its own transformations. */
export const leftOversOf = (library: Library, { shopping, steps, start }: Evaluation): readonly LeftOver[] =>
  leftOvers(library, shopping, {
    compounds: new Set([start.compound, ...steps.map(step => step.makes)]),
    transformations: new Set(steps.map(step => step.transformation)),
  })

/** Solvents of a plan under its own rule. */
export const solventsOf = (library: Library, settings: Settings, { steps, shopping }: Evaluation): readonly SolventRecovery[] =>
  solventRecovery(library, steps, shopping, recoveryRuleOf(settings))

/** The usual rule with what the settings say otherwise. */
export function recoveryRuleOf({ recovery }: Settings): typeof usualRecoveryRule {
  const own = Object.entries(recovery).filter(([, value]) => value !== undefined)
  return { ...usualRecoveryRule, ...Object.fromEntries(own) }
}

export function shoppingNotesOf(library: Library, settings: Settings, evaluation: Evaluation): ShoppingNotes {
  const nameOf = nameIn(library)
  const { basket, otherBaskets = [] } = evaluation
  return {
    gap: gapText(evaluation),
    otherBaskets: basket === null ? [] : otherBaskets.map(other => otherText(nameOf, other, basket.currency)),
    leftOvers: leftOversOf(library, evaluation).map(one => leftText(library, one)),
    solvents: solventsOf(library, settings, evaluation)
      .filter(one => one.usedMl > 0)
      .map(one => solventText(nameOf, one, basket?.currency ?? null)),
  }
}

/** "Best found; no basket costs less than € 61.00: at most € 1.30 (2.1 %) could be saved." */
export function gapText({ basket }: Evaluation): string | null {
  if (basket === null || basket.proven || basket.totalMinor === null) return null
  const { boundMinor, totalMinor, currency } = basket
  if (boundMinor === null) return 'This basket is the best found; how much a cheaper one could save is not known.'
  const gap = totalMinor - boundMinor
  const percent = numberText((gap / totalMinor) * 100, 2, 1)
  return `This basket is the best found. None costs less than ${moneyText(boundMinor, currency)}: at most ${moneyText(gap, currency)} (${percent}${noBreakSpace}%) could be saved.`
}

function otherText(nameOf: (id: string) => string, other: OtherBasket, currency: string): string {
  const orders = listed(other.orders.map(order => order.name.replace(/ \(invented\)$/, '')))
  const head =
    other.kind === 'fewest-suppliers' ? `Fewest suppliers: ${counted(other.orders.length, 'order')} (${orders})` : 'Least left over'
  const cost = other.moreMinor === 0 ? 'costs the same' : `costs ${moneyText(other.moreMinor, currency)} more`
  if (other.kind === 'fewest-suppliers') return `${head}; ${cost}.`
  const packs = listed(other.packs.map(pack => `${pack.count} × ${pack.amount} ${pack.unit} of ${nameOf(pack.material)}`))
  return `${head}, worth ${moneyText(other.leftWorthMinor, currency)} at the cheapest prices; ${cost}: ${packs}.`
}

function leftText(library: Library, { material, left, couldServe }: LeftOver): string {
  const nameOf = nameIn(library)
  const uses = couldServe.map(
    use => `${library.transformations.get(use.transformation)?.name ?? use.transformation}${use.times > 1 ? ` (${use.times} times)` : ''}`,
  )
  return `${quantityWords(left)} of ${nameOf(material)}: ${uses.length === 0 ? 'nothing more in this library takes so much of it' : `suffices for ${listed(uses)}`}.`
}

function solventText(nameOf: (id: string) => string, one: SolventRecovery, currency: string | null): string {
  const ml = (value: number) => quantityText({ value, unit: 'mL' })
  const head = `${capital(nameOf(one.material))}, ${ml(one.usedMl)} used`
  if (one.recoverableMl <= 0) return `${head}: nothing to get back. ${one.why}`
  const saves = one.savesMinor === null || currency === null ? '' : `, saving ${moneyText(one.savesMinor, currency)}`
  return `${head}: about ${ml(one.recoverableMl)} could be distilled off in ${numberText(one.hours, 2, 1)} h${saves}. ${one.worthIt ? 'Worth it' : 'Not worth it'}: ${one.why.charAt(0).toLowerCase()}${one.why.slice(1)}`
}
