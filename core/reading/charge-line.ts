import { molarMassOf } from '../chemistry/formula.ts'
import type { Role } from '../library/transformation.ts'
import type { CommaRule } from '../quantity/number.ts'
import { type BottleFound, bottleOf, molPerLOf, type StatedStrength } from './bottle.ts'
import { byDensity, densityIn } from './density-stated.ts'
import { type Measure, type MeasureUnit, measuresIn } from './measures.ts'
import { idNamed, type NameIndex } from './names.ts'
import { openingOf } from './opening.ts'
import { repeatsIn } from './repeats.ts'
import { type Unclear, unclearRepeats, unclearSum, unreadIn } from './unclear-amount.ts'

/** Units a charge can have. Drops and equivalents are turned into amounts later, when the rest is known. */
export type ChargeUnit = 'g' | 'kg' | 'mg' | 'mL' | 'L' | 'mol' | 'mmol' | 'drop' | 'equiv'

/** One line of what is charged, as read. */
export interface ChargeRead {
  readonly text: string
  readonly found: BottleFound
  /** What was looked up. */
  readonly phrase: string
  /** Null = not stated, or stated per gram of product. */
  readonly amount: number | null
  readonly unit: ChargeUnit
  readonly perGramProduct: number | null
  /** Told by a verb ("poured into", "washed with") or a purpose ("for washing"); null where only the material can tell. */
  readonly roleHint: Role | null
  /** Where the amount comes from, where the line itself says so: as `from` of the library format. */
  readonly from?: string
  /** Mass or moles stated beside the amount that was taken, for checking. */
  readonly alsoStated: readonly { readonly amount: number; readonly unit: ChargeUnit }[]
  /** What was assumed, as sentences. */
  readonly notes: readonly string[]
  /** Strength in the text of a line whose bottle is given by its id. */
  readonly strengthBesideId?: StatedStrength
  /** A dash stands right before the number: a list mark, or a minus that charges nothing. */
  readonly dashed?: boolean
  /** Why the amount cannot be taken as it stands; absent where it can. */
  readonly unclear?: Unclear
}

/** Volume of one drop of a thin liquid, mL. Common practice, no source. */
export const dropMl = 0.05

/** What a line does, by the verb it opens with. */
const hints: readonly (readonly [RegExp, Role])[] = [
  [/\b(?:pour(?:ed)?|quench(?:ed)?|drown(?:ed)?|thrown?)\b/i, 'quench'],
  [/\b(?:wash(?:ed|es)?|rinsed?)\b/i, 'wash'],
  [/\bextract(?:ed|s)?\b/i, 'extraction'],
  [/\b(?:re)?crystalli[sz](?:ed?|ation)\b/i, 'recrystallisation'],
  [/\b(?:dried|dry)\b.*\b(?:over|with|on)\b/i, 'drying'],
]

/**
 * Reads one line of a charge the way procedures give it: "9.2 g thiamine hydrochloride", "25 mL conc. HCl", "3 M NaOH, 20 mL",
 * "recrystallised from 95 % EtOH (8 mL per gram)".
 *
 * A mass or volume is taken before moles, moles before equivalents, and what stands outside brackets before what stands inside.
 *
 * @returns null where the line names no amount and nothing that the index knows: then it is no charge
 */
