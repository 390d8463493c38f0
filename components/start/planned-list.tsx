import { useAccess } from '#components/access/use-access.ts'
import { useServerTime } from '#components/live/server-time.ts'
import styles from '#components/start/planned.module.css'
import { useStartWords } from '#components/start/words.tsx'
import { civilDate } from '#lib/measure/civil.ts'
import { type ServicesHere, whenOf } from '#lib/rooms/day/views/services-here.ts'

const LOOK_EVERY_MS = 5_000

/** The address of a page of this station that follows a service. */
export const wayTo = (page: string, service: string | null): string => {
  const search = new URLSearchParams(location.search)
  if (service === null) search.delete('service')
  else search.set('service', service)
  const asked = String(search)
  return asked === '' ? page : `${page}?${asked}`
}

/** Services that are planned beside the one that is followed, and the way to plan another. */
export function PlannedList() {
  const words = useStartWords()
  const { planned: say } = words
  const { seen } = useAccess<ServicesHere>(`/services${location.search}`, LOOK_EVERY_MS)
  const now = useServerTime()
  const { station, planned = [] } = seen ?? {}
  const today = station ? civilDate(now, station.timeZone) : ''
  return (
    <nav className={styles.planned} aria-label={say.title}>
      {station && planned.length > 0 && <h3>{say.title}</h3>}
      {station && planned.length > 0 && (
        <ul>
          {planned.map((one) => {
            const when = whenOf(one, now, today)
            return (
              <li key={one.service}>
                <a href={wayTo('/', one.service)} data-when={when}>
                  <b>{say.times(one, station.timeZone)}</b>
                  <span>
                    {when === 'over' && `${say.over}: ${say.overWay(one)} · `}
                    {when === 'today' && `${say.today} · `}
                    {say.prepared(one)}
                  </span>
                </a>
              </li>
            )
          })}
        </ul>
      )}
      <a className={styles.planOne} href={wayTo('/plan', null)}>
        <b>{say.planOne}</b>
        <span>{say.planOneWhat}</span>
      </a>
    </nav>
  )
}
