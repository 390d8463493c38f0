import { useMemo, useState } from 'react'
import { useActing } from '#components/live/acting.ts'
import { Connection } from '#components/live/connection.tsx'
import { useCrew } from '#components/live/crew.tsx'
import { plannedTransport } from '#components/live/planned-transport.ts'
import { useServerTime } from '#components/live/server-time.ts'
import styles from '#components/start/planned.module.css'
import { wayTo } from '#components/start/planned-list.tsx'
import start from '#components/start/start.module.css'
import { useStartWords } from '#components/start/words.tsx'
import { civilDate } from '#lib/measure/civil.ts'
import { plannedHere, whenOf } from '#lib/rooms/day/views/services-here.ts'
import { isRunning } from '#lib/service/state.ts'
import type { Transport } from '#lib/sync/transport.ts'

/** What is opened on a page that follows a planned service is that one, and no new one. */
const openingTransport = (service: string, inner: Transport): Transport =>
  plannedTransport(service, {
    ...inner,
    command: (message) =>
      inner.command(message.command.type === 'open' ? { ...message, service } : message),
  })

/** The connection of a page that follows a service by its address; none where it follows the newest. */
export const useFollowing = (
  service: string | null,
): ((transport: Transport) => Transport) | undefined =>
  useMemo(
    () =>
      service === null ? undefined : (transport: Transport) => openingTransport(service, transport),
    [service],
  )

/** A planned service: when it is, what is prepared for it, and its opening. */
export function PlannedCard() {
  const words = useStartWords()
  const { planned: say } = words
  const state = useCrew((view) => view.state)
  const service = useCrew((view) => view.service)
  const { act, busy, said } = useActing(words.loadRefusals)
  const [isDropping, setDropping] = useState(false)
  const now = useServerTime()
  const here = service === null ? null : plannedHere(service, state)

  if (!isRunning(state) || here === null)
    return (
      <div className={styles.card}>
        <p role="status">{isRunning(state) ? say.dropped : words.connecting}</p>
        <p className={styles.acts}>
          <a href={wayTo('/', null)}>{say.back}</a>
        </p>
        <Connection />
      </div>
    )

  const { station } = state
  const today = civilDate(now, station.timeZone)
  const when = whenOf(here, now, today)
  const open = async () => {
    if (await act({ type: 'open', station: station.id, kind: 'real' }, ''))
      location.assign(wayTo('/', null))
  }
  const drop = async () => {
    if (await act({ type: 'dropPlan' }, say.dropped)) location.assign(wayTo('/', null))
    else setDropping(false)
  }
  return (
    <div className={start.serviceNow}>
      <div className={start.now}>
        <p>{say.standing(station.name, here, station.timeZone)}</p>
        <p>{say.prepared(here)}</p>
        <p>
          {when === 'over'
            ? `${say.over}. ${say.overWay(here)}`
            : when === 'ahead'
              ? say.otherDay(words.sayDate(today))
              : ''}
        </p>
        <p>{say.follows}</p>
      </div>
      <div className={start.choices}>
        <button
          type="button"
          className={start.choice}
          data-kind="main"
          disabled={busy}
          onClick={() => void open()}
        >
          <b>{say.open}</b>
          <span>{say.openWhat}</span>
        </button>
      </div>
      <p className={styles.acts}>
        <a href={wayTo('/plan', here.service)}>{say.toPlan}</a>
        <a href={wayTo('/prep', here.service)}>{say.toPrep}</a>
        <a href={wayTo('/batches', here.service)}>{say.toBatches}</a>
        <a href={wayTo('/', null)}>{say.back}</a>
        <button
          type="button"
          disabled={busy}
          onClick={() => (isDropping ? void drop() : setDropping(true))}
        >
          {isDropping ? say.dropSure : say.drop}
        </button>
      </p>
      <p role="status" className={start.said} data-kind={said?.kind ?? 'none'}>
        {busy
          ? words.opening
          : said?.kind === 'refused'
            ? said.text
            : isDropping && here.inNoBatch
              ? say.dropBegun
              : ''}
      </p>
      <Connection />
    </div>
  )
}
