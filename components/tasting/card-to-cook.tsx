import styles from '#components/tasting/tasting.module.css'
import { useTastingWords } from '#components/tasting/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { scaledCard } from '#lib/recipes/scaled-card.ts'
import { cookLimit } from '#lib/rooms/food/views/reading-entry.ts'
import { componentOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { cardFor } from '#lib/tasting/card-of.ts'
import { tastingFactor } from '#lib/tasting/decide.ts'
import { heatOf, readOf } from '#lib/tasting/heated.ts'
import type { Tasting } from '#lib/tasting/tasting.ts'

interface CardToCookProps {
  readonly station: StationDocument
  readonly tasting: Tasting
  readonly component: string
  /** Numbers of those who taste it. */
  readonly can: readonly number[]
  readonly onRead: () => void
}

/** What it is cooked to, and what was read of it: nobody tastes before that. */
function Heat({ station, tasting, component, onRead }: Omit<CardToCookProps, 'can'>) {
  const words = useTastingWords()
  const found = componentOf(station, component)
  const limit = cookLimit(station, found)
  const verdict = heatOf(station, tasting, component)
  if (!limit || !verdict) return null
  const all = readOf(tasting, component)
  const newest = (verdict.met && all.find(({ at }) => at === verdict.at)) || all.at(-1)
  const read = newest ? words.safety.degrees(newest.temperature) : null
  const is = verdict.met ? 'met' : read === null ? 'unread' : 'low'
  const said =
    read === null
      ? words.cookTo(words.sayLimit(limit, station.safety.scale))
      : verdict.met
        ? words.isRead(read)
        : words.tooLow(read, verdict.why)
  return (
    <div className={styles.limit} data-is={is}>
      <p>{said}</p>
      {!verdict.met && (
        <Button kind="main" onClick={onRead}>
          {read === null ? words.read(found.name) : words.readAgain(found.name)}
        </Button>
      )}
    </div>
  )
}

/** The card for so few, to cook by. */
export function CardToCook(props: CardToCookProps) {
  const { station, tasting, component, can } = props
  const words = useTastingWords()
  const { name } = componentOf(station, component)
  const found = cardFor(station, component)
  const factor = tastingFactor(station, component, tasting.portions)
  const lines = found ? scaledCard(found.card, factor, found.box) : []
  return (
    <article className={styles.card} aria-label={name}>
      <header>
        <h3>{name}</h3>
        <p>{words.whoTastes(can)}</p>
      </header>
      <Heat {...props} />
      {found === null && <p>{words.noCard}</p>}
      {lines.length > 0 && (
        <ul className={styles.lines}>
          {lines.map(({ line, name: of, amount }) => (
            <li key={`${line.of} ${line.typed}`}>
              <span>{of}</span>
              <b>
                {amount.kind === 'measured'
                  ? words.sayMeasure(amount.measure.shown, amount.measure.exact.kind)
                  : amount.kind === 'to-taste'
                    ? words.toTaste
                    : line.typed || '–'}
              </b>
            </li>
          ))}
        </ul>
      )}
    </article>
  )
}
