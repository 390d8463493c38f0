import { useState } from 'react'
import styles from '#components/hand-over/panels.module.css'
import { Connection } from '#components/live/connection.tsx'
import { handOverEn as say } from '#lib/words/hand-over-en.ts'

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
  const [wrong, setWrong] = useState<Wrong | null>(null)
  return (
    <section className={styles.panel} aria-labelledby="wrong-title">
      <h1 id="wrong-title" className={styles.title}>
        {wrong === null
          ? say.whatIsWrong(name)
          : wrong === 'again'
            ? say.sure(name)
            : say.sureNotMade(name)}
      </h1>
      <Connection />
      <div className={styles.choices}>
        {wrong === null ? (
          <>
            <button type="button" className={styles.other} onClick={() => setWrong('again')}>
              <b>{say.again}</b>
              <span>{say.againThen}</span>
            </button>
            {!isHandedOver && (
              <button type="button" className={styles.other} onClick={() => setWrong('not-made')}>
                <b>{say.notMade}</b>
                <span>{say.notMadeThen}</span>
              </button>
            )}
            {onNotSure && (
              <button type="button" className={styles.other} onClick={onNotSure}>
                <b>{say.notSure}</b>
                <span>{say.notSureThen}</span>
              </button>
            )}
            {onUnpay && (
              <button type="button" className={styles.other} disabled={busy} onClick={onUnpay}>
                <b>{say.unpay}</b>
                <span>{say.unpayThen}</span>
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
            {wrong === 'again' ? say.yesAgain(name) : say.yesNotMade(name)}
          </button>
        )}
      </div>
      <button type="button" className={styles.back} onClick={onBack}>
        {isHandedOver ? say.keepGone : say.no(name)}
      </button>
    </section>
  )
}
