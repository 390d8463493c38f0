import { useState } from 'react'
import { ShortChoices, ShortWhy } from '#components/counter/short-choices.tsx'
import { wordOf } from '#components/counter/ticket-row.tsx'
import styles from '#components/counter/tickets.module.css'
import { useCounterWords } from '#components/counter/words.tsx'
import { Line } from '#components/line/line.tsx'
import type { Acting } from '#components/live/acting.ts'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'
import { whyHeld } from '#lib/rooms/care/facts/held.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import {
  panMarks,
  sumOfTicket,
  type TicketBuild,
} from '#lib/rooms/orders/views/tickets-to-change.ts'
import type { Selling } from '#lib/rooms/pans/facts/selling.ts'
import type { ShortWays } from '#lib/rooms/pans/facts/short-ways.ts'
import { sayBuild } from '#lib/service/tickets.ts'

interface TicketChosenProps {
  readonly state: Selling
  readonly one: TicketBuild
  /** "21A" */
  readonly name: string
  readonly short: ShortWays | null
  /** All that the pans lack for it. */
  readonly lacks: readonly string[]
  readonly acting: Acting
  readonly tap: (act: Act) => void
}

/** The chosen build on the line, what is wrong with it and what helps, and what can be done to it. */
export function TicketChosen({ state, one, name, short, lacks, acting, tap }: TicketChosenProps) {
  const words = useCounterWords()
  const { ticket, build, isUnsure } = one
  const [isAsking, setAsking] = useState(false)
  const marks = panMarks(state, build)
  const isShort = short !== null && one.canChange && build.hold === null
  const sum = sumOfTicket(ticket)
  const others = sum.builds.filter((other) => other !== name)
  const price = (cents: number) => words.sayCents(cents, state.station.currency)
  return (
    <section className={styles.chosen} aria-label={words.onTicket.chosen(name)}>
      {build.hold && (
        <Note kind="no">
          {words.sayWhyHeld(whyHeld(state, build, build.hold))} {isUnsure && words.needs.unsureThen}
        </Note>
      )}
      {!build.hold && build.stop && <Note kind="watch">{words.stopped}</Note>}
      {isShort && <ShortWhy state={state} short={short} />}
      {isShort && !isAsking && (
        <ShortChoices state={state} short={short} acting={acting} tap={tap} />
      )}
      <div className={styles.under}>
        <Line
          station={state.station}
          label={words.onTicket.chosen(name)}
          renderPan={(_, component) => {
            const mark = marks[component.id] ?? { kind: 'none' }
            const isLacking = isShort && lacks.includes(component.id)
            return (
              <div
                className={styles.pan}
                data-kind={mark.kind === 'need' && mark.isApart ? 'apart' : mark.kind}
                data-lacks={isLacking || undefined}
              >
                <span>
                  {component.short.map((line) => (
                    <span key={line}>{line} </span>
                  ))}
                </span>
                <strong>{isLacking ? words.onTicket.pan.short : wordOf(words, mark)}</strong>
              </div>
            )
          }}
        />
      </div>
      <div className={styles.actions}>
        <div className={styles.who}>
          <strong className={styles.number}>{sayBuild(name)}</strong>
          <p>
            <b>{price(build.priceCents)}</b>{' '}
            {ticket.paid ? words.onTicket.paid : words.onTicket.unpaid}
            {others.length > 0 && <span>{words.onTicket.with(others)}</span>}
          </p>
        </div>
        {isAsking ? (
          <CancelAsked one={one} name={name} acting={acting} close={() => setAsking(false)} />
        ) : (
          <Actions
            one={one}
            name={name}
            acting={acting}
            price={price}
            tap={tap}
            ask={() => setAsking(true)}
          />
        )}
        <Button kind="main" onClick={() => tap({ act: 'start-over' })}>
          {words.toOrder}
        </Button>
      </div>
    </section>
  )
}

/** Four actions, always in their places: what can't be done now can't be tapped. */
function Actions({
  one,
  name,
  acting,
  price,
  tap,
  ask,
}: Pick<TicketChosenProps, 'one' | 'name' | 'acting' | 'tap'> & {
  readonly price: (cents: number) => string
  readonly ask: () => void
}) {
  const words = useCounterWords()
  const { ticket, build, canChange, canCancel, canTell } = one
  const at = { ticket: ticket.number, letter: build.letter }
  const sum = sumOfTicket(ticket)
  const paid = !ticket.paid
  return (
    <>
      <Button
        aria-label={words.needs.tellOf(name)}
        disabled={!canTell || acting.busy}
        onClick={() => tap({ act: 'tell-need', ...at })}
      >
        {words.needs.tellA}
      </Button>
      <Button
        aria-label={words.payOf(ticket.number, ticket.paid)}
        disabled={acting.busy}
        sub={(paid ? words.onTicket.paySum : words.onTicket.unpaySum)(sum.builds, price(sum.cents))}
        onClick={() =>
          void acting.act(
            { type: 'pay', ticket: ticket.number, paid },
            words.paidSaid(ticket.number, paid),
          )
        }
      >
        {paid ? words.onTicket.pay : words.onTicket.unpay}
      </Button>
      <Button
        aria-label={words.changeOf(name)}
        disabled={!canChange || acting.busy}
        sub={
          canChange
            ? build.state === 'making'
              ? words.onTicket.stopsIt
              : words.onTicket.changeHow
            : words.onTicket.notNow
        }
        onClick={() => tap({ act: 'change-build', ...at })}
      >
        {words.change}
      </Button>
      <Button
        aria-label={words.cancelAsk(name)}
        disabled={!canCancel || acting.busy}
        sub={canCancel ? words.onTicket.askedAgain : words.onTicket.notNow}
        onClick={ask}
      >
        {words.cancel}
      </Button>
    </>
  )
}

/** The second tap isn't where the first one was. */
function CancelAsked({
  one: { ticket, build },
  name,
  acting,
  close,
}: Pick<TicketChosenProps, 'one' | 'name' | 'acting'> & { readonly close: () => void }) {
  const words = useCounterWords()
  const cancel = () => {
    close()
    void acting.act(
      { type: 'cancel', ticket: ticket.number, letter: build.letter },
      build.state === 'making' ? words.toldAssembly(name) : words.cancelled(name),
    )
  }
  return (
    <>
      <Button
        kind="no"
        className={styles.yes}
        disabled={acting.busy}
        sub={
          build.state === 'making'
            ? words.cancelMaking
            : build.state === 'made'
              ? words.cancelMade
              : undefined
        }
        onClick={cancel}
      >
        {words.cancelYes(name)}
      </Button>
      <Button className={styles.no} onClick={close}>
        {words.cancelNo}
      </Button>
    </>
  )
}
