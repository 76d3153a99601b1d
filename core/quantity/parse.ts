import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { type CommaRule, numberAtStart, numberIn } from './number.ts'
import { type Dimension, type Unit, unitNamed, units, unitsOf, unitTable } from './unit.ts'

/** An amount as written: the number with the unit it was given in. */
export interface Quantity {
  readonly value: number
  readonly unit: Unit
}

export interface Expected {
  /** What the amount may be: mass, volume, amount of substance, time, share. Default: any. */
  readonly dimensions?: readonly Dimension[]
  /** Default true. Where nothing makes no sense (an amount in hand, a goal), give false. */
  readonly zero?: boolean
  /** How "1,200 g" is read; by default it is asked about. */
  readonly comma?: CommaRule
}

const nouns: Readonly<Record<Dimension, string>> = {
  mass: 'a mass',
  volume: 'a volume',
  amount: 'an amount of substance',
  time: 'a time',
  share: 'a share in percent',
}

/**
 * An amount such as "24 g", "1,5 mL", "50 %": one number, then one unit of the closed table.
 *
 * @param text   as typed or loaded
 * @param where  option, file, record or field it came from
 * @returns the quantity; or exactly one Problem, with one of the codes quantity-empty, quantity-unit-missing, quantity-unit-unknown,
 *          quantity-negative, quantity-zero, quantity-dimension, or a code of `numberIn`
 * @example parseQuantity('24 g') // { ok: true, value: { value: 24, unit: 'g' }, warnings: [] }
 */
export function parseQuantity(text: string, where: readonly string[] = [], expected: Expected = {}): Checked<Quantity> {
  const wanted = expected.dimensions
  const known = (wanted === undefined ? units : wanted.flatMap(dimension => unitsOf(dimension))).join(', ')
  const why = 'An amount is a number and one unit; nothing is guessed.'
  const problem = (code: string, what: string, cure: string): { readonly ok: false; readonly problems: readonly Problem[] } =>
    bad([{ code, where, what, why, cure }])
  const shown = text.length > 40 ? `${text.slice(0, 40)}...` : text
  if (text.trim() === '') return problem('quantity-empty', 'No amount is given.', `Write a number and a unit (${known}), for example 24 g.`)

  const start = numberAtStart(text)
  if (start === null)
    return problem('number-unreadable', `"${shown}" does not begin with a number.`, `Write a number, then a unit: ${known}.`)
  const unitText = text.slice(start.length).trim()
  const number = numberIn(start, where, expected.comma)
  if (unitText === '') {
    if (!number.ok) return number
    return problem('quantity-unit-missing', `"${shown}" has no unit.`, `Add one of ${known}.`)
  }
  const unit = unitNamed(unitText)
  if (unit === null)
    return problem(
      'quantity-unit-unknown',
      `"${shown}" is not an amount: ${/\d/.test(unitText) || unitText.includes(' ') ? `what follows the number, "${clip(unitText)}", is more than a unit` : `"${clip(unitText)}" is no unit known here`}.`,
      `Use one number and one of ${known}.`,
    )
  if (!number.ok) return number
  if (number.value < 0) return problem('quantity-negative', `"${shown}" is below zero.`, 'Give an amount of zero or more.')
  if (number.value === 0 && expected.zero === false) return problem('quantity-zero', `"${shown}" is nothing.`, 'Give an amount above zero.')
  const dimension = unitTable[unit].dimension
  if (wanted !== undefined && !wanted.includes(dimension))
    return problem(
      'quantity-dimension',
      `"${shown}" is ${nouns[dimension]}, where ${wanted.map(one => nouns[one]).join(' or ')} is needed.`,
      `Give it in ${known}.`,
    )
  return good({ value: number.value, unit })
}

function clip(text: string): string {
  return text.length > 30 ? `${text.slice(0, 30)}...` : text
}
