/**
 * `npm run prove`: what the server promises, shown on the bundled server at full size, what is said of
 * needs, and what follows in random histories; `npm run prove -- needs` for what is named alone, and
 * `npm run prove -- histories --seed=7 --histories=100` for other histories. `npm run prove -- mutants` is
 * run only when it is named: it takes up to an hour. It takes `--seed=2` and `--of=lib/needs/judge.ts`.
 */
import { availableParallelism, loadavg } from 'node:os'
import { parseArgs } from 'node:util'
import { proveEnded } from '#tests/prove/ended.ts'
import { proveGuessing } from '#tests/prove/guessing.ts'
import { proveHistories } from '#tests/prove/histories.ts'
import { proveHouseDays } from '#tests/prove/house-days.ts'
import { proveKilled } from '#tests/prove/killed.ts'
import { proveKilledLarder } from '#tests/prove/killed-larder.ts'
import { proveManyScreens } from '#tests/prove/many-screens.ts'
import { proveMutants } from '#tests/prove/mutants/mutants.ts'
import { proveNeeds } from '#tests/prove/needs.ts'
import type { Proof } from '#tests/prove/proof.ts'
import { proveSyncs } from '#tests/prove/syncs.ts'

const MOST_FAILURES_SHOWN = 10
/** Histories that are lived without one of the rules until that is seen. */
const MOST_WITHOUT = 200

const { values, positionals: asked } = parseArgs({
  allowPositionals: true,
  options: {
    seed: { type: 'string', default: '1' },
    of: { type: 'string' },
    histories: { type: 'string', default: '1000' },
  },
})

const proofs: Readonly<Record<string, () => Promise<Proof>>> = {
  killed: () => proveKilled(200),
  'many-screens': () => proveManyScreens(50, 20, 30, true),
  syncs: () => proveSyncs(50),
  ended: () => proveEnded(200),
  guessing: () => proveGuessing(2_160),
  needs: () => proveNeeds(1000),
  histories: () => proveHistories(Number(values.histories), Number(values.seed), MOST_WITHOUT),
  'house-days': () => proveHouseDays(Number(values.histories), Number(values.seed)),
  'killed-larder': () => proveKilledLarder(20, 200, Number(values.seed)),
  mutants: () => proveMutants({ seed: Number(values.seed), of: values.of ?? null }),
}

/** So long that it is to be named. */
const ONLY_NAMED = ['mutants']

const unknown = asked.find((name) => !Object.hasOwn(proofs, name))
if (unknown !== undefined) {
  console.error(`no proof is called ${unknown}: there are ${Object.keys(proofs).join(', ')}`)
  process.exit(2)
}
const chosen = Object.entries(proofs).filter(([name]) =>
  asked.length === 0 ? !ONLY_NAMED.includes(name) : asked.includes(name),
)

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
