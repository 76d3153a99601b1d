import { oftenWords } from './repeats.ts'
import { startsWithVerb, verbs } from './verbs.ts'

/** Verbs at the start of a line up to the preposition that leads to the material. */
const opening = new RegExp(
  String.raw`^(?:(?:then|and|,|it|the|mixture|solution|product|solid|crude|is|was|are|were|down|off|${oftenWords}|again|${verbs})(?:\s+|(?<=,)))+(?:(?:with|into|onto|on|over|from|in|to|by|using)\s+)?(?:adding\s+|pouring\s+(?:into|onto)\s+)?`,
  'i',
)

/** What a line says is done, up to where the material begins: "washed twice with "; empty where it opens with no verb. */
export const openingOf = (line: string): string => (startsWithVerb.test(line) ? (opening.exec(line)?.[0] ?? '') : '')
