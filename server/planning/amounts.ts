import { type Library, materialOf } from '../../core/library/library.ts'
import { compoundIn, measured } from '../../core/library/reference-charge.ts'
import type { GoalAmount } from '../../core/plan/plan.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { convert, shareFraction } from '../../core/quantity/convert.ts'
import { parseQuantity } from '../../core/quantity/parse.ts'
import { Refusal } from '../refusal.ts'

const refuse = (problem: Problem): Refusal => new Refusal('bad-input', [problem])

/**
 * Grams of a material out of a text such as "24 g", "20 mL" or "0.1 mol". For a solution "mol" means the compound in it.
 *
 * @throws Refusal where it is no amount, not above zero, or cannot be turned into grams
 */
export function gramsOf(library: Library, material: string, text: string, where: readonly string[]): number {
  const quantity = parseQuantity(text, where, { dimensions: ['mass', 'volume', 'amount'], zero: false })
  if (!quantity.ok) throw new Refusal('bad-input', quantity.problems)
  const { value, unit } = quantity.value
  const thing = materialOf(library, material)
  if (unit === 'g' || unit === 'kg' || unit === 'mg' || unit === 'µg') return convert(quantity.value, 'g')
  const { massG } =
    unit === 'mL' || unit === 'L' || unit === 'µL'
      ? measured(library, thing, convert(quantity.value, 'mL'), 'mL')
      : measured(library, thing, convert(quantity.value, 'mol'), 'mol')
  if (massG !== null) return massG
  const missing =
    unit === 'mol' || unit === 'mmol' ? (compoundIn(thing) === null ? 'what it contains' : 'its molar mass or density') : 'its density'
  throw refuse({
    code: 'amount-without-mass',
    where,
    what: `${value} ${unit} of ${thing.name} cannot be turned into grams.`,
    why: `The library does not know ${missing}.`,
    cure: 'Give the amount in g.',
  })
}

/** A goal's amount: grams (or what turns into grams), a share in percent, or the word `rest`, with the least that is wanted of it as in "rest >= 2 g". */
export function goalAmountOf(library: Library, target: string, text: string, where: readonly string[]): GoalAmount {
  const trimmed = text.trim()
  if (trimmed === 'rest') return { kind: 'rest' }
  const least = /^rest\s*(?:>=|at least)\s*(.+)$/.exec(trimmed)?.[1]
  if (least !== undefined) return { kind: 'rest', leastG: gramsOf(library, target, least, where) }
  if (!trimmed.endsWith('%')) return { kind: 'mass', massG: gramsOf(library, target, trimmed, where) }
  const share = parseQuantity(trimmed, where, { dimensions: ['share'], zero: false })
  if (!share.ok) throw new Refusal('bad-input', share.problems)
  const fraction = shareFraction(share.value)
  if (fraction <= 1) return { kind: 'share', fraction }
  throw refuse({
    code: 'share-above-all',
    where,
    what: `${trimmed} is more than all of the start.`,
    why: 'A share is a part of the start.',
    cure: 'Give a share up to 100 %.',
  })
}
