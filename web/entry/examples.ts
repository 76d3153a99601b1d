import type { Writing } from './draft.ts'

/** A preparation to look at and to change; loading one can be taken back. */
export interface Example {
  readonly title: string
  readonly writing: Partial<Writing>
}

/** Figures as in the bundled records of the same preparations, with their sources there; set in our own words. */
export const examples: readonly Example[] = [
  {
    title: 'A condensation, by volume: benzoin',
    writing: {
      equation: '2 benzaldehyde -> benzoin',
      body: [
        '9.2 g thiamine hydrochloride',
        '32 mL water',
        '120 mL ethanol 95 %',
        '3 M NaOH, 20 mL',
        'benzaldehyde 60 mL',
        'warm at 60-65 C for 90 min',
        'recrystallised from 95 % EtOH (8 mL per gram)',
      ].join('\n'),
      outcome: '45-48 g',
      low: '72',
      typical: '',
      high: '77',
      hours: '30',
      handsOn: '2',
      holdPoint: 'weeks',
      vessel: 'flask',
      atmosphere: 'air',
      exotherm: 'none',
      hood: 'yes',
      source: 'hobby preparation page “Benzoin”, 60 mL benzaldehyde',
      known: 'checked',
    },
  },
  {
    title: 'An equation that does not balance yet: an ester',
    writing: {
      equation: 'isoamyl alcohol + acetic acid -> isoamyl acetate',
      body: '20 mL isoamyl alcohol\nglacial acetic acid 25 mL',
      outcome: '',
    },
  },
  {
    title: 'A name that is asked about',
    writing: {
      equation: 'benzoin + acetic anhydride -> benzoin acetate + acetic acid',
      body: '21.2 g benzoin\n20 mL acetic anhydride\n25 mL HCl',
      outcome: '22.5 g',
    },
  },
]
