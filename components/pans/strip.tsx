import type { Choose } from '#components/job/chosen.ts'
import { useSelling } from '#components/live/selling.ts'
import type { PlacedTasks } from '#components/pans/placed-tasks.ts'
import { roundOpens } from '#components/pans/round-marks.ts'
import styles from '#components/pans/strip.module.css'
import { usePansWords } from '#components/pans/words.tsx'
import type { StationForecast } from '#lib/estimate/station-forecast.ts'
import { roundOf } from '#lib/rooms/food/facts/round.ts'
import {
  type ItemPicture,
  isBaseUnloaded,
  itemPictures,
  whyNone,
} from '#lib/rooms/pans/views/items-left.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'
import { readHere } from '#lib/station/read-here.ts'

const MOST_OTHERS = 3

/** What is to be done to no pan. */
export function Others({ placed }: { readonly placed: PlacedTasks }) {
  const words = usePansWords()
  const { others } = placed
  if (others.length === 0) return null
  return (
    <section className={styles.others} aria-label={words.onLine.others}>
      <h2>
        {words.onLine.others}
        {others.length > MOST_OTHERS && `, ${words.more(others.length - MOST_OTHERS)}`}
      </h2>
      <ul>
        {others.slice(0, MOST_OTHERS).map((one) => (
          <li key={one.key}>
            <button type="button" onClick={() => placed.go(one)}>
              {one.told.short}
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}

interface StripProps {
  readonly state: RunningState
  readonly now: number
  readonly forecast: StationForecast | null
  readonly choose: Choose
}

/** Every item with how many can still be sold, and the ways to what is done seldom. */
export function Strip({ state: told, now, forecast, choose }: StripProps) {
  const words = usePansWords()
  const state = useSelling(told, 1)
  const name = nameIn(state.station)
  const items = itemPictures(state)
  const round = roundOf(told, now, forecast?.rushAhead ?? null)
  const readings = round && roundOpens(round, now)
  const note = ({ id, selling, remaining, limitedBy, gone }: ItemPicture): string => {
    if (!selling) return words.notSelling
    if (remaining === 0)
      return limitedBy === 'base' || limitedBy === null
        ? isBaseUnloaded(state, id)
          ? words.noBaseYet
          : words.noBase
        : words.noneFor(name(limitedBy), whyNone(state, limitedBy))
    return gone.length > 0 ? words.without(gone.map(name)) : ''
  }
  return (
    <div className={styles.strip}>
      <section aria-label={words.canSell} className={styles.selling}>
        <h2>{words.canSell}</h2>
        <ul data-many={items.length > 4 || undefined}>
          {items.map((item) => (
            <li key={item.id}>
              <button
                type="button"
                data-selling={item.selling && item.remaining > 0}
                onClick={() => choose({ task: 'selling', what: 'item', id: item.id })}
              >
                <b>{item.selling ? item.remaining : '–'}</b>
                <span>
                  {name(item.id)}
                  {note(item) !== '' && <small>{note(item)}</small>}
                </span>
              </button>
            </li>
          ))}
        </ul>
      </section>
      <nav className={styles.ways} aria-label={words.first.ways}>
        {readings && (
          <button type="button" onClick={() => choose(readings)}>
            {words.roundTask.take}
          </button>
        )}
        <button type="button" onClick={() => choose({ task: 'start-batch', component: null })}>
          {words.batches.start}
        </button>
        {readHere(told.station).map((of) => (
          <button key={of} type="button" onClick={() => choose({ task: 'read-here', of })}>
            {words.onLine.readHere[of]}
          </button>
        ))}
        <button type="button" onClick={() => choose({ task: 'labels', ingredient: null })}>
          {words.first.labelChanged}
        </button>
        <a href={`/sheet${location.search}`}>{words.first.toSheet}</a>
        <button type="button" onClick={() => choose({ task: 'in-charge' })}>
          {words.first.inCharge}
        </button>
      </nav>
    </div>
  )
}
