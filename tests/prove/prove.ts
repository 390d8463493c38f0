/** `npm run prove`: what the server promises, shown on the bundled server at full size. */
import { availableParallelism, loadavg } from 'node:os'
import { proveEnded } from '#tests/prove/ended.ts'
import { proveKilled } from '#tests/prove/killed.ts'
import { proveManyScreens } from '#tests/prove/many-screens.ts'
import type { Proof } from '#tests/prove/proof.ts'
import { proveSyncs } from '#tests/prove/syncs.ts'

const MOST_FAILURES_SHOWN = 10

const proofs: readonly (() => Promise<Proof>)[] = [
  () => proveKilled(200),
  () => proveManyScreens(50, 20, 30, true),
  () => proveSyncs(50),
  () => proveEnded(200),
]

const load = (): string => (loadavg()[0] ?? 0).toFixed(1)

console.log(`${availableParallelism()} cores, load ${load()} before`)
let failed = 0
for (const prove of proofs) {
  const { title, figures, failures } = await prove()
  if (failures.length > 0) failed += 1
  console.log(`${failures.length === 0 ? 'ok    ' : 'FAILED'} ${title}`)
  for (const figure of figures) console.log(`       ${figure}`)
  for (const failure of failures.slice(0, MOST_FAILURES_SHOWN)) console.log(`       ! ${failure}`)
  if (failures.length > MOST_FAILURES_SHOWN)
    console.log(`       ! and ${failures.length - MOST_FAILURES_SHOWN} more`)
}
console.log(`${proofs.length - failed} of ${proofs.length} proofs hold; load ${load()} after`)
process.exit(failed === 0 ? 0 : 1)
