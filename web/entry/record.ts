import { ownBench } from '../../core/library/trust.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { withFacts } from '../../core/reading/charge-table.ts'
import { lineKeys } from '../../core/reading/line-key.ts'
import { isReactionSmiles, smilesLine } from '../../core/reading/reaction-smiles.ts'
import { densityMissingCode } from '../../core/reading/without-density.ts'
import type { Reading } from './api.ts'
import { outcomeLine, type Writing } from './draft.ts'
import { piecesOf } from './equipment-typed.ts'
import { numberTyped } from './number-typed.ts'
import { outcomeWords } from './outcome-words.ts'
import { tasksTyped } from './typed-tasks.ts'

/** A record ready to be tried, or what is still to be said, in plain words. */
export interface Drafted {
  readonly record: Readonly<Record<string, unknown>> | null
  /** Plain-word list of what is lacking; empty where the record is whole. */
  readonly lacking: readonly Lack[]
}

export interface Lack {
  /** Field of the page that it is said in. */
  readonly field: string
  readonly what: string
  /** What is wrong with what stands in it, and how to write it; absent where nothing stands there yet. */
  readonly wrong?: string
}

/** "20-25", "-5 to 0", "78" in degrees Celsius; null where it is none. */
export function temperatureTyped(text: string): readonly [number, number] | null {
  const match = /^\s*([-−]?\d+(?:[.,]\d+)?)\s*(?:°?\s*C)?\s*(?:(?:-|–|to|bis)\s*([-−]?\d+(?:[.,]\d+)?))?\s*(?:°?\s*C)?\s*$/i.exec(text)
  if (match === null) return null
  const of = (part: string): number => Number(part.replace('−', '-').replace(',', '.'))
  const first = of(match[1]!)
  const last = match[2] === undefined ? first : of(match[2])
  return first <= last ? [first, last] : [last, first]
}

