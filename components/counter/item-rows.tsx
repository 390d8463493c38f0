import styles from '#components/counter/items.module.css'
import { sayRow } from '#components/counter/say-row.ts'
import type { Wanted } from '#components/counter/use-wanted.ts'
import { WantedButton } from '#components/counter/wanted-button.tsx'
import { type CounterWords, useCounterWords } from '#components/counter/words.tsx'
import { useRoom } from '#components/device/use-device.ts'
import { Line } from '#components/line/line.tsx'
import type { Finding } from '#lib/needs/judge.ts'
import type { Draft } from '#lib/rooms/orders/facts/draft.ts'
import { type Offer, offerOf, standingOf, toAcceptOf } from '#lib/rooms/orders/facts/offer.ts'
import { type CellMark, itemRows } from '#lib/rooms/orders/views/counter.ts'
import { isItemWanted } from '#lib/rooms/orders/views/wanted-gone.ts'
import { pansOf } from '#lib/station/find.ts'

interface ItemRowsProps {
  readonly offer: Offer
  readonly draft: Draft
  readonly label: string
  /** null while nothing may be chosen. */
  readonly onChoose: ((item: string) => void) | null
  /** null where what is gone isn't counted. */
  readonly wanted: Wanted | null
}

/** Letters of a verdict that stand on one line of a row beside its name, and on a phone's own. */
const ROOM = { phone: 40, small: 66, medium: 78, large: 92 } as const

const NOT_COVERED = Number.POSITIVE_INFINITY

/** The menu: a row an item, its marks in the pans' own columns. */
export function ItemRows({ offer, draft, label, onChoose, wanted }: ItemRowsProps) {
  const words = useCounterWords()
  const room = useRoom()
  const { station } = offer.state
  const places = pansOf(station)
  return (
    <ul className={styles.rows} aria-label={label}>
      {itemRows(offer, draft).map((row) => {
        const said = sayRow(words, offer, row, ROOM[room])
        const isWanted = wanted !== null && isItemWanted(row.blocked)
        return (
          <li
            key={row.item.id}
            className={styles.row}
            data-chosen={row.chosen || undefined}
            data-blocked={row.blocked !== null || undefined}
            data-fit={said.kind}
          >
            <button
              type="button"
              className={styles.press}
              aria-pressed={row.chosen}
              disabled={onChoose === null}
              onClick={() => onChoose?.(row.item.id)}
            >
              <strong>{row.item.name}</strong>
              <span className={styles.fit}>{said.text}</span>
              <span className={styles.left}>{row.blocked ? '' : words.left(row.left)}</span>
            </button>
            {isWanted && (
              <WantedButton
                name={row.item.name}
                isCounted={wanted.isCounted(row.item.id)}
                place="row"
                onWanted={() => wanted.item(row.item.id)}
              />
            )}
            <div className={styles.marks} aria-hidden="true">
              <Line
                station={station}
                label={row.item.name}
                renderPan={(pan) => {
                  const place = places.indexOf(pan)
                  // The button that counts a wish stands over the last of a row.
                  const fromRight = isWanted ? places.length - place : NOT_COVERED
                  const mark = row.marks[place] ?? 'none'
                  return (
                    <Mark
                      mark={fromRight === 1 ? 'none' : mark}
                      isApart={isApart(offerOf(offer, row.item.id), pan.component)}
                      word={
                        fromRight <= 2 || (wanted === null && (mark === 'need' || mark === 'ask'))
                          ? ''
                          : markWord(words, offerOf(offer, row.item.id), pan.component, mark)
                      }
                    />
                  )
                }}
              />
            </div>
          </li>
        )
      })}
    </ul>
  )
}

/** What nobody knows of isn't told as in it. */
const needWord = (words: CounterWords, { need, why }: Finding): string => {
  const word = words.foodOf(need) ?? words.needName(need)
  return why === 'unknown' || why === 'contact-unknown' ? words.mark.unknown(word) : word
}

const markWord = (words: CounterWords, offer: Offer, component: string, mark: CellMark): string => {
  const standing = standingOf(offer, component)
  const finding = standing.kind === 'need' ? standing.finding : toAcceptOf(standing)[0]
  switch (mark) {
    case 'side':
      return words.mark.side
    case 'no':
      return words.pan.no
    case 'ask':
      return words.ask
    case 'gone':
      if (standing.kind === 'kept') return words.mark.saved
      if (standing.kind === 'gone' && standing.notLoaded) return words.mark.notLoaded
      return standing.kind === 'not-selling' ? words.pan.notSelling : words.noneLeft
    case 'need':
      return finding ? needWord(words, finding) : words.pan.unchecked
    case 'in':
    case 'could':
    case 'none':
      return ''
  }
}

/** Whether what a need leaves out is kept apart. */
const isApart = (offer: Offer, component: string): boolean => {
  const standing = standingOf(offer, component)
  const finding = standing.kind === 'need' ? standing.finding : toAcceptOf(standing)[0]
  return finding?.handling === 'keep-apart'
}

/** A shape and, where it isn't plainly in it, a word. */
function Mark({
  mark,
  word,
  isApart,
}: {
  readonly mark: CellMark
  readonly word: string
  readonly isApart: boolean
}) {
  return (
    <span className={styles.mark} data-mark={mark} data-apart={isApart || undefined}>
      <svg viewBox="0 0 24 24" aria-hidden="true">
        {mark === 'in' && (
          <rect className={styles.solid} x="2" y="2" width="20" height="20" rx="5" />
        )}
        {mark === 'ask' && (
          <>
            <path className={styles.care} d="M12 2.5 22.5 21h-21Z" />
            <path className={styles.careMark} d="M12 9v6M12 17.6v.4" />
          </>
        )}
        {mark === 'side' && <circle className={styles.cup} cx="12" cy="12" r="9" />}
        {mark === 'could' && <path className={styles.plus} d="M12 6v12M6 12h12" />}
        {mark === 'gone' && (
          <rect className={styles.dotted} x="3" y="3" width="18" height="18" rx="5" />
        )}
        {(mark === 'no' || mark === 'need') && (
          <>
            <rect className={styles.struck} x="3" y="3" width="18" height="18" rx="5" />
            <path className={styles.struck} d="M5 5l14 14" />
          </>
        )}
      </svg>
      {word !== '' && <small>{word}</small>}
    </span>
  )
}
