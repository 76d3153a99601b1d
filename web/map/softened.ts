const softHyphen = '\u00ad'
/** Words up to this length stand on one line everywhere. */
const longWord = 15
/** Chemical joints: a name may break after these, never inside them. */
const joints =
  /(phenyl|cyclo|methyl|ethyl|propyl|butyl|amino|nitro|hydroxy|methoxy|ethoxy|acetyl|benzoyl|chloro|bromo|iodo|oxo|carboxy|sulfo|penta|hexa)(?=[a-z]{4})/g

/**
 * A long name with soft hyphens at its chemical joints: tetraphenylcyclo-pentadienone.
 *
 * @param longest  words up to so many letters stay whole
 */
export const softened = (name: string, longest: number = longWord): string =>
  name
    .split(/(?<=[\s-])/)
    .map(word => (word.length <= longest ? word : word.replace(joints, `$1${softHyphen}`)))
    .join('')
