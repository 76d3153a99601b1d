import { type Library, materialOf, transformationOf } from '../library/library.ts'
import type { Transformation } from '../library/transformation.ts'
import { trustInHazards } from '../library/trust.ts'
import type { ChargedLine, ChargedStep } from './charged.ts'
import { type EcoRow, type EcoScale, ecoPenalties, ecoScaleOf, hazardLetters, pricePoints, yieldPenalty } from './eco-penalties.ts'

/** What 10 mmol of product cost in reagents; minor units a line at the cheapest pack price per unit, null = unknown. */
export interface EcoPrices {
  readonly priceOf: (line: ChargedLine) => number | null
  /** Minor units in one unit of the currency. */
  readonly minorPerUnit: number
  readonly currency: string
}

/** The table states its prices in US dollars; other money of about that worth is taken one for one, and said. */
const dollarLike: ReadonlySet<string> = new Set(['USD', 'EUR', 'GBP', 'CHF', 'CAD', 'AUD'])

/**
 * EcoScale of one reaction step, with the row of the table behind every point: yield at its typical value, price, hazard letters of everything
 * charged, set-up, temperature and time, work-up. Set-up and work-up are read from the words of the procedure, so each row names them.
 *
 * @param prices null = nobody knows any
 * @returns null for an isolation, for which the table has no form
 */
export function ecoScale(library: Library, step: ChargedStep, prices: EcoPrices | null): EcoScale | null {
  const t = transformationOf(library, step.transformation)
  if (t.kind === 'isolation') return null
  const percent = step.yieldFraction.typical * 100
  const rows: EcoRow[] = [
    { kind: 'yield', what: '(100 - yield) / 2', because: `typical yield ${Number(percent.toFixed(1))} %`, points: yieldPenalty(percent) },
    priceRow(library, step, prices),
    ...safetyRows(library, step),
    ...setupRows(t),
    ...temperatureRows(t),
    ...workUpRows(library, t, step),
  ]
  return ecoScaleOf(rows)
}

function priceRow(library: Library, step: ChargedStep, prices: EcoPrices | null): EcoRow {
  const molarMass = library.molarMass.get(step.makes)
  const productMol = molarMass === undefined ? 0 : step.expectedG / molarMass
  // Components of the reaction: what the work-up takes is not among them. An intermediate counts at what it would be bought for.
  const lines = step.charges.filter(line => line.supply !== 'free' && line.material !== 'water' && line.at !== 'workup')
  const unknown = (because: string): EcoRow => ({ kind: 'price', ...pricePoints(null), because })
  if (productMol <= 0 || lines.length === 0) return unknown('nothing is left to run')
  if (prices === null || !dollarLike.has(prices.currency)) return unknown('no prices to compare with the dollars of the table')
  let minor = 0
  const missing: string[] = []
  for (const line of lines) {
    const price = prices.priceOf(line)
    if (price === null) missing.push(materialOf(library, line.material).name)
    else minor += price
  }
  const per10mmol = ((minor / prices.minorPerUnit) * 0.01) / productMol
  const known = `${Number(per10mmol.toPrecision(2))} ${prices.currency} for 10 mmol of product`
  // The dearest row cannot be passed, whatever the rest costs.
  if (missing.length > 0 && per10mmol <= 50) return unknown(`${known} and more: no price for ${missing.slice(0, 3).join(', ')}`)
  return { kind: 'price', ...pricePoints(per10mmol), because: `${known}, ${prices.currency} taken for USD` }
}

/** Everything charged, each material once; one that nobody has data for makes the score a bound. */
function safetyRows(library: Library, step: ChargedStep): EcoRow[] {
  const rows: EcoRow[] = []
  for (const id of new Set(step.charges.filter(line => line.material !== 'water').map(line => line.material))) {
    const material = materialOf(library, id)
    const { name, hazards } = material
    if (hazards === undefined || trustInHazards(material) === 'unknown')
      rows.push({ kind: 'safety', what: 'no hazard data', because: name, points: null })
    else
      for (const what of hazardLetters(hazards.codes)) rows.push({ kind: 'safety', what, because: name, points: ecoPenalties.safety[what] })
  }
  return rows
}

/** The first words in which a pattern stands. */
const words = (texts: readonly string[], pattern: RegExp): string | undefined => texts.find(text => pattern.test(text))

