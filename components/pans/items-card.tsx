import { useSelling } from '#components/live/selling.ts'
import styles from '#components/pans/cards.module.css'
import { usePansWords } from '#components/pans/words.tsx'
import { type ItemPicture, itemPictures } from '#lib/rooms/pans/views/items-left.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'

interface ItemsCardProps {
  readonly state: RunningState
  readonly onItem: (item: string) => void
}

/** Every item with how many can still be sold; a tap stops or resumes one. */
export function ItemsCard({ state: told, onItem }: ItemsCardProps) {
  const words = usePansWords()
  const state = useSelling(told, 1)
  const name = nameIn(state.station)
  const note = ({ selling, remaining, limitedBy, gone }: ItemPicture): string => {
    if (!selling) return words.notSelling
    if (remaining === 0)
      return limitedBy === 'base' || limitedBy === null
        ? words.noBase
        : words.noneFor(name(limitedBy))
    return gone.length > 0 ? words.without(gone.map(name)) : ''
  }
  return (
    <section className={styles.card} data-kind="items">
      <h2 className={styles.label}>{words.canSell}</h2>
      <ul className={styles.items}>
        {itemPictures(state).map((item) => (
          <li key={item.id}>
            <button
              type="button"
              className={styles.item}
              data-selling={item.selling && item.remaining > 0}
              onClick={() => onItem(item.id)}
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
      <p className={styles.foot}>{words.ticketsOff}</p>
    </section>
  )
}
