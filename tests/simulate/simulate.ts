/**
 * `npm run simulate -- pans --seed N --services M`: whole services by chance; `-- days --seed N --weeks M`:
 * stations over weeks. The figures as JSON.
 */
import { availableParallelism } from 'node:os'
import { parseArgs } from 'node:util'
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads'
import { daysReport } from '#tests/simulate/days/report.ts'
import { runStation, type StationRun, stationSeed } from '#tests/simulate/days/run.ts'
import { reportOf } from '#tests/simulate/report.ts'
import type { World } from '#tests/simulate/scenario.ts'
import { runSchool, type SchoolRun, SERVICES_A_SCHOOL } from '#tests/simulate/school-run.ts'

interface PansShare {
  readonly what: 'pans'
  readonly world: World
  readonly seed: number
  readonly services: number
  /** Schools whose number leaves this remainder by `of`. */
  readonly part: number
  readonly of: number
}

interface DaysShare {
  readonly what: 'days'
  readonly seed: number
  readonly weeks: number
  readonly stations: number
  readonly part: number
  readonly of: number
}

const runStations = ({ seed, weeks, stations, part, of }: DaysShare): readonly StationRun[] => {
  const runs: StationRun[] = []
  for (let station = part; station < stations; station += of)
    runs.push(runStation(stationSeed(seed, station), weeks, { planner: true }))
  return runs
}

const runShare = ({ world, seed, services, part, of }: PansShare): readonly SchoolRun[] => {
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

const inWorker = <Run>(share: PansShare | DaysShare): Promise<readonly Run[]> =>
  new Promise((resolve, reject) => {
    const worker = new Worker(new URL(import.meta.url), { workerData: share })
    worker.once('message', resolve)
    worker.once('error', reject)
    worker.once('exit', (code) => {
      if (code !== 0) reject(new Error(`a worker ended with ${code}`))
    })
  })

const USAGE = `usage: npm run simulate -- pans [--seed N] [--services M] [--world plain|doors]
       npm run simulate -- days [--seed N] [--weeks M] [--stations K]`
const MOST_WORKERS = 2

/** Runs shares of the work side by side. */
const shared = async <Run>(
  shareOf: (part: number, of: number) => PansShare | DaysShare,
): Promise<readonly Run[]> => {
  const of = Math.max(1, Math.min(MOST_WORKERS, availableParallelism()))
  const shares = Array.from({ length: of }, (_, part) => inWorker<Run>(shareOf(part, of)))
  return (await Promise.all(shares)).flat()
}

interface Report {
  readonly checks: Readonly<Record<string, boolean>>
}

const show = <Of extends Report>(report: Of, begun: number): void => {
  const seconds = Math.round((performance.now() - begun) / 1_000)
  console.log(JSON.stringify({ ...report, seconds }, null, 2))
  process.exitCode = Object.values(report.checks).every(Boolean) ? 0 : 1
}

const simulatePans = async (seed: number, services: number, world: World): Promise<void> => {
  const begun = performance.now()
  const runs = await shared<SchoolRun>((part, of) => ({
    ...{ what: 'pans', world, seed, services, part, of },
  }))
  show({ world, ...reportOf(seed, services, runs) }, begun)
}

const simulateDays = async (seed: number, weeks: number, stations: number): Promise<void> => {
  const begun = performance.now()
  const runs = await shared<StationRun>((part, of) => ({
    ...{ what: 'days', seed, weeks, stations, part, of },
  }))
  show(daysReport(seed, weeks, runs), begun)
}

const wholeOf = (text: string, least: number): number | null => {
  const value = Number(text)
  return Number.isSafeInteger(value) && value >= least ? value : null
}

const main = async (): Promise<void> => {
  const { positionals, values } = parseArgs({
    allowPositionals: true,
    options: {
      seed: { type: 'string', default: '1' },
      services: { type: 'string', default: '1600' },
      weeks: { type: 'string', default: '8' },
      stations: { type: 'string', default: '12' },
      world: { type: 'string', default: 'plain' },
    },
  })
  const { world } = values
  const what = positionals.join(' ')
  const seed = wholeOf(values.seed, Number.MIN_SAFE_INTEGER)
  const [services, weeks, stations] = [values.services, values.weeks, values.stations].map((one) =>
    wholeOf(one, 1),
  )
  if (what === 'pans' && seed !== null && services && (world === 'plain' || world === 'doors'))
    return simulatePans(seed, services, world)
  if (what === 'days' && seed !== null && weeks && stations)
    return simulateDays(seed, weeks, stations)
  console.error(USAGE)
  process.exitCode = 2
}

const runAny = (share: PansShare | DaysShare): readonly SchoolRun[] | readonly StationRun[] =>
  share.what === 'pans' ? runShare(share) : runStations(share)

if (isMainThread) await main()
else parentPort?.postMessage(runAny(workerData as PansShare | DaysShare))
