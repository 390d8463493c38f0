/**
 * The two houses of a data folder: the own one, and the demo below it, which is opened beside it and
 * closed again. Each has its own files, so that nothing of one is in reach of the other.
 */
import { join } from 'node:path'
import type { WhichHouse } from '#lib/access/http.ts'
import { beginDemo, openNewDemo } from '#server/demo/open-demo.ts'
import { removeDemo } from '#server/demo/remove-demo.ts'
import { demoStation } from '#server/demo-station.ts'
import { type OpenHouse, openHouse } from '#server/houses/open-house.ts'

type Setup = Pick<Parameters<typeof openHouse>[0], 'clock' | 'logger' | 'fatal'> & {
  readonly path: string
}

export interface Houses {
  readonly own: OpenHouse
  /** Null while it is closed. */
  demo(): OpenHouse | null
  /** By default the own one once it has a station, before that the demo while it is open. */
  which(asked: WhichHouse | undefined): WhichHouse
  /** Null where the demo is meant and is closed. */
  find(asked: WhichHouse | undefined): OpenHouse | null
  /** Those that are open. */
  all(): readonly (readonly [WhichHouse, OpenHouse])[]
  /** One after the other; a demo that is opened has an open service, of one that is closed nothing stays. */
  setDemoOpen(open: boolean): Promise<void>
  /** Called for what is open, and what is opened from then on. */
  onOpened(listener: (which: WhichHouse, house: OpenHouse) => void): void
  /** Called before it is closed. */
  onClosing(listener: (house: OpenHouse) => void): void
  finish(): Promise<void>
  quiet(): void
  closeStores(): Promise<void>
}

/** Below the data folder. */
const DEMO_FOLDER = 'demo'

/** @throws {StoreProblem} as a house does */
export const openHouses = async ({ path, ...setup }: Setup): Promise<Houses> => {
  const own = await openHouse({ path, ...setup })
  const isOpen = own.database.prepare<[], number | null>('SELECT demo_open FROM house').pluck()
  const keepOpen = own.database.prepare<[number]>('UPDATE house SET demo_open = ?')
  const openedListeners: ((which: WhichHouse, house: OpenHouse) => void)[] = []
  const closingListeners: ((house: OpenHouse) => void)[] = []
  let turn: Promise<unknown> = Promise.resolve()
  const demoFolder = join(own.folder.path, DEMO_FOLDER)
  let demo: OpenHouse | null = null

  const openDemo = (): Promise<OpenHouse> =>
    openHouse({
      path: demoFolder,
      ...setup,
      first: demoStation,
      begin: (services, stations) => beginDemo(services, stations.first(), setup.clock.now()),
    })
  if (own.stations.first() === null || isOpen.get() === 1) demo = await openDemo()
  // Of one that was closed as the server ended, or that nobody opened since the first own station.
  else removeDemo(demoFolder)

  const close = async (house: OpenHouse): Promise<void> => {
    demo = null
    for (const listener of closingListeners) listener(house)
    await house.finish()
    house.quiet()
    await house.closeStores()
    removeDemo(demoFolder)
  }

  const set = async (open: boolean): Promise<void> => {
    keepOpen.run(open ? 1 : 0)
    if (!open) {
      if (demo) await close(demo)
      return
    }
    const opened = demo ?? (await openDemo())
    await openNewDemo(opened.services, opened.stations.first(), setup.clock.now())
    if (demo) return
    demo = opened
    for (const listener of openedListeners) listener('demo', opened)
  }

  const which: Houses['which'] = (asked) =>
    asked ?? (own.stations.first() === null && demo !== null ? 'demo' : 'own')
  const all: Houses['all'] = () => [['own', own], ...(demo ? [['demo', demo] as const] : [])]

  return {
    own,
    demo: () => demo,
    which,
    find: (asked) => (which(asked) === 'own' ? own : demo),
    all,
    setDemoOpen: (open) => {
      const next = turn.then(() => set(open))
      turn = next.catch(() => undefined)
      return next
    },
    onOpened: (listener) => {
      openedListeners.push(listener)
      for (const [name, house] of all()) listener(name, house)
    },
    onClosing: (listener) => {
      closingListeners.push(listener)
    },
    finish: async () => {
      await turn
      for (const [, house] of all()) await house.finish()
    },
    quiet: () => {
      for (const [, house] of all()) house.quiet()
    },
    closeStores: async () => {
      for (const [, house] of all().toReversed()) await house.closeStores()
    },
  }
}
