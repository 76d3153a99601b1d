import { type Command, commonOptions, type Option } from './command.ts'

const optionLines = (options: Readonly<Record<string, Option>>): string => {
  const heads = Object.entries(options).map(
    ([name, o]) => [`  --${name}${o.type === 'string' ? ` ${o.value ?? 'VALUE'}` : ''}`, o.help] as const,
  )
  const width = Math.max(...heads.map(([head]) => head.length)) + 2
  return heads.map(([head, help]) => `${head.padEnd(width)}${help}`).join('\n')
}

export const helpOf = (command: Command): string =>
  `waybench ${command.name} ${command.usage}\n${command.summary}\n\n${
    Object.keys(command.options).length > 0 ? `${optionLines(command.options)}\n` : ''
  }${optionLines(commonOptions)}\n\nExit 0 done, 1 no answer, 2 bad input.\n`

export function helpOfAll(commands: readonly Command[]): string {
  const width = Math.max(...commands.map(c => c.name.length)) + 2
  const lines = commands.map(c => `  ${c.name.padEnd(width)}${c.summary}`)
  return `waybench COMMAND [OPTIONS]\n\n${lines.join('\n')}\n\nwaybench COMMAND --help tells its options. Amounts are text with a unit, in quotes: "24 g".\nQuantities are estimates: read the safety data sheets; local codes and licensed practice decide.\n`
}