export function readChargeLine(text: string, index: NameIndex, comma: CommaRule): ChargeRead | null {
  const named = idNamed(text)
  const marked = (named?.rest ?? text).replace(/^(?:[-–—−]+\s+|[\s•*·]+)+/, '')
  const line = marked.replace(/^[-–—−]+\s*/, '').trim()
  if (/^[-–—−]+\.?\d/.test(marked)) {
    const plain = readChargeLine(named === null ? line : `${line} {${named.id}}`, index, comma)
    return plain === null ? null : { ...plain, text, ...(plain.amount === null && plain.perGramProduct === null ? {} : { dashed: true }) }
  }
  const verb = openingOf(line)
  const hint = hints.find(([pattern]) => pattern.test(verb))?.[1] ?? null
  const whole = line.slice(verb.length)
  // A bottle whose very name holds its density is found by its name.
  const isNamed =
    asItStands(
      without(
        whole,
        measuresIn(whole, comma).filter(one => one.kind === 'amount'),
      ),
      index,
    ) !== null
  const density = isNamed ? null : densityIn(whole)
  const body = density?.rest ?? whole
  const mixed = named === null ? madeUp(text, body, index, comma) : null
  if (mixed !== null) return { ...mixed, roleHint: hint }

  const measures = measuresIn(body, comma)
  const amounts = measures.filter(one => one.kind === 'amount')
  const strengths = measures.filter(
    one => one.kind === 'strength' || (one.kind === 'share' && !one.bracketed) || (one.kind === 'share' && amounts.length > 0),
  )
  const strength = strengths[0]
  const taken = chosen(amounts)
  const repeats = repeatsIn(verb, body, amounts)
  const unread = named !== null || isNamed ? null : unreadIn(body, comma)
  const cut = [
    ...amounts,
    ...measures.filter(one => one.kind === 'time' || one.kind === 'temperature'),
    ...(strength ? [strength] : []),
    ...repeats.cuts,
    ...(unread === null ? [] : [unread]),
  ]
  const phrase = tidy(without(body, cut))
  const called: BottleFound =
    named !== null
      ? index.lookUp(`{${named.id}}`)
      : (asItStands(without(body, amounts), index) ?? bottleOf(phrase, strength === undefined ? null : stated(strength), index))
  const found = density === null || named !== null ? called : byDensity(called, density.gPerMl, index)
  if (taken === undefined && unread === null && found.kind === 'unknown' && found.beside === undefined) return null

  const notes: string[] = []
  if (/\b(?:ca\.?|about|approx\.?|etwa|environ|circa)\b|~|≈/i.test(body)) notes.push('about')
  if (taken !== undefined && taken.low !== taken.high) notes.push(`range ${taken.low} to ${taken.high}, middle taken`)
  if (found.kind === 'material' && found.assumed !== null) notes.push(`read as ${found.material}: ${found.assumed}`)
  const grouped = amounts.map(one => body.slice(one.from, one.to)).find(one => /\d,\d{3}(?!\d)/.test(one))
  if (grouped !== undefined) notes.push(`"${grouped}" read with a comma between thousands`)
  const perGram = taken?.perGram ?? false
  const times = repeats.times ?? 1
  if (taken !== undefined && times > 1) notes.push(`"${repeats.said}": ${times} x ${scaled(taken)} ${chargeUnit(taken.unit)} taken`)
  const unclear = unread?.why ?? (repeats.times === null ? unclearRepeats(text, repeats.said) : unclearSum(text, amounts))
  return {
    text,
    found,
    phrase: strength === undefined ? phrase : `${strength.value} ${strength.unit} ${phrase}`,
    amount: taken === undefined || perGram ? null : scaled(taken) * times,
    unit: taken === undefined ? usualUnit(found, index) : chargeUnit(taken.unit),
    perGramProduct: taken !== undefined && perGram ? scaled(taken) : null,
    roleHint: hint,
    alsoStated: amounts.filter(one => one !== taken && !one.perGram).map(one => ({ amount: scaled(one), unit: chargeUnit(one.unit) })),
    notes,
    ...(named !== null && strength !== undefined && { strengthBesideId: stated(strength) }),
    ...(unclear !== null && { unclear }),
  }
}

/** A name that holds a strength itself ("sodium amalgam, 2.5 % sodium") is looked up before the strength is taken out of it. */
function asItStands(name: string, index: NameIndex): BottleFound | null {
  const found = index.lookUp(name.replace(/^[\s,;:=]+(?:of\s+)?|[\s,;:=]+$/g, ''))
  return found.kind === 'unknown' ? null : found
}

function chosen(amounts: readonly Measure[]): Measure | undefined {
  const inMoles = (one: Measure) => one.unit === 'mol' || one.unit === 'mmol'
  const weighed = amounts.filter(one => !inMoles(one) && one.unit !== 'equiv')
  return weighed.find(one => !one.bracketed) ?? weighed[0] ?? amounts.find(inMoles) ?? amounts[0]
}

const stated = (measure: Measure): StatedStrength => ({ value: measure.value, unit: measure.unit as StatedStrength['unit'] })

