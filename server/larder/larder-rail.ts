/**
 * The one writer of what is asked of a house's larder, and of what falls due in it, also while no
 * service is open. What services set aside and take they append themselves, with their own events.
 */
import type { Logger } from 'pino'
import type { LarderAnswer, LarderCommand } from '#lib/larder/command.ts'
import { decideLarder } from '#lib/larder/decide.ts'
import { larderFallsDue, nextLarderDue } from '#lib/larder/due.ts'
import type { LarderEvent, LarderRecorded } from '#lib/larder/event.ts'
import { evolveLarder } from '#lib/larder/evolve.ts'
import { lotGuards } from '#lib/larder/guards.ts'
import { EMPTY_LARDER, type LarderState } from '#lib/larder/lot.ts'
import { unreadFrom } from '#lib/larder/recall.ts'
import type { LabelHistory } from '#lib/larder/relabelled.ts'
import { larderStream } from '#lib/larder/stream.ts'
import { hashOf } from '#lib/service/state-hash.ts'
import type { EventLog, LoggedAnswer } from '#server/event-log/port.ts'
import type { Guests } from '#server/guests/port.ts'
import { type DeliveryPorts, deliveredBy, guardsOfUnread } from '#server/larder/deliveries.ts'
import { STANDS_FOR_SOMEBODY } from '#server/rail/apart.ts'
import { JUMP_MS, type ServerClock } from '#server/rail/clock.ts'

export type LarderLog = EventLog<LarderRecorded, LarderAnswer>

export interface LarderPorts {
  readonly house: string
  readonly log: LarderLog
  readonly guests: Pick<Guests, 'put'>
  readonly clock: ServerClock
  /** What the house knows of labels. */
  readonly labels: LabelHistory
  readonly deliveries: DeliveryPorts
  readonly logger: Logger
  /** The store failed: what was appended is unknown, so the process ends. */
  readonly fatal: (error: unknown) => void
}

export type LarderReply = LarderAnswer | { readonly answer: 'not taken' }

export interface Larder {
  readonly stream: string
  state(): LarderState
  /** As the log has it now, whoever appended to it. */
  newest(): Promise<LarderState>
  /** All that ever happened in it. */
  entries(): Promise<readonly LarderRecorded[]>
  /**
   * Settles when the answer is durable.
   * @param adult whose passphrase proved it: stamped on what it caused
   */
  submit(id: string, command: LarderCommand, adult?: string): Promise<LarderReply>
  /** Appends what fell due, and a jump of the clock. */
  look(): void
  idle(): Promise<void>
  close(): void
}

const MOST_CONFLICTS = 20
const LONGEST_TIMER_MS = 3_600_000
const OVERDUE_AGAIN_MS = 1_000

const bare = (command: LarderCommand): LarderCommand =>
  command.initials === undefined ? command : { ...command, initials: STANDS_FOR_SOMEBODY }

interface Asked {
  readonly id: string
  readonly command: LarderCommand
  readonly fingerprint: string
  readonly adult: string | null
}