/** The record of the library format out of what was read and what was ticked; today is for the bench's own notebook. */
export function drafted(writing: Writing, reading: Reading | null, today: string, taken: (id: string) => boolean): Drafted {
  const lacking: Lack[] = []
  const lack = (field: string, what: string, wrong?: string): null => {
    lacking.push({ field, what, ...(wrong === undefined ? {} : { wrong }) })
    return null
  }
  if (reading === null) return { record: null, lacking: [{ field: 'equation', what: 'the equation' }] }
  const read = reading.transformation
  if (!reading.balanced) lack('equation', 'an equation that balances, every compound known')
  if (read.limiting === undefined) lack('body', 'the amount of a reactant')
  if (reading.lines.some(line => line.material === null)) lack('body', 'which material is meant in the lines marked above')
  const toSettle = reading.lines.flatMap(line => (line.material === null ? [] : problemsAt(reading.problems, line.text)))
  if (toSettle.some(one => one.code === densityMissingCode)) lack('body', 'a mass or moles in the lines marked above, or a density')
  if (toSettle.some(one => one.code !== densityMissingCode)) lack('body', 'which is right in the lines that contradict themselves')
  const cameOut = outcomeWords(writing.outcome, reading)
  if (cameOut !== null) lack('outcome', 'what came out, as a mass or a percentage', cameOut.wrong)
  if (unreadOfBody(writing, reading).length > 0) lack('body', 'what the unread lines say: reword or remove them')
  const yields = yieldTyped(writing, reading, lack)
  const tasks = tasksTyped(writing.tasks, writing.holdPoint)
  if (tasks.lacks !== null) lack('tasks', tasks.lacks)
  const told = tasks.tasks.length > 0
  const hoursIn = (field: 'hours' | 'handsOn'): number | null => {
    const value = numberTyped(writing[field])
    if (value !== null && value >= 0) return value
    return lack(field, field === 'hours' ? 'hours as a number' : 'hands-on hours as a number', notHours(writing[field]))
  }
  const notCounted = told ? undefined : reading.problems.find(one => one.code === 'time-not-counted')
  if (writing.hours.trim() === '' && notCounted !== undefined)
    lack('hours', 'how long it takes in all', `${notCounted.what} ${notCounted.cure} Or write here how long it takes in all.`)
  const hours =
    writing.hours.trim() === ''
      ? ((told ? tasks.elapsedHours : read.elapsedHours) ?? (notCounted === undefined ? lack('hours', 'how long it takes in all') : null))
      : hoursIn('hours')
  const handsOn = writing.handsOn.trim() === '' ? (told ? tasks.handsOnHours : undefined) : hoursIn('handsOn')
  if (hours !== null && handsOn != null && handsOn > hours + leastDifferenceH)
    lack('handsOn', 'hands-on hours within those in all', `${handsOn} h of hands-on work do not fit into ${hours} h in all.`)
  const whole = told && tasks.lacks === null
  if (whole && hours !== null && Math.abs(hours - tasks.elapsedHours) > leastDifferenceH)
    lack('tasks', `which is right: the tasks take ${tasks.elapsedHours} h, in all it takes ${hours} h`)
  if (whole && handsOn != null && Math.abs(handsOn - tasks.handsOnHours) > leastDifferenceH)
    lack('tasks', `which is right: ${tasks.handsOnHours} h of the tasks are hands-on, ${handsOn} h are said`)
  const temperature =
    writing.temperature.trim() === ''
      ? read.temperatureC
      : (temperatureTyped(writing.temperature) ??
        lack(
          'temperature',
          'a temperature such as 20-25',
          `“${writing.temperature.trim()}” is not read as degrees Celsius: write 78, 60-65 or -5 to 0.`,
        ))
  if (writing.exotherm === '') lack('exotherm', 'whether it gets warm by itself')
  if (writing.hood === '') lack('hood', 'whether it needs a hood')
  if (writing.known === '') lack('known', 'whether you read it, remember it or ran it')
  if (writing.source.trim() === '' && writing.known !== 'own') lack('source', 'where the figures come from')
  if (writing.known === 'own' && writing.ranOn > today)
    lack('ranOn', 'a day of the run that has come', `${writing.ranOn} is still to come.`)
  if (lacking.length > 0 || yields === null || hours === null) return { record: null, lacking }
  const own = writing.known === 'own'
  const id = writing.inPlaceOf !== '' ? writing.inPlaceOf : freeId(read.id ?? 'own-step', taken)
  const keys = lineKeys(reading.lines.map(one => one.text)).filter((_, at) => reading.lines[at]!.material !== null)
  const charge = (read.charge ?? []).map((line, at) => {
    const key = keys[at] ?? ''
    return withFacts(line, writing.roles[key], writing.facts[key])
  })
  const limiting = read.reactants?.find(one => one.compound === read.limiting)
  return {
    lacking,
    record: {
      ...read,
      id,
      name: writing.name.trim() || read.name,
      charge,
      yieldPercent: { ...yields, from: own ? ownBench : 'as entered' },
      ...(temperature == null ? {} : { temperatureC: temperature }),
      elapsedHours: hours,
      ...(handsOn == null ? {} : { handsOnHours: handsOn }),
      ...(told ? { tasks: tasks.tasks } : {}),
      ...timesBasis(writing, tasks.estimated),
      operations: read.operations ?? [],
      equipment: piecesOf(writing.equipment),
      atmosphere: writing.atmosphere,
      needsHood: writing.hood === 'yes',
      exotherm: writing.exotherm,
      ...(writing.vessel === '' ? {} : { vesselKind: writing.vessel }),
      // It stands by the same word as all else that was entered: read, remembered or seen at this bench.
      ...(writing.holdPoint === '' ? {} : { holdPoint: writing.holdPoint, holdPointBasis: 'source' }),
      gasEvolved: (read.products ?? []).flatMap(one =>
        reading.materials[one.compound]?.form === 'gas' && limiting !== undefined
          ? [{ compound: one.compound, perMolLimiting: one.coefficient / limiting.coefficient }]
          : [],
      ),
      hazardNotes: writing.dangers
        .split('\n')
        .map(line => line.trim())
        .filter(Boolean),
      sources: [
        {
          citation: own ? ownCitation(writing, today) : writing.source.trim(),
          checked: writing.known !== 'memory',
        },
      ],
      confidence: writing.known === 'memory' ? 'memory' : 'checked',
    },
  }
}

/** The day of typing is not the day of the run: where that is not said, the citation says which of the two it bears. */
const ownCitation = ({ ranOn, source }: Writing, today: string): string =>
  `${ownBench}, ${ranOn === '' ? `entered ${today}` : `run of ${ranOn}`}${source.trim() === '' ? '' : `: ${source.trim()}`}`

/** Hundredths of an hour are what tasks are given to. */
const leastDifferenceH = 0.011

