import type { Transformation } from '../../core/library/transformation.ts'
import { ownBench } from '../../core/library/trust.ts'

/** A step that was entered here: its yield is from the own bench or as it was typed. */
export const isYours = ({ yieldPercent: { from } }: Transformation): boolean => from === ownBench || from === 'as entered'
