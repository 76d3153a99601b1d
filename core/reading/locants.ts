const locant =
  /\d+|(?<![a-z])(?:ortho|meta|para|alpha|beta|gamma|delta|omega|sec|tert|iso|cis|trans|syn|anti|[omp]|dl|[ndlrsez])(?=[-)])|[αβγδω]/g

/**
 * Whether two names place their groups alike: 1,3-diphenylpropan-1-one and 1,3-diphenylpropan-2-one do not, so that the one is no slip of the
 * pen for the other but another compound.
 */
export const sameLocants = (one: string, other: string): boolean => locantsOf(one) === locantsOf(other)

const locantsOf = (name: string): string => (name.toLowerCase().match(locant) ?? []).join(' ')
