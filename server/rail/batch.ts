import type { SetApart } from '#lib/access/apart.ts'
import type { LarderRecorded } from '#lib/larder/event.ts'
import { evolveLarder } from '#lib/larder/evolve.ts'
import type { LarderState } from '#lib/larder/lot.ts'
import type { Answer } from '#lib/protocol/wire.ts'
import { planFollows } from '#lib/rooms/day/facts/followed.ts'
import type { Recorded, ServiceEvent } from '#lib/service/events/event.ts'
import type { Role } from '#lib/service/roles.ts'
import { isRunning, isUnderWay, type RunningState, type ServiceState } from '#lib/service/state.ts'
import { fallDue } from '#lib/spine/due.ts'
import { happen, type Led } from '#lib/spine/happen.ts'
import { larderFollows } from '#lib/spine/larder-follows.ts'
import type { Command } from '#lib/spine/registry.ts'
import { take } from '#lib/spine/take.ts'
import type { LoggedAnswer } from '#server/event-log/port.ts'
import { type Parted, setApart } from '#server/rail/apart.ts'
import { fingerprintOf, isSameAs } from '#server/rail/fingerprint.ts'
import { hasOpenService, type OpenVersions } from '#server/rail/open-guard.ts'
import type { PlansOf } from '#server/rail/plan-guard.ts'
import type { RailPorts } from '#server/rail/rail-ports.ts'
import type { StoredAnswer } from '#server/rail/stored-answer.ts'

export interface Ordered {
  readonly id: string
  readonly command: Command
  readonly by: Role
  /** Whose passphrase proved it, where one did. */
  readonly adult?: string
  readonly settle: (answer: Answer) => void
}

/** What the server itself has to say: events by the state that they are decided on. */
export type Note = (state: RunningState, now: number) => readonly ServiceEvent[]

export interface Batch {
  /** The service once it is appended. */
  readonly state: ServiceState
  readonly entries: readonly Recorded[]
  /** What happens in the larder with them. */
  readonly larder: readonly LarderRecorded[]
  readonly answers: readonly LoggedAnswer<StoredAnswer>[]
  /** What is said of people, by the command that brought it. */
  readonly apart: readonly { readonly id: string; readonly said: readonly SetApart[] }[]
  readonly replies: readonly { readonly order: Ordered; readonly answer: StoredAnswer }[]
}

interface Start {
  readonly state: ServiceState
  readonly position: number
  /** Epoch milliseconds. */
  readonly now: number
  readonly jumpedBy: number
  /** Of the stations that commands want to open. */
  readonly openVersions: OpenVersions
  readonly plans: PlansOf
  /** The version that a label gets. */
  readonly nextLabel: number
  /** As it is known; null where the house keeps none. */
  readonly larder: LarderState | null
}

const USED_FOR_SOMETHING_ELSE: StoredAnswer = {
  answer: 'refused',
  refusal: { code: 'id-used-for-something-else' },
}

/** Decides commands in order, each on the state that the ones before it will leave. Stores nothing. */
export const createBatch = async (
  ports: RailPorts,
  start: Start,
  orders: readonly Ordered[],
  notes: readonly Note[] = [],
): Promise<Batch> => {
  const { service, log, logger } = ports
  let { state, position } = start
  const newestLabels = ports.newestLabels()
  const entries: Recorded[] = []
  const answers: LoggedAnswer<StoredAnswer>[] = []
  const apart: { id: string; said: readonly SetApart[] }[] = []
  const replies: { order: Ordered; answer: StoredAnswer }[] = []
  const answered = new Map<string, LoggedAnswer<StoredAnswer>>()
  const now = Math.max(start.now, state.at)

  let { larder } = start
  const inLarder: LarderRecorded[] = []

  /** @throws where it can't happen in the larder: nothing of it is recorded then */
  const withLarder = (led: Led): void => {
    if (larder === null) return
    const at = Math.max(now, larder.at)
    const from = larder.position + 1
    const more = larderFollows(service, led.state, led.recorded).map(
      (event, index): LarderRecorded => ({
        ...event,
        position: from + index,
        at,
        command: led.recorded[0]?.command ?? null,
      }),
    )
    larder = more.reduce(evolveLarder, larder)
    inLarder.push(...more)
  }

  const record = (led: Led): void => {
    withLarder(led)
    state = led.state
    position += led.recorded.length
    entries.push(...led.recorded)
  }

  const noted = (events: readonly ServiceEvent[]): Led =>
    happen(state, events, { position, command: null }, { now, newestLabels })

  if (start.jumpedBy !== 0 && isUnderWay(state))
    record(noted([{ type: 'clockJumped', byMs: start.jumpedBy }]))
  try {
    record(fallDue(state, now, position, { newestLabels }))
  } catch (error) {
    logger.error({ err: error, service }, 'what fell due failed')
  }

  const follows: Note = (planned) => planFollows(planned, ports.station(planned.station.id))
  for (const note of state.stage === 'planned' ? [...notes, follows] : notes) {
    try {
      if (isRunning(state)) record(noted(note(state, now)))
    } catch (error) {
      logger.error({ err: error, service }, 'a note failed')
    }
  }

  const failed = ({ command }: Ordered, error: unknown): StoredAnswer => {
    logger.error({ err: error, service, command: command.type }, 'a command failed')
    return { answer: 'refused', refusal: { code: 'could-not-decide' } }
  }

  const decideOne = (order: Ordered, command: Command): StoredAnswer => {
    try {
      const taken = take(
        state,
        {
          id: order.id,
          command,
          position,
          ...(order.adult === undefined ? {} : { adult: order.adult }),
        },
        {
          now,
          by: order.by,
          service,
          station: ports.station,
          otherIsOpen:
            command.type === 'open' && hasOpenService(start.openVersions, command.station),
          plans: (station) => start.plans.get(station)?.plans ?? [],
          newestLabels,
          nextLabel: start.nextLabel,
          ...(larder ? { larder } : {}),
          ...(ports.knownBias ? { knownBias: ports.knownBias } : {}),
        },
      )
      record(taken)
      const { refusal } = taken
      if (refusal === null) return { answer: 'accepted', position }
      if (refusal.code === 'fits-no-more')
        logger.error({ service, ...refusal }, 'a build that fits no more was not held')
      return { answer: 'refused', refusal }
    } catch (error) {
      return failed(order, error)
    }
  }

  /** What can't be set apart isn't decided: it could leave a name where it must not be. */
  const partOf = (order: Ordered): (Parted & { readonly fingerprint: string }) | StoredAnswer => {
    try {
      return { ...setApart(order.command), fingerprint: fingerprintOf(order.command) }
    } catch (error) {
      return failed(order, error)
    }
  }

  for (const order of orders) {
    const parted = partOf(order)
    if ('answer' in parted) {
      replies.push({ order, answer: parted })
      continue
    }
    const known = answered.get(order.id) ?? (await log.answerTo(service, order.id))
    if (known) {
      const answer = isSameAs(known.fingerprint, order.command)
        ? known.answer
        : USED_FOR_SOMETHING_ELSE
      replies.push({ order, answer })
      continue
    }
    const before = position
    const answer = decideOne(order, parted.command)
    const logged = { command: order.id, fingerprint: parted.fingerprint, answer }
    answered.set(order.id, logged)
    answers.push(logged)
    replies.push({ order, answer })
    // It goes with what was recorded, also where the command was refused for it.
    const isRecorded = answer.answer === 'accepted' || position > before
    if (isRecorded && parted.apart.length > 0) apart.push({ id: order.id, said: parted.apart })
  }
  return { state, entries, larder: inLarder, answers, apart, replies }
}
