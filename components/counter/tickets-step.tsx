import { useState } from 'react'
import shared from '#components/counter/counter.module.css'
import { ShortChoices, ShortWhy } from '#components/counter/short-choices.tsx'
import styles from '#components/counter/tickets.module.css'
import { useCounterWords } from '#components/counter/words.tsx'
import { useActing } from '#components/live/acting.ts'
import { useCrew } from '#components/live/crew.tsx'
import { useForecast } from '#components/live/forecast.ts'
import { whyHeld } from '#lib/rooms/care/facts/held.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import {
  handedOverLately,
  type TicketBuild,
  ticketsToChange,
} from '#lib/rooms/orders/views/tickets-to-change.ts'
import { type ShortWays, shortWays } from '#lib/rooms/pans/facts/short-ways.ts'
import { markOf } from '#lib/service/mark.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, sayBuild } from '#lib/service/tickets.ts'
import { nameIn } from '#lib/station/name-in.ts'

interface TicketsStepProps {
  readonly state: RunningState
  readonly tap: (act: Act) => void
}

/** Open tickets: to change, cancel, or mark paid. */
export function TicketsStep({ state, tap }: TicketsStepProps) {
  const words = useCounterWords()
  const acting = useActing(words.loadRefusals)
  const [asking, setAsking] = useState<string | null>(null)
  const builds = ticketsToChange(state)
  const forecast = useForecast()
  const ways = shortWays(state, (id) => forecast?.components[id]?.underway[0]?.at ?? null)
  const late = handedOverLately(state)
  const row = (one: TicketBuild) => {
    const name = buildName(one.ticket.number, one.build.letter)
    const at = { ticket: one.ticket.number, letter: one.build.letter }
    return (
      <BuildRow
        key={name}
        state={state}
        one={one}
        isAsking={asking === name}
        ask={(is) => setAsking(is ? name : null)}
        busy={acting.busy}
        tap={tap}
        short={ways.find(({ build }) => build === name) ?? null}
        onWait={() => void acting.act({ type: 'wait', ...at }, words.ranShort.saidWaits(name))}
        onCancel={() => {
          setAsking(null)
          void acting.act(
            { type: 'cancel', ...at },
            one.build.state === 'making' ? words.toldAssembly(name) : words.cancelled(name),
          )
        }}
        onPay={() => {
          const paid = !one.ticket.paid
          void acting.act(
            { type: 'pay', ticket: one.ticket.number, paid },
            words.paidSaid(one.ticket.number, paid),
          )
        }}
      />
    )
  }
  return (
    <section className={styles.tickets} aria-labelledby="tickets">
      <div className={styles.head}>
        <h2 id="tickets" tabIndex={-1} data-step="">
          {words.tickets}
        </h2>
        <p role="status" className={styles.answer} data-kind={acting.said?.kind}>
          {acting.said?.text ?? ''}
        </p>
        <button type="button" className={shared.main} onClick={() => tap({ act: 'start-over' })}>
          {words.toOrder}
        </button>
      </div>
      {builds.length + late.length === 0 && <p className={styles.none}>{words.noTickets}</p>}
      <ul className={styles.list}>
        {builds.map(row)}
        {late.length > 0 && (
          <li className={styles.late}>
            <strong>{words.needs.handedOver}</strong>
            <small>{words.needs.handedOverTell}</small>
          </li>
        )}
        {late.map(row)}
      </ul>
    </section>
  )
}

interface BuildRowProps {
  readonly state: RunningState
  readonly one: TicketBuild
  readonly isAsking: boolean
  readonly ask: (is: boolean) => void
  readonly busy: boolean
  readonly tap: (act: Act) => void
  /** What can be done where the pans can't fill it; null where they can. */
  readonly short: ShortWays | null
  readonly onWait: () => void
  readonly onCancel: () => void
  readonly onPay: () => void
}

function BuildRow(props: BuildRowProps) {
  const words = useCounterWords()
  const { state, one, isAsking, ask, busy, tap, short, onWait, onCancel, onPay } = props
  const { ticket, build, canChange, canCancel, canTell, nameKey } = one
  const called = useCrew((view) => (nameKey === null ? undefined : view.names[nameKey]))
  const name = buildName(ticket.number, build.letter)
  const mark = words.markLines(markOf(state, ticket.number, build.letter, build.choice))
  const isFirst =
    ticket.builds.find((other) => other.state !== 'cancelled')?.letter === build.letter
  const isShort = short !== null && one.canChange && build.hold === null
  const tell = (
    <button
      type="button"
      className={shared.button}
      aria-label={words.needs.tellOf(name)}
      disabled={!canTell || busy}
      onClick={() => tap({ act: 'tell-need', ticket: ticket.number, letter: build.letter })}
    >
      {words.needs.tellA}
    </button>
  )
  return (
    <li
      className={styles.build}
      data-state={build.state}
      data-short={isShort && !isAsking ? '' : undefined}
      data-held={build.hold === null && short === null ? undefined : ''}
    >
      <strong className={styles.name}>{sayBuild(name)}</strong>
      <div className={styles.what}>
        <p>
          <strong>{nameIn(state.station)(build.choice.item)}</strong>{' '}
          <span className={styles.state}>
            {build.hold
              ? build.state === 'handed-over'
                ? words.needs.toFind
                : one.isUnsure
                  ? words.needs.heldUnsure
                  : words.held
              : build.stop
                ? words.stopped
                : words.stateName[build.state]}
          </span>
        </p>
        <p>
          {[
            ...(called === undefined ? [] : [called]),
            ...mark,
            words.sayCents(build.priceCents, state.station.currency),
          ].join(' · ')}
        </p>
        {build.hold && (
          <p className={styles.warning}>
            {words.sayWhyHeld(whyHeld(state, build, build.hold))}{' '}
            {one.isUnsure && words.needs.unsureThen}
          </p>
        )}
        {short && <ShortWhy state={state} short={short} />}
        {isAsking && (
          <p className={styles.warning}>
            {build.state === 'making' && words.cancelMaking}
            {build.state === 'made' && words.cancelMade}
          </p>
        )}
      </div>
      {isAsking ? (
        <>
          <button type="button" className={styles.danger} disabled={busy} onClick={onCancel}>
            {words.cancelYes(name)}
          </button>
          <button type="button" className={shared.button} onClick={() => ask(false)}>
            {words.cancelNo}
          </button>
        </>
      ) : isShort ? (
        <>
          {tell}
          <ShortChoices
            state={state}
            short={short}
            busy={busy}
            tap={tap}
            onWait={onWait}
            onCancel={() => ask(true)}
          />
        </>
      ) : (
        <>
          {tell}
          {isFirst && build.state !== 'handed-over' && (
            <button
              type="button"
              className={shared.button}
              aria-label={words.payOf(ticket.number, ticket.paid)}
              disabled={busy}
              onClick={onPay}
            >
              {ticket.paid ? words.paid : words.unpaid}
            </button>
          )}
          {(build.state !== 'handed-over' || canChange) && (
            <>
              <button
                type="button"
                className={shared.button}
                aria-label={words.changeOf(name)}
                disabled={!canChange || busy}
                onClick={() =>
                  tap({ act: 'change-build', ticket: ticket.number, letter: build.letter })
                }
              >
                {words.change}
              </button>
              <button
                type="button"
                className={shared.button}
                aria-label={words.cancelAsk(name)}
                disabled={!canCancel || busy}
                onClick={() => ask(true)}
              >
                {words.cancel}
              </button>
            </>
          )}
        </>
      )}
    </li>
  )
}
