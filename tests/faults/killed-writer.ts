// Saves version after version of one plan and says so after each; meant to be killed.
import { openStore } from '../../server/store/store.ts'

const store = openStore(process.argv[2]!)
let version = store.get('p')?.version ?? store.create('p', 'P', 'body 1', 't').version
process.stdout.write(`ack ${version}\n`)
for (;;) {
  const saved = store.save('p', version, 'P', `body ${version + 1}`, 't')
  if (saved === null || saved === 'conflict') throw new Error('nobody else writes here')
  version = saved.version
  process.stdout.write(`ack ${version}\n`)
}