/** Times are the source's where they were read in it or clocked here; a guess among them makes them an estimate, looked over or not. */
function timesBasis({ tasks, hours, known }: Writing, estimated: boolean): { readonly timesBasis?: 'source' | 'estimate' } {
  if (estimated || known === 'memory') return { timesBasis: 'estimate' }
  // Nothing typed: the text's own hours, with the basis that the reader gave them.
  return tasks.length === 0 && hours.trim() === '' ? {} : { timesBasis: 'source' }
}

/** Low, typical and high: as typed; the typical one from the isolated mass where it is left open. */
function yieldTyped(
  writing: Writing,
  reading: Reading,
  lack: (field: string, what: string, wrong?: string) => null,
): { readonly low: number; readonly typical: number; readonly high: number } | null {
  const read = reading.transformation.yieldPercent
  const one = (field: 'low' | 'typical' | 'high', fallback: number | undefined, what: string): number | null => {
    const text = writing[field]
    if (text.trim() === '') return fallback ?? lack(field, what)
    const value = numberTyped(text)
    if (value !== null && value >= 0 && value <= 100) return value
    return lack(field, `${what}, from 0 to 100`, `“${text.trim()}” is no percentage from 0 to 100: write 74.`)
  }
  const typical = one('typical', read?.typical, 'what it usually gives, percent or an isolated mass')
  const low = one('low', read?.low, 'what it gives in a bad run, percent')
  const high = one('high', read?.high, 'what it gives in a good run, percent')
  if (low === null || typical === null || high === null) return null
  if (!(low <= typical && typical <= high))
    return lack('low', 'bad run, usual and good run in rising order', `Now ${low}, ${typical}, ${high}: give them in rising order.`)
  if (typical === 0)
    return lack('typical', 'a usual yield above zero', 'A step that gives nothing cannot be planned with: give what it usually gives.')
  return { low, typical, high }
}

const notHours = (text: string): string => `“${text.trim()}” is no number of hours: write 1.5 for an hour and a half.`

/** Lines of the charges that nothing was made of, as typed. */
export const unreadOfBody = ({ equation, outcome }: Writing, reading: Reading): readonly string[] =>
  reading.unread.filter(
    line =>
      !reading.lines.some(one => one.text === line) && line !== equation.trim() && (outcome.trim() === '' || line !== outcomeLine(outcome)),
  )

function freeId(wanted: string, taken: (id: string) => boolean): string {
  if (!taken(wanted)) return wanted
  for (let number = 2; ; number++) if (!taken(`${wanted}-${number}`)) return `${wanted}-${number}`
}

/** Lines with an id in braces at the end, so that the reader need not ask: what was typed stays, the answer stands behind it. */
export function answered(text: string, line: string, id: string): string {
  const lines = text.split('\n')
  const at = lines.findIndex(one => one.trim() === line.trim())
  if (at < 0) return answeredTerm(text, line, id)
  lines[at] = `${lines[at]!.replace(/\s*\{[a-z0-9-]*\}\s*$/, '').trimEnd()} {${id}}`
  return lines.join('\n')
}

/**
 * The same for a term of the equation, or for a piece of a line that charges several things: where it stands as a whole first, "O" being no part
 * of "CO". A reaction SMILES has no room for an id: it is written out as terms.
 */
export function answeredTerm(equation: string, term: string, id: string, read?: Pick<Reading, 'reactants' | 'products'>): string {
  if (read !== undefined && isReactionSmiles(smilesLine(equation).body)) {
    const side = (terms: Reading['reactants']): string =>
      terms.map(one => `${one.coefficient === 1 ? '' : `${one.coefficient} `}${one.text}${one.text === term ? ` {${id}}` : ''}`).join(' + ')
    return `${side(read.reactants)} -> ${side(read.products)}`
  }
  const escaped = term.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
  const whole = new RegExp(String.raw`(?<![^\s+>→=\d])${escaped}(?=\s*(?:$|[+,;→⟶⇌]|<?[-–—=]{0,3}>)|\s+=)`, 'u').exec(equation)
  const at = whole?.index ?? equation.indexOf(term)
  return at < 0 ? equation : `${equation.slice(0, at + term.length)} {${id}}${equation.slice(at + term.length)}`
}

/** Problems that belong to one line of the charges, or to a term of the equation. */
export const problemsAt = (problems: readonly Problem[], text: string): readonly Problem[] =>
  problems.filter(problem => problem.where.includes(text))
