/**
 * Smallest whole-number solutions of a homogeneous system: for each free column the vector x with sum(column_i * x_i) = 0.
 *
 * Exact: rational elimination on big integers, so that no rounding can pass a false balance.
 *
 * @param columns  one a compound: row name (element, charge) to value; values are whole or have at most six decimals
 * @returns a basis of the null space; each vector in lowest terms with its first entry that is not zero above zero
 */
export function wholeSolutions(columns: readonly ReadonlyMap<string, number>[]): readonly (readonly number[])[] {
  const names = [...new Set(columns.flatMap(column => [...column.keys()]))].sort()
  const matrix = names.map(name => columns.map(column => BigInt(Math.round((column.get(name) ?? 0) * 1e6))))
  const pivots: number[] = []
  let row = 0
  for (let column = 0; column < columns.length && row < matrix.length; column++) {
    const from = matrix.findIndex((one, at) => at >= row && one[column] !== 0n)
    if (from < 0) continue
    ;[matrix[row], matrix[from]] = [matrix[from]!, matrix[row]!]
    const lead = matrix[row]!
    for (const [at, other] of matrix.entries()) {
      if (at === row || other[column] === 0n) continue
      const a = lead[column]!
      const b = other[column]!
      matrix[at] = lowest(other.map((value, index) => value * a - lead[index]! * b))
    }
    pivots.push(column)
    row++
  }
  const free = columns.map((_, at) => at).filter(at => !pivots.includes(at))
  return free.map(chosen => {
    // x[chosen] = product of the pivots keeps every x[pivot] whole; lowest terms come at the end.
    const scale = pivots.reduce((product, column, at) => product * matrix[at]![column]!, 1n)
    const vector = columns.map(() => 0n)
    vector[chosen] = scale
    for (const [at, column] of pivots.entries()) vector[column] = (-matrix[at]![chosen]! * scale) / matrix[at]![column]!
    const reduced = lowest(vector)
    const sign = reduced.find(value => value !== 0n)! < 0n ? -1n : 1n
    return reduced.map(value => Number(value * sign))
  })
}

function lowest(values: readonly bigint[]): bigint[] {
  const divisor = values.reduce((one, other) => gcd(one, other), 0n)
  return divisor === 0n || divisor === 1n ? [...values] : values.map(value => value / divisor)
}

function gcd(one: bigint, other: bigint): bigint {
  let [a, b] = [one < 0n ? -one : one, other < 0n ? -other : other]
  while (b !== 0n) [a, b] = [b, a % b]
  return a
}
