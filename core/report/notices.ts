import { stepFigures } from '../library/figure-trust.ts'
import { type Library, transformationOf } from '../library/library.ts'
import type { Marked } from '../library/mark.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import { byNumber } from '../plan/merged-steps.ts'
import { durationText } from '../quantity/print.ts'
import { temperatureText } from './bench-sheet.ts'
import { dateAndTime } from './dates.ts'
import { nameIn } from './names.ts'
import { capital, listed } from './words.ts'

/** The notice that hangs beside what stands or runs with nobody there. */
export interface Notice {
  readonly step: string
  readonly makes: string
  readonly title: string
  readonly what: string
  readonly heated: boolean
  /** "From Tue 1 Dec, 20:15 to Thu 3 Dec, 18:30" where the calendar knows. */
  readonly when: string | null
  /** How sure the hours are. */
  readonly timesSure: Marked
  /** Names of what is in the vessel. */
  readonly holds: string
}

/** A bath or reaction above this is hot where nobody stands, C. Common practice, no source. */
const hotC = 40

/** What stands shorter than this is waited for, h. Common practice, no source. */
const longH = 1

/** Every task of the plan that stands or runs alone, in order of steps; those that run hot say so in their title. */
export function noticesOf(library: Library, { steps, days, hazards }: Evaluation): readonly Notice[] {
  const nameOf = nameIn(library)
  return [...steps]
    .sort((a, b) => byNumber(a.number, b.number))
    .flatMap(step => {
      const transformation = transformationOf(library, step.transformation)
      const mine = (name: string): boolean => name === step.transformation || name === step.number
      // Where the calendar has placed the step, it knows what nobody is there for; else whatever stands for long.
      const isPlaced = days.booked.some(one => mine(one.step))
      // What a quench pours in comes once the reaction has stood.
      const inVessel = [...new Set(step.charges.filter(line => line.at === 'vessel').map(line => nameOf(line.material)))]
      return (transformation.tasks ?? [])
        .filter(task => task.kind === 'stand')
        .filter(task =>
          isPlaced ? days.unattended.some(one => mine(one.step) && one.do === task.do) : task.reaction === true || task.hours >= longH,
        )
        .map(task => {
          const booked = days.booked.find(one => mine(one.step) && one.do === task.do && one.kind === 'stand')
          const told = days.unattended.find(one => mine(one.step) && one.do === task.do)
          const heated = told?.heated ?? (task.reaction === true && (transformation.temperatureC?.[1] ?? 0) > hotC)
          const temperature = heated ? temperatureText(transformation.temperatureC) : null
          const gas = hazards.gas.filter(one => one.step === step.number).map(one => nameOf(one.compound))
          return {
            step: step.number,
            makes: nameOf(step.makes),
            title: heated ? 'Running alone, heated' : task.reaction === true ? 'Running alone, not heated' : 'Standing, not heated',
            what: `${capital(task.do)}, ${durationText(task.hours)}${temperature === null ? '' : `, ${temperature}`}`,
            heated,
            timesSure: stepFigures(transformation).find(one => one.figure === 'times') ?? { mark: 'unknown', source: null },
            when: booked?.start == null || booked.end === null ? null : `from ${dateAndTime(booked.start)} to ${dateAndTime(booked.end)}`,
            holds:
              task.reaction === true ? `${listed(inVessel)}${gas.length === 0 ? '' : `; gives off ${listed(gas)}`}` : nameOf(step.makes),
          }
        })
    })
}
