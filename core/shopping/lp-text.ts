/** A model in the CPLEX LP format, put together piece by piece. Names must be letters and digits, beginning with neither e nor E. */
export class LpModel {
  readonly #objective: string[] = []
  readonly #rows: string[] = []
  readonly #bounds: string[] = []
  readonly #integers: string[] = []
  readonly #binaries: string[] = []

  /** A variable from 0 to `most`, with its cost in the objective. */
  variable(name: string, kind: 'integer' | 'binary' | 'continuous', cost: number, most?: number): string {
    if (cost !== 0) this.#objective.push(term(cost, name))
    if (kind === 'integer') this.#integers.push(name)
    if (kind === 'binary') this.#binaries.push(name)
    else if (most !== undefined) this.#bounds.push(` 0 <= ${name} <= ${figure(most)}`)
    return name
  }

  /** Adds to the cost of a variable that is there already. */
  costs(cost: number, name: string): void {
    if (cost !== 0) this.#objective.push(term(cost, name))
  }

  row(terms: readonly (readonly [coefficient: number, name: string])[], sense: '>=' | '<=', right: number): void {
    const left = terms.filter(([coefficient]) => coefficient !== 0).map(([coefficient, name]) => term(coefficient, name))
    if (left.length > 0) this.#rows.push(` r${this.#rows.length + 1}: ${lines(left)} ${sense} ${figure(right)}`)
  }

  /** The model as text, its objective to be made least. */
  text(): string {
    const objective = this.#objective.length > 0 ? lines(this.#objective) : `0 ${this.#integers[0] ?? this.#binaries[0] ?? 'x'}`
    const section = (title: string, content: readonly string[]) => (content.length > 0 ? [title, ...content] : [])
    return [
      'Minimize',
      ` cost: ${objective}`,
      'Subject To',
      ...this.#rows,
      ...section('Bounds', this.#bounds),
      ...section(
        'General',
        this.#integers.map(name => ` ${name}`),
      ),
      ...section(
        'Binary',
        this.#binaries.map(name => ` ${name}`),
      ),
      'End',
      '',
    ].join('\n')
  }
}

const term = (coefficient: number, name: string): string => `${coefficient < 0 ? '-' : '+'} ${figure(Math.abs(coefficient))} ${name}`

/** Plain digits: an exponent could be taken for a name. Twelve of them are more than any solver's tolerance sees. */
function figure(value: number): string {
  const rounded = Number(value.toPrecision(12))
  const text = String(rounded)
  return text.includes('e') ? rounded.toFixed(20).replace(/0+$/, '').replace(/\.$/, '') : text
}

/** Readers of the format may refuse a line beyond 560 characters. */
function lines(terms: readonly string[]): string {
  const rows: string[] = []
  for (let from = 0; from < terms.length; from += 8) rows.push(terms.slice(from, from + 8).join(' '))
  return rows.join('\n   ')
}
