const locant =
  /\d+|(?<![a-z])(?:ortho|meta|para|alpha|beta|gamma|delta|omega|sec|tert|iso|cis|trans|syn|anti|[ompt]|dl|[ndlrsez])(?=[-)])|[αβγδω]/g

/**
 * Whether two names place their groups alike: 1,3-diphenylpropan-1-one and 1,3-diphenylpropan-2-one do not, so that the one is no slip of the
 * pen for the other but another compound.
 */
export const sameLocants = (one: string, other: string): boolean => locantsOf(one) === locantsOf(other)

const locantsOf = (name: string): string => (name.toLowerCase().match(locant) ?? []).join(' ')

/** A number that stands for a place: with a hyphen or a comma behind it, as in 2-, 1,3- or -2-one; never the 66 of nylon 66 or the 2 of 2 M. */
const place =
  /(?<![A-Za-z\d.])\d+'*(?=[-,])|(?<![a-z])(?:ortho|meta|para|alpha|beta|gamma|delta|omega|sec|tert|iso|cis|trans|syn|anti|[ompnt])(?=[-)])/g

/**
 * Whether two names differ in nothing but where the groups stand: 2-naphthol and 1-naphthol; not "2 M-NaOH" and NaOH, nor nylon 6 and
 * nylon 66.
 */
export function groupsElsewhere(one: string, other: string): boolean {
  const [left, right] = [one, other].map(name => ({
    places: name.toLowerCase().match(place) ?? [],
    groups: name.toLowerCase().replace(place, '#').replace(/\s+/g, ' ').trim(),
  }))
  return left!.places.length > 0 && left!.places.length === right!.places.length && left!.groups === right!.groups
}
