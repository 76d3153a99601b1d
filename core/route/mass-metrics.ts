/** Mass metrics at typical yields; null where undefined. `lowerBound` = some amounts stay open. */
export interface MassMetrics {
  readonly atomEconomy: number | null
  readonly reactionMassEfficiency: number | null
  readonly eFactor: number | null
  readonly eFactorWithoutWater: number | null
  readonly processMassIntensity: number | null
  readonly lowerBound: boolean
}
