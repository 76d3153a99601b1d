import { describe, expect, it } from 'vitest'
import { readHave } from '../../../../web/parts/have-text.ts'

describe('readHave', () => {
  it.each([
    ['24 g benzoin', 'benzoin', 24, 'g'],
    ['24 g of benzoin', 'benzoin', 24, 'g'],
    ['24g benzoin', 'benzoin', 24, 'g'],
    ['1,5 kg copper', 'copper', 1.5, 'kg'],
    ['250 mL castor oil', 'castor oil', 250, 'mL'],
    ['benzoin 24 g', 'benzoin', 24, 'g'],
    ['castor oil, 50 mL', 'castor oil', 50, 'mL'],
    ['5 g 1,3-diphenylacetone', '1,3-diphenylacetone', 5, 'g'],
    ['0.1 mol 2-naphthol', '2-naphthol', 0.1, 'mol'],
  ])('reads "%s"', (text, name, value, unit) => {
    expect(readHave(text)).toMatchObject({ name, amount: { value, unit } })
  })

  it.each(['benzoin', '1,3-diphenylacetone', '2-naphthol', '2,3-diphenylquinoxaline', 'CuSO4', '119-53-9', 'cinnamon bark'])(
    'takes "%s" for a name',
    name => {
      expect(readHave(name)).toEqual({ name, amountText: null, amount: null })
    },
  )

  it('keeps an amount that cannot be read, so that it can be told', () => {
    expect(readHave('24 parsecs benzoin')).toEqual({ name: 'benzoin', amountText: '24 parsecs', amount: null })
    expect(readHave('-3 g benzoin')).toMatchObject({ name: 'benzoin', amountText: '-3 g', amount: null })
  })
})
