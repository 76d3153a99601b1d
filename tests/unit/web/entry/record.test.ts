import { describe, expect, it, vi } from 'vitest'
import { tasksAddUp } from '../../../../core/library/checks/tasks-add-up.ts'
import { type Transformation, transformationSchema } from '../../../../core/library/transformation.ts'
import { unreadWords } from '../../../../core/reading/unread-words.ts'
import type { Reading } from '../../../../web/entry/api.ts'
import { emptyWriting, textOf, type Writing } from '../../../../web/entry/draft.ts'
import { numberTyped } from '../../../../web/entry/number-typed.ts'
import { outcomeWords } from '../../../../web/entry/outcome-words.ts'
import { answered, answeredTerm, drafted, temperatureTyped } from '../../../../web/entry/record.ts'
import { sameRecord } from '../../../../web/entry/same-record.ts'
import { changedTask, emptyTask, lookedOver, type TypedTask, tasksTyped } from '../../../../web/entry/typed-tasks.ts'
import { library, prepared } from '../../../support/reader.ts'

// The page keeps which part of it stands in the address.
vi.stubGlobal('location', { search: '', href: 'http://localhost/' })
vi.stubGlobal('addEventListener', () => {})
const { draftingOf } = await import('../../../../web/entry/drafting.ts')

const reading = (writing: Writing): Reading => {
  const read = prepared(...textOf(writing).split('\n'))
  const ids = [...read.reactants, ...read.products].flatMap(term => term.compound ?? [])
  const materials = Object.fromEntries(
    ids.map(id => {
      const { name, form } = library.materials.get(id)!
      return [id, { name, form, molarMass: null, depiction: { kind: 'words' as const } }]
    }),
  )
  return { ...read, materials }
}
const whole: Writing = {
  ...emptyWriting,
  equation: '2 benzaldehyde -> benzoin',
  body: 'benzaldehyde 60 mL\n9.2 g thiamine hydrochloride\n3 M NaOH, 20 mL\nwarm at 60-65 C for 90 min',
  outcome: '45-48 g',
  low: '72',
  high: '77',
  hours: '30',
  exotherm: 'none',
  hood: 'yes',
  source: 'a page',
  known: 'checked',
}
const of = (writing: Writing) => drafted(writing, reading(writing), '2026-12-03', id => library.transformations.has(id))

