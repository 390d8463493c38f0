/** Crew clients over transports that deliver when a test says, and a server small enough to read. */
import {
  type Answer,
  type CommandMessage,
  type Follow,
  type Followed,
  PROTOCOL,
  type Welcome,
} from '#lib/protocol/wire.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { NOT_OPENED, type ServiceState } from '#lib/service/state.ts'
import { decide } from '#lib/spine/decide.ts'
import { evolve } from '#lib/spine/evolve.ts'
import type { Command } from '#lib/spine/registry.ts'
import { type CrewClient, createCrewClient } from '#lib/sync/crew-client.ts'
import { createMemoryOutbox, type Outbox } from '#lib/sync/outbox.ts'
import type { Transport, TransportHandlers } from '#lib/sync/transport.ts'
import { circumstances, OPENED_AT } from '#tests/support/service.ts'

/** Lets what was promised be acted upon. */
export const settled = (): Promise<void> => new Promise((resolve) => setImmediate(resolve))

export interface Asked<Message, Reply> {
  readonly message: Message
  reply(reply: Reply): void
  fail(): void
}

export interface FakeTransport {
  readonly transport: Transport
  /** What the server would call. */
  readonly say: TransportHandlers
  readonly follows: Asked<Follow, Followed>[]
  readonly commands: Asked<CommandMessage, Answer>[]
  isClosed(): boolean
  /** How often it was asked to try again after a refusal. */
  triedAgain(): number
}

export const createFakeTransport = (): FakeTransport => {
  let handlers: TransportHandlers | null = null
  let closed = false
  let again = 0
  const follows: Asked<Follow, Followed>[] = []
  const commands: Asked<CommandMessage, Answer>[] = []
  const ask = <Message, Reply>(list: Asked<Message, Reply>[], message: Message): Promise<Reply> =>
    new Promise((resolve, reject) => {
      list.push({ message, reply: resolve, fail: () => reject(new Error('no reply in time')) })
    })
  const listening = (): TransportHandlers => {
    if (!handlers) throw new Error('nobody listens')
    return handlers
  }
  return {
    transport: {
      listen: (to) => {
        handlers = to
      },
      follow: (message) => ask(follows, message),
      command: (message) => ask(commands, message),
      again: () => {
        again += 1
      },
      close: () => {
        closed = true
      },
    },
    say: {
      welcome: (message) => listening().welcome(message),
      events: (message) => listening().events(message),
      picture: (message) => listening().picture(message),
      pulse: (message) => listening().pulse(message),
      guests: (message) => listening().guests(message),
      forecast: (message) => listening().forecast(message),
      lost: (refused) => listening().lost(refused),
    },
    follows,
    commands,
    isClosed: () => closed,
    triedAgain: () => again,
  }
}

/** Time that passes when a test says. */
export const createTimers = () => {
  const due = new Set<() => void>()
  return {
    later: (act: () => void): (() => void) => {
      due.add(act)
      return () => due.delete(act)
    },
    /** Everything that waits comes due. */
    pass: (): void => {
      const now = [...due]
      due.clear()
      for (const act of now) act()
    },
    waiting: (): number => due.size,
  }
}

export type Timers = ReturnType<typeof createTimers>

export const createScreen = ({
  folds = true,
  outbox = createMemoryOutbox(),
  prefix = 'c',
}: {
  folds?: boolean
  outbox?: Outbox
  prefix?: string
} = {}) => {
  const fake = createFakeTransport()
  const timers = createTimers()
  let ids = 0
  const client: CrewClient = createCrewClient({
    transport: fake.transport,
    outbox,
    newId: () => `${prefix}-${++ids}`,
    monotonic: () => 5_000,
    later: timers.later,
    folds,
  })
  return { client, timers, outbox, ...fake }
}

export const welcomeTo = (service: string | null): Welcome => ({
  protocol: PROTOCOL,
  build: 'b1',
  house: 'own',
  station: { id: 'alder-hall', name: 'Alder Hall lunch line' },
  service,
  device: null,
  at: OPENED_AT,
})

interface Stream {
  state: ServiceState
  readonly events: Recorded[]
  readonly answers: Map<string, Answer>
}

/** Decides, keeps events and answers together, and answers a known id as before. */
export const createTinyServer = () => {
  const streams = new Map<string, Stream>()
  let current: string | null = null
  const listeners = new Set<(service: string, events: readonly Recorded[]) => void>()

  const streamOf = (service: string): Stream | undefined => streams.get(service)

  const take = (service: string, id: string, command: Command): Answer => {
    const stream = streamOf(service)
    if (!stream) return { id, answer: 'not taken', because: { code: 'no-such-service' } }
    const known = stream.answers.get(id)
    if (known) return known
    const now = OPENED_AT + stream.events.length * 1_000
    const decision = decide(stream.state, command, circumstances({ now, service }))
    if ('refusal' in decision) {
      const answer: Answer = { id, answer: 'refused', refusal: decision.refusal }
      stream.answers.set(id, answer)
      return answer
    }
    const events = decision.events.map(
      (event, index): Recorded => ({
        ...event,
        position: stream.events.length + index + 1,
        at: now,
        command: id,
      }),
    )
    stream.events.push(...events)
    stream.state = events.reduce(evolve, stream.state)
    const answer: Answer = { id, answer: 'accepted', position: stream.events.length }
    stream.answers.set(id, answer)
    for (const listener of listeners) listener(service, events)
    return answer
  }

  return {
    current: () => current,
    stateOf: (service: string): ServiceState => streamOf(service)?.state ?? NOT_OPENED,
    eventsOf: (service: string): readonly Recorded[] => streamOf(service)?.events ?? [],
    all: (): readonly Recorded[] => [...streams.values()].flatMap((stream) => stream.events),
    take,
    open: (service: string): void => {
      streams.set(service, { state: NOT_OPENED, events: [], answers: new Map() })
      take(service, `open-${service}`, { type: 'open', station: 'alder-hall', kind: 'real' })
      current = service
    },
    follow: ({ service, position }: Follow, asSnapshot: boolean): Followed => {
      const stream = streamOf(service)
      if (!stream) return { kind: 'no-such-service' }
      return asSnapshot || position > stream.events.length
        ? { kind: 'snapshot', position: stream.events.length, state: stream.state }
        : { kind: 'events', events: stream.events.slice(position) }
    },
    onEvents: (listener: (service: string, events: readonly Recorded[]) => void): void => {
      listeners.add(listener)
    },
  }
}

export type TinyServer = ReturnType<typeof createTinyServer>
