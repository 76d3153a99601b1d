import { type ParseArgsConfig, parseArgs } from 'node:util'
import { nearest } from '../../core/problem/nearest.ts'
import { Refusal } from '../refusal.ts'

/** Where a command reads and writes; tests hand in their own. */
export interface Terminal {
  readonly out: (text: string) => void
  readonly err: (text: string) => void
  readonly readFile: (path: string) => Promise<string>
  readonly writeFile: (path: string, text: string) => Promise<void>
  readonly readInput: () => Promise<string>
  /** Ctrl+C is told once instead of ending the program; what it returns puts that back. */
  readonly onInterrupt: (told: () => void) => () => void
  /** Today, ISO date, local. */
  readonly today: string
}

export interface Option {
  readonly type: 'string' | 'boolean'
  readonly multiple?: boolean
  /** Placeholder of the value in the help, e.g. `ID`. */
  readonly value?: string
  readonly help: string
}

export interface Command {
  readonly name: string
  /** One line for the list of commands. */
  readonly summary: string
  /** What stands after the name in the help. */
  readonly usage: string
  readonly options: Readonly<Record<string, Option>>
  readonly positionals?: { readonly least: number; readonly most: number; readonly what: string }
  run(given: Given, terminal: Terminal): Promise<number>
}

/** The words of a command line, sorted. */
export class Given {
  readonly #values: Readonly<Record<string, string | boolean | (string | boolean)[] | undefined>>
  readonly words: readonly string[]
  constructor(values: Given['values'], words: readonly string[]) {
    this.#values = values
    this.words = words
  }
  get values() {
    return this.#values
  }
  text(name: string): string | undefined {
    const value = this.#values[name]
    return typeof value === 'string' ? value : undefined
  }
  texts(name: string): readonly string[] {
    const value = this.#values[name]
    return Array.isArray(value) ? value.filter(v => typeof v === 'string') : []
  }
  on(name: string): boolean {
    return this.#values[name] === true
  }
  /** The option's value, or a refusal that names it. */
  need(name: string, why: string): string {
    const value = this.text(name)
    if (value === undefined) throw badOption(`--${name}`, 'is missing.', why, `Give --${name}.`, 'option-missing')
    return value
  }
  /** A whole number within bounds, or the default. */
  whole(name: string, least: number, most: number, otherwise: number): number {
    const value = this.text(name)
    if (value === undefined) return otherwise
    const number = Number(value)
    if (!/^[+-]?\d+$/.test(value.trim()) || number < least || number > most) {
      throw badOption(
        `--${name}`,
        `is "${value}".`,
        `It must be a whole number from ${least} to ${most}.`,
        'Correct the number.',
        'option-number',
      )
    }
    return number
  }
}

export const badOption = (option: string, what: string, why: string, cure: string, code = 'option'): Refusal =>
  new Refusal('bad-input', [{ code, where: ['command line', option], what: `${option} ${what}`, why, cure }])

/** Options that every command takes. */
export const commonOptions: Readonly<Record<string, Option>> = {
  library: {
    type: 'string',
    multiple: true,
    value: 'FILE',
    help: 'library file in place of the bundled one; repeatable; "bundled" names that',
  },
  own: {
    type: 'string',
    multiple: true,
    value: 'FILE',
    help: "the lab's own records over the library: a file (JSON, CSV, TSV, SDF) or the data folder of waybench serve; one with the id of a record beneath stands in its place; repeatable",
  },
  lists: {
    type: 'string',
    multiple: true,
    value: 'FILE',
    help: 'further regulated lists beside the bundled ones (waybench-table), a file or a folder of them; repeatable',
  },
  json: { type: 'boolean', help: 'JSON on standard output, problems as JSON on standard error' },
  seed: { type: 'string', value: 'N', help: 'seed of the draws, a whole number (default 1)' },
  help: { type: 'boolean', help: 'this text' },
}

/** Sorts the words of a command line, or refuses with the option at fault and the nearest one that exists. */
export function givenFor(command: Command, words: readonly string[]): Given {
  const options = { ...command.options, ...commonOptions }
  const config: ParseArgsConfig = {
    args: joinedNegatives(words),
    options: Object.fromEntries(
      Object.entries(options).map(([name, o]) => [name, { type: o.type, ...(o.multiple ? { multiple: true } : {}) }]),
    ),
    allowPositionals: true,
    strict: true,
    tokens: true,
  }
  let parsed: ReturnType<typeof parseArgs>
  try {
    parsed = parseArgs(config)
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error)
    const name = /'(?:-\w, )?--?([^'= ]+)/.exec(message)?.[1] ?? ''
    const known = Object.hasOwn(options, name) ? options[name] : undefined
    if (known) {
      const cure = known.type === 'string' ? `Give --${name} ${known.value ?? 'VALUE'}.` : `Write --${name} alone.`
      throw badOption(`--${name}`, known.type === 'string' ? 'has no value.' : 'takes no value.', `It stands for: ${known.help}.`, cure)
    }
    const near = nearest(name, Object.keys(options))
    throw badOption(
      `--${name}`,
      `is no option of ${command.name}.`,
      'Nothing is passed over in silence.',
      near ? `Did you mean --${near}?` : `waybench ${command.name} --help lists its options.`,
      'option-unknown',
    )
  }
  const once = new Set<string>()
  for (const token of parsed.tokens ?? []) {
    if (token.kind !== 'option' || options[token.name]?.multiple) continue
    if (once.has(token.name))
      throw badOption(
        `--${token.name}`,
        'is given more than once.',
        'It takes one value, and one of them would be passed over in silence.',
        'Leave all but one of them out.',
        'option-repeated',
      )
    once.add(token.name)
  }
  const { least, most, what } = command.positionals ?? { least: 0, most: 0, what: 'words' }
  const count = parsed.positionals.length
  if (!parsed.values.help && (count < least || count > most)) {
    const range = least === most ? `${least}` : most === Number.POSITIVE_INFINITY ? `at least ${least}` : `${least} to ${most}`
    throw badOption(
      parsed.positionals[most] ?? command.name,
      `came with ${count} ${what}.`,
      `waybench ${command.name} takes ${most === 0 ? 'none' : range}.`,
      'A value with spaces belongs in quotes, as in --have "24 g".',
      'words',
    )
  }
  return new Given(parsed.values, parsed.positionals)
}

/** A negative amount is a value, to be refused as such, not an option: `--have -5g` is read as `--have=-5g`. */
function joinedNegatives(words: readonly string[]): string[] {
  const joined: string[] = []
  for (const word of words) {
    const last = joined.at(-1)
    if (/^-\s?[\d.,]/.test(word) && last?.startsWith('--') && !last.includes('=')) joined[joined.length - 1] = `${last}=${word}`
    else joined.push(word)
  }
  return joined
}
