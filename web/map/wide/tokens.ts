const names = ['paper', 'ink', 'soft', 'grey', 'rail', 'pen', 'pen-wash'] as const
export type Tokens = Readonly<Record<(typeof names)[number], string>>

/** The look's tokens as plain colours for a canvas, which knows neither custom properties nor the dark scheme. */
export function tokensAt(node: Element): Tokens {
  const probe = document.createElement('span')
  node.append(probe)
  const found = {} as Record<(typeof names)[number], string>
  for (const name of names) {
    probe.style.color = `var(--${name})`
    found[name] = getComputedStyle(probe).color
  }
  probe.remove()
  return found
}