function setupRows(t: Transformation): EcoRow[] {
  const texts = [...t.equipment, ...t.operations]
  const rows: EcoRow[] = []
  const add = (what: keyof typeof ecoPenalties.setup, because: string | undefined): void => {
    if (because !== undefined) rows.push({ kind: 'setup', what, because, points: ecoPenalties.setup[what] })
  }
  add('controlled addition', words(texts, /dropping funnel|dropwise|drop by drop|syringe pump/i))
  add('unconventional activation', words(texts, /microwave|ultraso|sonicat|irradiat|photochem|UV lamp/i))
  add('pressure equipment > 1 atm', words(texts, /autoclave|pressure (bottle|tube|vessel)|hydrogenator|sealed tube|\bbomb\b/i))
  add(
    'additional special glassware',
    words(
      t.equipment,
      /dean|water separator|water-separating|soxhlet|fractionating column|steam generator|gas (absorption )?trap|sublimation/i,
    ),
  )
  add('inert gas', t.atmosphere === 'inert' ? 'inert atmosphere' : undefined)
  add('glove box', words(texts, /glove ?box/i))
  if (rows.length === 0) add('common', 'nothing else is named')
  return rows
}

/** A room is 15 to 30 C; hours are those before work-up, else all of them. Common practice, no source. */
function temperatureRows(t: Transformation): EcoRow[] {
  const told = (t.tasks ?? []).filter(task => task.kind === 'watch' || task.reaction === true)
  const hours = told.length > 0 ? told.reduce((sum, task) => sum + task.hours, 0) : t.elapsedHours
  if (t.temperatureC === undefined)
    return [{ kind: 'temperature', what: 'temperature unknown', because: 'the library gives none', points: null }]
  const [coldest, hottest] = t.temperatureC
  const because = `${coldest === hottest ? coldest : `${coldest} to ${hottest}`} C, ${Number(hours.toFixed(1))} h`
  const row = (what: keyof typeof ecoPenalties.temperature): EcoRow => ({
    kind: 'temperature',
    what,
    because,
    points: ecoPenalties.temperature[what],
  })
  const rows: EcoRow[] = []
  if (coldest < 0) rows.push(row('cooling below 0 C'))
  else if (coldest < 15) rows.push(row('cooling to 0 C'))
  if (hottest > 30) rows.push(row(hours > 1 ? 'heating > 1 h' : 'heating < 1 h'))
  if (rows.length === 0) rows.push(row(hours < 1 ? 'room temperature < 1 h' : 'room temperature < 24 h'))
  return rows
}

function workUpRows(library: Library, t: Transformation, step: ChargedStep): EcoRow[] {
  const rows: EcoRow[] = []
  const add = (what: keyof typeof ecoPenalties.workUp, because: string | undefined): void => {
    if (because !== undefined) rows.push({ kind: 'workUp', what, because, points: ecoPenalties.workUp[what] })
  }
  const charged = (role: ChargedLine['role']): string | undefined => {
    const line = step.charges.find(one => one.role === role)
    return line && `${role} with ${materialOf(library, line.material).name}`
  }
  const operations = t.operations.map(text => text.replace(/distilled water|steam bath/gi, ''))
  add('crystallisation and filtration', charged('recrystallisation') ?? words(operations, /crystalli[sz]/i))
  add(
    'liquid-liquid extraction, drying, filtration',
    charged('extraction') ?? words(operations, /\bextract\b|separat(e|ing) (the )?(layer|funnel|organic|oil)|shake out/i),
  )
  add('distillation', words(operations, /(?<!distil off )\b(distil|rectif|fractionat)(?! off)/i))
  add('sublimation', words(operations, /\bsublim/i))
  add('classical chromatography', words([...t.operations, ...t.equipment], /chromatograph|silica column|column on silica|column, hexane/i))
  const highBoiling = step.charges.find(one => one.role === 'solvent' && (materialOf(library, one.material).boilingC ?? 0) > 150)
  const stripped = words(operations, /\bstrip|distil off|evaporat|rotary/i)
  if (stripped !== undefined) add(highBoiling ? 'removal of solvent bp > 150 C' : 'removal of solvent bp < 150 C', stripped)
  add('simple filtration', rows.some(one => one.what === 'crystallisation and filtration') ? undefined : words(operations, /\bfilter/i))
  if (rows.length === 0) add('none', 'no work-up is named')
  return rows
}
