import type { Material } from '../library/material.ts'
import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { numberAtStart, numberIn } from '../quantity/number.ts'

/** What a unit of density makes of its number, in g/mL. */
const units: readonly (readonly [RegExp, number])[] = [
  [/^(?:g\s*\/\s*(?:ml|cm3|cm³|cm\^3|cc)|g\s*(?:ml|cm)\s*(?:\^?-[13]|⁻[¹³])|kg\s*\/\s*(?:l|dm3|dm³)|kg\s*l(?:\^?-1|⁻¹))?$/i, 1],
  [/^(?:g\s*\/\s*(?:l|dm3|dm³)|kg\s*\/\s*m(?:3|³|\^3)|mg\s*\/\s*ml)$/i, 0.001],
]

/**
 * Least and most that there is at a bench, g/mL: hydrogen 0.00008 and radon 0.0097 at room temperature; liquids from isopentane (0.62) to mercury
 * (13.5), liquefied gases down to 0.4; solids from aerogel to osmium (22.6). From memory.
 */
const there: Readonly<Record<Material['form'], readonly [number, number]>> = {
  gas: [0.00005, 0.05],
  liquid: [0.3, 14],
  solution: [0.3, 14],
  solid: [0.01, 23],
}

/**
 * A density as people write it: 0.83, 0,83 g/mL, 830 kg/m3. A comma is a decimal comma.
 *
 * @param form  what it is at the bench: a liquid of 83 g/mL is a slip
 * @returns g/mL; or exactly one Problem: density-unreadable, density-out-of-range, or a code of `numberIn`
 */
export function readDensity(text: string, form: Material['form'], where: readonly string[] = []): Checked<number> {
  const written = text.trim()
  const start = numberAtStart(written)
  const rest = start === null ? '' : written.slice(start.length).trim()
  const scale = units.find(([unit]) => unit.test(rest))?.[1]
  if (start === null || scale === undefined) return bad([unreadable(written, where)])
  const number = numberIn(start, where, 'decimal')
  if (!number.ok) return number
  const value = Number((number.value * scale).toPrecision(12))
  const [least, most] = there[form]
  return value >= least && value <= most ? good(value) : bad([outside(written, value, form, where)])
}

const why = 'Volumes are turned into grams with it.'

const unreadable = (text: string, where: readonly string[]): Problem => ({
  code: 'density-unreadable',
  where,
  what: `"${text}" is not read as a density.`,
  why,
  cure: /\d\s*(?:-|–|to|bis)\s*\d/.test(text) ? 'Give one figure, such as the middle of the range.' : 'Write one figure, in g/mL: 0.83.',
})

const outside = (text: string, value: number, form: Material['form'], where: readonly string[]): Problem => ({
  code: 'density-out-of-range',
  where,
  what: `No ${form} has a density of ${/[a-z]/i.test(text) ? text : `${value} g/mL`}.`,
  why,
  cure: `Check the digits and the unit: in g/mL a ${form} has from ${there[form][0]} to ${there[form][1]}.`,
})
