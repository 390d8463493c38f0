/**
 * Keeps to lib/access/kept.ts: deletes what is over when it is over, and tells what is there. Each row
 * that ends with a service has its way of deleting here, and each row on this machine its way of
 * counting; one without doesn't compile.
 */
import type { Logger } from 'pino'
import { OF_GUESTS } from '#lib/access/apart.ts'
import {
  type BelievedTime,
  DAY_MS,
  firstSeen,
  goesAt,
  isToGo,
  type Over,
  observed,
  type Seen,
} from '#lib/access/believed-time.ts'
import { KEPT, type Kept, type KeptId, type KeptThat } from '#lib/access/kept.ts'
import type { PrivacyNow, ReasonsTold } from '#lib/access/kept-http.ts'
import { endsService } from '#lib/service/events/ends-service.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { isUnderWay } from '#lib/service/state.ts'
import { isOfTasting } from '#lib/tasting/stream.ts'
import type { Tasting } from '#lib/tasting/tasting.ts'
import type { EventLog } from '#server/event-log/port.ts'
import type { Guests } from '#server/guests/port.ts'
import type { Counting } from '#server/privacy/counting.ts'
import { commandsOf, reasonsIn } from '#server/privacy/guest.ts'
import { forgetLarderInitials, sweepLarderOrphans } from '#server/privacy/larder-initials.ts'
import type { RetentionStore } from '#server/privacy/retention-store.ts'
import { forgetTastings } from '#server/privacy/tasting-needs.ts'
import type { ServerClock } from '#server/rail/clock.ts'
import type { StationServices } from '#server/rail/station-services.ts'
import type { StoredAnswer } from '#server/rail/stored-answer.ts'
import type { KnownRecords } from '#server/records/known-records.ts'

export interface Keeping {
  /** Before anything is under way: deletes what a crash left, and sweeps. */
  begin(): Promise<void>
  /** Looks at the clocks, and deletes what is over by them. */
  sweep(): Promise<void>
  /** Names, reasons and free text of one guest at once; returns how many there were. */
  forget(service: string, ticket: number): Promise<number>
  onForgotten(listener: (service: string, commands: readonly string[]) => void): void
  reasonsOf(service: string, ticket?: number): Promise<ReasonsTold['reasons']>
  now(): Promise<PrivacyNow>
  setDays(days: number): Promise<void>
  /** Settles when nothing is being deleted any more. */
  idle(): Promise<void>
}

export interface KeepingPorts {
  readonly services: StationServices
  readonly log: Pick<EventLog<Recorded, StoredAnswer>, 'read' | 'services' | 'guards'>
  readonly guests: Guests
  readonly records: Pick<KnownRecords, 'all' | 'take' | 'idle'>
  readonly tastings: {
    readonly all: () => readonly Tasting[]
    readonly forgetMarks: (isToGo: (at: number) => boolean) => Promise<void>
  }
  readonly store: RetentionStore
  readonly clock: Pick<ServerClock, 'now' | 'monotonic'>
  readonly counting: Counting
  readonly logger: Logger
  /** The store failed: what was deleted is unknown, so the process ends. */
  readonly fatal: (error: unknown) => void
}

type Delete = (services: readonly string[]) => Promise<unknown>

const CLOSE = KEPT.filter(({ until }) => until === 'close')
const RETENTION = KEPT.filter(({ until }) => until === 'retention')