describe('a record out of what was written', () => {
  it('is whole, in the library format, with the typical yield from the isolated mass', () => {
    const { record, lacking } = of(whole)
    expect(lacking).toEqual([])
    expect(transformationSchema.safeParse(record).success).toBe(true)
    // The source of the bundled record: 60 mL benzaldehyde gave 45-48 g, 74 % of 62.6 g.
    expect(record).toMatchObject({
      yieldPercent: { low: 72, typical: 74.2, high: 77 },
      temperatureC: [60, 65],
      elapsedHours: 30,
      confidence: 'checked',
    })
  })
  it('says in plain words what is lacking, field by field, and gives no record', () => {
    const { record, lacking } = of({
      ...whole,
      outcome: '46.5 g',
      low: '',
      hood: '',
      source: '',
      known: '',
      hours: '',
      body: 'benzaldehyde 60 mL',
    })
    expect(record).toBeNull()
    expect(lacking.map(one => one.field).sort()).toEqual(['hood', 'hours', 'known', 'low', 'source'])
  })
  it('is none while a line is not settled or the equation is off', () => {
    expect(of({ ...whole, body: `${whole.body}\n25 mL HCl` }).record).toBeNull()
    expect(of({ ...whole, equation: 'benzaldehyde -> benzoin + H2O' }).record).toBeNull()
    expect(of({ ...whole, body: `${whole.body}\nqwertz uiop` }).lacking.map(one => one.field)).toEqual(['body'])
  })
  it('refuses yields out of order or out of reason', () => {
    for (const [low, high] of [
      ['80', '77'],
      ['72', '70'],
      ['72', '120'],
      ['-1', '77'],
      ['a lot', '77'],
    ] as const)
      expect(of({ ...whole, low, high }).record, `${low} ${high}`).toBeNull()
  })
  it('takes a role that a person set, and marks the own bench', () => {
    const { record } = of({ ...whole, known: 'own', source: 'book 3, page 12', roles: { '3 M NaOH, 20 mL': 'base' } })
    expect((record!.charge as { role: string }[])[2]!.role).toBe('base')
    expect(record!.sources).toEqual([{ citation: 'own bench, entered 2026-12-03: book 3, page 12', checked: true }])
  })
  it('bears the day of the run where it is said, and never one that is still to come', () => {
    const own: Writing = { ...whole, known: 'own', source: 'book 3', ranOn: '2026-11-20' }
    const { record } = of(own)
    expect(record!.sources).toEqual([{ citation: 'own bench, run of 2026-11-20: book 3', checked: true }])
    expect(of({ ...own, ranOn: '2026-12-04' }).lacking.map(one => one.field)).toEqual(['ranOn'])
    // Of another source it says nothing.
    expect(of({ ...own, known: 'checked' }).record!.sources).toEqual([{ citation: 'book 3', checked: true }])
    // Typed again tomorrow it is the same; another run is another record.
    const again = (ranOn: string, day: string) =>
      sameRecord(drafted({ ...own, ranOn }, reading(own), day, () => false).record!, [of({ ...own, ranOn: '' }).record!])
    expect(again('', '2026-12-09')).not.toBeNull()
    expect(again('2026-11-20', '2026-12-03')).toBeNull()
  })
  it('takes tasks and equipment as typed: they say the hours, and what was guessed stays an estimate', () => {
    const task = (what: string, kind: 'hands' | 'watch' | 'stand', hours: string, guessed: TypedTask['guessed'] = []): TypedTask => ({
      ...emptyTask,
      do: what,
      kind,
      hours,
      reaction: kind === 'watch',
      guessed,
    })
    const tasks = [task('mix', 'hands', '0,5'), task('warm', 'watch', '1.5'), task('filter', 'hands', '1'), task('dry', 'stand', '24')]
    const { record, lacking } = of({ ...whole, hours: '', tasks, equipment: 'water bath, Buchner funnel', holdPoint: 'weeks' })
    expect(lacking).toEqual([])
    // 0.5 + 1.5 + 1 + 24 = 27 h, 1.5 h of them by hand; a product that keeps for weeks may wait 672 h.
    expect(record).toMatchObject({ elapsedHours: 27, handsOnHours: 1.5, timesBasis: 'source', equipment: ['water bath', 'Buchner funnel'] })
    expect((record!.tasks as { waitUpToH: number }[]).map(one => one.waitUpToH)).toEqual([0, 0, 0, 672])
    expect(tasksAddUp(transformationSchema.parse(record))).toEqual([])
    expect(of({ ...whole, tasks: [...tasks.slice(0, 3), task('dry', 'stand', '27', ['hours'])] }).record).toMatchObject({
      timesBasis: 'estimate',
    })
    // A guess that was looked over is no more read or clocked than before; typed anew, its hours are.
    const proposed = [...tasks.slice(0, 3), task('dry', 'stand', '24', ['task', 'kind', 'hours'])]
    const over = lookedOver(proposed)
    expect(tasksTyped(over, '').guessed).toBe(false)
    expect(of({ ...whole, hours: '', tasks: over }).record).toMatchObject({ timesBasis: 'estimate' })
    const dryAnew = [...over.slice(0, 3), changedTask(over[3]!, { hours: '20' }, 'hours')]
    expect(of({ ...whole, hours: '', tasks: dryAnew }).record).toMatchObject({ timesBasis: 'source', elapsedHours: 23 })
    // Who must be there is the person's to say: hours that the text names stay the text's.
    const kinds = lookedOver([...tasks.slice(0, 3), task('dry', 'stand', '24', ['kind'])])
    expect(of({ ...whole, hours: '', tasks: kinds }).record).toMatchObject({ timesBasis: 'source' })
    // 30 h are typed beside tasks of 27 h: asked, not settled.
    expect(of({ ...whole, tasks }).lacking.map(one => one.field)).toEqual(['tasks'])
    expect(of({ ...whole, hours: '', tasks: [task('mix', 'hands', 'some')] }).lacking.map(one => one.field)).toEqual(['tasks'])
  })
  it('takes typed hours for as sure as the source that they are entered with', () => {
    const basis = (known: Writing['known']) => of({ ...whole, known, hours: '4' }).record!.timesBasis
    expect([basis('checked'), basis('own'), basis('memory')]).toEqual(['source', 'source', 'estimate'])
  })
  it('finds an id that is free', () => {
    const read = reading(whole)
    const id = read.transformation.id!
    expect(drafted(whole, read, '2026-12-03', one => one === id).record!.id).toBe(`${id}-2`)
    expect(of({ ...whole, inPlaceOf: 'benzoin-thiamine' }).record!.id).toBe('benzoin-thiamine')
  })
  it('gives off the gases of the equation', () => {
    const gas: Writing = {
      ...whole,
      equation: 'adipic acid -> cyclopentanone + CO2 + H2O',
      body: 'adipic acid 200 g',
      outcome: '86-92 g',
      low: '70',
      high: '80',
    }
    expect(of(gas).record!.gasEvolved).toEqual([{ compound: 'carbon-dioxide', perMolLimiting: 1 }])
  })
})

