/**
 * The one writer of a service. It takes the commands that arrived since its last append, decides
 * them in order on the state as it will be, appends events and answers together, then shows, then
 * answers. Nothing is shown or acknowledged before it is durable.
 */
import type { Answer } from '#lib/protocol/wire.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import type { Role } from '#lib/service/roles.ts'
import { isUnderWay, NOT_OPENED, type ServiceState } from '#lib/service/state.ts'
import { nextDue } from '#lib/spine/due.ts'
import { evolve } from '#lib/spine/evolve.ts'
import type { Command } from '#lib/spine/registry.ts'
import { createBatch, type Note, type Ordered } from '#server/rail/batch.ts'
import { JUMP_MS } from '#server/rail/clock.ts'
import { withoutReasons } from '#server/rail/old-reasons.ts'
import { holdStation, openGuards, openVersions } from '#server/rail/open-guard.ts'
import { planGuards, plansOf } from '#server/rail/plan-guard.ts'
import type { RailPorts } from '#server/rail/rail-ports.ts'
import { answerFor } from '#server/rail/stored-answer.ts'
import { NO_WALL, wallAfter } from '#server/rail/wall-floor.ts'
import { appendedWith, larderNow } from '#server/rail/with-larder.ts'

export interface Rail {
  readonly service: string
  state(): ServiceState
  position(): number
  /** Events after a position, or null where they aren't kept in memory any more. */
  eventsAfter(position: number): readonly Recorded[] | null
  /**
   * Settles when the answer is durable and what happened has been shown.
   * @param adult whose passphrase proved it: stamped on what it caused
   */
  submit(id: string, command: Command, by: Role, adult?: string): Promise<Answer>
  /**
   * Appends what the server itself has to say, decided on the newest state in its turn, as often as a
   * conflict asks for it.
   */
  note(make: Note): void
  /** Appends what fell due, and a jump of the clock. */
  look(): void
  onShow(listener: (events: readonly Recorded[]) => void): void
  /** Settles when nothing is under way any more. */
  idle(): Promise<void>
  close(): void
}

/** How many events are kept in memory for screens that catch up. */
const KEPT = 2_000
const MOST_IN_A_BATCH = 256
const MOST_CONFLICTS = 20
const LONGEST_TIMER_MS = 3_600_000
/** What should have fallen due and didn't is tried again, without a rush. */
const OVERDUE_AGAIN_MS = 1_000