export const createKeeping = (ports: KeepingPorts): Keeping => {
  const { services, log, guests, records, store, clock } = ports
  const listeners: ((service: string, commands: readonly string[]) => void)[] = []
  const started = clock.monotonic()
  const before = store.time()?.last ?? { wall: 0, ran: 0, starts: 0 }
  let turn: Promise<unknown> = Promise.resolve()

  const each =
    (remove: (service: string) => Promise<unknown>): Delete =>
    async (all) => {
      for (const service of all) await remove(service)
    }

  const atClose: Readonly<Record<KeptThat<{ readonly until: 'close' }>, Delete>> = {
    names: each((service) => guests.forget(service, ['name'])),
    reasons: each((service) => guests.forget(service, ['reasons'])),
    texts: each((service) => guests.forget(service, ['text'])),
  }

  const atRetention: Readonly<Record<KeptThat<{ readonly until: 'retention' }>, Delete>> = {
    initials: each((service) => guests.forget(service, ['initials'])),
    streams: (all) => services.erase(all),
  }

  const by = async <Id extends KeptId>(
    ways: Readonly<Record<Id, Delete>>,
    rows: readonly Kept[],
    all: readonly string[],
  ): Promise<void> => {
    for (const { id } of rows) if (id in ways) await ways[id as Id](all)
  }

  /** Whether a service is closed, without reading a stream that has its record already. */
  const isClosed = async (service: string): Promise<boolean> => {
    const current = services.currents().find((rail) => rail.service === service)
    if (current) return !isUnderWay(current.state())
    if (records.all().some((one) => one.service === service)) return true
    const rail = await services.find(service)
    if (rail?.state().stage === 'closed') records.take(rail)
    return rail === null || !isUnderWay(rail.state())
  }

  const look = (): BelievedTime => {
    const seen: Seen = {
      wall: clock.now(),
      ran: before.ran + Math.round(clock.monotonic() - started),
      starts: before.starts + 1,
    }
    const kept = store.time()
    const newest = records.all().reduce((most, one) => Math.max(most, one.closedAt), 0)
    const time = kept ? observed(kept, seen) : firstSeen(seen, newest || null)
    store.setTime(time)
    return time
  }

  const overOf = (service: string, closedAt: number): Over => ({
    closedAt,
    seenAt: store.closes()[service] ?? null,
  })

  /** Those that go now, as their own streams say it: a record of before may be of the same id. */
  const dueNow = async (time: BelievedTime): Promise<readonly string[]> => {
    const days = store.days()
    const due: string[] = []
    const isBusy = services.currents().some((rail) => rail.state().stage === 'open')
    const recorded = new Map(records.all().map((one) => [one.service, one.closedAt]))
    for (const service of await log.services()) {
      const closedAt = recorded.get(service)
      if (closedAt === undefined || !(await isClosed(service))) continue
      if (!isToGo(overOf(service, closedAt), time, days)) continue
      const state = (await services.find(service))?.state()
      if (state?.stage !== 'closed' || state.closedAt === null) continue
      const over = overOf(service, state.closedAt)
      // Nobody waits for the disk in the rush, unless it was put off for a day already.
      if (isToGo(over, time, days + (isBusy ? 1 : 0))) due.push(service)
    }
    return due
  }

  const withoutClosesOf = async (gone: readonly string[]): Promise<void> => {
    const left = Object.entries(store.closes()).filter(([service]) => !gone.includes(service))
    store.setCloses(Object.fromEntries(left))
  }

  /** What was put ahead of an append that never came. Only while nothing is under way. */
  const withoutOrphans = async (): Promise<void> => {
    await sweepLarderOrphans(ports)
    for (const { service, state } of [...services.currents(), ...services.planned()]) {
      if (!isUnderWay(state())) continue
      const events = await log.read(service, 0)
      await guests.sweep(service, new Set(events.flatMap(({ command }) => command ?? [])))
    }
  }

  const sweep = async (): Promise<void> => {
    const time = look()
    const known = await log.services()
    const held = await guests.services()
    const lost = held.filter((service) => !known.includes(service) && !isOfTasting(service))
    await by(atRetention, RETENTION, lost)
    const closed = [...lost]
    // Asked of all, so that each has its record before its stream is due.
    for (const service of known)
      if ((await isClosed(service)) && held.includes(service)) closed.push(service)
    await by(atClose, CLOSE, closed)
    await forgetLarderInitials(ports, time, store.days())
    await forgetTastings(ports, time, store.days())
    await records.idle()
    const due = await dueNow(time)
    if (due.length === 0) return
    await by(atRetention, RETENTION, due)
    await withoutClosesOf(due)
    ports.logger.info({ services: due.length }, 'streams were erased')
  }

  const inTurn = <Result>(act: () => Promise<Result>): Promise<Result> => {
    const next = turn.then(act)
    turn = next.catch(() => undefined)
    return next
  }

  const orFatal = (act: () => Promise<void>): Promise<void> =>
    inTurn(act).catch((error: unknown) => {
      ports.logger.error({ err: error }, 'what is over was not deleted')
      ports.fatal(error)
    })

  services.onShow((rail, events) => {
    if (!events.some(endsService)) return
    void orFatal(async () => {
      store.setCloses({ ...store.closes(), [rail.service]: look().believed })
      await by(atClose, CLOSE, [rail.service])
    })
  })

  return {
    begin: () =>
      orFatal(async () => {
        await withoutOrphans()
        await sweep()
      }),
    sweep: () => orFatal(sweep),
    forget: (service, ticket) =>
      inTurn(async () => {
        const commands = commandsOf(await log.read(service, 0), ticket)
        const gone = await guests.forget(service, OF_GUESTS, commands)
        for (const listener of listeners) listener(service, commands)
        return gone
      }),
    onForgotten: (listener) => {
      listeners.push(listener)
    },
    reasonsOf: async (service, ticket) =>
      reasonsIn(await log.read(service, 0), await guests.of(service, 'reasons'), ticket),
    now: () =>
      inTurn(async () => {
        const time = look()
        const days = store.days()
        const there = new Set(await log.services())
        const goes = records
          .all()
          .filter(({ service }) => there.has(service))
          .map(({ service, closedAt }) => goesAt(overOf(service, closedAt), time, days))
        const counts = await ports.counting()
        return {
          days,
          rows: KEPT.map((row) => ({ ...row, now: counts[row.id] ?? null })),
          nextGoesAt: goes.length === 0 ? null : Math.min(...goes),
          clockInDoubt: time.other !== null && time.other.neededMs > DAY_MS,
        }
      }),
    setDays: (days) => inTurn(async () => store.setDays(days)),
    idle: async () => {
      await turn
    },
  }
}
