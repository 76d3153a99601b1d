import fc from 'fast-check'
import type { z } from 'zod'
import { type Material, materialSchema } from '../../core/library/material.ts'
import { idSchema } from '../../core/library/source.ts'
import { type ChargeLine, chargeLineSchema, type Transformation, transformationSchema } from '../../core/library/transformation.ts'

/** Texts that tables and data fields stumble over: quotes, separators, signs of formulas, blanks at the ends, marks of formats, other scripts. */
export const anyText = fc.oneof(
  { weight: 3, arbitrary: fc.string({ minLength: 1, maxLength: 30 }) },
  fc.string({ unit: 'binary', minLength: 1, maxLength: 20 }),
  fc.string({ minLength: 70, maxLength: 180 }),
  fc.constantFrom(
    ...['=1+1', '+2', '-3', '@x', "'=x", "''", ' blank ', '"quoted"', 'a,b;c\td', 'line\nbreak', '> <id>', '$$$$', 'M  END'],
    ...[
      '\ufeffbom',
      'مادة',
      '[1]',
      'null',
      'true',
      '1e5',
      '{"a":1}',
      '$RXN',
      '$DTYPE waybench:id',
      '\ud800',
      'line\u2028sign\u2029',
      '| bar',
      '# no remark',
    ],
  ),
)
export const anyId = fc.stringMatching(/^[a-z0-9]{1,8}(-[a-z0-9]{1,5}){0,2}$/)

/** Values that a schema takes: read off the schema itself, so that a key that is added is tried too. */
function anyOf(schema: z.ZodType): fc.Arbitrary<unknown> {
  const def = schema.def as z.core.$ZodTypeDef & {
    innerType: z.ZodType
    element: z.ZodType
    items: z.ZodType[]
    shape: Record<string, z.ZodType>
  }
  switch (def.type) {
    case 'optional':
      return anyOf(def.innerType)
    case 'nullable':
      return fc.option(anyOf(def.innerType), { nil: null })
    case 'boolean':
      return fc.boolean()
    case 'enum':
      return fc.constantFrom(...(schema as z.ZodEnum).options)
    case 'string':
      return schema === idSchema ? anyId : anyText
    case 'number': {
      const { minValue, maxValue, format } = schema as z.ZodNumber
      const [min, max] = [Math.max(minValue ?? -1e9, -1e9), Math.min(maxValue ?? 1e9, 1e9)]
      return (format === 'safeint' ? fc.integer({ min: -999, max: 999 }) : fc.double({ min, max, noNaN: true })).filter(
        value => schema.safeParse(value).success,
      )
    }
    case 'array':
      return fc.array(anyOf(def.element), { maxLength: 3 }).filter(list => schema.safeParse(list).success)
    case 'tuple':
      return fc.tuple(...def.items.map(anyOf))
    case 'object': {
      const entries = Object.entries(def.shape)
      const requiredKeys = entries.filter(([, inner]) => inner.def.type !== 'optional').map(([key]) => key)
      return fc.record(Object.fromEntries(entries.map(([key, inner]) => [key, anyOf(inner)])), { requiredKeys })
    }
    default:
      throw new RangeError(`no values are made for ${def.type}`)
  }
}

/** As JSON holds it: zero has no sign. */
const asJson = <T>(made: fc.Arbitrary<unknown>): fc.Arbitrary<T> => made.map(one => JSON.parse(JSON.stringify(one)) as T)

/** Records that have the form and need make no sense otherwise. */
export const anyMaterial = asJson<Material>(anyOf(materialSchema))
export const anyTransformation = asJson<Transformation>(anyOf(transformationSchema))
export const anyCharge = asJson<ChargeLine[]>(fc.array(anyOf(chargeLineSchema), { minLength: 1, maxLength: 6 }))
