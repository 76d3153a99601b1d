import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Booked, Days } from '../../../../core/days/days.ts'
import { escaped, folded, icalendarOf } from '../../../../core/days/icalendar.ts'
import { material, smallLibrary, transformation } from '../../../support/small-library.ts'

const library = smallLibrary([material({ id: 'b' })], [transformation({ id: 'step', name: 'Benzil; copper, air' })])
const task = (own: Partial<Booked>): Booked => ({
  step: 'step',
  batch: 1,
  do: 'filter',
  kind: 'hands',
  startH: 0,
  endH: 1,
  start: '2026-12-03T18:30',
  end: '2026-12-03T19:30',
  window: 0,
  ...own,
})
const days = (booked: readonly Booked[], startDate: string | null = '2026-12-01'): Days => ({
  handsOnH: 1,
  elapsedH: 1,
  windowsUsed: 1,
  startDate,
  finishDate: '2026-12-03',
  booked,
  longestChain: [],
  unattended: [],
  tooLong: [],
  wouldDo: null,
  notes: [],
})
const unfolded = (text: string) => text.replace(/\r\n[ \t]/g, '')

describe('the calendar as iCalendar', () => {
  it('writes an event with all that RFC 5545 requires, in local time', () => {
    const text = icalendarOf(library, days([task({ batch: 2 })]), 'plan-1', 'Lantern Street', '2026-11-26T21:30:00Z')!
    expect(unfolded(text).split('\r\n')).toEqual([
      'BEGIN:VCALENDAR',
      'VERSION:2.0',
      'PRODID:-//Waybench//Bench calendar//EN',
      'CALSCALE:GREGORIAN',
      'X-WR-CALNAME:Lantern Street',
      'BEGIN:VEVENT',
      'UID:plan-1-1@waybench',
      'DTSTAMP:20261126T213000Z',
      'DTSTART:20261203T183000',
      'DTEND:20261203T193000',
      'SUMMARY:filter (Benzil\\; copper\\, air\\, batch 2)',
      'DESCRIPTION:Hands: needs a person.',
      'TRANSP:OPAQUE',
      'END:VEVENT',
      'END:VCALENDAR',
      '',
    ])
  })

  it('leaves time free for what stands alone, with its notice', () => {
    const text = unfolded(icalendarOf(library, days([task({ kind: 'stand', window: null })]), 'p', 't', '2026-11-26T21:30:00Z')!)
    expect(text).toMatch(/TRANSP:TRANSPARENT/)
    expect(text).toMatch(/nobody there/)
  })

  it('has no event that ends when it begins: section 3.6.1', () => {
    expect(icalendarOf(library, days([task({ end: '2026-12-03T18:30' })]), 'p', 't', '2026-11-26T21:30:00Z')).not.toMatch(/VEVENT/)
  })

  it('is null without dates', () => expect(icalendarOf(library, days([task({})], null), 'p', 't', '2026-11-26T21:30:00Z')).toBeNull())

  // The example of RFC 5545 section 3.3.11; from memory.
  it('escapes text as the standard does in its example', () => {
    expect(escaped('Project XYZ Final Review\nConference Room - 3B\nCome Prepared.')).toBe(
      'Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.',
    )
    expect(escaped('a\\b;c,d')).toBe('a\\\\b\\;c\\,d')
  })

  // RFC 5545 section 3.1: lines of at most 75 octets without their break; unfolding takes out a break and the one blank after it.
  it('folds without losing a character or tearing one', () => {
    fc.assert(
      fc.property(
        fc.string({
          maxLength: 300,
          unit: fc.oneof(fc.constantFrom('ü', '€', '𝛼', 'H₂O', ' '), fc.string({ minLength: 1, maxLength: 1 })),
        }),
        text => {
          const line = escaped(text)
          const lines = folded(line).split('\r\n')
          for (const one of lines) expect(new TextEncoder().encode(one).length).toBeLessThanOrEqual(75)
          for (const one of lines.slice(1)) expect(one[0]).toBe(' ')
          expect(unfolded(folded(line))).toBe(line)
          if (new TextEncoder().encode(line).length <= 75) expect(lines).toHaveLength(1)
        },
      ),
      { seed: 4, numRuns: 400 },
    )
  })
})
