/** A job story: a fresh server, screens on it, and a lead who reads and sets the stock. */
import { join } from 'node:path'
import type { BrowserContextOptions, Page } from '@playwright/test'
import type { LarderRecorded } from '#lib/larder/event.ts'
import { isLarderStream } from '#lib/larder/stream.ts'
import type { Answer } from '#lib/protocol/wire.ts'
import { levelsOf } from '#lib/rooms/pans/facts/levels.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { isRunning, NOT_OPENED, type RunningState } from '#lib/service/state.ts'
import { stateHash } from '#lib/service/state-hash.ts'
import { evolve } from '#lib/spine/evolve.ts'
import type { Command } from '#lib/spine/registry.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { live } from '#lib/words/house/live-en.ts'
import { openSqliteLog } from '#server/event-log/sqlite.ts'
import type { StoredAnswer } from '#server/rail/stored-answer.ts'
import { root } from '#server/root.ts'
import { connectCrew, whenView } from '#server/shell/crew-connection.ts'
import { type House, type Houses, launchHouses } from '#tests/support/launch-houses.ts'
import {
  type Launch,
  type LaunchedServer,
  launchServer,
  temporaryFolder,
} from '#tests/support/launch-server.ts'
import { demoIn, publishIn, realService } from '#tests/support/own-station.ts'
import { signOn } from '#tests/support/play-scene.ts'
import { test as base, expect, untilHydrated } from './station.ts'

/** An entry of the log, as `npm run -s log` prints it. */
export type LogLine = Readonly<Record<string, unknown>> & {
  readonly position: number
  readonly type: string
  readonly command: string | null
}

/** Whole amounts by component, in milligrams or pieces. */
export type ByComponent = Readonly<Record<string, number>>

/** A lead beside the screens, over the same protocol. */
export interface Lead {
  state(): RunningState
  /** Sends, and fails the story unless it is accepted. */
  does(command: Command): Promise<void>
  answerTo(command: Command): Promise<Answer>
  inPan(): ByComponent
  /** In pan and in back-up pans, which a kept-apart build takes from. */
  held(): ByComponent
  onTickets(): ByComponent
  wasted(): ByComponent
  /** So many portions of a component, as an amount. */
  portions(component: string, count: number): number
}

/** The server's clock, where a story hangs on the time of day or takes hours. */
export interface ToldClock {
  /** Epoch milliseconds. */
  readonly beginsAt: number
  /** How long each `hoursPass` takes, milliseconds; what the machine slept through is a jump. */
  readonly passes: readonly (number | { readonly slept: number })[]
}

export interface Job {
  readonly lead: Lead
  /** The next of the told clock's times passes at once, and what fell due by it happens. */
  hoursPass(): Promise<void>
  /** Its data folder. */
  readonly data: string
  /** Opens a page that isn't live: it only asks. */
  openStill(path: string, isProved?: boolean): Promise<Page>
  /** Opens a screen in a browser context of its own, and waits until it is live. */
  open(path: string, options?: BrowserContextOptions): Promise<Page>
  /** The server stands still until `goOn`: what is sent meanwhile reaches it all at once. */
  holdStill(): void
  goOn(): void
  /** The person in charge signs on for the service. */
  signOn(): Promise<void>
  kill(): Promise<void>
  /** The same data folder and port. */
  startAgain(): Promise<void>
  /** Closes the screens and the server, and reads the log offline. */
  log(): Promise<readonly LogLine[]>
}

const LOADED_PANS = 10

/** A service's, of a server that ended: of an own station, else of the demo. */
export const readLog = async (data: string, service: string): Promise<readonly Recorded[]> => {
  for (const folder of [data, demoIn(data)]) {
    const log = openSqliteLog<Recorded, StoredAnswer>({ path: join(folder, 'log.db') })
    const entries = await log.read(service, 0)
    await log.close()
    if (entries.length > 0) return entries
  }
  return []
}

/** The larder of the own house, of a server that ended. */
export const readLarder = async (data: string): Promise<readonly LarderRecorded[]> => {
  const log = openSqliteLog<LarderRecorded, never>({ path: join(data, 'log.db') })
  const stream = (await log.services()).find(isLarderStream)
  const entries = stream === undefined ? [] : await log.read(stream, 0)
  await log.close()
  return entries
}

/** A real service of an own station, loaded as usual. */
export const openReal = async (
  client: ReturnType<typeof connectCrew>['client'],
  station: StationDocument,
): Promise<void> => {
  await whenView(client, ({ link }) => link === 'live')
  const now = performance.now() + client.view().serverOffset
  for (const command of realService(station, Math.floor(now))) {
    expect(await client.send(command), JSON.stringify(command)).toMatchObject({
      answer: 'accepted',
    })
    if (command.type === 'open') await whenView(client, ({ state }) => state.stage === 'open')
  }
}

const leadOf = ({ client }: ReturnType<typeof connectCrew>): Lead => {
  const state = (): RunningState => {
    const now = client.view().state
    if (!isRunning(now)) throw new Error('no service is open')
    return now
  }
  const levels = (column: 'inPan' | 'onTickets' | 'behind'): ByComponent =>
    Object.fromEntries(Object.entries(levelsOf(state())).map(([id, level]) => [id, level[column]]))
  return {
    state,
    does: async (command) => {
      expect(await client.send(command), JSON.stringify(command)).toMatchObject({
        answer: 'accepted',
      })
    },
    answerTo: (command) => client.send(command),
    inPan: () => levels('inPan'),
    held: () => {
      const behind = levels('behind')
      return Object.fromEntries(
        Object.entries(levels('inPan')).map(([id, amount]) => [id, amount + (behind[id] ?? 0)]),
      )
    },
    onTickets: () => levels('onTickets'),
    wasted: () =>
      Object.fromEntries(
        Object.entries(state().accounts).map(([id, account]) => [id, account.wasted]),
      ),
    portions: (component, count) => (state().portions[component]?.amount ?? Number.NaN) * count,
  }
}

