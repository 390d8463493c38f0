import styles from '#components/pans/pan-button.module.css'
import { PanSigns } from '#components/pans/pan-signs.tsx'
import { type PansWords, usePansWords } from '#components/pans/words.tsx'
import type { FoodTimes } from '#lib/rooms/food/facts/food-times.ts'
import type { Outlook } from '#lib/rooms/pans/facts/pan-outlook.ts'
import type { PanPicture } from '#lib/rooms/pans/facts/pans.ts'
import type { Component } from '#lib/station/station-document.ts'

const troubleWords = (
  words: PansWords,
  picture: PanPicture,
  times: FoodTimes | null,
): readonly [string, string] => {
  switch (picture.trouble) {
    case 'throw-out':
      return [words.throwOut, '']
    case 'off-sale':
      return [words.dontServe, times?.offSale ? words.dontServeWhy[times.offSale.why] : '']
    case 'unread':
    case 'timed':
      return [words.clockJumped, words.clockHelps[picture.trouble]]
    default:
      return [words.notKnown, words.notKnownWhy]
  }
}

const standingWord = (words: PansWords, picture: PanPicture): string => {
  if (picture.standing === 'short') return words.short(picture.lacking)
  if (!picture.selling) return words.notSelling
  switch (picture.standing) {
    case 'not-loaded':
      return words.notLoaded
    case 'sold-out':
      return words.soldOut
    case 'empty':
      return words.empty
    case 'nearly-empty':
      return words.nearlyEmpty
    case 'stocked':
      return ''
  }
}

const percent = (share: number): string => `${Math.round(share * 1000) / 10}%`

interface PanButtonProps {
  readonly picture: PanPicture
  readonly component: Component
  /** Names of the components whose scoop went into it. */
  readonly soiledBy: readonly string[]
  readonly outlook: Outlook | null
  readonly times: FoodTimes | null
  /** Portions of its component that are kept for some orders. */
  readonly kept: number
  /** That other scoops stand in, or its own does for others; '' where that isn't so. */
  readonly standIn: string
  /** Percent that its scoops run heavy, below zero light; 0 where that is no matter. */
  readonly bias: number
  readonly timeZone: string
  readonly chosen: boolean
  readonly onChoose: () => void
}

/** One pan from the side: what it holds, what of that is on tickets, what is left, whether it lasts. */
export function PanButton(props: PanButtonProps) {
  const words = usePansWords()
  const { picture, component, soiledBy, outlook, times, timeZone, chosen, onChoose } = props
  const { standing, selling, filled, owed, left, onTickets, trouble } = picture
  const time = (at: number) => words.sayTime(at, timeZone)
  const [state, why] = trouble
    ? troubleWords(words, picture, times)
    : [standingWord(words, picture), '']
  const mayContain = soiledBy.length > 0 ? words.mayContain(soiledBy) : ''
  const isBackupReady = picture.backup !== null && picture.backup.readySince !== null
  const hasNumber = !trouble && selling && (standing === 'stocked' || standing === 'nearly-empty')
  const lasts = hasNumber ? outlook : null
  const word = lasts ? words.advice.lastingWord[lasts.lasting] : ''
  const range = lasts?.by ? words.advice.range(lasts.by, time) : ''
  const signs = {
    throwOut: times?.throwOutAt && !trouble ? words.throwOutAt(time(times.throwOutAt)) : '',
    readBy: times?.readBy && !trouble ? words.readBy(time(times.readBy)) : '',
    kept: props.kept > 0 ? words.saved(props.kept) : '',
    standIn: props.standIn,
    bias: props.bias !== 0 && !trouble ? words.heavy(props.bias) : '',
    backup: isBackupReady ? words.backupReady : '',
  }
  const more = [word, range === '' ? '' : words.advice.goneBy(range), why, mayContain]
  const said = [...more, ...Object.values(signs)].filter((one) => one !== '')
  return (
    <button
      type="button"
      className={styles.pan}
      data-standing={standing}
      data-selling={selling}
      data-trouble={trouble ?? 'none'}
      data-lasting={lasts?.lasting ?? 'not-said'}
      data-soon={lasts?.isSoon ?? false}
      data-soiled={mayContain !== ''}
      aria-expanded={chosen}
      aria-label={words.pan(component.name, left, state, onTickets, said)}
      onClick={onChoose}
    >
      <span className={styles.name}>
        {component.short.map((line) => (
          <span key={line}>{line}</span>
        ))}
      </span>
      <span className={styles.figure}>
        {hasNumber ? (
          <>
            <b className={styles.number}>{left}</b>
            <span className={styles.word}>{lasts ? word : state === '' ? words.left : state}</span>
            {lasts?.by && (
              <span className={styles.range}>
                {words.advice.rangeParts(lasts.by, time).map((part) => (
                  <span key={part}>{part}</span>
                ))}
              </span>
            )}
          </>
        ) : (
          <>
            <b className={styles.state}>{state}</b>
            {why !== '' && <span className={styles.word}>{why}</span>}
            {!trouble && left > 0 && (
              <span className={styles.word}>
                {left} {words.left}
              </span>
            )}
          </>
        )}
      </span>
      {mayContain !== '' && <span className={styles.mayContain}>{mayContain}</span>}
      <span className={styles.vessel}>
        <span className={styles.inside}>
          <span
            className={styles.food}
            data-some={filled > 0}
            style={{ height: percent(filled) }}
          />
          <span
            className={styles.owed}
            data-some={owed > 0}
            style={{ height: percent(owed), bottom: percent(filled - owed) }}
          />
          <span className={styles.quarter} />
        </span>
        <PanSigns {...signs} isSoon={times?.isSoon ?? false} />
      </span>
      <span className={styles.tickets} data-some={onTickets > 0}>
        {onTickets > 0 ? words.onTickets(onTickets) : words.noneOnTickets}
      </span>
    </button>
  )
}
