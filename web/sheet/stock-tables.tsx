import { packsToCsv } from '../../core/shopping/packs-csv.ts'
import { shelfToCsv } from '../../core/shopping/shelf-csv.ts'
import { server } from '../api/client.ts'
import { TableFile } from '../parts/table-file.tsx'
import { bringFacts } from '../state/facts-asked.ts'
import { change, plan } from '../state/store.ts'
import { Take } from './take-away.tsx'

/** The shelf in and out as a table. */
export function ShelfTable() {
  const { shelf } = plan.value
  return (
    <div class="dos s">
      <TableFile
        label="Read a table of bottles (CSV)"
        one="bottle"
        read={async (name, text) => {
          const reply = await server.shelfTable(name, text)
          if (reply.items.length > 0) {
            void bringFacts(
              [],
              reply.items.map(item => item.material),
            )
            change({ do: 'stock', shelf: [...plan.value.shelf, ...reply.items] })
          }
          return { ...reply, taken: reply.items.length }
        }}
      />
      {shelf.length > 0 && (
        <Take name="waybench-shelf.csv" type="text/csv" text={() => shelfToCsv(plan.value.shelf)}>
          the shelf as a table
        </Take>
      )}
    </div>
  )
}

/** Packs and prices in and out as a table; what is read comes on top of what is there. */
export function PacksTable() {
  const { packs } = plan.value
  return (
    <div class="dos s">
      <TableFile
        label="Read a table of packs and prices (CSV)"
        one="pack"
        read={async (name, text) => {
          const before = plan.value.packs ?? { format: 'waybench-packs', version: 1, currency: 'EUR', suppliers: [], packs: [] }
          const reply = await server.packsTable(name, text, before)
          if (reply.taken > 0) change({ do: 'packs', packs: reply.packs })
          return reply
        }}
      />
      {packs !== null && (
        <Take name="waybench-packs.csv" type="text/csv" text={() => packsToCsv(packs)}>
          packs as a table
        </Take>
      )}
    </div>
  )
}
