/** Names of the nine pictograms, as the UN GHS calls their symbols. */
export const pictogramNames: Readonly<Record<string, string>> = {
  GHS01: 'exploding bomb',
  GHS02: 'flame',
  GHS03: 'flame over circle',
  GHS04: 'gas cylinder',
  GHS05: 'corrosion',
  GHS06: 'skull and crossbones',
  GHS07: 'exclamation mark',
  GHS08: 'health hazard',
  GHS09: 'environment',
}

/** One piece of a symbol on a grid of 48: filled, black or white over what is before it, or a line of some width. */
export interface Shape {
  readonly d: string
  readonly fill?: 'black' | 'white'
  /** Width of a line; absent = filled. */
  readonly line?: number
  readonly cap?: 'butt'
  readonly transform?: string
}

const disc = (x: number, y: number, r: number): string => `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`

/** A flame on (24, `foot`), `height` high, with its white heart. */
function flame(foot: number, height: number): readonly Shape[] {
  const at = (dx: number, dy: number): string => `${(24 + (dx * height) / 20).toFixed(2)} ${(foot - (dy * height) / 20).toFixed(2)}`
  const path = (points: readonly (readonly [number, number])[]): string => {
    const [first, ...rest] = points.map(([dx, dy]) => at(dx, dy))
    return `M${first}C${rest.join(' ')}z`
  }
  const outside = path([
    [-1.6, 0],
    ...([
      [-6.6, 1.2],
      [-8.4, 5],
      [-7.2, 9],
      [-6.8, 10.6],
      [-5.8, 11.9],
      [-5.9, 13.6],
      [-4.6, 12.8],
      [-3.9, 11.6],
      [-3.8, 10.2],
      [-2.2, 13],
      [-1.2, 16.4],
      [-2.6, 20],
      [1.6, 18],
      [3.4, 14.6],
      [3.2, 11],
      [4.2, 11.8],
      [4.7, 12.9],
      [4.6, 14.4],
      [7.6, 11.2],
      [8.6, 6.8],
      [6.6, 3.4],
      [5.6, 1.6],
      [3.8, 0.4],
      [1.8, 0],
    ] as const),
  ])
  const heart = path([
    [-0.6, 0],
    ...([
      [-3.6, 1.2],
      [-4, 4.2],
      [-2.2, 6.2],
      [-1, 7.6],
      [0.2, 8.8],
      [-0.2, 11],
      [2.2, 9.4],
      [2.6, 7.2],
      [1.9, 5.6],
      [2.6, 5.9],
      [3, 6.6],
      [3.1, 7.4],
      [4.6, 4.4],
      [4, 1.2],
      [1, 0],
    ] as const),
  ])
  return [{ d: outside }, { d: heart, fill: 'white' }]
}

/** A test tube that pours down to the left, its mouth at (x, y); white what is empty of it. */
const tube = (x: number, y: number): readonly Shape[] => [
  { d: `M${x} ${y}l6-4.2`, line: 4.8 },
  { d: `M${x + 3} ${y - 2.1}l2.9-2`, fill: 'white', line: 2.4 },
  { d: `M${x - 1.5} ${y - 1.9}l2.6 3.8`, line: 1.6 },
]
/** Two drops falling from (x, y). */
const drops = (x: number, y: number): readonly Shape[] =>
  [0, 3.6].map(dy => ({ d: `M${x} ${y + dy}c1.1 1.3 1.4 2 1.4 2.5a1.4 1.4 0 0 1-2.8 0c0-0.5 0.3-1.2 1.4-2.5z` }))

/** Shapes drawn larger than the square leaves room for, brought to a scale about its middle and moved down. */
const fitted = (scale: number, down: number, shapes: readonly Shape[]): readonly Shape[] =>
  shapes.map(shape => ({
    ...shape,
    transform: `translate(${(24 - 24 * scale).toFixed(2)} ${(24 - 24 * scale + down).toFixed(2)}) scale(${scale})`,
  }))

