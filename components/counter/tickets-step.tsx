import { useState } from 'react'
import { TicketChosen } from '#components/counter/ticket-chosen.tsx'
import { TicketRow } from '#components/counter/ticket-row.tsx'
import styles from '#components/counter/tickets.module.css'
import { useCounterWords } from '#components/counter/words.tsx'
import { useActing } from '#components/live/acting.ts'
import { useForecast } from '#components/live/forecast.ts'
import { Button } from '#components/ui/button.tsx'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import {
  handedOverLately,
  type TicketBuild,
  ticketsToChange,
} from '#lib/rooms/orders/views/tickets-to-change.ts'
import type { Selling } from '#lib/rooms/pans/facts/selling.ts'
import { lackingBuilds } from '#lib/rooms/pans/facts/short.ts'
import { shortWays } from '#lib/rooms/pans/facts/short-ways.ts'
import { buildName } from '#lib/service/tickets.ts'

interface TicketsStepProps {
  readonly state: Selling
  readonly tap: (act: Act) => void
}

const nameOf = ({ ticket, build }: TicketBuild): string => buildName(ticket.number, build.letter)

/** Open tickets as rows over the line: one is chosen, and what can be done is done to that one. */
export function TicketsStep({ state, tap }: TicketsStepProps) {
  const words = useCounterWords()
  const acting = useActing(words.loadRefusals)
  const forecast = useForecast()
  const builds = ticketsToChange(state)
  const late = handedOverLately(state)
  // The first is chosen as the list opens, and no other by itself: nothing changes under a finger.
  const [chosen, setChosen] = useState(() => {
    const [first] = builds
    return first ? nameOf(first) : null
  })
  const ways = shortWays(state, (id) => forecast?.components[id]?.underway[0]?.at ?? null)
  const lacking = lackingBuilds(state)
  const lacksOf = (name: string) => Object.keys(lacking.get(name) ?? {})
  const shortOf = (name: string) => ways.find(({ build }) => build === name) ?? null
  const one = [...builds, ...late].find((other) => nameOf(other) === chosen)
  const row = (other: TicketBuild) => {
    const name = nameOf(other)
    return (
      <TicketRow
        key={name}
        state={state}
        one={other}
        name={name}
        short={shortOf(name)}
        lacks={lacksOf(name)}
        isChosen={name === chosen}
        choose={() => {
          acting.hush()
          setChosen(name)
        }}
      />
    )
  }
  return (
    <section className={styles.tickets} aria-labelledby="tickets">
      <h2 id="tickets" className="visually-hidden" tabIndex={-1} data-step="">
        {words.tickets}
      </h2>
      <ul className={styles.list} aria-label={words.onTicket.listed}>
        {builds.map(row)}
        {late.length > 0 && (
          <li className={styles.late}>
            <strong>{words.needs.handedOver}</strong>
            <small>{words.needs.handedOverTell}</small>
          </li>
        )}
        {late.map(row)}
      </ul>
      <p role="status" className={styles.said} data-kind={acting.said?.kind}>
        {acting.said?.text ??
          (one ? '' : builds.length + late.length > 0 ? words.onTicket.tapOne : words.noTickets)}
      </p>
      {one && chosen !== null ? (
        <TicketChosen
          key={chosen}
          state={state}
          one={one}
          name={chosen}
          short={shortOf(chosen)}
          lacks={lacksOf(chosen)}
          acting={acting}
          tap={tap}
        />
      ) : (
        <Button kind="main" onClick={() => tap({ act: 'start-over' })}>
          {words.toOrder}
        </Button>
      )}
    </section>
  )
}
