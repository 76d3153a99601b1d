/** A name up to this length stands on the map as it is. */
const longName = 28

/**
 * A material's name as the map has room for it: without what a library says of it in brackets behind, and a long trade name only up to its
 * first comma. Brackets and commas inside a name of the nomenclature have no space before or behind them and stay.
 *
 * @example mapName('castor oil (modelled as glyceryl triricinoleate)') // 'castor oil'
 * @example mapName('eggshell, washed, dried, ground (about 95 % calcium carbonate)') // 'eggshell'
 */
export function mapName(name: string): string {
  const bare = name.replace(/ \(.*\)$/, '')
  return bare.length > longName ? bare.replace(/, .*$/, '') : bare
}
