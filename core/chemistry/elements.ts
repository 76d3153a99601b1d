/** One element: its name, and its atomic weight in g/mol, null where none is standardised (no stable isotope mix in nature). */
export interface Element {
  readonly name: string
  readonly atomicWeight: number | null
}

/**
 * Conventional atomic weights. Source: CIAAW, Standard atomic weights of the elements 2021 (Prohaska et al., Pure Appl. Chem. 94 (2022)
 * 573-600, doi 10.1515/pac-2019-0603), table 1: the standard value; for the fourteen elements whose standard is an interval (H Li B C N O
 * Mg Si S Cl Ar Br Tl Pb) the abridged single figure. Read in the transcription of that table in the public repository MilanSkocic/ciaaw
 * (data/src/saw_2021.txt), whose slip for tin (118.70) is mended to 118.710. The order is that of the atomic numbers.
 */
const rows: readonly (readonly [symbol: string, name: string, atomicWeight: number | null])[] = [
  ['H', 'hydrogen', 1.008],
  ['He', 'helium', 4.002602],
  ['Li', 'lithium', 6.94],
  ['Be', 'beryllium', 9.0121831],
  ['B', 'boron', 10.81],
  ['C', 'carbon', 12.011],
  ['N', 'nitrogen', 14.007],
  ['O', 'oxygen', 15.999],
  ['F', 'fluorine', 18.998403162],
  ['Ne', 'neon', 20.1797],
  ['Na', 'sodium', 22.98976928],
  ['Mg', 'magnesium', 24.305],
  ['Al', 'aluminium', 26.9815384],
  ['Si', 'silicon', 28.085],
  ['P', 'phosphorus', 30.973761998],
  ['S', 'sulfur', 32.06],
  ['Cl', 'chlorine', 35.45],
  ['Ar', 'argon', 39.95],
  ['K', 'potassium', 39.0983],
  ['Ca', 'calcium', 40.078],
  ['Sc', 'scandium', 44.955907],
  ['Ti', 'titanium', 47.867],
  ['V', 'vanadium', 50.9415],
  ['Cr', 'chromium', 51.9961],
  ['Mn', 'manganese', 54.938043],
  ['Fe', 'iron', 55.845],
  ['Co', 'cobalt', 58.933194],
  ['Ni', 'nickel', 58.6934],
  ['Cu', 'copper', 63.546],
  ['Zn', 'zinc', 65.38],
  ['Ga', 'gallium', 69.723],
  ['Ge', 'germanium', 72.63],
  ['As', 'arsenic', 74.921595],
  ['Se', 'selenium', 78.971],
  ['Br', 'bromine', 79.904],
  ['Kr', 'krypton', 83.798],
  ['Rb', 'rubidium', 85.4678],
  ['Sr', 'strontium', 87.62],
  ['Y', 'yttrium', 88.905838],
  ['Zr', 'zirconium', 91.224],
  ['Nb', 'niobium', 92.90637],
  ['Mo', 'molybdenum', 95.95],
  ['Tc', 'technetium', null],
  ['Ru', 'ruthenium', 101.07],
  ['Rh', 'rhodium', 102.90549],
  ['Pd', 'palladium', 106.42],
  ['Ag', 'silver', 107.8682],
  ['Cd', 'cadmium', 112.414],
  ['In', 'indium', 114.818],
  ['Sn', 'tin', 118.71],
  ['Sb', 'antimony', 121.76],
  ['Te', 'tellurium', 127.6],
  ['I', 'iodine', 126.90447],
  ['Xe', 'xenon', 131.293],
  ['Cs', 'caesium', 132.90545196],
  ['Ba', 'barium', 137.327],
  ['La', 'lanthanum', 138.90547],
  ['Ce', 'cerium', 140.116],
  ['Pr', 'praseodymium', 140.90766],
  ['Nd', 'neodymium', 144.242],
  ['Pm', 'promethium', null],
  ['Sm', 'samarium', 150.36],
  ['Eu', 'europium', 151.964],
  ['Gd', 'gadolinium', 157.25],
  ['Tb', 'terbium', 158.925354],
  ['Dy', 'dysprosium', 162.5],
  ['Ho', 'holmium', 164.930329],
  ['Er', 'erbium', 167.259],
  ['Tm', 'thulium', 168.934219],
  ['Yb', 'ytterbium', 173.045],
  ['Lu', 'lutetium', 174.9668],
  ['Hf', 'hafnium', 178.486],
  ['Ta', 'tantalum', 180.94788],
  ['W', 'tungsten', 183.84],
  ['Re', 'rhenium', 186.207],
  ['Os', 'osmium', 190.23],
  ['Ir', 'iridium', 192.217],
  ['Pt', 'platinum', 195.084],
  ['Au', 'gold', 196.96657],
  ['Hg', 'mercury', 200.592],
  ['Tl', 'thallium', 204.38],
  ['Pb', 'lead', 207.2],
  ['Bi', 'bismuth', 208.9804],
  ['Po', 'polonium', null],
  ['At', 'astatine', null],
  ['Rn', 'radon', null],
  ['Fr', 'francium', null],
  ['Ra', 'radium', null],
  ['Ac', 'actinium', null],
  ['Th', 'thorium', 232.0377],
  ['Pa', 'protactinium', 231.03588],
  ['U', 'uranium', 238.02891],
  ['Np', 'neptunium', null],
  ['Pu', 'plutonium', null],
  ['Am', 'americium', null],
  ['Cm', 'curium', null],
  ['Bk', 'berkelium', null],
  ['Cf', 'californium', null],
  ['Es', 'einsteinium', null],
  ['Fm', 'fermium', null],
  ['Md', 'mendelevium', null],
  ['No', 'nobelium', null],
  ['Lr', 'lawrencium', null],
  ['Rf', 'rutherfordium', null],
  ['Db', 'dubnium', null],
  ['Sg', 'seaborgium', null],
  ['Bh', 'bohrium', null],
  ['Hs', 'hassium', null],
  ['Mt', 'meitnerium', null],
  ['Ds', 'darmstadtium', null],
  ['Rg', 'roentgenium', null],
  ['Cn', 'copernicium', null],
  ['Nh', 'nihonium', null],
  ['Fl', 'flerovium', null],
  ['Mc', 'moscovium', null],
  ['Lv', 'livermorium', null],
  ['Ts', 'tennessine', null],
  ['Og', 'oganesson', null],
  // Named isotopes of hydrogen. Source: AME2020 atomic mass evaluation (Wang et al., Chinese Phys. C 45 (2021) 030003).
  ['D', 'deuterium', 2.014101778],
  ['T', 'tritium', 3.016049281],
]

// A Map, because symbols come from typed text: "constructor" must find nothing.
export const elements: ReadonlyMap<string, Element> = new Map(rows.map(([symbol, name, atomicWeight]) => [symbol, { name, atomicWeight }]))

/**
 * Atomic weight in g/mol.
 *
 * @throws RangeError for an unknown symbol or an element without a standard weight: our mistake, since formulas with these are refused
 */
export function atomicWeight(symbol: string): number {
  const weight = elements.get(symbol)?.atomicWeight ?? null
  if (weight === null) throw new RangeError(`${symbol} has no standard atomic weight`)
  return weight
}
