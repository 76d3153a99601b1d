/** Verbs that a line of a procedure opens with, as a piece of a regular expression. */
export const verbs =
  'pour(?:ed)?|quench(?:ed)?|drown(?:ed)?|thrown?|wash(?:ed|es)?|rinsed?|extract(?:ed|s)?|(?:re)?crystalli[sz](?:ed?|ation)|dried|dry|dissolved?|add(?:ed)?|charged?|treat(?:ed)?|dilut(?:ed?|ion)|acidif(?:y|ied)|neutrali[sz]ed?|basif(?:y|ied)|suspend(?:ed)?|mix(?:ed)?|filter(?:ed)?|cool(?:ed)?|stir(?:red)?|heat(?:ed)?|warm(?:ed)?|boil(?:ed)?|reflux(?:ed)?|decant(?:ed)?|separated?|make up|made up'

/** A line that opens with what is done. */
export const startsWithVerb = new RegExp(
  String.raw`^(?:then\s+|and\s+|(?:the\s+)?(?:mixture|solution|product|solid)\s+(?:is|was)\s+)?(?:${verbs})\b`,
  'i',
)
