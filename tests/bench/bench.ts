/** `npm run bench`: what is measured against a bound, with the figures. */
import { availableParallelism, loadavg } from 'node:os'
import { benchCommandCost } from '#tests/bench/command-cost.ts'
import { benchConsequences } from '#tests/bench/consequences.ts'
import { benchDurableCommits } from '#tests/bench/durable-commits.ts'
import { benchFirstLoad } from '#tests/bench/first-load.ts'
import { benchForecasts } from '#tests/bench/forecasts.ts'
import { benchProjecting } from '#tests/bench/projecting.ts'
import type { Verdict } from '#tests/bench/verdict.ts'
import { benchVerdicts } from '#tests/bench/verdicts.ts'

const benches: readonly (() => Verdict | Promise<Verdict>)[] = [
  () => benchCommandCost(100, 20_000),
  () => benchConsequences(2_000),
  () => benchProjecting(20_000),
  benchDurableCommits,
  benchFirstLoad,
  benchVerdicts,
  benchForecasts,
]

const load = (): string => (loadavg()[0] ?? 0).toFixed(1)

console.log(`${availableParallelism()} cores, load ${load()} before`)
let over = 0
for (const bench of benches) {
  const { title, figures, isWithin } = await bench()
  if (!isWithin) over += 1
  console.log(`${isWithin ? 'ok    ' : 'FAILED'} ${title}`)
  for (const figure of figures) console.log(`       ${figure}`)
}
console.log(
  `${benches.length - over} of ${benches.length} benches within their bounds; load ${load()} after`,
)
process.exit(over === 0 ? 0 : 1)