describe('what is wrong in a field', () => {
  const wrongs = (patch: Partial<Writing>) =>
    Object.fromEntries(of({ ...whole, ...patch }).lacking.flatMap(one => (one.wrong === undefined ? [] : [[one.field, one.wrong]])))
  it('keeps the record from being saved and says beside it how to write it', () => {
    const found = wrongs({ hours: '1h30', handsOn: 'some', temperature: '350 F', low: 'a lot', high: '120', outcome: '75' })
    expect(Object.keys(found).sort()).toEqual(['handsOn', 'high', 'hours', 'low', 'outcome', 'temperature'])
    expect(found.hours).toMatch(/“1h30” .* write 1\.5/)
    expect(wrongs({ handsOn: '31' })).toEqual({ handsOn: '31 h of hands-on work do not fit into 30 h in all.' })
    expect(wrongs({ hours: '-3' }).hours).toMatch(/write 1\.5/)
    expect(wrongs({})).toEqual({})
  })
  it.each([
    ['75', /grams, or percent/, ['75 g', '75 %']],
    ['12 mL', /a volume is no mass/, []],
    ['12 g and 10 g', /several figures/, ['12 g', '10 g']],
    ['75 % to 80 %', /several figures/, ['75 %', '80 %']],
    ['47 g (purity 95 %)', /by mass or by the area/, ['47 g']],
    ['abc', /no mass, moles, volume or percentage/, []],
  ])('%j of what came out is told, and what it may have meant is offered', (outcome, wrong, offers) => {
    const words = outcomeWords(outcome, reading({ ...whole, outcome }))
    expect(words?.wrong).toMatch(wrong)
    expect(words?.offers).toEqual(offers)
    expect(of({ ...whole, outcome }).lacking.map(one => one.field)).toEqual(['outcome', 'typical'])
    for (const offer of offers) expect(outcomeWords(offer, reading({ ...whole, outcome: offer })), offer).toBeNull()
  })
  it('asks before it counts what is crude', () => {
    const crude = { ...whole, outcome: 'crude 47 g' }
    expect(outcomeWords(crude.outcome, reading(crude))).toMatchObject({ wrong: expect.stringContaining('crude'), offers: ['47 g'] })
    expect(of(crude).lacking.map(one => one.field)).toEqual(['outcome', 'typical'])
    expect(of({ ...crude, outcome: '47 g' }).lacking).toEqual([])
  })
  it('asks how long a night is where nothing else says how long it takes', () => {
    const night = { ...whole, body: `${whole.body}\nleave overnight`, hours: '', tasks: [], handsOn: '' }
    expect(wrongs(night).hours).toContain('"overnight"')
    expect(wrongs({ ...night, hours: '30' }).hours).toBeUndefined()
    expect(of({ ...night, body: `${whole.body}\nleave for 16 h` }).lacking.map(one => one.field)).not.toContain('hours')
  })
  it('passes over no task of which only the wait is typed, and calls tasks by their places', () => {
    const tasks = [emptyTask, { ...emptyTask, wait: '3' }]
    expect(of({ ...whole, tasks }).lacking).toEqual([{ field: 'tasks', what: 'what is done in task 2' }])
  })
})

