import type { ChargedLine, ChargedStep } from '../../core/route/charged.ts'

/** A charge line with what a test leaves out filled in: bought, into the vessel, as the source prints it. */
export const chargedLine = (line: Partial<ChargedLine> & Pick<ChargedLine, 'material'>): ChargedLine => ({
  role: 'reagent',
  at: 'vessel',
  massG: null,
  volumeMl: null,
  amountMol: null,
  equivalents: null,
  basis: 'source',
  supply: 'bought',
  line: null,
  ...line,
})

/** A step with what a test leaves out filled in: one batch of 10 g, going to the first goal. */
export const chargedStep = (step: Partial<ChargedStep> & Pick<ChargedStep, 'transformation'>): ChargedStep => ({
  makes: `${step.transformation}-product`,
  number: '1',
  scale: 1,
  limiting: { compound: 'x', amountMol: 1, massG: 10 },
  charges: [],
  theoreticalG: 12,
  ofCharge: { chargeG: 10, theoryG: 12, p10G: 8, medianG: 10, p90G: 11 },
  yieldFraction: { low: 0.7, typical: 0.8, high: 0.9 },
  expectedG: 10,
  p10G: 8,
  medianG: 10,
  p90G: 11,
  batches: 1,
  goesTo: [{ step: null, goal: 0, massG: 10 }],
  coProducts: [],
  volumeMl: { perBatch: 100, assumed: false },
  notes: [],
  ...step,
})
