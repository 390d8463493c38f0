/** `npm run simulate -- pans --seed N --services M`: whole services by chance, with the figures as JSON. */
import { availableParallelism } from 'node:os'
import { parseArgs } from 'node:util'
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads'
import { reportOf } from '#tests/simulate/report.ts'
import type { World } from '#tests/simulate/scenario.ts'
import { runSchool, type SchoolRun, SERVICES_A_SCHOOL } from '#tests/simulate/school-run.ts'

interface Share {
  readonly world: World
  readonly seed: number
  readonly services: number
  /** Schools whose number leaves this remainder by `of`. */
  readonly part: number
  readonly of: number
}

const runShare = ({ world, seed, services, part, of }: Share): readonly SchoolRun[] => {
  const runs: SchoolRun[] = []
  const schools = Math.ceil(services / SERVICES_A_SCHOOL)
  for (let school = part; school < schools; school += of)
    runs.push(
      runSchool(
        seed,
        school,
        Math.min(SERVICES_A_SCHOOL, services - school * SERVICES_A_SCHOOL),
        world,
      ),
    )
  return runs
}

const inWorker = (share: Share): Promise<readonly SchoolRun[]> =>
  new Promise((resolve, reject) => {
    const worker = new Worker(new URL(import.meta.url), { workerData: share })
    worker.once('message', resolve)
    worker.once('error', reject)
    worker.once('exit', (code) => {
      if (code !== 0) reject(new Error(`a worker ended with ${code}`))
    })
  })

const USAGE = 'usage: npm run simulate -- pans [--seed N] [--services M] [--world plain|doors]'
const MOST_WORKERS = 2

const main = async (): Promise<void> => {
  const { positionals, values } = parseArgs({
    allowPositionals: true,
    options: {
      seed: { type: 'string', default: '1' },
      services: { type: 'string', default: '1600' },
      world: { type: 'string', default: 'plain' },
    },
  })
  const seed = Number(values.seed)
  const services = Number(values.services)
  const isWhole = Number.isSafeInteger(seed) && Number.isSafeInteger(services) && services > 0
  const world = values.world
  if (positionals.join(' ') !== 'pans' || !isWhole || (world !== 'plain' && world !== 'doors')) {
    console.error(USAGE)
    process.exitCode = 2
    return
  }
  const begun = performance.now()
  const of = Math.max(1, Math.min(MOST_WORKERS, availableParallelism()))
  const shares = Array.from(
    { length: of },
    (_, part): Share => ({ world, seed, services, part, of }),
  )
  const runs = (await Promise.all(shares.map(inWorker))).flat()
  const report = reportOf(seed, services, runs)
  const seconds = Math.round((performance.now() - begun) / 1_000)
  console.log(JSON.stringify({ world, ...report, seconds }, null, 2))
  process.exitCode = Object.values(report.checks).every(Boolean) ? 0 : 1
}

if (isMainThread) await main()
else parentPort?.postMessage(runShare(workerData as Share))
