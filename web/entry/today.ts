/** The day by this machine's clock, as notes of the own bench bear it. */
export const today = (): string => new Date().toISOString().slice(0, 10)