/** Micrograms and microlitres have no place in a charge of the library; they become the next larger unit. */
function chargeUnit(unit: MeasureUnit): ChargeUnit {
  if (unit === 'µg') return 'mg'
  if (unit === 'µL') return 'mL'
  return unit as ChargeUnit
}

const scaled = (measure: Measure): number => (measure.unit === 'µg' || measure.unit === 'µL' ? measure.value / 1000 : measure.value)

function usualUnit(found: BottleFound, index: NameIndex): ChargeUnit {
  const id = found.kind === 'material' ? found.material : found.kind === 'ambiguous' ? found.candidates[0] : undefined
  return id !== undefined && index.materials.get(id)?.form === 'solid' ? 'g' : 'mL'
}

function without(text: string, measures: readonly Pick<Measure, 'from' | 'to'>[]): string {
  let rest = text
  for (const { from, to } of [...measures].sort((one, other) => other.from - one.from)) rest = `${rest.slice(0, from)} ${rest.slice(to)}`
  return rest
}

/** The phrase without what cutting left over: empty brackets, words such as "about", stray marks. */
function tidy(text: string): string {
  return text
    .replace(/\b(?:ca|approx|circa)\b\.?|[~≈]|\babout\b|\betwa\b|\benviron\b/gi, ' ')
    .replace(/\((?:\s|,|;|=|or|and|\.|ca|about)*\)/gi, ' ')
    .replace(/\s+([,;:)])/g, '$1')
    .replace(/\(\s*(?:[,;]\s*)?/g, '(')
    .replace(/\b(of|in|with)\s+(?=\1\b)/gi, '')
    .replace(/^\s*of\s+/i, '')
    .replace(/\s+/g, ' ')
    .replace(/^(?:\s|,|;|:|=)+|(?:\s|,|;|:|=)+$/g, '')
}

/** "1 vol. conc. HCl + 1 vol. water, 60 mL in all": a bottle diluted, taken where the library holds just that strength. */
function madeUp(text: string, body: string, index: NameIndex, comma: CommaRule): ChargeRead | null {
  const match =
    /^(\d+(?:\.\d+)?)\s*(?:vols?|volumes?|parts?)\.?\s+(?:of\s+)?(.+?)\s*(?:\+|and|to|:)\s*(\d+(?:\.\d+)?)\s*(?:vols?|volumes?|parts?)\.?\s+(?:of\s+)?water\b(.*)$/i.exec(
      body,
    )
  if (match === null) return null
  const stock = bottleOf(match[2]!, null, index)
  const amount = chosen(measuresIn(match[4]!, comma).filter(one => one.kind === 'amount'))
  const base = {
    text,
    phrase: body,
    amount: amount === undefined ? null : scaled(amount),
    unit: amount === undefined ? ('mL' as const) : chargeUnit(amount.unit),
    perGramProduct: null,
    roleHint: null,
    alsoStated: [],
    notes: [],
  }
  if (stock.kind !== 'material') return { ...base, found: stock }
  const material = index.materials.get(stock.material)!
  const compound = material.contains === undefined ? undefined : index.materials.get(material.contains.compound)
  const strong = compound?.formula === undefined ? null : molPerLOf(material, molarMassOf(compound.formula))
  if (compound === undefined || strong === null) return { ...base, found: { kind: 'unknown' } }
  const share = Number(match[1]) / (Number(match[1]) + Number(match[3]))
  const wanted = strong * share
  // Volumes are not quite additive and labels are rounded: within 2 % the bottle of that strength is the one meant.
  const fits = [...index.materials.values()].filter(
    one =>
      one.contains?.compound === compound.id && one.contains.molPerL !== undefined && Math.abs(one.contains.molPerL / wanted - 1) < 0.02,
  )
  if (fits.length === 1)
    return {
      ...base,
      found: { kind: 'material', material: fits[0]!.id, assumed: null },
      notes: [`made up ${match[1]} + ${match[3]}, about ${wanted.toPrecision(2)} mol/L`],
    }
  return { ...base, found: { kind: 'no-such-strength', compound: compound.id, held: [] } }
}
