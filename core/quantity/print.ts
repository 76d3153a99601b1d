import { convert } from './convert.ts'
import type { Quantity } from './parse.ts'
import { type Unit, unitTable } from './unit.ts'

/** A number and its unit never part. */
export const noBreakSpace = '\u00a0'
const groupSpace = '\u202f'
const trueMinus = '\u2212'
const enDash = '\u2013'

/**
 * Three figures: what a bench balance and a measuring cylinder resolve, and more than any yield is known to.
 * Common practice, no source.
 */
const usualFigures = 3

/**
 * A number with so many significant figures, trailing zeros kept (they tell the precision), at most `decimals` places.
 *
 * @throws RangeError for NaN and infinities: our mistake
 * @example numberText(24) // "24.0"; numberText(0.2567, 3, 2) // "0.26"; numberText(45588) // "45 600" with a narrow space
 */
export function numberText(value: number, figures: number = usualFigures, decimals = 6): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} cannot be printed`)
  // Half a last digit goes up, as on paper: 71.55 prints as 71.6, although its nearest double lies a trace below.
  const size = Math.abs(value) * (1 + 1e-13)
  // Rounding first decides the decade: 9.996 is 10.0, not 10.00.
  const rounded = size === 0 ? 0 : Number(size.toPrecision(figures))
  const decade = rounded === 0 ? 0 : Math.floor(Math.log10(rounded) + 1e-12)
  const places = Math.min(decimals, Math.max(0, figures - 1 - decade))
  const text = decade >= figures ? rounded.toFixed(0) : size.toFixed(places)
  const zero = Number(text) === 0
  return (value < 0 && !zero ? trueMinus : '') + grouped(text)
}

/** Groups of three from five digits on, as the trade prints them: 1200, but 12 000. */
function grouped(text: string): string {
  const [whole = '', part] = text.split('.')
  const parted = whole.length < 5 ? whole : whole.replace(/\B(?=(\d{3})+$)/g, groupSpace)
  return part === undefined ? parted : `${parted}.${part}`
}

/**
 * An amount in the unit of its dimension that reads best: 0.0123 g is 12.3 mg, 1250 mL is 1.25 L.
 *
 * Masses from 0.1 g on go no finer than 10 mg, since that is what a bench balance shows.
 */
export function quantityText(quantity: Quantity, figures: number = usualFigures): string {
  const unit = bestUnit(quantity)
  const value = convert(quantity, unit)
  return numberText(value, figures, unit === 'g' ? 2 : 6) + noBreakSpace + unit
}

/** From where on a unit is taken, in that unit; the last of a list takes what is smaller still. */
const ladders: readonly (readonly (readonly [unit: Unit, from: number])[])[] = [
  [
    ['kg', 1],
    ['g', 0.1],
    ['mg', 1],
    ['µg', 0],
  ],
  [
    ['L', 1],
    ['mL', 0.1],
    ['µL', 0],
  ],
  [
    ['mol', 1],
    ['mmol', 0],
  ],
  [
    ['h', 1],
    ['min', 0],
  ],
  [['%', 0]],
]

function bestUnit(quantity: Quantity): Unit {
  const ladder = ladders.find(rungs => unitTable[rungs[0]![0]].dimension === unitTable[quantity.unit].dimension)!
  if (quantity.value === 0) return quantity.unit
  // Judged after rounding to the usual figures, so that 999.9 g is 1.00 kg and never "1000 g".
  const rung = ladder.find(([unit, from]) => Number(Math.abs(convert(quantity, unit)).toPrecision(usualFigures)) >= from)
  return (rung ?? ladder[ladder.length - 1]!)[0]
}

/** Mass given in g, e.g. "24.0 g". */
export const massText = (massG: number, figures?: number): string => quantityText({ value: massG, unit: 'g' }, figures)
/** Volume given in mL, e.g. "1.20 L". */
export const volumeText = (volumeMl: number, figures?: number): string => quantityText({ value: volumeMl, unit: 'mL' }, figures)
/** Amount of substance given in mol, e.g. "113 mmol". */
export const amountText = (amountMol: number, figures?: number): string => quantityText({ value: amountMol, unit: 'mol' }, figures)

/** A share of one as percent, one decimal below 99.95 where it tells something: 0.7155 is "71.6 %". */
export function percentText(fraction: number, figures: number = usualFigures): string {
  return `${numberText(fraction * 100, figures, 1)}${noBreakSpace}%`
}

/**
 * From and to in one unit, that of the larger, with an en dash: "1.20–1.50 g". Equal ends print once.
 */
export function rangeText(from: Quantity, to: Quantity, figures: number = usualFigures): string {
  const unit = bestUnit(Math.abs(convert(from, to.unit)) > Math.abs(to.value) ? from : to)
  const places = unit === 'g' ? 2 : unit === '%' ? 1 : 6
  const low = numberText(convert(from, unit), figures, places)
  const high = numberText(convert(to, unit), figures, places)
  return low === high ? low + noBreakSpace + unit : low + enDash + high + noBreakSpace + unit
}

/**
 * A time given in h, as one says it: whole minutes below an hour, hours with one decimal where it matters, days from three days on.
 *
 * @example durationText(0.75) // "45 min"; durationText(23.7) // "23.7 h"; durationText(672) // "28 days"
 */
export function durationText(elapsedH: number): string {
  if (!Number.isFinite(elapsedH) || elapsedH < 0) throw new RangeError(`${elapsedH} h cannot be printed`)
  const minutes = Math.round(elapsedH * 60)
  if (minutes < 60) return `${elapsedH > 0 && minutes === 0 ? 'under 1' : minutes}${noBreakSpace}min`
  if (elapsedH < 72) return `${oneDecimal(elapsedH)}${noBreakSpace}h`
  return `${oneDecimal(elapsedH / 24)}${noBreakSpace}days`
}

const oneDecimal = (value: number): string => grouped(String(Math.round(value * 10) / 10))
