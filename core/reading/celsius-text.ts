import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { numberAtStart, numberIn } from '../quantity/number.ts'

/** What a unit of temperature makes of its number, in degrees Celsius; by definition of kelvin (273.15) and Fahrenheit (32, 5/9). */
const units: readonly (readonly [RegExp, (value: number) => number])[] = [
  [/^(?:(?:°|º|deg(?:rees?)?\.?)?\s*c(?:elsius)?|℃|°|º)?$/i, value => value],
  [/^(?:°|º)?\s*k(?:elvin)?$/i, value => value - 273.15],
  [/^(?:(?:°|º|deg(?:rees?)?\.?)?\s*f(?:ahrenheit)?|℉)$/i, value => ((value - 32) * 5) / 9],
]

/** No substance of a bench melts, boils or flashes outside: from helium, which boils at -269 °C, to tungsten, which boils below 6,000 °C. From memory. */
const there = [-269, 6000] as const

/**
 * A melting, boiling or flash point as people write it: 94, −11.5 °C, 451 °F, 367 K. A comma is a decimal comma.
 *
 * @param what  how it is called in a Problem: "melting point"
 * @returns degrees Celsius; or exactly one Problem: temperature-unreadable, temperature-out-of-range, or a code of `numberIn`
 */
export function readCelsius(text: string, what: string, where: readonly string[] = []): Checked<number> {
  const written = text.trim()
  const start = numberAtStart(written)
  const rest = start === null ? '' : written.slice(start.length).trim()
  const scale = units.find(([unit]) => unit.test(rest))?.[1]
  if (start === null || scale === undefined) return bad([unreadable(written, what, where)])
  const number = numberIn(start, where, 'decimal')
  if (!number.ok) return number
  const value = Number(scale(number.value).toPrecision(12))
  return value >= there[0] && value <= there[1] ? good(value) : bad([outside(written, what, where)])
}

const why = 'It tells what is liquid when, what boils off and what may catch fire.'

const unreadable = (text: string, what: string, where: readonly string[]): Problem => ({
  code: 'temperature-unreadable',
  where,
  what: `"${text}" is not read as a ${what}.`,
  why,
  cure: /\d\s*(?:-|–|to|bis)\s*\d/.test(text)
    ? 'The library holds one figure: give the middle of the range, of a flash point its lower end.'
    : 'Write one figure, in degrees Celsius: 94 or -11.5.',
})

const outside = (text: string, what: string, where: readonly string[]): Problem => ({
  code: 'temperature-out-of-range',
  where,
  what: `No ${what} is ${/[a-z°℃℉]/i.test(text) ? text : `${text} °C`}.`,
  why,
  cure: 'Check the digits and the unit: degrees Celsius where none is written.',
})
