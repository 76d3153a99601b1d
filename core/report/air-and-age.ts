import type { HazardList, PeroxideLine, RoomLine } from '../hazards/hazard-list.ts'
import { type Library, materialOf } from '../library/library.ts'
import { massText, noBreakSpace, numberText, volumeText } from '../quantity/print.ts'
import { longDate } from './dates.ts'
import { nameIn } from './names.ts'
import { sureInBrackets } from './physical-words.ts'
import { capital, counted, listed, stepsText } from './words.ts'

const dateText = longDate

/** A peroxide former with its bottles and the day by which each is tested. */
export function peroxideText(library: Library, line: PeroxideLine): string {
  const name = capital(nameIn(library)(line.material))
  const bottles = line.bottles.map(({ opened, testBy, overdue, place }) => {
    const where = place === null ? '' : ` (${place})`
    if (opened === null || testBy === null) return `A bottle${where} has no opening date: test it before use or throw it out.`
    const due = overdue === true ? 'overdue: test it before use or throw it out' : `test by ${dateText(testBy)}`
    return `Opened ${dateText(opened)}${where}: ${due}.`
  })
  const blank = `Opened on ________: test ${counted(line.testAfterMonths, 'month')} later at the latest.`
  return `${name}, class ${line.class}, ${stepsText(line.steps)}: ${line.action}. ${bottles.length === 0 ? blank : bottles.join(' ')}`
}

/** What all the lines about the room take for granted. */
export const roomAssumption =
  'Reckoned as if all of it evaporated, evenly mixed, with no change of air; for fire at a tenth of a lower explosive limit of 1 %. Near a spill it is far worse; in a hood that draws, far better.'

const air = (m3: number): string => `${numberText(m3, 2, m3 < 10 ? 1 : 0)}${noBreakSpace}m³`

/** How much air one volatile liquid would need, against the room. */
export function roomText(library: Library, line: RoomLine): string {
  const { form } = materialOf(library, line.material)
  const amount = line.volumeMl !== null && form !== 'solid' ? volumeText(line.volumeMl) : massText(line.massG)
  const needs = [
    ...(line.limitNeedsM3 === null
      ? []
      : [
          `${air(line.limitNeedsM3)} of air to stay at its limit of ${line.limit}${sureInBrackets(library, line.material, 'exposure limit')}`,
        ]),
    ...(line.fireNeedsM3 === null ? [] : [`${air(line.fireNeedsM3)} to stay clear of fire`]),
  ]
  const flash =
    line.flashC === null
      ? ''
      : `, flash point ${String(line.flashC).replace('-', '−')}${noBreakSpace}°C${sureInBrackets(library, line.material, 'flash point')}`
  const room =
    line.roomM3 === null
      ? ' The volume of the room is not stated.'
      : line.exceeds
        ? ` The room has ${air(line.roomM3)}: in the hood only, and no more than this at a time.`
        : ` The room has ${air(line.roomM3)}.`
  return `${capital(amount)} of ${nameIn(library)(line.material)} in step ${line.step}${flash}: needs ${needs.join(', ')}.${room}`
}

/** Volatile liquids that the room cannot take, or of which nobody can tell. */
export const roomWarnings = ({ room }: HazardList): readonly RoomLine[] => room.filter(line => line.exceeds !== false)

/** Waste of one container by day of work-up: "Tue 1 December 120 mL, Thu 3 December 40 mL". */
export function wasteByDay({ byDay }: HazardList['waste'][number]): string {
  if (byDay.every(day => day.date === null)) return ''
  return byDay
    .map(({ date, massG, volumeMl, steps }) => {
      const amount = volumeMl !== null ? volumeText(volumeMl) : massG !== null ? massText(massG) : 'amount unknown'
      return `${date === null ? `${stepsText(steps)}, no day` : dateText(date)}: ${amount}`
    })
    .join('; ')
}

/** How a residue is destroyed before its bottle, and whether the shopping list holds what it takes. */
export function quenchText(library: Library, line: HazardList['quench'][number]): string {
  const what = nameIn(library)(line.destroys)
  const reagents = listed(
    line.reagents.map(({ name, massG, volumeMl }) => {
      const amount = volumeMl !== null ? volumeText(volumeMl) : massG !== null ? massText(massG) : null
      return amount === null ? name : `${line.from === 'planned' ? 'at least ' : ''}${amount} of ${name}`
    }),
  )
  if (line.from === 'source')
    return `Step ${line.step}: the step's own quench (${reagents}, in the shopping list) destroys what is left of ${what}. Done when ${line.test}.`
  const bought = line.reagents.every(({ material }) => material !== null)
  return `Step ${line.step}: destroy what is left of ${what} with ${reagents}: planned by the equation, common practice and not from the source; ${bought ? 'in the shopping list' : 'not in the shopping list, for the library has no such material'}. ${line.do ?? ''} Done when ${line.test}.`
}