/** Reads a service from the log and takes its commands from then on. */
export const openRail = async (ports: RailPorts): Promise<Rail> => {
  const { service, log, guests, logger } = ports
  let state: ServiceState = NOT_OPENED
  let position = 0
  let floor = NO_WALL
  /** By how much the wall clock fell while no server watched it, until that is recorded. */
  let fellUnseen = 0
  let newest = 0
  let kept: Recorded[] = []
  let queue: Ordered[] = []
  let notes: Note[] = []
  let running = false
  let closed = false
  let looking = false
  let dueTimer: NodeJS.Timeout | undefined
  const jumpedBy = ports.clock.watchJumps()
  const whenIdle: (() => void)[] = []
  const listeners: ((events: readonly Recorded[]) => void)[] = []

  const advance = (events: readonly Recorded[], to: ServiceState): void => {
    state = to
    position = events.at(-1)?.position ?? position
    floor = events.reduce(wallAfter, floor)
    kept = [...kept, ...events].slice(-KEPT)
    for (const listener of listeners) show(listener, events)
  }

  /** What happened is durable: a screen that can't be told catches up, and nothing else suffers. */
  const show = (
    listener: (events: readonly Recorded[]) => void,
    events: readonly Recorded[],
  ): void => {
    try {
      listener(events)
    } catch (error) {
      logger.error({ err: error, service }, 'what happened was not shown')
    }
  }

  const catchUp = async (): Promise<void> => {
    const events = (await log.read(service, position)).map(withoutReasons)
    if (events.length > 0) advance(events, events.reduce(evolve, state))
  }

  const waitForDue = (): void => {
    clearTimeout(dueTimer)
    const at = nextDue(state)
    if (at === null || closed) return
    const left = at - ports.clock.now()
    const wait = left > 0 ? Math.min(left, LONGEST_TIMER_MS) : OVERDUE_AGAIN_MS
    dueTimer = setTimeout(look, wait).unref()
  }

  const runBatch = async (orders: readonly Ordered[], noted: readonly Note[]): Promise<void> => {
    let jumped = fellUnseen
    for (let conflicts = 0; conflicts < MOST_CONFLICTS; conflicts += 1) {
      const versions = await openVersions(log, orders)
      const plans = await plansOf(log, orders)
      const nextLabel = await ports.labelsGuard.next()
      const larder = await larderNow(ports, orders, conflicts > 0)
      const now = ports.clock.now()
      // Asked after the time was read, so that nothing falls due by a jump that wasn't noticed.
      jumped += jumpedBy()
      const batch = await createBatch(
        ports,
        {
          state,
          position,
          now,
          jumpedBy: jumped,
          openVersions: versions,
          plans,
          nextLabel,
          larder,
        },
        orders,
        noted,
      )
      for (const { id, said } of batch.apart) await guests.put(service, id, said)
      if (batch.entries.length === 0 && batch.answers.length === 0) {
        for (const { order, answer } of batch.replies) order.settle(answerFor(order.id, answer))
        return
      }
      const { entries } = batch
      const guards = [
        ...(await openGuards(log, entries, batch.state, versions)),
        ...planGuards(entries, batch.state.station?.id ?? null, plans),
        ...ports.labelsGuard.guards(entries, nextLabel),
      ]
      if ((await appendedWith(ports, { position, ...batch }, larder, guards)) === 'committed') {
        fellUnseen = 0
        if (entries.length > 0) advance(entries, batch.state)
        newest = Math.max(newest, position)
        for (const { order, answer } of batch.replies) order.settle(answerFor(order.id, answer))
        return
      }
      await catchUp()
    }
    for (const order of orders)
      order.settle({ id: order.id, answer: 'not taken', because: { code: 'busy' } })
  }

  const run = async (): Promise<void> => {
    while (queue.length > 0 || notes.length > 0 || looking || newest > position) {
      if (newest > position) await catchUp()
      const orders = queue.slice(0, MOST_IN_A_BATCH)
      queue = queue.slice(orders.length)
      const noted = notes
      notes = []
      looking = false
      await runBatch(orders, noted)
    }
    running = false
    waitForDue()
    for (const settle of whenIdle.splice(0)) settle()
  }

  const wake = (): void => {
    if (running) return
    running = true
    // What arrives in this turn of the event loop shares one commit.
    setImmediate(() => {
      run().catch((error: unknown) => {
        logger.fatal({ err: error, service }, 'the log failed')
        ports.fatal(error)
      })
    })
  }

  const look = (): void => {
    if (closed) return
    looking = true
    wake()
  }

  const stopListening = log.onAdvance((advanced, to) => {
    // Own appends are shown where they are made; another server's are read from the log.
    if (advanced !== service) return
    newest = Math.max(newest, to)
    if (!running) look()
  })

  do await catchUp()
  while ((await holdStation(log, service, state, position)) === 'conflict')
  const behind = floor.wall - ports.clock.now()
  if (isUnderWay(state) && behind >= JUMP_MS) {
    fellUnseen = -behind
    look()
  }
  waitForDue()

  return {
    service,
    state: () => state,
    position: () => position,
    eventsAfter: (after) => {
      if (after > position) return null
      const first = kept[0]?.position ?? position + 1
      return after + 1 >= first ? kept.slice(after + 1 - first) : null
    },
    submit: (id, command, by, adult) =>
      new Promise((settle) => {
        queue.push({ id, command, by, settle, ...(adult === undefined ? {} : { adult }) })
        wake()
      }),
    note: (make) => {
      if (closed) return
      notes.push(make)
      wake()
    },
    look,
    onShow: (listener) => {
      listeners.push(listener)
    },
    idle: () => (running ? new Promise((settle) => whenIdle.push(settle)) : Promise.resolve()),
    close: () => {
      closed = true
      clearTimeout(dueTimer)
      stopListening()
    },
  }
}
