/**
 * Verbs that a line of a procedure opens with, as a piece of a regular expression. "Dry" and "dilute" are verbs only before what one dries or
 * dilutes with: dry ice and dilute acetic acid are no ice and no acetic acid; "dried (Na2SO4)" tells what is done.
 */
export const verbs =
  'pour(?:ed)?|quench(?:ed)?|drown(?:ed)?|thrown?|wash(?:ed|es)?|rinsed?|extract(?:ed|s)?|(?:re)?crystalli[sz](?:ed?|ation)|dr(?:ied|y)(?=\\s+(?:over|with|on|in|by|under|at|to|the|it|and|down|off|once|again)\\b|\\s*[,;.]|\\s*$)|dried(?=\\s*\\()|dissolved?|add(?:ed)?|charged?|treat(?:ed)?|dilut(?:ed?|ion)(?=\\s+(?:with|to|by|in|up|the|it|and)\\b|\\s*[,;.]|\\s*$)|acidif(?:y|ied)|neutrali[sz]ed?|basif(?:y|ied)|suspend(?:ed)?|mix(?:ed)?|filter(?:ed)?|cool(?:ed)?|stir(?:red)?|heat(?:ed)?|warm(?:ed)?|boil(?:ed)?|seed(?:ed)?(?=\\s+with\\b)|reflux(?:ed)?|decant(?:ed)?|separated?|make up|made up'

/** A line that opens with what is done. */
export const startsWithVerb = new RegExp(
  String.raw`^(?:then\s+|and\s+|(?:the\s+)?(?:mixture|solution|product|solid)\s+(?:is|was)\s+)?(?:${verbs})\b`,
  'i',
)