/** What `before` is once so much of some components is gone; the others are as they were. */
export const less = (before: ByComponent, gone: ByComponent): ByComponent => ({
  ...before,
  ...Object.fromEntries(
    Object.entries(gone).map(([id, amount]) => [id, (before[id] ?? Number.NaN) - amount]),
  ),
})

const onClock = ({ beginsAt, passes }: ToldClock): Launch => ({
  nodeArguments: ['--import', join(root, 'tests/support/told-clock.mjs')],
  env: {
    LEVEL_SCOOP_TEST_BEGINS_AT: String(beginsAt),
    LEVEL_SCOOP_TEST_PASSES_MS: passes
      .map((one) => (typeof one === 'number' ? one : `s${one.slept}`))
      .join(','),
  },
})

/** An order that is refused, and after which all that fell due has happened. */
const NOTHING: Command = { type: 'answerAdvice', key: 'nothing', answer: 'done' }

/** What a story's screens and lead are served by. */
interface Served {
  readonly url: string
  readonly pageUrl: string
  readonly data: string
  health(): Promise<Record<string, unknown>>
  signal(name: NodeJS.Signals): void
  /** In order, and nothing was said on stderr. */
  end(): Promise<void>
}

const SAID = 'what the server said on stderr'

const alone = (server: LaunchedServer): Served => ({
  ...server,
  end: async () => {
    const { code, stderr } = await server.stop()
    expect(stderr, SAID).toBe('')
    expect(code, 'how the server ended').toBe(0)
  },
})

const among = (house: House): Served => ({
  ...house,
  end: async () => expect((await house.close()).stderr, SAID).toBe(''),
})

interface OfStory {
  readonly job: Job
  readonly clock: ToldClock | null
  /** Where the server is killed; with a told clock it has a process of its own as well. */
  readonly killed: boolean
  /** The house has these as its own, with a real service of the first; where there are none the demo is open. */
  readonly stations: readonly StationDocument[]
}

export const test = base.extend<OfStory, { readonly house: Houses['open'] }>({
  clock: [null, { option: true }],
  killed: [false, { option: true }],
  stations: [[], { option: true }],
  house: [
    async ({ browserName: _ }, use) => {
      let houses: Promise<Houses> | null = null
      await use(async (stations) => {
        houses ??= launchHouses()
        return (await houses).open(stations)
      })
      const ended = await (await (houses as Promise<Houses> | null))?.end()
      expect(ended?.code ?? 0, 'how the houses ended').toBe(0)
    },
    { scope: 'worker', timeout: 300_000 },
  ],
  job: async ({ open, clock, killed, house, stations }, use) => {
    const folder = temporaryFolder(true)
    if (stations.length > 0) await publishIn(folder, ...stations)
    const launch = { data: folder, ...(clock ? onClock(clock) : {}) }
    const own = killed || clock ? await launchServer(launch) : null
    let server: Served | null = own ? alone(own) : among(await house(stations))
    const { data, url, pageUrl } = server
    const connection = connectCrew(url, 'lead')
    const [first] = stations
    if (first) await openReal(connection.client, first)
    await whenView(connection.client, ({ state }) => {
      const loaded = Object.values(state.pans).filter((pan) => pan.amount > 0)
      return loaded.length === LOADED_PANS
    })
    const pages: Page[] = []
    let entries: readonly Recorded[] = []
    const end = async (): Promise<void> => {
      if (server === null) return
      for (const page of pages) await page.context().close()
      const health = await server.health()
      connection.close()
      await server.end()
      server = null
      // What falls due between the question and the end comes after this position.
      const served = health.service as { readonly id: string; readonly position: number } | null
      // A station was published in it, and none of its services opened.
      if (served === null) return
      entries = await readLog(data, served.id)
      const upto = entries.filter(({ position }) => position <= served.position)
      expect(served, 'the log folds to what was served').toMatchObject({
        position: upto.at(-1)?.position,
        hash: stateHash(upto.reduce(evolve, NOT_OPENED)),
      })
    }
    const openStill = async (path: string, isProved?: boolean): Promise<Page> => {
      const page = await open(`${pageUrl}${path}`, {}, isProved)
      pages.push(page)
      await untilHydrated(page)
      return page
    }
    const ahead = (): number => connection.client.view().serverOffset
    await use({
      lead: leadOf(connection),
      hoursPass: async () => {
        const before = ahead()
        server?.signal('SIGUSR2')
        await expect.poll(ahead).toBeGreaterThan(before + 5_000)
        await connection.client.send(NOTHING)
      },
      open: async (path, options) => {
        const page = await open(`${pageUrl}${path}`, options)
        pages.push(page)
        await expect(page.getByText(live.isLive, { exact: true }).first()).toBeVisible()
        return page
      },
      openStill,
      data,
      holdStill: () => server?.signal('SIGSTOP'),
      goOn: () => server?.signal('SIGCONT'),
      signOn: () => signOn(url),
      kill: async () => {
        expect((await own?.kill())?.signal).toBe('SIGKILL')
      },
      startAgain: async () => {
        if (own) server = alone(await launchServer({ data, port: own.port }))
      },
      log: async () => {
        await end()
        return entries.map((entry) => ({ ...entry }))
      },
    })
    await end()
  },
})

export { expect }
