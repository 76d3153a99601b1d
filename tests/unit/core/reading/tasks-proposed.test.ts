import { describe, expect, it } from 'vitest'
import { equipmentProposed } from '../../../../core/reading/equipment-proposed.ts'
import { type TimesKnown, tasksProposed } from '../../../../core/reading/tasks-proposed.ts'

// The hours are those of the lines, or of the arithmetic beside them; which verbs leave a mixture alone is common practice, no source.

const lines = ['reflux 2 h', 'leave overnight', 'filter on a Buchner funnel', 'dry over calcium chloride for 30 min']
const nothing: TimesKnown = { elapsedHours: null, handsOnHours: null, solid: true }
const told = (operations: readonly string[], known = nothing) =>
  tasksProposed(operations, known, 'ask').map(({ task, guessed }) => [task.kind, task.hours, task.reaction === true, guessed.join(' ')])

describe('tasks that a text suggests', () => {
  it('take the hours that the lines name, and mark all else as guessed', () => {
    expect(told(lines)).toEqual([
      ['hands', 0.5, false, 'task kind hours'],
      ['watch', 2, true, 'kind'],
      ['stand', 16, true, 'kind hours'],
      ['hands', 1, false, 'task kind hours'],
      ['stand', 0.5, false, 'kind'],
    ])
  })
  it('share out what was typed: the hands between setting up and working up, the rest to what stands at the end', () => {
    const known = { elapsedHours: 30, handsOnHours: 3, solid: true }
    // 3 h of hands, 1.5 h of warming; 30 - 3 - 1.5 = 25.5 h are left to dry.
    expect(told(['warm at 60 C for 90 min'], known)).toEqual([
      ['hands', 1, false, 'task kind hours'],
      ['watch', 1.5, true, 'kind'],
      ['hands', 2, false, 'task kind hours'],
      ['stand', 25.5, false, 'task kind hours'],
    ])
    const hours = told(['warm at 60 C for 90 min'], known).map(row => row[1] as number)
    expect(hours.reduce((sum, one) => sum + one, 0)).toBeCloseTo(30, 9)
  })
  it.each<[readonly string[], number | null]>([
    [
      [
        'add the bromide dropwise in ether',
        'stirred 1 h',
        'quenched with 3 M HCl, 40 mL',
        'extracted with ether, 3 x 20 mL',
        'dry over night',
      ],
      null,
    ],
    [
      [
        'dissolve in methanol',
        'stir 10 min',
        'add the hydride in portions',
        'stir 1 h',
        'quench with ice water',
        'leave overnight',
        'filter',
      ],
      null,
    ],
    [['mix the solids', 'quench with ice water', 'dissolve in ether'], 20],
    [['filter off the salt', 'dry 3 h'], null],
  ])('hold every line of the text, in its order: %j', (operations, elapsedHours) => {
    const tasks = tasksProposed(operations, { ...nothing, elapsedHours }, 'ask')
    const all = tasks.map(one => one.task.do).join('; ')
    const places = operations.map(line => all.indexOf(line))
    expect(places.every(place => place >= 0)).toBe(true)
    expect([...places].sort((one, other) => one - other)).toEqual(places)
    for (const line of operations) expect(tasks.filter(one => one.task.do.includes(line))).toHaveLength(1)
    // Half an hour of setting up and one of all other work by hand, however many lines share it.
    const byHand = tasks.filter(one => one.task.kind === 'hands').reduce((sum, one) => sum + one.task.hours, 0)
    expect(byHand).toBeCloseTo(1.5, 9)
  })
  it('work up after the reaction, though no line says so', () => {
    const tasks = tasksProposed(['stir 10 min', 'add the hydride in portions', 'stir 1 h'], { ...nothing, solid: false }, 'ask')
    expect(tasks.map(one => [one.task.do, one.task.hours])).toEqual([
      ['set up and charge', 0.5],
      ['stir 10 min', 0.17],
      ['add the hydride in portions', 0.5],
      ['stir 1 h', 1],
      ['work up', 0.5],
    ])
  })
  it('take a quench for the end of the reaction: what stirs after it is work-up', () => {
    const tasks = tasksProposed(['stirred 1 h', 'quenched with ice water', 'stirred 30 min'], nothing, 'ask')
    expect(tasks.map(one => [one.task.do, one.task.kind, one.task.reaction === true])).toEqual([
      ['set up and charge', 'hands', false],
      ['stirred 1 h', 'watch', true],
      ['quenched with ice water', 'hands', false],
      ['stirred 30 min', 'watch', false],
      ['dry', 'stand', false],
    ])
  })
  it('are none where nothing is said of time', () => {
    expect(told(['filter', 'wash with water'])).toEqual([])
  })
  it('let a liquid product dry nothing', () => {
    expect(told(['reflux 1 h'], { ...nothing, solid: false }).at(-1)).toEqual(['hands', 1, false, 'task kind hours'])
  })
})

describe('equipment that a text calls for', () => {
  it.each([
    [lines, ['reflux condenser', 'Buchner funnel']],
    [
      ['add the acid dropwise with stirring in an ice bath', 'extract with ether'],
      ['separating funnel', 'dropping funnel', 'stirrer', 'ice bath'],
    ],
    [['distil under vacuum'], ['vacuum distillation set']],
    [['distil at 78 C'], ['distillation set']],
    [['weigh it'], []],
    [['3 drops of concentrated sulfuric acid are added, then distil'], ['distillation set']],
    [['acidify with a few drops of concentrated HCl'], []],
    [
      ['concentrated under reduced pressure', 'added in drops'],
      ['rotary evaporator', 'dropping funnel'],
    ],
  ])('%j', (operations, pieces) => expect(equipmentProposed(operations)).toEqual(pieces))
})
