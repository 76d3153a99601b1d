import { describe, expect, it } from 'vitest'
import { routeRows } from '../../../../core/choose/route-rows.ts'
import { evaluate } from '../../../../core/plan/evaluate.ts'
import { settingsSchema } from '../../../../core/plan/settings.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { bundledTraits } from '../../../support/bundled-traits.ts'

const { library } = bundled()
const { tables, traits } = bundledTraits()

// Regulation (EU) 2019/1148, Annex I: nitric acid above 3 % (a licence to 10 %) and ammonium nitrate above 16 % nitrogen are not for the
// public; copper(II) acetate and iron(III) chloride stand on no list.
describe.each(['lophine', '2-3-diphenylquinoxaline', 'tetraphenylcyclopentadienone', 'benzil'])(
  'to %s, bought by the public of the EU',
  to => {
    const answer = routeRows({
      library,

      traits,
      query: { from: 'benzoin', to },
      settings: settingsSchema.parse({ region: 'EU', buyer: 'public' }),
    })
    if (!answer.ok || answer.value.kind !== 'routes') throw new Error('no routes')
    const { routes, gentlest } = answer.value
    const isBarred = (row: { readonly flags: readonly { readonly kind: string }[] }) => row.flags.some(flag => flag.kind === 'barred')

    it('leads, of what they can have, with copper acetate', () => {
      expect(routes.find(row => !isBarred(row))!.steps).toContain('benzil-copper-acetate')
    })
    it('says first of each way what of it they cannot have, by name, and the next way that they can', () => {
      const barred = routes.filter(isBarred)
      expect(barred.map(row => row.steps[0])).toEqual(['benzil-nitric-acid', 'benzil-copper-ammonium-nitrate'])
      for (const row of barred)
        expect(row.flags[0]!.text).toMatch(
          /^The public cannot have (nitric acid, 70 %|ammonium nitrate): .*number \d+: benzil-copper-acetate/,
        )
    })
    it('never calls a way gentle that they cannot have', () => {
      if (gentlest) expect(isBarred(gentlest)).toBe(false)
    })
  },
)

describe('a plan with what its buyer cannot have', () => {
  const of = (buyer: 'public' | 'professional') => {
    const steps = ['benzil-nitric-acid'].map(transformation => ({ transformation, makes: 'benzil' }))
    const result = evaluate({
      library,
      tables,
      traits,
      solver: null,
      plan: {
        title: '',
        start: { material: 'benzoin', massG: 24 },
        goals: [{ target: 'benzil', amount: { kind: 'rest' }, route: { start: 'benzoin', target: 'benzil', steps } }],
        shelf: [],
        packs: null,
        settings: settingsSchema.parse({ region: 'EU', buyer }),
        log: [],
        seed: 1,
      },
    })
    if ('stopped' in result) throw new Error('stopped')
    return result.notes
  }
  it('says so before anything else', () => {
    expect(of('public')[0]).toMatchObject({ code: 'barred-for-buyer', what: 'The public cannot have nitric acid, 70 %.' })
    expect(of('professional').map(note => note.code)).not.toContain('barred-for-buyer')
  })
})
