import { useState } from 'react'
import styles from '#components/hand-over/panels.module.css'
import { useHandOverWords } from '#components/hand-over/words.tsx'
import { Connection } from '#components/live/connection.tsx'

type Wrong = 'again' | 'not-made'

/** Something is wrong with a build: made again, or not made yet; asked twice, since one throws food out. */
export function WrongPanel({
  name,
  isHandedOver,
  busy,
  onUnpay,
  onAgain,
  onNotMade,
  onNotSure,
  onBack,
}: {
  readonly name: string
  readonly isHandedOver: boolean
  readonly busy: boolean
  /** null where its ticket isn't paid, or it went out. */
  readonly onUnpay: (() => void) | null
  readonly onAgain: () => void
  readonly onNotMade: () => void
  /** null where nothing else stands on the shelf, or it went out. */
  readonly onNotSure: (() => void) | null
  readonly onBack: () => void
}) {
  const words = useHandOverWords()
  const [wrong, setWrong] = useState<Wrong | null>(null)
  return (
    <section className={styles.panel} aria-labelledby="wrong-title">
      <h1 id="wrong-title" className={styles.title}>
        {wrong === null
          ? words.whatIsWrong(name)
          : wrong === 'again'
            ? words.sure(name)
            : words.sureNotMade(name)}
      </h1>
      <Connection />
      <div className={styles.choices}>
        {wrong === null ? (
          <>
            <button type="button" className={styles.other} onClick={() => setWrong('again')}>
              <b>{words.again}</b>
              <span>{words.againThen}</span>
            </button>
            {!isHandedOver && (
              <button type="button" className={styles.other} onClick={() => setWrong('not-made')}>
                <b>{words.notMade}</b>
                <span>{words.notMadeThen}</span>
              </button>
            )}
            {onNotSure && (
              <button type="button" className={styles.other} onClick={onNotSure}>
                <b>{words.notSure}</b>
                <span>{words.notSureThen}</span>
              </button>
            )}
            {onUnpay && (
              <button type="button" className={styles.other} disabled={busy} onClick={onUnpay}>
                <b>{words.unpay}</b>
                <span>{words.unpayThen}</span>
              </button>
            )}
          </>
        ) : (
          <button
            type="button"
            className={styles.danger}
            disabled={busy}
            onClick={wrong === 'again' ? onAgain : onNotMade}
          >
            {wrong === 'again' ? words.yesAgain(name) : words.yesNotMade(name)}
          </button>
        )}
      </div>
      <button type="button" className={styles.back} onClick={onBack}>
        {isHandedOver ? words.leaveGone : words.no(name)}
      </button>
    </section>
  )
}
