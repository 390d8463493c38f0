import type { ReactNode } from 'react'
import styles from '#components/pans/pan-place.module.css'
import { type PanSaid, sayPan } from '#components/pans/pan-said.ts'
import { usePansWords } from '#components/pans/words.tsx'
import type { PanPicture } from '#lib/rooms/pans/facts/pans.ts'
import type { Component } from '#lib/station/station-document.ts'

const percent = (share: number): string => `${Math.round(share * 1000) / 10}%`

interface PanPlaceProps {
  readonly picture: PanPicture
  readonly component: Component
  /** Everything else that is said of it. */
  readonly about: PanSaid
  /** What is done now is done to it. */
  readonly isLit: boolean
  /** Said in the place of its number; left away where nothing is. */
  readonly mark?: string | undefined
  /** Lidded pans and pots behind it, and what hangs below. */
  readonly behind: ReactNode
  readonly below: ReactNode
  readonly onChoose: () => void
}

/** One pan from the side: its surface, what of that is on tickets, and what is left to sell. */
export function PanPlace(props: PanPlaceProps) {
  const words = usePansWords()
  const { picture, component, about, isLit, mark, behind, below, onChoose } = props
  const { standing, ended, selling, filled, owed, left, onTickets, trouble } = picture
  const said = sayPan(words, picture, about)
  return (
    <div className={styles.place} data-notch={picture.pan} data-lit={isLit || undefined}>
      {behind}
      <button
        type="button"
        className={styles.pan}
        data-standing={standing}
        data-ended={(trouble === null && standing !== 'short' && ended) || undefined}
        data-selling={selling}
        data-trouble={trouble ?? undefined}
        data-lasting={said.lasting}
        data-soon={said.isSoon}
        aria-expanded={isLit}
        aria-label={words.pan(component.name, left, mark ?? said.state, onTickets, said.more)}
        onClick={onChoose}
      >
        <span className={styles.name}>
          {component.short.map((line) => (
            <span key={line}>{line}</span>
          ))}
        </span>
        <span className={styles.vessel}>
          <span className={styles.body}>
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
          </span>
          <span className={styles.figure}>
            {mark !== undefined ? (
              <b className={styles.state} data-mark="">
                {mark}
              </b>
            ) : said.hasNumber ? (
              <b className={styles.number}>{left}</b>
            ) : (
              <b className={styles.state}>{said.state}</b>
            )}
            {(mark === undefined ? said.words : []).map((word) => (
              <span key={word} className={styles.word}>
                {word}
              </span>
            ))}
          </span>
          {said.mayContain !== '' && <span className={styles.mayContain}>{said.mayContain}</span>}
        </span>
        <span className={styles.tickets}>{onTickets > 0 ? words.onTickets(onTickets) : ' '}</span>
      </button>
      {below}
    </div>
  )
}