const skull =
  'M24 9.6C30 9.6 33.4 13.6 33.4 18.4C33.4 21.2 32.4 23.4 30.6 24.8L30.4 28.2C30.3 29.4 29.6 30 28.4 30H19.6C18.4 30 17.7 29.4 17.6 28.2L17.4 24.8C15.6 23.4 14.6 21.2 14.6 18.4C14.6 13.6 18 9.6 24 9.6z'
const burst =
  'M26.2 17.2L27.4 22.6L33.2 19.4L30.2 24.8L36.6 26.2L30.4 28.4L33.2 33L28 30.6L26.6 34.2L24.8 29.4L20.4 27.8L24.2 25.6L22 20.6L25.8 23.2z'
const burstHeart =
  'M26 19.2L27.2 23.8L31.6 21.2L29.2 25.2L34 26.4L29.2 27.7L31.2 31L27.6 28.9L26.4 31.8L25.2 28.2L21.8 27.2L25 25.6L23.4 22L26 24.4z'
const fragments = [
  'M24.2 11.4l2.4 0.4l-0.6 3.6l-1.9-0.5z',
  'M31.4 13.4l2.2 1.4l-2.6 2.8l-1.5-1.2z',
  'M36.2 19.6l1.4 2l-3.7 1.6l-0.7-1.7z',
  'M37.6 28.4l-0.6 2.4l-3.4-1.3l0.5-1.8z',
  'M33.6 34.2l-1.7 1.6l-2.2-2.7l1.4-1.2z',
  'M17.4 14.6l1.8-1l1.6 3.2l-1.6 0.9z',
  'M12.8 20.4l1-1.8l3 1.7l-0.8 1.6z',
]
const torso = 'M21.4 18.4C17 19 13.4 20.6 12.2 24.2V35.6L24 40.4L35.8 35.6V24.2C34.6 20.6 31 19 26.6 18.4z'
const star = 'M24.0 20.6L25.8 26.9L32.1 25.3L27.6 30.0L32.1 34.7L25.8 33.1L24.0 39.4L22.2 33.1L15.9 34.7L20.4 30.0L15.9 25.3L22.2 26.9z'
const hand =
  'M23.4 31.4C23.4 30.2 24.6 29.6 25.6 30L26.6 31.6L28 30.6L30.6 30.6C29.4 29.6 29.6 27.8 31.2 27.8L36 29.6V33.4L32 36.2H28C25.6 36.2 23.8 34.4 23.4 31.4z'
const fish = 'M24.6 29.6C26.2 26.4 30 25.6 33 27.8L36.2 25.8L35.4 29.4L36 32L33 31.2C30 33.6 26.4 32.8 24.6 29.6z'

