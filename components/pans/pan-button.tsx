import styles from '#components/pans/pan-button.module.css'
import type { Component } from '#lib/menu/station-document.ts'
import type { PanPicture } from '#lib/views/pans.ts'
import { pansWords as words } from '#lib/words/pans-en.ts'

const standingWord = (picture: PanPicture): string => {
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
  readonly chosen: boolean
  readonly onChoose: () => void
}

/** One pan from the side: what it holds, the part of that which is on tickets, what is left. */
export function PanButton({ picture, component, soiledBy, chosen, onChoose }: PanButtonProps) {
  const { standing, selling, filled, owed, left, onTickets } = picture
  const word = standingWord(picture)
  const mayContain = soiledBy.length > 0 ? words.mayContain(soiledBy) : ''
  const isBackupReady = picture.backup !== null && picture.backup.readySince !== null
  const more = [
    ...(mayContain === '' ? [] : [mayContain]),
    ...(isBackupReady ? [words.backupReady] : []),
  ]
  const hasNumber = selling && (standing === 'stocked' || standing === 'nearly-empty')
  return (
    <button
      type="button"
      className={styles.pan}
      data-standing={standing}
      data-selling={selling}
      data-soiled={mayContain !== ''}
      aria-expanded={chosen}
      aria-label={words.pan(component.name, left, word, onTickets, more)}
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
            <span className={styles.word}>{word === '' ? words.left : word}</span>
          </>
        ) : (
          <>
            <b className={styles.state}>{word}</b>
            {left > 0 && (
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
        {isBackupReady && <span className={styles.backup}>{words.backupReady}</span>}
      </span>
      <span className={styles.tickets} data-some={onTickets > 0}>
        {onTickets > 0 ? words.onTickets(onTickets) : words.noneOnTickets}
      </span>
    </button>
  )
}
