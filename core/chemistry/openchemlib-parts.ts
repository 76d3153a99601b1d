/** The parts of openchemlib that are used, as the core sees them: the module itself is imported by whoever runs the core. */
export interface OpenChemLib {
  readonly Molecule: OclConstants
  readonly SmilesParser: new (options?: {
    smartsMode?: 'smarts'
  }) => {
    parseMolecule(smiles: string, options?: { noCoordinates?: boolean; noStereo?: boolean }): OclMolecule
  }
  readonly SSSearcher: new () => OclSearcher
}

export interface OclConstants {
  readonly cHelperNeighbours: number
  readonly cHelperRings: number
  readonly cHelperParities: number
  readonly cESRTypeAbs: number
  readonly cESRTypeAnd: number
  readonly cESRTypeOr: number
  readonly cAtomParityNone: number
  readonly cAtomParityUnknown: number
  readonly cBondParityUnknown: number
}

export interface OclMolecule {
  ensureHelperArrays(required: number): void
  getAllAtoms(): number
  getAtomLabel(atom: number): string
  getAtomMass(atom: number): number
  getAtomCharge(atom: number): number
  setAtomCharge(atom: number, charge: number): void
  /** Hydrogens that do not stand as atoms of their own. */
  getImplicitHydrogens(atom: number): number
  getAllHydrogens(atom: number): number
  getOccupiedValence(atom: number): number
  getMaxValence(atom: number): number
  getConnAtoms(atom: number): number
  getConnAtom(atom: number, index: number): number
  getConnBond(atom: number, index: number): number
  /** Not 0 where an electron is unpaired, stated or left over. */
  getAtomRadical(atom: number): number
  isRingAtom(atom: number): boolean
  isRingBond(bond: number): boolean
  getBondOrder(bond: number): number
  setBondOrder(bond: number, order: number): void
  markBondForDeletion(bond: number): void
  deleteMarkedAtomsAndBonds(): unknown
  getFragments(): OclMolecule[]
  getCompactCopy(): OclMolecule
  getIDCode(): string
  toIsomericSmiles(options?: { includeMapping?: boolean }): string
  getAllBonds(): number
  getAtomParity(atom: number): number
  getBondParity(bond: number): number
  getAtomMapNo(atom: number): number
  setAtomMapNo(atom: number, number: number, autoMapped: boolean): void
  getAtomESRType(atom: number): number
  getAtomESRGroup(atom: number): number
  setAtomESR(atom: number, type: number, group: number): void
  stripStereoInformation(): void
  setFragment(isFragment: boolean): void
}

export interface OclSearcher {
  setMolecule(molecule: OclMolecule): void
  setFragment(fragment: OclMolecule): void
  isFragmentInMolecule(): boolean
}
