import type { Drawing } from '../../../core/chemistry/drawing.ts'

const column = (value: number, width: number): string => String(value).padStart(width)

/**
 * A drawing as an MDL molfile (V2000; BIOVIA "CTfile Formats", 2020), so that another toolkit can say what a reader would see in it.
 * Hydrogens are left to the other toolkit, except where a drawing writes them on an atom that would else have none.
 */
export function molfileOf(drawing: Drawing): string {
  const lines = [
    '',
    '  drawing',
    '',
    `${column(drawing.atoms.length, 3)}${column(drawing.bonds.length, 3)}  0  0  1  0  0  0  0  0999 V2000`,
  ]
  for (const atom of drawing.atoms) {
    // A molfile's y runs upwards, in bonds of about 1.
    const at = [atom.x / 13.5, -atom.y / 13.5, 0].map(value => value.toFixed(4).padStart(10)).join('')
    lines.push(`${at} ${atom.el.padEnd(3)} 0  0  0  0  0  0  0  0  0  0  0  0`)
  }
  for (const { a, b, order, wedge } of drawing.bonds) {
    lines.push([a + 1, b + 1, order, wedge === 'up' ? 1 : wedge === 'down' ? 6 : 0].map(value => column(value, 3)).join(''))
  }
  drawing.atoms.forEach((atom, i) => {
    if (atom.charge) lines.push(`M  CHG  1${column(i + 1, 4)}${column(atom.charge, 4)}`)
    // 2: one unpaired electron.
    if (atom.radical) lines.push(`M  RAD  1${column(i + 1, 4)}${column(2, 4)}`)
    if (atom.isotope) lines.push(`M  ISO  1${column(i + 1, 4)}${column(atom.isotope, 4)}`)
  })
  return [...lines, 'M  END', ''].join('\n')
}
