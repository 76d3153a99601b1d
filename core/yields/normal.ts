/**
 * Inverse of the standard normal distribution, to about 1 part in 10^16.
 *
 * @param p above 0 and below 1
 * Source: Wichura 1988, Algorithm AS 241 (PPND16), Applied Statistics 37, 477; coefficients from memory, held against published quantiles.
 */
export function normalScore(p: number): number {
  const q = p - 0.5
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q
    return q * ratio(r, central)
  }
  const tail = Math.sqrt(-Math.log(q < 0 ? p : 1 - p))
  const score = tail <= 5 ? ratio(tail - 1.6, middle) : ratio(tail - 5, far)
  return q < 0 ? -score : score
}

/** Numerator and denominator, lowest power first; the denominator's constant is 1. */
type Rational = readonly [readonly number[], readonly number[]]

function ratio(r: number, [above, below]: Rational): number {
  let numerator = 0
  let denominator = 0
  for (let i = above.length - 1; i >= 0; i--) {
    numerator = numerator * r + above[i]!
    denominator = denominator * r + below[i]!
  }
  return numerator / denominator
}

const central: Rational = [
  [
    3.387132872796366608, 133.14166789178437745, 1971.5909503065514427, 13731.693765509461125, 45921.953931549871457, 67265.770927008700853,
    33430.575583588128105, 2509.0809287301226727,
  ],
  [
    1, 42.313330701600911252, 687.1870074920579083, 5394.1960214247511077, 21213.794301586595867, 39307.89580009271061,
    28729.085735721942674, 5226.495278852854561,
  ],
]
const middle: Rational = [
  [
    1.42343711074968357734, 4.6303378461565452959, 5.7694972214606914055, 3.64784832476320460504, 1.27045825245236838258,
    0.24178072517745061177, 0.0227238449892691845833, 0.00077454501427834140764,
  ],
  [
    1, 2.05319162663775882187, 1.6763848301838038494, 0.68976733498510000455, 0.14810397642748007459, 0.0151986665636164571966,
    0.0005475938084995344946, 0.00000000105075007164441684324,
  ],
]
const far: Rational = [
  [
    6.6579046435011037772, 5.4637849111641143699, 1.7848265399172913358, 0.29656057182850489123, 0.026532189526576123093,
    0.0012426609473880784386, 0.0000271155556874348757815, 0.000000201033439929228813265,
  ],
  [
    1, 0.59983220655588793769, 0.1369298809227358053, 0.0148753612908506148525, 0.0007868691311456132591, 0.000018463183175100546818,
    0.00000014215117583164458887, 0.00000000000000204426310338993978564,
  ],
]
