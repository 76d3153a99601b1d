import type { Source } from '../library/source.ts'

/** One thing to wear or to work in, and the codes that ask for it. */
export interface Protection {
  readonly what: 'eyes' | 'hands' | 'air' | 'ignition' | 'skin'
  readonly do: string
  readonly codes: readonly string[]
}

/** How sure the label is. `unknown` = no data, or an empty list that was only remembered: never safe. */
export type Known = 'seen' | 'remembered' | 'unknown'

/** Classes of design 3.14, worst first. `none` = none assigned, with a source. */
export type HazardClass = 'gravest' | 'unknown' | 'danger' | 'warning' | 'none'

/** One material of the plan with its label, at plan scale. */
export interface LabelledMaterial {
  readonly material: string
  readonly known: Known
  readonly class: HazardClass
  readonly codes: readonly { readonly code: string; readonly statement: string }[]
  readonly signalWord: 'Danger' | 'Warning' | 'none' | null
  /** GHS01 to GHS09 after the rules of precedence. */
  readonly pictograms: readonly string[]
  readonly precautions: readonly { readonly code: string; readonly statement: string }[]
  /** What to wear and where to work, from the codes; glove material is never guessed. */
  readonly protection: readonly Protection[]
  readonly from: string | null
  readonly sources: readonly Source[]
  /** What it is in the plan. */
  readonly as: readonly ('start' | 'charged' | 'made' | 'product' | 'by-product' | 'gas')[]
  readonly steps: readonly string[]
  /** At plan scale, all batches; null where the source leaves it open. */
  readonly massG: number | null
  readonly volumeMl: number | null
  readonly exposureLimit: string | null
  readonly note: string | null
  /** Whole days that it stands in the cabinet while the plan runs; null where the calendar does not tell, or where it is not kept. */
  readonly storedDays: number | null
}

/** Two or more materials that may not, or may only with care, come together. */
export interface Meeting {
  readonly where: 'step' | 'storage' | 'waste'
  /** Step number, storage group pair or waste stream. */
  readonly place: string
  readonly severity: 'never' | 'care' | 'note'
  readonly materials: readonly string[]
  readonly title: string
  readonly consequence: string
  readonly do: string
  /** The step is built for this meeting; its condition is told, never taken as met. */
  readonly intended: boolean
  /** A rule about one material or about a kind of step (a flame, a boiling chip), not about two that meet. Absent = two meet. */
  readonly general?: boolean
  readonly conditions: readonly string[]
  readonly sources: readonly Source[]
  /** In storage: whole days that they stand there at the same time; null where the calendar does not tell. Absent elsewhere. */
  readonly days?: number | null
}

export interface RegulatedHit {
  readonly material: string
  /** What stops, what needs a licence, what must be reported. */
  readonly action: 'stop' | 'licence' | 'reporting' | 'note'
  /** Full name of the list and its category. */
  readonly list: string
  readonly category: string
  readonly legal: string
  readonly reason: string
  /** The settings' buyer in the settings' region may not have it. */
  readonly barred: boolean
  readonly matchedBy: 'cas' | 'name' | 'structure' | 'family'
  readonly as: readonly string[]
  readonly sources: readonly Source[]
}

export interface GasLine {
  readonly step: string
  readonly compound: string
  /** Worst case, full conversion, 25 C and 1 atm. */
  readonly litresPerBatch: number
  readonly litres: number
  readonly freeVesselMl: number | null
  readonly from: 'source' | 'equation'
}

export interface WasteLine {
  readonly stream: string
  readonly name: string
  readonly container: string
  readonly massG: number | null
  readonly volumeMl: number | null
  /** Some part has no figure: the sums are a lower bound. */
  readonly open: boolean
  readonly from: readonly {
    readonly step: string
    readonly what: string
    readonly massG: number | null
    readonly volumeMl: number | null
    readonly materials: readonly string[]
    /** What has to be done before it goes in, as sentences: so that the container is given nothing that it forbids. */
    readonly first?: readonly string[]
  }[]
  readonly neverWith: readonly string[]
  /** What comes to it by day of work-up, in order; a date is null where the calendar gives none. Together they are all of it. */
  readonly byDay: readonly {
    readonly date: string | null
    readonly steps: readonly string[]
    readonly massG: number | null
    readonly volumeMl: number | null
  }[]
}

