/** What a record of a step states and a test does not look at: air, no gas, no heat, no hood. */
export const plainStep = {
  kind: 'reaction',
  operations: [],
  equipment: [],
  atmosphere: 'air',
  needsHood: false,
  exotherm: 'none',
  gasEvolved: [],
  hazardNotes: [],
  confidence: 'checked',
} as const
