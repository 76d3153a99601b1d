import { describe, expect, it } from 'vitest'
import type { Material } from '../../../../core/library/material.ts'
import { draftName, draftOf, type MaterialDrafts, noDrafts, turnedTo } from '../../../../web/entry/material-drafts.ts'
import { emptyMaterial, type TypedMaterial } from '../../../../web/entry/material-typed.ts'
import { filledFrom } from '../../../../web/entry/mending.ts'
import { material } from '../../../support/small-library.ts'

const none = new Set<number>()
const record = (over: Material) => draftOf({ ...emptyMaterial, ...filledFrom(over, String) })
const typing = ({ now, others }: MaterialDrafts, patch: Partial<TypedMaterial>): MaterialDrafts => ({
  now: { ...now, typed: { ...now.typed, ...patch } },
  others,
})
const blank = draftOf(emptyMaterial)
const salt = material({ id: 'salt', name: 'salt', meltingC: 800 })
const oil = material({ id: 'oil', name: 'oil', form: 'liquid' })
const names = ({ others }: MaterialDrafts): string[] => others.map(draftName)

describe('what is typed of one material', () => {
  it('waits while another one has the page, and comes back letter for letter', () => {
    const begun = typing(noDrafts, { name: 'hexyl butan', density: '0.8' })
    const atSalt = typing(turnedTo(begun, record(salt), none), { melting: '801' })
    expect(names(atSalt)).toEqual(['hexyl butan'])
    const asked = draftOf({ ...emptyMaterial, name: 'lime' }, { text: 'lime', line: null })
    const atLime = typing(turnedTo(atSalt, asked, none), { form: 'gas' })
    const atOil = turnedTo(atLime, record(oil), none)
    expect(names(atOil)).toEqual(['lime', 'salt', 'hexyl butan'])
    // Nothing was typed over the oil: it does not wait.
    const back = turnedTo(atOil, blank, none)
    expect(back.now).toEqual(begun.now)
    expect(names(back)).toEqual(['lime', 'salt'])
    expect(turnedTo(back, record(salt), none).now.typed).toEqual(atSalt.now.typed)
    expect(turnedTo(back, asked, none).now.typed.form).toBe('gas')
  })

  it('is done with once it is saved, until that is taken back or more is typed', () => {
    const typed = { ...emptyMaterial, name: 'hexyl butanoate' }
    const saved: MaterialDrafts = { now: { typed, called: null, begun: typed, saved: 4 }, others: [] }
    expect(names(turnedTo(saved, record(salt), none))).toEqual([])
    expect(names(turnedTo(saved, record(salt), new Set([4])))).toEqual(['hexyl butanoate'])
    expect(names(turnedTo(typing(saved, { cas: '1' }), record(salt), none))).toEqual(['hexyl butanoate'])
  })

  it('stands over the record as it reads now, where that has changed meanwhile', () => {
    const typed = typing({ now: record(salt), others: [] }, { density: '2.1', known: 'own', source: 'page 3' })
    const away = turnedTo(typed, blank, none)
    const now = { ...salt, meltingC: 801, cas: '7647-14-5' }
    expect(turnedTo(away, record(now), none).now.typed).toMatchObject({
      ...{ density: '2.1', known: 'own', source: 'page 3' },
      ...{ melting: '801', cas: '7647-14-5', over: now },
    })
  })
})
