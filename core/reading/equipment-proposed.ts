/** Pieces of equipment by the words that call for them. Common practice, no source. */
const pieces: readonly (readonly [string, RegExp])[] = [
  ['reflux condenser', /\breflux/i],
  ['distillation set', /\b(?:distil|distill)(?!.{0,30}\bvacuum\b)/i],
  ['vacuum distillation set', /\bdistil.{0,30}\bvacuum\b/i],
  ['steam generator', /\bsteam[- ]distil|\bsteam\b/i],
  // Concentrated acid is a bottle, three drops of it are a pipette: neither is a piece of work.
  [
    'rotary evaporator',
    /\b(?:evaporat|strip|concentrat(?:e|es|ing)\b|concentrated(?=\s*(?:[.,;]|$|(?:in|under|to|on|by|at|down|and|again)\b)))/i,
  ],
  ['Buchner funnel', /\b(?:filter|filtered|suck|collect(?:ed)?)\b/i],
  ['separating funnel', /\b(?:extract|separat)/i],
  ['dropping funnel', /\bdropwise\b|\bdrop by drop\b|\bin drops\b|\bdropped\b|\bdropping\b|\bdrip/i],
  ['stirrer', /\bstir/i],
  ['ice bath', /\bice\b|\b0\s*(?:°\s*)?C\b/i],
  ['oil bath', /\boil bath\b/i],
  ['water bath', /\bwater bath\b|\bwarm/i],
  ['mortar and pestle', /\bgrind|\bground\b|\bmortar\b/i],
  ['desiccator', /\bdesiccat/i],
  ['lamp', /\birradiat|\bUV\b|\blamp\b/i],
]

/** Equipment that the lines of a preparation call for by their verbs; a guess, to be taken or left. */
export const equipmentProposed = (operations: readonly string[]): readonly string[] =>
  pieces.filter(([, words]) => operations.some(line => words.test(line))).map(([piece]) => piece)
