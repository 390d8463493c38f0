/**
 * `npm run prove`: what the server promises, shown on the bundled server at full size, and what is
 * said of needs; `npm run prove -- needs` for what is named alone.
 */
import { availableParallelism, loadavg } from 'node:os'
import { proveEnded } from '#tests/prove/ended.ts'
import { proveKilled } from '#tests/prove/killed.ts'
import { proveManyScreens } from '#tests/prove/many-screens.ts'
import { proveNeeds } from '#tests/prove/needs.ts'
import type { Proof } from '#tests/prove/proof.ts'
import { proveSyncs } from '#tests/prove/syncs.ts'

const MOST_FAILURES_SHOWN = 10

const proofs: Readonly<Record<string, () => Promise<Proof>>> = {
  killed: () => proveKilled(200),
  'many-screens': () => proveManyScreens(50, 20, 30, true),
  syncs: () => proveSyncs(50),
  ended: () => proveEnded(200),
  needs: () => proveNeeds(1000),
}

const asked = process.argv.slice(2)
const unknown = asked.find((name) => !Object.hasOwn(proofs, name))
if (unknown !== undefined) {
  console.error(`no proof is called ${unknown}: there are ${Object.keys(proofs).join(', ')}`)
  process.exit(2)
}
const chosen = Object.entries(proofs).filter(([name]) => asked.length === 0 || asked.includes(name))

const load = (): string => (loadavg()[0] ?? 0).toFixed(1)

console.log(`${availableParallelism()} cores, load ${load()} before`)
let failed = 0
for (const [, prove] of chosen) {
  const { title, figures, failures } = await prove()
  if (failures.length > 0) failed += 1
  console.log(`${failures.length === 0 ? 'ok    ' : 'FAILED'} ${title}`)
  for (const figure of figures) console.log(`       ${figure}`)
  for (const failure of failures.slice(0, MOST_FAILURES_SHOWN)) console.log(`       ! ${failure}`)
  if (failures.length > MOST_FAILURES_SHOWN)
    console.log(`       ! and ${failures.length - MOST_FAILURES_SHOWN} more`)
}
console.log(`${chosen.length - failed} of ${chosen.length} proofs hold; load ${load()} after`)
process.exit(failed === 0 ? 0 : 1)
