import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import { idSchema } from '../../core/library/source.ts'
import { type Settings, settingsSchema } from '../../core/plan/settings.ts'
import { type PacksFile, packsFileSchema } from '../../core/shopping/packs.ts'
import { type ShelfFile, shelfFileSchema } from '../../core/shopping/shelf.ts'
import { dataFolder } from './bundled.ts'

const waysInSchema = z.array(
  z.strictObject({
    title: z.string(),
    /** Where the bench is worked otherwise for it than the settings say. */
    windows: settingsSchema.shape.windows.unwrap().optional(),
    start: z.strictObject({ material: idSchema, massG: z.number().positive() }),
    goals: z.array(
      z.strictObject({
        target: idSchema,
        steps: z.array(idSchema).optional(),
        amount: z.union([
          z.strictObject({ kind: z.literal('mass'), massG: z.number().positive() }),
          z.strictObject({ kind: z.literal('share'), fraction: z.number().gt(0).lte(1) }),
          z.strictObject({ kind: z.literal('rest') }),
        ]),
      }),
    ),
  }),
)

/** What the demo consists of; all of it is invented and says so. */
export interface Demo {
  readonly shelf: ShelfFile['items']
  readonly packs: PacksFile
  readonly settings: Settings
  readonly waysIn: z.infer<typeof waysInSchema>
}

const read = (name: string): unknown => JSON.parse(readFileSync(join(dataFolder(), 'demo', `${name}.json`), 'utf8'))

/** The parts of the demo, read and checked at each call: they are small and a keeper may be editing them. */
export const demoParts = (): Demo => ({
  shelf: shelfFileSchema.parse(read('shelf')).items,
  packs: packsFileSchema.parse(read('packs')),
  settings: settingsSchema.parse(read('settings')),
  waysIn: waysInSchema.parse(read('ways-in')),
})