const symbols: Readonly<Record<string, readonly Shape[]>> = {
  // A bomb torn open, and what flies from it.
  GHS01: fitted(0.86, 0.6, [{ d: disc(20.6, 29.4, 6.6) }, { d: burst, fill: 'white' }, { d: burstHeart }, { d: fragments.join('') }]),
  GHS02: [...flame(31.4, 20.4), { d: 'M15 33.2h18v2.6h-18z' }],
  GHS03: [...flame(23.4, 14.4), { d: disc(24, 27.4, 4.8), line: 2.6 }, { d: 'M16.4 34h15.2v2.2h-15.2z' }],
  // A cylinder lying slantwise: body, shoulder, neck, valve, and the light on it.
  GHS04: [
    { d: 'M14.9 28.9L28.2 21.2', line: 8.6 },
    { d: 'M28 16.6L33.2 17.4L34.6 19.8L32.4 24.4z' },
    { d: 'M31.6 19.2L34.6 17.5', line: 3.2, cap: 'butt' },
    { d: 'M33.6 15.4L36 19.4', line: 2.4, cap: 'butt' },
    { d: 'M14.6 27.2L27.4 19.8', fill: 'white', line: 1.2 },
  ],
  // Two test tubes pour, one on metal, one on a hand; both fume.
  GHS05: [
    ...tube(17.8, 17),
    ...tube(27.2, 19.8),
    ...drops(16, 20.2),
    ...drops(25.6, 23),
    { d: 'M10.6 29.6h11.8v3.4h-11.8z' },
    { d: disc(16, 29.2, 2.1), fill: 'white' },
    { d: hand },
  ],
  // Crossed bones under the skull.
  GHS06: [
    { d: 'M16 27.6L32 34M32 27.6L16 34', line: 2.2 },
    { d: [disc(15.8, 26.8, 1.4), disc(15, 28.6, 1.4), disc(32.2, 26.8, 1.4), disc(33, 28.6, 1.4)].join('') },
    { d: [disc(16.4, 35, 1.3), disc(15.4, 33.4, 1.3), disc(31.6, 35, 1.3), disc(32.6, 33.4, 1.3)].join('') },
    ...fitted(0.8, -0.9, [
      { d: skull, line: 2.2, fill: 'white' },
      { d: skull },
      { d: `${disc(20, 19.6, 2.7)}${disc(28, 19.6, 2.7)}M24 22.2l1.6 3.4h-3.2z`, fill: 'white' },
      { d: 'M20.8 27.2v3M24 27.2v3M27.2 27.2v3', fill: 'white', line: 1 },
    ]),
  ],
  GHS07: [{ d: 'M21.2 10.4h5.6l-0.9 17.4h-3.8z' }, { d: disc(24, 33.6, 3) }],
  // Head and shoulders, the chest burst open.
  GHS08: fitted(0.8, -0.6, [{ d: disc(24, 13.6, 4.9) }, { d: 'M21.6 16h4.8v4.4h-4.8z' }, { d: torso }, { d: star, fill: 'white' }]),
  // A dead tree on the bank, a dead fish in the water.
  GHS09: [
    { d: 'M17.8 32.4C18.6 28 18.4 22 18.8 16.4', line: 2.6 },
    { d: 'M18.3 26L13.4 20.6M18.6 21.6L24.2 16M18.8 16.6L20.4 11.6', line: 1.7 },
    { d: 'M15.6 23L12.6 23.4M21.4 18.8L25.6 19.4M22.2 18L22.4 13.8M18.5 18.6L16 14.6', line: 1.2 },
    { d: 'M12 31.8H20.2C22.6 31.8 23.4 33.6 25.8 34.4C27.8 35 31 35 33.4 34L24 43.4z' },
    { d: fish },
    { d: disc(27.6, 28.9, 0.8), fill: 'white' },
  ],
}

/** The shapes of a symbol, in the order of drawing; none for a code that is no pictogram. */
export const symbolOf = (code: string): readonly Shape[] => symbols[code] ?? []

/** White square on its point with a red frame 3.4 wide, on a grid of 48. */
export const frame = { d: 'M24 2.6L45.4 24L24 45.4L2.6 24z', line: 3.4, red: '#d1141f' } as const

/** SVG attributes of a shape, by their names in markup. */
export function attributesOf({ d, fill = 'black', line, cap, transform }: Shape): Readonly<Record<string, string | number>> {
  const colour = fill === 'white' ? '#fff' : '#000'
  return {
    d,
    ...(line === undefined
      ? { fill: colour }
      : { fill: 'none', stroke: colour, 'stroke-width': line, 'stroke-linecap': cap ?? 'round', 'stroke-linejoin': 'round' }),
    ...(transform !== undefined && { transform }),
  }
}

/**
 * A pictogram as SVG text, for pages that are text.
 *
 * @param size with its unit, e.g. `8mm`
 * @returns empty for a code that is no pictogram
 */
export function pictogramSvg(code: string, size: string): string {
  const name = pictogramNames[code]
  if (name === undefined) return ''
  const markup = (shape: Shape): string =>
    `<path ${Object.entries(attributesOf(shape))
      .map(([key, value]) => `${key}="${value}"`)
      .join(' ')}/>`
  return (
    `<svg class="ghs" viewBox="0 0 48 48" width="${size}" height="${size}" role="img" aria-label="${name}">` +
    `<path d="${frame.d}" fill="#fff"/>${symbolOf(code).map(markup).join('')}` +
    `<path d="${frame.d}" fill="none" stroke="${frame.red}" stroke-width="${frame.line}"/></svg>`
  )
}
