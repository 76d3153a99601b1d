/** Why something that a file draws in one hand is read as both, and what to do where the hand was meant. */
export const byFlagLine = (words: readonly string[]): string =>
  `both hands, though one is drawn, since the chiral flag of the file is 0: ${words.join('; ')}; where the hand as drawn is meant, set the flag to 1 and read it again`
