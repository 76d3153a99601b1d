import { z } from 'zod'
import { dayOf } from '../days/civil-date.ts'

const form = /^\d{4}-\d{2}-\d{2}$/

/** A day of the calendar, `2026-12-03`. The form alone would let the 31st of February through, and nothing would ever fall on it. */
export const dateSchema = z
  .string()
  .regex(form)
  .refine(text => !form.test(text) || dayOf(text) !== null, { message: 'a day that the calendar has' })