/** Reads a house's larder from the log and takes what is asked of it from then on. */
export const openLarder = async (ports: LarderPorts): Promise<Larder> => {
  const { log, guests, clock, logger } = ports
  const stream = larderStream(ports.house)
  let state: LarderState = EMPTY_LARDER
  let turn: Promise<unknown> = Promise.resolve()
  let timer: NodeJS.Timeout | undefined
  let closed = false
  const jumpedBy = clock.watchJumps()
  let jumped = 0

  const newest = async (): Promise<LarderState> => {
    const entries = await log.read(stream, state.position)
    // Another reading of the same entries may have folded them meanwhile.
    for (const entry of entries)
      if (entry.position === state.position + 1) state = evolveLarder(state, entry)
    return state
  }

  const waitForDue = (): void => {
    clearTimeout(timer)
    const next = nextLarderDue(state)
    if (next === null || closed) return
    const left = next.at - clock.now()
    const wait = left > 0 ? Math.min(left, LONGEST_TIMER_MS) : OVERDUE_AGAIN_MS
    timer = setTimeout(look, wait).unref()
  }

  /** What is recorded ahead of any command: a jump of the clock, else what fell due. */
  const dueNow = (now: number): readonly LarderRecorded[] => {
    if (jumped === 0) return larderFallsDue(state, now).recorded
    const stamp = { position: state.position + 1, at: Math.max(now, state.at), command: null }
    return [{ type: 'larderClockJumped', byMs: jumped, ...stamp }]
  }

  const stamped = (
    from: LarderState,
    events: readonly LarderEvent[],
    { id: command, adult }: Pick<Asked, 'id' | 'adult'>,
    now: number,
  ): readonly LarderRecorded[] => {
    const isConfirmed = events.some(({ type }) => type === 'larderClockConfirmed')
    const at = isConfirmed ? now : Math.max(now, from.at)
    return events.map((event, index) => ({
      ...event,
      position: from.position + 1 + index,
      at,
      command,
      ...(adult === null ? {} : { adult }),
    }))
  }

  const decided = async (
    asked: Asked | null,
    now: number,
  ): Promise<{
    readonly entries: readonly LarderRecorded[]
    readonly answers: readonly LoggedAnswer<LarderAnswer>[]
    readonly answer: LarderAnswer | null
  }> => {
    const due = dueNow(now)
    if (asked === null) return { entries: due, answers: [], answer: null }
    const { id, command, fingerprint } = asked
    const known = await log.answerTo(stream, id)
    if (known)
      return {
        entries: due,
        answers: [],
        answer:
          known.fingerprint === fingerprint
            ? known.answer
            : { answer: 'refused', refusal: { code: 'id-used-for-something-else' } },
      }
    const then = due.reduce(evolveLarder, state)
    const about = await deliveredBy(ports.deliveries, command)
    try {
      const isClock = command.type === 'confirmLarderClock'
      const at = isClock ? now : Math.max(now, then.at)
      const decision = decideLarder(then, command, at, ports.labels, about)
      const own = 'events' in decision ? stamped(then, decision.events, asked, now) : []
      const answer: LarderAnswer =
        'refusal' in decision
          ? { answer: 'refused', refusal: decision.refusal }
          : { answer: 'accepted', position: then.position + own.length }
      return {
        entries: [...due, ...own],
        answers: [{ command: id, fingerprint, answer }],
        answer,
      }
    } catch (error) {
      logger.error({ err: error, command: command.type }, 'a command to the larder failed')
      return {
        entries: due,
        answers: [],
        answer: { answer: 'refused', refusal: { code: 'could-not-decide' } },
      }
    }
  }

  const act = async (asked: Asked | null): Promise<LarderReply> => {
    for (let conflicts = 0; conflicts < MOST_CONFLICTS; conflicts += 1) {
      await newest()
      jumped += jumpedBy()
      const { entries, answers, answer } = await decided(asked, clock.now())
      const before = state
      if (entries.length > 0 || answers.length > 0) {
        const delivered = unreadFrom(entries)
        const guards = [
          ...lotGuards(before, entries),
          ...guardsOfUnread(ports.deliveries, delivered),
        ]
        const appended = await log.append(stream, before.position, entries, answers, guards)
        if (appended === 'conflict') continue
        // At once: a label that is read meanwhile, by what was known before, is stale.
        ports.deliveries.onUnread(delivered)
        jumped = 0
        await newest()
      }
      return answer ?? { answer: 'not taken' }
    }
    return { answer: 'not taken' }
  }

  const inTurn = (asked: Asked | null): Promise<LarderReply> => {
    const next = turn.then(() => act(asked))
    turn = next
      .catch((error: unknown) => {
        logger.fatal({ err: error }, 'the log of the larder failed')
        ports.fatal(error)
      })
      .then(waitForDue)
    return next
  }

  const look = (): void => {
    if (!closed) void inTurn(null).catch(() => undefined)
  }

  const stopListening = log.onAdvance((advanced) => {
    // A service set aside or took: what is due next may be another.
    if (advanced === stream && !closed) void turn.then(newest).then(waitForDue, ports.fatal)
  })

  await newest()
  // While no server watched it, the clock fell.
  if (state.at - clock.now() >= JUMP_MS) jumped = clock.now() - state.at

  return {
    stream,
    state: () => state,
    newest,
    entries: () => log.read(stream, 0),
    submit: async (id, command, adult) => {
      const fingerprint = hashOf(bare(command))
      if (command.initials !== undefined)
        await guests.put(stream, id, [{ kind: 'initials', body: command.initials }])
      return inTurn({ id, command: bare(command), fingerprint, adult: adult ?? null })
    },
    look,
    idle: async () => {
      await turn
    },
    close: () => {
      closed = true
      clearTimeout(timer)
      stopListening()
    },
  }
}