describe('a charge line that is not read', () => {
  // The litre is a cubic decimetre (CGPM 1964); a pound is 453.59237 g (international agreement of 1959); (350 - 32) x 5/9 = 177.
  it.each([
    ['0.5 dm3 ethanol', ['0.5 L ethanol']],
    ['2 lb benzaldehyde', ['907.185 g benzaldehyde']],
    ['5 x 10^-3 mol benzaldehyde', ['0.005 mol benzaldehyde']],
    ['5 × 10⁻³ mol benzaldehyde', ['0.005 mol benzaldehyde']],
    ['1 dL water', ['100 mL water']],
    ['10 benzaldehyde', ['10 g benzaldehyde', '10 mL benzaldehyde']],
    ['350 F', ['177 °C']],
    ['180°', ['180 °C']],
    ['1 cup vinegar', []],
    ['hello world', []],
  ])('%j is told, and what it may mean is offered in words that are read', (line, offers) => {
    expect(prepared(whole.equation, line).unread).toEqual([line])
    const words = unreadWords(line)
    expect(words.what).toContain(line)
    expect(words.offers).toEqual(offers)
    for (const offer of offers) expect(prepared(whole.equation, offer).unread, offer).toEqual([])
  })
  it('asks what a kitchen measure weighs, of what stands behind it', () => {
    for (const [line, what] of [
      ['2 teaspoons of sodium chloride', 'sodium chloride'],
      ['a cup of water', 'water'],
      ['half a tbsp. sodium bicarbonate', 'sodium bicarbonate'],
    ] as const) {
      expect(unreadWords(line)).toMatchObject({ offers: [], toMeasure: what })
      expect(prepared(whole.equation, `11.8 g ${what}`).unread).toEqual([])
    }
  })
})

describe('a record that is saved already', () => {
  const day = '2026-12-03'
  const drafting = (writing: Writing, kept: readonly Transformation[], ways: readonly { id: string; name: string }[] = []) =>
    draftingOf(writing, reading(writing), kept, ways, new Set(), day)
  const first = transformationSchema.parse(drafting(whole, []).record)
  it('is that record: pressing again stores no twin', () => {
    const again = drafting(whole, [first], [first])
    expect(again).toMatchObject({ isKept: true, record: { id: first.id } })
    const own = transformationSchema.parse(drafting({ ...whole, known: 'own' }, []).record)
    expect(draftingOf({ ...whole, known: 'own' }, reading(whole), [own], [own], new Set(), '2026-12-09').isKept).toBe(true)
  })
  it('is changed by what is corrected on its page, and by nothing else', () => {
    const corrected = drafting({ ...whole, high: '80', inPlaceOf: first.id }, [first], [first])
    expect(corrected).toMatchObject({ isKept: false, record: { id: first.id, yieldPercent: { high: 80 } } })
    // Another reaction written over it: its id is not among the ways that make the same of the same.
    const other: Writing = { ...whole, equation: 'benzoin + acetic anhydride -> benzoin acetate + acetic acid', inPlaceOf: first.id }
    const body = { body: '21.2 g benzoin\n20 mL acetic anhydride', outcome: '22.5 g' }
    expect(drafting({ ...other, ...body }, [first]).record?.id).not.toBe(first.id)
  })
  it('lends its name to no other way: one is asked for', () => {
    expect(drafting({ ...whole, high: '80' }, [first], [first]).lacking.map(one => one.field)).toEqual(['name'])
    const named = drafting({ ...whole, high: '80', name: 'Benzoin, the long way' }, [first], [first])
    expect(named).toMatchObject({ lacking: [], isKept: false, record: { id: `${first.id}-2` } })
  })
})