/** A residue that is destroyed before it goes into a container. */
export interface QuenchLine {
  readonly step: string
  /** Material of the charge that is left over. */
  readonly destroys: string
  /** `source` = the step's own quench lines; `planned` = reckoned by the equation, common practice without a source. */
  readonly from: 'source' | 'planned'
  readonly reagents: readonly {
    readonly name: string
    /** In the shopping list under this id; null where the library has no such material, and it is not in the list. */
    readonly material: string | null
    readonly massG: number | null
    readonly volumeMl: number | null
  }[]
  readonly do: string | null
  /** How to see that it is done. */
  readonly test: string
}

/** A peroxide former of the plan, with the bottles of it on the shelf. */
export interface PeroxideLine {
  readonly material: string
  /** A to D. */
  readonly class: string
  readonly action: string
  /** A bottle is tested or thrown out so many months after its opening. */
  readonly testAfterMonths: number
  readonly steps: readonly string[]
  readonly bottles: readonly {
    readonly opened: string | null
    readonly place: string | null
    readonly testBy: string | null
    /** Null where today is not known; true where nobody knows when it was opened. */
    readonly overdue: boolean | null
  }[]
  readonly mayBeBought: boolean
}

/** What a room could take of one volatile liquid, if all that stands on the bench at once evaporated, evenly mixed, with no change of air. */
export interface RoomLine {
  readonly material: string
  /** The step in which most of it stands there, and that amount: one batch. */
  readonly step: string
  readonly massG: number
  readonly volumeMl: number | null
  readonly flashC: number | null
  /** Exposure limit that was reckoned with. */
  readonly limit: string | null
  /** Air needed to stay at the limit; null without one. */
  readonly limitNeedsM3: number | null
  /** Air needed to stay at a tenth of a lower explosive limit of 1 %; null where its vapour does not burn at room temperature. */
  readonly fireNeedsM3: number | null
  readonly needsM3: number
  readonly roomM3: number | null
  readonly exceeds: boolean | null
}

/** Materials of a step or of the whole plan taken together: how many of each class, the strongest signal word, all pictograms. */
export interface HazardSummary {
  readonly counts: HazardCounts
  readonly signalWord: 'Danger' | 'Warning' | 'none' | null
  readonly pictograms: readonly string[]
}

/** Everything that can hurt, for the whole plan. */
export interface HazardList {
  /** Unknown first, then gravest, danger, warning, none. */
  readonly materials: readonly LabelledMaterial[]
  readonly meetings: readonly Meeting[]
  /** Stop rows first. Any stop row ends planning: `Evaluation.stopped` is then set and nothing else is reckoned. */
  readonly regulated: readonly RegulatedHit[]
  readonly gas: readonly GasLine[]
  readonly waste: readonly WasteLine[]
  /** Material ids without hazard data. */
  readonly unknown: readonly string[]
  /** Material ids with neither CAS nor structure: not screened against any list. */
  readonly notScreened: readonly string[]
  /** Step dangers in words: hazard notes, exotherm, hood, atmosphere, heated unattended. */
  readonly steps: readonly (HazardSummary & { readonly step: string; readonly notes: readonly string[] })[]
  readonly counts: HazardCounts
  /** Of the whole plan; null for the word where anything is unknown and nothing known asks for Danger. */
  readonly whole: HazardSummary
  readonly quench: readonly QuenchLine[]
  readonly peroxides: readonly PeroxideLine[]
  readonly room: readonly RoomLine[]
}

/** Materials counted once each by class; `none` is not counted. */
export interface HazardCounts {
  readonly gravest: number
  readonly unknown: number
  readonly danger: number
  readonly warning: number
}
