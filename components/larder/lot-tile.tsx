import styles from '#components/larder/larder.module.css'
import { useLarderWords } from '#components/larder/larder-words.tsx'
import { goesFirst, isHatched } from '#components/larder/lot-said.ts'
import type { LotShown } from '#lib/larder/shelf-view.ts'

interface LotTileProps {
  readonly lot: LotShown
  /** Epoch milliseconds: what is of another day says which. */
  readonly now: number
  readonly isChosen: boolean
  readonly onChoose: () => void
}

/** A container on its shelf: what it is, how much, to what day, and what is due next of it. */
export function LotTile({ lot, now, isChosen, onChoose }: LotTileProps) {
  const words = useLarderWords()
  const day = (at: number) => words.sayDay(at, lot.timeZone)
  const time = (at: number) => {
    const clock = words.sayTime(at, lot.timeZone)
    return day(at) === day(now) ? clock : words.dayAndTime(day(at), clock)
  }
  const amount = words.sayMuch(lot.amount, lot.unit)
  const { next } = lot
  const bound = lot.bound ?? (lot.barred?.code === 'lot-bound' ? lot.barred.why : null)
  const isCooling = lot.kept === 'cooling'
  const stays =
    lot.presentUntil !== null && next?.what === 'stage'
      ? lot.presentUntil >= next.at
        ? words.stays(time(lot.presentUntil))
        : words.nobody
      : null
  const due =
    next?.what === 'stage'
      ? words.stage(next.stage, time(next.at))
      : next?.what === 'reading'
        ? words.reading(time(next.at))
        : null
  return (
    <button
      type="button"
      className={styles.lot}
      data-notch={lot.lot}
      data-bound={isHatched(lot) || undefined}
      aria-pressed={isChosen}
      onClick={onChoose}
    >
      <b>{lot.name}</b>
      <span className={styles.amount}>{amount}</span>
      {bound !== null ? (
        <span>{words.bound(bound)}</span>
      ) : (
        <>
          <span className={styles.day}>
            {isCooling
              ? words.stillCooling
              : lot.daysLeft !== null
                ? words.frozenFor(lot.daysLeft)
                : lot.lastDay !== null && words.lastDay(words.sayDate(lot.lastDay))}
          </span>
          {lot.relabelled.length > 0 && <span>{words.relabelled}</span>}
          {lot.barred?.code === 'lot-unread' ? <span>{words.unread}</span> : <span>{due}</span>}
          {stays !== null && <span>{stays}</span>}
          {goesFirst(lot) && <i>{words.first}</i>}
        </>
      )}
    </button>
  )
}
