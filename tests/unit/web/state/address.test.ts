import { describe, expect, it } from 'vitest'
import { addressWith, planInAddress } from '../../../../web/state/address.ts'

describe('address', () => {
  it('carries the id of a plan there and back', () => {
    const href = addressWith('http://bench.local/tools/?x=1', 'a b/c')
    expect(planInAddress(new URL(href).search)).toBe('a b/c')
    expect(new URL(href).searchParams.get('x')).toBe('1')
  })
  it('loses it again', () => {
    expect(planInAddress(new URL(addressWith('http://bench.local/?plan=p1', null)).search)).toBeNull()
  })
})
