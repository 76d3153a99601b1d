/** Measures of the scheme, px. The baseline grid is 4; sizes are those of the page. */
export const size = { text: 13.33, name: 16, formula: 17 } as const
export const lineHeight = { text: 16, name: 18, amount: 20 } as const
export const weight = { text: 460, name: 640, number: 680 } as const

/** Baseline of the last line over an arrow, and of the first under it, from the axis. */
export const overAxis = 8
export const underAxis = 16
/** Room beside the text of an arrow that leaves a structure, and of one that leaves a rail. */
export const besideText = 8
export const besideRail = 10
export const head = 9
/** From an arrow to the structure it leaves or points at. */
export const toStructure = 8
export const corner = 12
/** Top of a co-reactant below the axis. */
export const coTop = 24
/** Widths of conditions by level of tightness, and what a level costs against height. */
export const levelWidth = [152, 126, 106, 90, 76] as const
export const levelCost = [0, 4, 10, 20, 220] as const
export const lastLevel = 4
export const nameBelow = [134, 112, 84] as const
export const nameRight = [168, 150, 96] as const
/** Between rows; around the horizontal part of a return rail. */
export const rowGap = 14
export const railOver = 12
export const railUnder = 14
export const trunkBehind = 18
/** Return rails inside a branch keep off its trunk by this. */
export const branchIndent = 16
export const pickHeight = 24
export const margin = 4
/** What it costs to break a choice that the last drawing made; a line; a line with nothing but the start. */
export const stayCost = 120
export const lineCost = 52
export const loneStartCost = 60
export const slackCost = 0.04
export const slotPitch = 16
