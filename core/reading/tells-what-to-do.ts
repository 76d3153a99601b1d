import { startsWithVerb } from './verbs.ts'

const doing =
  /^\W*(?:then\s+)?(?:(?:reflux|heat|warm|boil|stir(?:r(?=[ei]))?|cool|chill|filter|decant|distil|collect|steam|add|pour|wash|extract|swirl|allow|suck|scratch|seed|treat|quench|mix|press|drain|acidify?|basify?|neutrali[sz]e?|(?:re)?crystalli[sz]e?|dissolve?|concentrate?|evaporate?|separate?|rinse?|remove?|irradiate?|triturate?|shake?)(?:s|ed|d|ing|n)?|(?:acidif|basif)(?:ied|ication)|(?:re)?crystalli[sz]ation|chilled|ground|grind|shaken|stand|let|leave|left|keep|kept|set|hold|held|under|overnight|at)\b/i

/** A line that tells what to do, as an order or in the past. */
export const tellsWhatToDo = (line: string): boolean => doing.test(line) || startsWithVerb.test(line)