describe('the text that the reader gets', () => {
  it('loses no charge that is written before its equation', () => {
    // 10 g / 106.124 g/mol = 94.23 mmol.
    const read = prepared(...textOf({ ...emptyWriting, body: '10 g benzaldehyde\n3 M NaOH, 20 mL' }).split('\n'))
    expect(read.lines.map(line => line.text)).toEqual(['10 g benzaldehyde', '3 M NaOH, 20 mL'])
    expect(read.lines[0]!.amountMol).toBeCloseTo(0.09423, 4)
    expect(read.unread).toEqual([])
  })
  it('takes what came out for nothing else, however it is worded', () => {
    for (const outcome of ['46.5 g', '74 %', 'yield 74 %', 'colourless needles 46.5 g', 'crude 49 g, pure 47 g', 'product:\n46 g']) {
      const read = prepared(...textOf({ ...whole, outcome }).split('\n'))
      expect(
        read.lines.map(line => line.material),
        outcome,
      ).toEqual(['benzaldehyde', 'thiamine-hydrochloride', 'sodium-hydroxide-3m'])
      expect(read.percentYield, outcome).toBeGreaterThan(70)
    }
    expect(textOf(emptyWriting)).toBe('')
  })
})

describe('answers to what was asked', () => {
  it('stand behind the piece of a line that they settle', () => {
    const body = answered('21.2 g benzoin\nfilter, wash with 25 mL HCl, dry', 'wash with 25 mL HCl', 'hydrochloric-acid-conc')
    expect(body).toBe('21.2 g benzoin\nfilter, wash with 25 mL HCl {hydrochloric-acid-conc}, dry')
    const read = prepared('benzoin + acetic anhydride -> benzoin acetate + acetic acid', ...body.split('\n'))
    expect(read.lines[1]).toMatchObject({ text: 'wash with 25 mL HCl {hydrochloric-acid-conc}', material: 'hydrochloric-acid-conc' })
  })

  it('stand behind what was typed, which stays, and settle it', () => {
    const body = answered('21.2 g benzoin\n25 mL HCl', '25 mL HCl', 'hydrochloric-acid-conc')
    expect(body).toBe('21.2 g benzoin\n25 mL HCl {hydrochloric-acid-conc}')
    const read = prepared('benzoin + acetic anhydride -> benzoin acetate + acetic acid', ...body.split('\n'))
    expect(read.lines[1]).toMatchObject({ text: '25 mL HCl {hydrochloric-acid-conc}', material: 'hydrochloric-acid-conc' })
    expect(read.problems).toEqual([])
  })
  it('an id in braces is exact, also where the table of ambiguous names has it, and one that is not there is told', () => {
    for (const id of ['ammonia', 'carvone', 'ethanol'])
      expect(prepared('benzoin -> benzil + H2', `2 g x {${id}}`).lines[0]?.material).toBe(id)
    const read = prepared(answeredTerm('2 benzaldehyde -> benzoin', 'benzoin', 'no-such-thing'), '5 g benzaldehyde')
    expect(read.balanced).toBe(false)
    expect(read.problems.map(one => one.code)).toContain('name-unknown')
  })
})

describe('numbers as people type them', () => {
  it.each([
    ['74', 74],
    ['74 %', 74],
    ['7,5', 7.5],
    ['30 h', 30],
    ['', null],
    ['1e5', null],
    ['٢٥', null],
    ['seventy', null],
  ])('%j is %s', (text, value) => expect(numberTyped(text)).toBe(value))
  it.each([
    ['60-65', [60, 65]],
    ['-5 to 0 °C', [-5, 0]],
    ['78', [78, 78]],
    ['5–-3', [-3, 5]],
    ['warm', null],
  ])('%j is %s', (text, value) => expect(temperatureTyped(text)).toEqual(value))
})
